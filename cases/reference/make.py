"""Makes results.json from the cycle files in cases/: see README.md."""

import datetime
import json
import pathlib
import platform
import sys
from concurrent.futures import ProcessPoolExecutor
from dataclasses import asdict

import numpy as np
import scipy
from scipy.stats import multivariate_normal

import model

HERE = pathlib.Path(__file__).resolve().parent


def instant(day):
    moment = model.ANCHOR + datetime.timedelta(seconds=round(day * 86400))
    return moment.isoformat().replace("+00:00", "Z")


def one(path):
    cycle = json.loads(path.read_text(encoding="utf-8"))
    case = model.read_case(cycle)
    limits = sum(not r.is_number for r in case.results)
    grid = model.Grid() if limits < 2 else model.Grid(1 / 12, rates=21)
    fine = model.posterior(case, grid)
    rough = model.posterior(case, grid.halved())
    change = {
        what: max(abs(fine[what][q] - rough[what][q]) for q in fine[what]) * 24
        for what in ("ovulation", "lhPeak")
    }
    print(path.stem, {k: round(v, 3) for k, v in change.items()}, file=sys.stderr, flush=True)
    return {
        "case": path.stem,
        **{
            what: {f"p{int(q):02d}": instant(day) for q, day in fine[what].items()}
            for what in ("lhPeak", "ovulation")
        },
        "courses": {c: float(f"{p:.6g}") for c, p in fine["courses"].items()},
        "fit": float(f"{fine['fit']:.6g}"),
        "changeWithHalfTheGrid": {
            "ovulationHours": round(change["ovulation"], 4),
            "lhPeakHours": round(change["lhPeak"], 4),
            "courses": float(
                f"{max(abs(fine['courses'][c] - rough['courses'][c]) for c in model.COURSES):.2g}"
            ),
            "fit": float(f"{abs(fine['fit'] - rough['fit']):.2g}"),
        },
    }


def against_scipy():
    """The batched normal density and the integral over limits beside scipy's own routines."""
    numbers = [model.Result(3.0 * i, v, v, ("A", "ria"), "ria") for i, v in enumerate((0.5, 0.8, 2.1))]
    limits = [
        model.Result(11.0, 3.0, 10.0, ("kit",), "unknown", kit=True),
        model.Result(13.0, 5.0, np.inf, ("A", "ria"), "ria"),
    ]
    density = limit = 0.0
    m = model.Progesterone(numbers + limits, model.Grid())
    rng = np.random.default_rng(1)
    for _ in range(20):
        mean = np.log([0.5, 0.9, 2.0, 5.0, 7.0]) + rng.normal(0, 0.3, 5)
        loads = rng.normal(0, 0.2, (5, 4))
        own = rng.uniform(0.01, 0.05, 5)
        a, b, y = loads[:3], loads[3:], np.asarray(m.y)
        for wrong in (-1, 0, 1, 2):
            variance = own[:3].copy()
            if wrong >= 0:
                variance[wrong] += model.P["odd.log-sd"] ** 2
            cov = a @ a.T + m.swing + np.diag(variance)
            theirs = multivariate_normal(mean[:3], cov).logpdf(y)
            solved = np.linalg.solve(cov, y - mean[:3])
            ours = -0.5 * (
                3 * np.log(2 * np.pi) + np.linalg.slogdet(cov)[1] + (y - mean[:3]) @ solved
            )
            density = max(density, abs(ours - theirs))
            centre, rest = m._limits_given_numbers(
                mean[None], a[None], b[None], cov[None], solved[None]
            )
            ours = model.rectangle(centre, rest, np.sqrt(own[3:]), m.low, m.high, 1.0)[0]
            theirs = _subsets(centre[0], rest[0] + np.diag(own[3:]), m.low, m.high)
            limit = max(limit, abs(ours - theirs))
    return {"logDensity": float(f"{density:.2g}"), "limits": float(f"{limit:.2g}")}


def _subsets(mean, cov, low, high):
    """Two limits, each odd or not, with scipy's multivariate normal distribution function."""
    odd = model.P["odd.weight"]
    low, high = np.maximum(low, -30), np.minimum(high, 30)

    def box(which):
        pick = np.ix_(which, which)
        law = multivariate_normal(mean[which], cov[pick])
        total = 0.0
        for corner in range(2 ** len(which)):
            upper = [corner >> i & 1 for i in range(len(which))]
            point = [high[w] if u else low[w] for w, u in zip(which, upper)]
            total += (-1) ** (len(which) - sum(upper)) * law.cdf(point)
        return total

    return (
        (1 - odd) ** 2 * box([0, 1])
        + odd * (1 - odd) / 2 * (box([0]) + box([1]))
        + (odd / 2) ** 2
    )


def main():
    paths = sorted((HERE / "cases").glob("*.json"))
    with ProcessPoolExecutor(2) as pool:
        cases = list(pool.map(one, paths, chunksize=1))
    document = {
        "about": "Posterior quantiles by an independent program; made by make.py, see README.md",
        "seed": "none: nothing here is random (the comparison with scipy draws its test points from seed 1)",
        "versions": {
            "python": platform.python_version(),
            "numpy": np.__version__,
            "scipy": scipy.__version__,
        },
        "grid": {
            **asdict(model.Grid()),
            "step": "1/24 d; with several limits twice that, and 21 rates",
            "quantiles": "of the trapezoid distribution function, joined linearly",
        },
        "diagnostics": {
            "largestChangeWithHalfTheGrid": {
                k: max(c["changeWithHalfTheGrid"][k] for c in cases)
                for k in ("ovulationHours", "lhPeakHours", "courses", "fit")
            },
            "largestDifferenceFromScipy": against_scipy(),
        },
        "cases": cases,
    }
    text = json.dumps(document, indent=1)
    (HERE / "results.json").write_text(text + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
