"""Writes the parts of every case's posterior, one by one, for the engine's own tests.

Beside results.json, which has the whole: the prior, each likelihood at whole days, what is left
without each result, and how odd each number looks. Speed, acceptance, shift of the smear and lag to
dioestrus are summed over the engine's own points here, so that nothing but arithmetic is compared;
what those few points cost, results.json says. In plain lines, since those tests read no JSON.

    OPENBLAS_NUM_THREADS=1 /usr/bin/python3 cases/reference/parts.py > \
      engine/src/test/resources/io/github/tiderule/engine/timeline/reference.txt
"""

import datetime
import json
import math
import pathlib
from dataclasses import replace

import numpy as np

import model

HERE = pathlib.Path(__file__).resolve().parent
P = model.P
GRID = model.Grid(rates=11)
ACCEPTANCE = model.Grid(latents=9, reach=2.8)
WITHOUT = model.Grid(1 / 6, rates=21, latents=41)
SHIFT = model.standard_nodes(13, 3.0)
DIOESTRUS = model.standard_nodes(13, 3.5)


class SomeOdd(model.Progesterone):
    """The likelihood of numbers alone where some of them are odd."""

    wrong = ()

    def _dense(self, mean, scaled, own, log_weight):
        m = len(self.numbers)
        odd = P["odd.weight"]
        variance = own[:m].copy()
        weight = (m - len(self.wrong)) * math.log1p(-odd) + len(self.wrong) * math.log(odd)
        for one in self.wrong:
            variance[one] += P["odd.log-sd"] ** 2
        covariance = scaled @ scaled.transpose(0, 2, 1) + self.swing + np.diag(variance)
        residual = self.y - mean
        _, log_det = np.linalg.slogdet(covariance)
        solved = np.linalg.solve(covariance, residual[:, :, None])[:, :, 0]
        fit = m * math.log(2 * math.pi) + log_det + (residual * solved).sum(axis=1)
        return np.array([weight - 0.5 * fit] * 2)


def ovulation_evidence(case, ovulation):
    """As the model's, with points of its own for each of the two latents."""
    scans = model.Case(case.now, None, None, "", [], scans=case.scans)
    out = model.ovulation_evidence(scans, ovulation, GRID)
    if not case.smears:
        return out
    shift, lag = (P["smear.shift-sd"] * SHIFT[0], P["smear.dioestrus-sd"] * DIOESTRUS[0])
    product = np.ones((len(ovulation), len(shift), len(lag)))
    for at, cornified, white in case.smears:
        u = (at - ovulation)[:, None]
        g = 1 / (1 + np.exp(-(u - shift - P["smear.rise-centre"]) / P["smear.rise-scale"]))
        before = model.smear_chance(cornified, white, g)[:, :, None]
        past = model.ndtr((u - P["smear.dioestrus-lag"] - lag) / P["smear.dioestrus-edge"])
        past = past[:, None, :]
        product *= (1 - past) * before + past * model.dioestrous_smear_chance(cornified, white)
    return out + np.log(np.einsum("ose,s,e->o", product, SHIFT[1], DIOESTRUS[1]))


def line(word, *fields):
    print(word, *fields)


def numbers(word, values):
    line(word, *[f"{v:.9g}" for v in values])


def evidence(cycle, case):
    line("now", f"{case.now:.9f}")
    if case.first_blood_date:
        line("blood", case.first_blood_date, case.certainty, f"{case.first_blood_noon:.9f}")
    for days in case.earlier:
        line("earlier", days)
    for r in case.results:
        laboratory = "_" + (r.series[0] if len(r.series) == 2 else "")
        line(
            "result", f"{r.at:.9f}", f"{r.low:.9g}", f"{r.high:.9g}", laboratory.replace(" ", "_"),
            r.method, int(r.reads_low), int(r.noisy), int(r.kit),
        )
    for at, positive in case.lh:
        line("lh", f"{at:.9f}", int(positive))
    for at, state in case.folds:
        line("folds", f"{at:.9f}", state)
    for at, sign, present in case.signs:
        if sign in model.DATING_SIGNS:
            line("sign", f"{at:.9f}", sign, int(present))
    for at, cornified, white in case.smears:
        line("smear", f"{at:.9f}", "-" if cornified is None else cornified, white or "-")
    for at, finding in case.scans:
        line("scan", f"{at:.9f}", int(finding == "ovulated"))


def courses(word, case, results, peaks):
    p = model.Progesterone(results, GRID)
    zero = np.zeros(len(peaks))
    numbers(word + "-ordinary", p.ordinary(peaks, zero)[0])
    numbers(word + "-plateau", p.plateau(peaks, zero, case)[0])
    numbers(word + "-irregular", p.irregular(peaks, zero)[0])
    numbers(word + "-failing", p.failing(peaks, zero)[0])
    numbers(word + "-none", [p.silent()[0]])


def but(case, what, item):
    """The case without one observation."""
    kept = {name: list(getattr(case, name)) for name in ("results", "lh", "folds", "signs", "smears", "scans")}
    kept[what].remove(item)
    return replace(case, **kept)


def influences(case):
    """Median and 90 % interval of ovulation without each observation, in the engine's order."""
    numbers_first = [r for r in case.results if r.is_number]
    numbers_first += [r for r in case.results if not r.is_number]
    dating = [s for s in case.signs if s[1] in model.DATING_SIGNS]
    items = [("results", r) for r in numbers_first]
    items += [("lh", x) for x in case.lh] + [("smears", x) for x in case.smears]
    items += [("folds", x) for x in case.folds] + [("signs", x) for x in dating]
    items += [("scans", x) for x in case.scans]
    for i, (what, item) in enumerate(items):
        without = model.posterior(but(case, what, item), WITHOUT)["ovulation"]
        numbers(f"without-{i}", [without[q] for q in ("5", "50", "95")])


def main():
    for path in sorted((HERE / "cases").glob("*.json")):
        cycle = json.loads(path.read_text(encoding="utf-8"))
        case = model.read_case(cycle)
        line("case", path.stem)
        evidence(cycle, case)
        start = case.first_blood_noon
        if start is None:
            start = case.first_observation - 10
        peaks = np.arange(math.ceil(start - 3), math.ceil(start - 3) + 30, dtype=float)
        numbers("peaks", peaks)
        at, prior = model.peak_prior(case, model.Grid())
        numbers("prior", np.interp(peaks, at, prior))
        numbers("side", model.peak_evidence(case, peaks, ACCEPTANCE))
        numbers("seen", ovulation_evidence(case, peaks + 2))
        numbers("without-ovulation", [model.evidence_without_ovulation(case)])
        if case.results:
            ordered = [r for r in case.results if r.is_number]
            ordered += [r for r in case.results if not r.is_number]
            courses("all", case, ordered, peaks)
            for i in range(len(ordered)):
                if len(ordered) > 1:
                    courses(f"but-{i}", case, ordered[:i] + ordered[i + 1 :], peaks)
            if all(r.is_number for r in ordered):
                for j in range(len(ordered)):
                    sums = np.full(len(peaks), -np.inf)
                    for other in range(len(ordered)):
                        p = SomeOdd(ordered, GRID)
                        p.wrong = (j,) if other == j else (j, other)
                        one = p.ordinary(peaks, np.zeros(len(peaks)))[0]
                        sums = np.logaddexp(sums, one)
                    numbers(f"odd-{j}", sums)
        whole = model.posterior(case, model.Grid().halved())
        for what in ("lhPeak", "ovulation"):
            numbers(what, [whole[what][q] for q in ("5", "25", "50", "75", "95")])
        influences(case)
        numbers("courses", [whole["courses"][c] for c in model.COURSES])
        numbers("fit", [whole["fit"]])


if __name__ == "__main__":
    main()
