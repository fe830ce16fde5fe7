"""The timeline estimator's model, written a second time.

Written from the documentation page of the package io.github.tiderule.engine.timeline and from the
parameter files alone, by another numerical route than the engine's: every covariance matrix is
built in full and factorised for itself, every latent that the engine treats by closed-form algebra
or by a handful of points is put on a fine grid here, and nothing is pruned but integrals over
several limits at points whose weight is below 1e-11 of the largest seen.

Time is in days after an anchor, levels are natural logs of ng/mL.
"""

import csv
import itertools
import math
import pathlib
from dataclasses import dataclass, field, replace
from datetime import datetime, timezone
from zoneinfo import ZoneInfo

import numpy as np
from scipy.interpolate import PchipInterpolator
from scipy.special import chdtrc, ndtr

ROOT = pathlib.Path(__file__).resolve().parents[2]
PARAMETERS = ROOT / "rules/src/main/resources/io/github/tiderule/parameters"
ANCHOR = datetime(2027, 1, 1, tzinfo=timezone.utc)
NG_PER_ML = {"ng/mL": 1.0, "ug/L": 1.0, "nmol/L": 3.18}
RATE_REACH = 3.75  # standard deviations of ln rho at which it is cut off
TOP_STEP = 1 / 6  # days, of the top of a season that breaks off
LOW_TUBES = {"gel", "clot-activator"}
COURSES = ("ordinary", "plateau", "irregular", "failing", "brokenOff", "silent")


def table(name):
    with open(PARAMETERS / f"{name}.csv", newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


P = {row["id"].removeprefix("timeline."): float(row["value"]) for row in table("timeline")}


NEUTROPHILS = {
    row["phase"]: {word: float(row[word]) for word in ("none", "few", "many")}
    for row in table("neutrophils")
}


@dataclass(frozen=True)
class Grid:
    """How finely the reference integrates."""

    step: float = 1 / 24  # days, of the LH peak, the lag and ovulation
    rates: int = 41  # points of ln rho, as far as it goes
    latents: int = 121  # points of A, S and E within +-reach standard deviations
    reach: float = 6.0
    limits: float = 1.0  # multiplies the points along each shared direction of several limits

    def halved(self):
        """Every step twice as long; for limits, two thirds of the points in each direction."""
        return Grid(
            2 * self.step, self.rates // 2 + 1, self.latents // 2 + 1, self.reach, self.limits / 1.5
        )


def normal(x, mean, sd):
    z = (x - mean) / sd
    return np.exp(-0.5 * z * z) / (sd * math.sqrt(2 * math.pi))


def ends_halved(values):
    """Values times the weights of the trapezoid rule, without the step."""
    out = np.array(values)
    out[[0, -1]] /= 2
    return out


def trapezoid(values, step):
    return ends_halved(values).sum() * step


def standard_nodes(points, reach):
    """Nodes and weights of a trapezoid rule for a standard normal."""
    z = np.linspace(-reach, reach, points)
    w = normal(z, 0, 1)
    return z, w / w.sum()


# ---------------------------------------------------------------------------------------- reading


@dataclass
class Result:
    """One progesterone result: a number where low == high, else an interval. ng/mL."""

    at: float
    low: float
    high: float
    series: tuple
    method: str
    kit: bool = False
    reads_low: bool = False
    noisy: bool = False

    @property
    def is_number(self):
        return self.low == self.high


@dataclass
class Case:
    now: float
    first_blood_noon: float | None
    first_blood_date: object
    certainty: str
    earlier: list
    results: list = field(default_factory=list)
    lh: list = field(default_factory=list)
    folds: list = field(default_factory=list)
    signs: list = field(default_factory=list)
    smears: list = field(default_factory=list)
    scans: list = field(default_factory=list)
    first_observation: float | None = None


def days(moment):
    return (moment - ANCHOR).total_seconds() / 86400


def doubts(o):
    """What the reading rules say of a sample: reads low (RDG-020 to 023), noisy (RDG-024, 025)."""
    handling = set(o.get("handling", []))
    specimen = o.get("specimen")
    chilled = "chilled-early" in handling
    low = bool(handling & {"late-spin", "warm-transit"}) or o.get("tube") in LOW_TUBES
    low |= chilled and specimen == "whole-blood"
    noisy = bool(handling & {"haemolysed", "lipaemic"})
    noisy |= chilled and specimen is None
    return low, noisy


def read_case(cycle):
    zone = ZoneInfo(cycle["zone"])
    first = cycle["firstBlood"]
    noon = date = None
    if "on" in first:
        date = datetime.fromisoformat(first["on"]).date()
        local = datetime(date.year, date.month, date.day, 12, tzinfo=zone)
        noon = days(local.astimezone(timezone.utc))
    earlier = []
    for season in cycle.get("female", {}).get("earlierCycles", []):
        if "ovulatedOn" in season:
            a = datetime.fromisoformat(season["firstBloodOn"]).date()
            b = datetime.fromisoformat(season["ovulatedOn"]).date()
            earlier.append((b - a).days)
    case = Case(
        days(datetime.fromisoformat(cycle["asOf"])), noon, date, first["certainty"], earlier
    )
    for o in cycle["observations"]:
        at = days(datetime.fromisoformat(o["at"]))
        kind = o["kind"]
        if kind == "progesterone":
            value = o["value"] / NG_PER_ML[o["unit"]]
            low, high = {
                None: (value, value), "<": (0.0, value), ">": (value, math.inf)
            }[o.get("comparator")]
            if high < P["assay.least"]:
                low, high = 0.0, P["assay.least"]
            method = o.get("method", "unknown")
            reads_low, noisy = doubts(o)
            case.results.append(
                Result(
                    at, low, high, (o.get("laboratory", "").strip(), method), method,
                    reads_low=reads_low, noisy=noisy,
                )
            )
        elif kind == "progesterone-band":
            scale = NG_PER_ML[o["unit"]]
            case.results.append(
                Result(
                    at, o.get("low", 0) / scale, o.get("high", math.inf) / scale,
                    ("kit",), "unknown", kit=True,
                )
            )
        elif kind == "lh":
            case.lh.append((at, o["result"] == "positive"))
        elif kind == "vaginoscopy":
            case.folds.append((at, o["folds"]))
        elif kind == "sign":
            case.signs.append((at, o["sign"], o["present"]))
        elif kind == "cytology":
            case.smears.append((at, o.get("cornifiedPercent"), o.get("neutrophils")))
        elif kind == "ultrasound":
            case.scans.append((at, o["finding"]))
    times = [days(datetime.fromisoformat(o["at"])) for o in cycle["observations"]]
    case.first_observation = min(times, default=case.now)
    return case


# ------------------------------------------------------------------------------------------ prior


def prior_shape(case, peak):
    """In proportion to the prior density of the LH peak, ends of its support apart."""
    if case.first_blood_noon is not None:
        x = peak - case.first_blood_noon
        shift = P["onset.shift"]
        s = {
            "seen": P["onset.log-sd"],
            "estimated": P["onset.estimated-log-sd"],
            "unknown": P["onset.doubtful-log-sd"],
        }[case.certainty]
        centre = math.log(P["onset.median"] + shift)
        mean, sd = centre, s
        if case.earlier:
            y = [math.log(d - P["lag.mean"] + shift) for d in case.earlier]
            k = len(y)
            between, within = P["onset.between-bitch-log-sd"], P["onset.within-bitch-log-sd"]
            precision = 1 / between**2 + k / within**2
            mean = (centre / between**2 + sum(y) / within**2) / precision
            sd = math.sqrt(1 / precision + within**2 + s**2 - P["onset.log-sd"] ** 2)
        wide = P["onset.wide-weight"]
        safe = np.maximum(x + shift, 1e-9)
        log_x = np.log(safe)
        density = (
            (1 - wide) * normal(log_x, mean, sd)
            + wide * normal(log_x, centre, max(P["onset.wide-log-sd"], s))
        ) / safe
        return np.where(x + shift > 0, density, 0)
    near = case.first_observation - P["onset.unknown-before"]
    far = case.first_observation - P["onset.unknown-long-before"]
    end = case.now + P["onset.unknown-after"]

    def flat(a, b):
        return ndtr(peak - a) * ndtr(b - peak) / (b - a)

    long = P["onset.unknown-long-weight"]
    return (1 - long) * flat(near, end) + long * flat(far, near)


def support(case):
    """The first and the last time the LH peak may lie at."""
    if case.first_blood_noon is not None:
        return (
            case.first_blood_noon + P["onset.earliest"], case.first_blood_noon + P["onset.latest"]
        )
    far = case.first_observation - P["onset.unknown-long-before"]
    return far - 6, case.now + P["onset.unknown-after"] + 6


def peak_prior(case, grid):
    """Times of the LH peak and their prior density."""
    first, last = support(case)
    peak = np.arange(first, last + 1e-9, grid.step)
    density = prior_shape(case, peak)
    return peak, density / trapezoid(density, grid.step)


def put_off(case, peak, length):
    """How much likelier an LH peak is once a rest of so many days may have put it off."""
    if case.first_blood_noon is None:
        return np.ones_like(peak)
    here = prior_shape(case, peak)
    before = prior_shape(case, peak - length)
    inside = (peak - length > support(case)[0]) & (here > 0)
    return 0.5 + 0.5 * np.where(inside, before, 0) / np.where(here > 0, here, 1)


def lag_density(grid):
    """Lags from the LH peak to ovulation with the weights of a trapezoid rule; they sum to 1."""
    steps = np.arange(round(P["lag.min"] / grid.step), round(P["lag.max"] / grid.step) + 1)
    weight = ends_halved(normal(steps * grid.step, P["lag.mean"], P["lag.sd"]))
    return steps, weight / weight.sum()


# ----------------------------------------------------------------------------------- progesterone

_curve = table("curve")
_days = np.array([float(r["day"]) for r in _curve])
_cubic = PchipInterpolator(_days, np.log([float(r["ngPerMl"]) for r in _curve]))


def log_curve(tau):
    return _cubic(np.clip(tau, _days[0], _days[-1]))


def plateau_curve(tau, length, level):
    rest = level * ndtr((tau + length) / 0.75)
    return 0.25 * np.log(np.exp(4 * log_curve(tau)) + rest**4)


def failing_curve(tau, begins):
    since = 0.75 * np.logaddexp(0, (tau - begins) / 0.75)
    base = P["level.basal"]
    above = np.maximum(np.exp(log_curve(tau)) - base, 0)
    return np.log(base + above * np.exp(-P["failing.speed"] * since))


ASSAY = {}
for _row in table("assay"):
    ASSAY.setdefault(_row["method"], []).append(
        {k: float(v) for k, v in _row.items() if k not in ("method", "source", "read")}
    )


def cv(row, value):
    return row["cvBelow3"] if value < 3 else row["cvTo10"] if value <= 10 else row["cvAbove10"]


def reading(level, row):
    """Log reading of a true log level, and its elasticity."""
    true = np.exp(level)
    line = row["intercept"] + row["slope"] * true
    if row["intercept"] == 0:
        return np.log(line), np.ones_like(level)
    held = line < 0.25 * true
    safe = np.where(held, 0.25 * true, line)
    return np.log(safe), np.where(held, 1.0, row["slope"] * true / safe)


def own_variance(result, row, drift):
    if result.is_number:
        value = max(result.low, P["assay.floor"])
    else:
        value = result.low if result.low > 0 else result.high
    variance = P["pulse.log-sd"] ** 2 + cv(row, value) ** 2
    variance += (P["assay.floor"] / max(value, P["assay.floor"])) ** 2
    if result.reads_low:
        variance += P["handling.log-sd"] ** 2
    if result.noisy:
        variance += P["noisy.log-sd"] ** 2
    if not result.is_number:
        variance += P["swing.log-sd"] ** 2 + drift**2
    if result.kit:
        variance += P["kit.log-sd"] ** 2
    return variance


def rectangle(mean, shared, own_sd, low, high, factor):
    """Expected product of interval probabilities, each grossly wrong with the odd weight.

    mean (Q, k), shared covariance (Q, k, k), own_sd (k,). One limit has a closed form; several
    are integrated over the principal directions of what they share.
    """
    odd = P["odd.weight"]
    count = mean.shape[1]
    if count == 1:
        sd = np.sqrt(shared[:, 0, 0] + own_sd[0] ** 2)
        p = ndtr((high[0] - mean[:, 0]) / sd) - ndtr((low[0] - mean[:, 0]) / sd)
        return (1 - odd) * p + odd / 2
    values, vectors = np.linalg.eigh(shared)
    order = np.arange(count)[::-1]  # largest first
    axes = vectors[:, :, order] * np.sqrt(np.clip(values[:, order], 0, None))[:, None, :]
    sizes = {2: (41, 31), 3: (41, 17, 11), 4: (41, 17, 11, 7)}[count]
    nodes = [standard_nodes(int(s * factor) | 1, 5.5) for s in sizes]
    z = np.array(list(itertools.product(*[n[0] for n in nodes])))
    w = np.prod(np.array(list(itertools.product(*[n[1] for n in nodes]))), axis=1)
    keep = w > 1e-11
    z, w = z[keep], w[keep]
    out = np.empty(len(mean))
    chunk = max(1, 4_000_000 // len(w))
    for start in range(0, len(mean), chunk):
        part = slice(start, start + chunk)
        product = np.ones((len(mean[part]), len(w)))
        for j in range(count):
            at = mean[part, j, None] + axes[part, j, :] @ z.T
            sd = own_sd[j]
            p = ndtr((high[j] - at) / sd) - ndtr((low[j] - at) / sd)
            product *= (1 - odd) * p + odd / 2
        out[part] = product @ w
    return out


class Progesterone:
    """Likelihood of all progesterone results of a case at many points of the unknowns at once."""

    def __init__(self, results, grid):
        self.grid = grid
        self.numbers = [r for r in results if r.is_number]
        self.limits = [r for r in results if not r.is_number]
        self.results = self.numbers + self.limits
        self.times = np.array([r.at for r in self.results])
        self.series = sorted({r.series for r in self.results})
        self.y = np.log([r.low for r in self.numbers])
        with np.errstate(divide="ignore"):
            self.low = np.log([r.low for r in self.limits])
            self.high = np.log([r.high for r in self.limits])
        t = self.times[: len(self.numbers)]
        self.gaps = np.abs(t[:, None] - t[None, :])
        self._drift(P["drift.log-sd"], P["drift.days"])

    def _drift(self, sd, length):
        """Sets how far her own course departs from the common shape."""
        self.drift = sd
        self.swing = P["swing.log-sd"] ** 2 * np.exp(-self.gaps / P["swing.days"])
        self.swing += sd**2 * np.exp(-0.5 * (self.gaps / length) ** 2)

    def log_likelihood(self, level, shared_loads, shared_sd, log_weight):
        """Log likelihood, and its part in numbers that fit worse than these.

        level (Q, n) log course at each result; shared_loads (Q, n, d) of log-level latents.
        log_weight (Q,) is the rest of the posterior; it only serves to leave out hopeless points.
        """
        if not self.results:
            return np.zeros((2, len(level)))
        methods = {r.series: r.method for r in self.results}
        total = np.full((2, len(level)), -np.inf)
        for ways in itertools.product(*[ASSAY[methods[s]] for s in self.series]):
            rows = dict(zip(self.series, ways))
            weight = math.prod(row["weight"] for row in ways)
            one = self._one_way(level, shared_loads, shared_sd, rows, log_weight)
            total = np.logaddexp(total, math.log(weight) + one)
        return total

    def _one_way(self, level, shared_loads, shared_sd, rows, log_weight):
        size, n = level.shape
        d = shared_loads.shape[2]
        mean = np.empty((size, n))
        loads = np.zeros((size, n, d + len(self.series)))
        for i, r in enumerate(self.results):
            mean[:, i], elasticity = reading(level[:, i], rows[r.series])
            if r.reads_low:
                mean[:, i] += P["handling.log-bias"]
            loads[:, i, :d] = elasticity[:, None] * shared_loads[:, i, :]
            loads[:, i, d + self.series.index(r.series)] = 1
        sd = np.concatenate([shared_sd, [rows[s]["scaleLogSd"] for s in self.series]])
        scaled = loads * sd
        own = np.array([own_variance(r, rows[r.series], self.drift) for r in self.results])
        out = np.empty((2, size))
        self.best = -np.inf
        chunk = 20_000
        for start in range(0, size, chunk):
            part = slice(start, start + chunk)
            out[:, part] = self._dense(mean[part], scaled[part], own, log_weight[part])
        return out

    def _dense(self, mean, scaled, own, log_weight):
        m, k = len(self.numbers), len(self.limits)
        a, b = scaled[:, :m], scaled[:, m:]
        odd = P["odd.weight"]
        logs, inverses = [], []
        residual = self.y - mean[:, :m]
        odd_sets = [c for size in (0, 1, 2) for c in itertools.combinations(range(m), size)]
        for wrong in odd_sets:
            variance = own[:m].copy()
            for one in wrong:
                variance[one] += P["odd.log-sd"] ** 2
            covariance = a @ a.transpose(0, 2, 1) + self.swing + np.diag(variance)
            prior = (m - len(wrong)) * math.log1p(-odd) + len(wrong) * math.log(odd)
            sign, log_det = np.linalg.slogdet(covariance) if m else (1, np.zeros(len(mean)))
            solved = np.linalg.solve(covariance, residual[:, :, None])[:, :, 0]
            discrepancy = (residual * solved).sum(axis=1)
            if not wrong:
                with np.errstate(divide="ignore"):
                    worse = np.log(chdtrc(m, discrepancy)) if m else np.zeros(len(mean))
            logs.append(prior - 0.5 * (m * math.log(2 * math.pi) + log_det + discrepancy))
            if k:
                inverses.append((covariance, solved))
        logs = np.array(logs)
        if not k:
            total = np.logaddexp.reduce(logs, axis=0)
            return np.array([total, total + worse])
        own_sd = np.sqrt(own[m:])
        given = [self._limits_given_numbers(mean, a, b, *i) for i in inverses]
        alone = [self._alone(centre, rest, own_sd) for centre, rest in given]
        limit_logs = np.log(np.array(alone))
        if k == 1:
            total = np.logaddexp.reduce(logs + limit_logs, axis=0)
            return np.array([total, total + worse])
        rough = logs + limit_logs + log_weight
        self.best = max(self.best, rough.max())
        for h, (centre, rest) in enumerate(given):
            q = np.nonzero(rough[h] > self.best - 25)[0]  # 1e-11
            if len(q):
                p = rectangle(centre[q], rest[q], own_sd, self.low, self.high, self.grid.limits)
                limit_logs[h, q] = np.log(p)
        total = np.logaddexp.reduce(logs + limit_logs, axis=0)
        return np.array([total, total + worse])

    def _limits_given_numbers(self, mean, a, b, covariance, solved):
        m = len(self.numbers)
        cross = b @ a.transpose(0, 2, 1)
        centre = mean[:, m:] + (cross @ solved[:, :, None])[:, :, 0]
        rest = b @ b.transpose(0, 2, 1)
        if m:
            rest = rest - cross @ np.linalg.solve(covariance, cross.transpose(0, 2, 1))
        return centre, rest

    def _alone(self, centre, rest, own_sd):
        """Product of the limits' chances as if they shared nothing; exact for one."""
        product = np.ones(len(centre))
        for j in range(len(self.limits)):
            product *= rectangle(
                centre[:, j : j + 1], rest[:, j : j + 1, j : j + 1], own_sd[j : j + 1],
                self.low[j : j + 1], self.high[j : j + 1], self.grid.limits,
            )
        return product

    def ovulating(self, peak, rate, course, log_weight):
        """Log likelihood at LH peaks (L,) with log rates (L,), under a log course of tau."""
        tau = self.times[None, :] - peak[:, None]
        pivot = P["rate.pivot"]
        most = P["rate.most-after"]
        before, after = np.exp(rate)[:, None], np.exp(np.clip(rate, -most, most))[:, None]
        scaled_tau = pivot + np.where(tau < pivot, before, after) * (tau - pivot)
        level = course(scaled_tau)
        base = np.minimum(1, P["level.basal"] * np.exp(-level))
        growth = 1 + P["level.luteal-growth"] * np.clip((scaled_tau - 4) / 4, 0, 1)
        loads = np.stack([base, (1 - base) * growth], axis=2)
        sd = np.array([P["level.baseline-log-sd"], P["level.rise-log-sd"]])
        return self.log_likelihood(level, loads, sd, log_weight)

    def ordinary(self, peak, log_weight):
        sd, wide_sd, wide = P["rate.log-sd"], P["rate.wide-log-sd"], P["rate.wide-weight"]
        rate = np.linspace(-RATE_REACH * sd, RATE_REACH * sd, self.grid.rates)
        w = (1 - wide) * normal(rate, 0, sd) + wide * normal(rate, 0, wide_sd)
        w = ends_halved(w)
        w = w / w.sum()
        points = np.repeat(peak, len(w)), np.tile(rate, len(peak))
        weights = (log_weight[:, None] + np.log(w)).ravel()
        out = self.ovulating(*points, log_curve, weights)
        return np.logaddexp.reduce(out.reshape(2, len(peak), len(w)) + np.log(w), axis=2)

    def irregular(self, peak, log_weight):
        self._drift(P["irregular.log-sd"], P["irregular.days"])
        out = self.ovulating(peak, np.zeros(len(peak)), log_curve, log_weight)
        self._drift(P["drift.log-sd"], P["drift.days"])
        return out

    def failing(self, peak, log_weight):
        begins = np.arange(
            P["failing.first"], P["failing.last"] + P["failing.step"] / 2, P["failing.step"]
        )
        logs = [
            self.ovulating(
                peak, np.zeros(len(peak)), lambda tau, b=b: failing_curve(tau, b), log_weight
            )
            for b in begins
        ]
        return np.logaddexp.reduce(np.array(logs), axis=0) - math.log(len(begins))

    def plateau(self, peak, log_weight, case):
        rows = table("plateau")
        weights = np.array([float(r["weight"]) for r in rows])
        logs = [
            self.ovulating(
                peak, np.zeros(len(peak)),
                lambda tau, r=r: plateau_curve(tau, float(r["days"]), float(r["ngPerMl"])),
                log_weight,
            )
            for r in rows
        ]
        shares = np.array([
            weight / weights.sum() * put_off(case, peak, float(row["days"]))
            for weight, row in zip(weights, rows)
        ])
        return np.logaddexp.reduce(np.array(logs) + np.log(shares)[:, None, :], axis=0)

    def broken_off(self, case):
        low, high = P["broken-off.low"], P["broken-off.high"]
        top, prior = peak_prior(case, Grid(TOP_STEP))
        total = np.full(2, -np.inf)
        for width in (P["broken-off.short"], P["broken-off.long"]):
            for step in range(4):
                height = low * (high / low) ** (step / 3)
                gap = (self.times[None, :] - top[:, None]) / width
                above = height * np.exp(-0.5 * gap**2)
                level = np.log(P["level.basal"] + above)
                base = P["level.basal"] / (P["level.basal"] + above)
                loads = np.stack([base, 1 - base], axis=2)
                sd = np.array([P["level.baseline-log-sd"], P["level.rise-log-sd"]])
                weight = np.log(np.maximum(ends_halved(prior) * TOP_STEP, 1e-300))
                one = self.log_likelihood(level, loads, sd, weight) + weight - math.log(8)
                total = np.logaddexp(total, np.logaddexp.reduce(one, axis=1))
        return total

    def silent(self):
        n = len(self.results)
        level = np.full((1, n), math.log(P["no-ovulation.level"]))
        return self.log_likelihood(
            level, np.ones((1, n, 1)), np.array([P["no-ovulation.log-sd"]]), np.zeros(1)
        )[:, 0]


# ------------------------------------------------------------------- what speaks of the peak alone


def lh_positive(d):
    edge = P["lh.burst-edge"]
    burst = ndtr((d + P["lh.burst-first"]) / edge) - ndtr((d + P["lh.burst-last"]) / edge)
    begun = ndtr((d + P["lh.surge-before"]) / P["lh.rise-edge"])
    surge = begun - ndtr((d - P["lh.surge-after"]) / P["lh.fall-edge"])
    return np.minimum(
        0.99, P["lh.false-positive"] + P["lh.burst"] * burst + P["lh.sensitivity"] * surge
    )


def fold_chances(d):
    misread = P["folds.misread"]
    bounds = [P["folds." + name] for name in ("shrinking", "angular", "rounding", "flat")]
    begun = [np.ones_like(d)] + [ndtr((d - b) / P["folds.sd"]) for b in bounds]
    begun.append(np.zeros_like(d))
    states = ("swollen", "shrinking", "angular", "rounding", "flat")
    return {s: (1 - misread) * (begun[i] - begun[i + 1]) + misread / 5 for i, s in enumerate(states)}


def accepting_chance(sign, g):
    before, during = P[f"signs.{sign}-before"], P[f"signs.{sign}-during"]
    return before * (1 - g) + during * g


def peak_evidence(case, peak, grid):
    out = np.zeros_like(peak)
    for at, positive in case.lh:
        p = lh_positive(at - peak)
        out += np.log(p if positive else 1 - p)
    for at, state in case.folds:
        out += np.log(fold_chances(at - peak)[state])
    for at, sign, present in case.signs:
        if sign == "vulva-softens":
            soft = ndtr((at - peak - P["signs.vulva-mean"]) / P["signs.vulva-sd"])
            p = P["signs.vulva-before"] * (1 - soft) + P["signs.vulva-after"] * soft
            out += np.log(p if present else 1 - p)
    accepting = [s for s in case.signs if s[1] in ("stands", "refuses", "flags")]
    if accepting:
        z, w = standard_nodes(grid.latents, grid.reach)
        first = P["signs.stand-sd"] * z
        logs = np.zeros((len(peak), len(z)))
        for at, sign, present in accepting:
            d = (at - peak)[:, None]
            over = ndtr((d - P["signs.stand-end"]) / P["signs.stand-end-sd"])
            g = ndtr((d - first) / P["signs.stand-edge"]) * (1 - over)
            p = accepting_chance(sign, g)
            logs += np.log(p if present else 1 - p)
        out += np.log(np.exp(logs) @ w)
    return out


# ------------------------------------------------------------------ what speaks of ovulation alone


def smear_chance(cornified, neutrophils, g):
    p = np.ones_like(g)
    if cornified is not None:
        low, full, stray = P["smear.early-cornified"], P["smear.full-cornified"], P["smear.stray"]
        seen = normal(cornified, low + (full - low) * g, P["smear.reading-sd"])
        p = p * ((1 - stray) * seen + stray / 100)
    if neutrophils is not None:
        early, oestrus = NEUTROPHILS["early"], NEUTROPHILS["oestrus"]
        p = p * ((1 - g) * early[neutrophils] + g * oestrus[neutrophils])
    return p


def dioestrous_smear_chance(cornified, neutrophils):
    p = 1.0
    if cornified is not None:
        mean, sd = P["smear.dioestrus-cornified"], P["smear.dioestrus-cornified-sd"]
        p *= (1 - P["smear.stray"]) * normal(cornified, mean, sd) + P["smear.stray"] / 100
    if neutrophils is not None:
        p *= NEUTROPHILS["dioestrus"][neutrophils]
    return p


def ovulation_evidence(case, ovulation, grid):
    out = np.zeros_like(ovulation)
    e = P["scan.error"]
    for at, finding in case.scans:
        p = e + (1 - 2 * e) * ndtr((at - ovulation) / P["scan.sd"])
        out += np.log(p if finding == "ovulated" else 1 - p)
    if case.smears:
        z, w = standard_nodes(grid.latents, grid.reach)
        shift = P["smear.shift-sd"] * z
        lag = P["smear.dioestrus-lag"] + P["smear.dioestrus-sd"] * z
        for start in range(0, len(ovulation), 50):
            part = slice(start, start + 50)
            product = np.ones((len(ovulation[part]), len(z), len(z)))  # ovulation, S, E
            for at, cornified, neutrophils in case.smears:
                u = (at - ovulation[part])[:, None]
                g = 1 / (1 + np.exp(-(u - shift - P["smear.rise-centre"]) / P["smear.rise-scale"]))
                before = smear_chance(cornified, neutrophils, g)[:, :, None]
                past = ndtr((u - lag) / P["smear.dioestrus-edge"])[:, None, :]
                product *= (1 - past) * before + past * dioestrous_smear_chance(
                    cornified, neutrophils
                )
            out[part] += np.log(np.einsum("ose,s,e->o", product, w, w))
    return out


# --------------------------------------------------------------------------------- no ovulation


def evidence_without_ovulation(case):
    out = 0.0
    for _, positive in case.lh:
        p = P["lh.false-positive"] + P["lh.burst"] / 2
        out += math.log(p if positive else 1 - p)
    out += len(case.folds) * math.log(1 / 5)
    out += sum(math.log(0.5) for s in case.signs if s[1] in DATING_SIGNS)
    for _, finding in case.scans:
        out += math.log(P["scan.error"] if finding == "ovulated" else 1 - P["scan.error"])
    return out


DATING_SIGNS = ("stands", "refuses", "flags", "vulva-softens")

# -------------------------------------------------------------------------------------- posterior


def quantiles(points, mass, step, levels):
    """Quantiles of a density given at equally spaced points, in days."""
    cumulative = np.concatenate([[0], np.cumsum((mass[1:] + mass[:-1]) / 2)])
    cumulative /= cumulative[-1]
    return {str(q): float(np.interp(q / 100, cumulative, points)) for q in levels}


LEVELS = (1, 5, 25, 50, 75, 95, 99)


def posterior(case, grid):
    """Quantiles of ovulation and LH peak in days after the anchor, and the course probabilities."""
    peak, prior = peak_prior(case, grid)
    steps, lag = lag_density(grid)
    results = Progesterone(case.results, grid)
    log_peak = np.log(np.maximum(prior, 1e-300)) + peak_evidence(case, peak, grid)
    weight = {
        "plateau": P["plateau.weight"],
        "irregular": P["irregular.weight"],
        "failing": P["failing.weight"],
        "brokenOff": P["broken-off.weight"],
        "silent": P["no-ovulation.weight"],
    }
    weight["ordinary"] = 1 - sum(weight.values())
    both = {
        "ordinary": results.ordinary(peak, log_peak),
        "plateau": results.plateau(peak, log_peak, case),
        "irregular": results.irregular(peak, log_peak),
        "failing": results.failing(peak, log_peak),
    }
    both = {c: log + log_peak + math.log(weight[c]) for c, log in both.items()}
    course_logs = {c: log[0] for c, log in both.items()}
    seen_without = evidence_without_ovulation(case)
    without = {
        "brokenOff": results.broken_off(case) + math.log(weight["brokenOff"]) + seen_without,
        "silent": results.silent() + math.log(weight["silent"]) + seen_without,
    }
    top = max(log.max() for log in course_logs.values())
    ovulation = peak[0] + steps[0] * grid.step + grid.step * np.arange(len(peak) + len(steps) - 1)
    seen = ovulation_evidence(case, ovulation, grid)
    high = seen.max()
    seen = np.exp(seen - high)
    met = np.correlate(seen, lag, mode="valid")  # E over the lag of the evidence on ovulation
    peak_mass = {c: np.exp(log - top) * met for c, log in course_logs.items()}
    ovulation_mass = {
        c: np.convolve(ends_halved(np.exp(log - top)), lag) * seen for c, log in course_logs.items()
    }
    evidence = {c: float(trapezoid(m, grid.step)) for c, m in peak_mass.items()}
    worse = {
        c: float(trapezoid(np.exp(log[1] - top) * met, grid.step)) for c, log in both.items()
    }
    # smears tell when, and never whether: without ovulation they count as on average with it
    unsmeared = np.exp(ovulation_evidence(replace(case, smears=[]), ovulation, grid))
    back = np.correlate(unsmeared, lag, mode="valid")
    otherwise = sum(trapezoid(np.exp(log - top) * back, grid.step) for log in course_logs.values())
    smears = sum(evidence.values()) / float(otherwise)
    for course, log in without.items():
        evidence[course], worse[course] = (float(np.exp(one - top)) * smears for one in log)
    total = sum(evidence.values())
    fit = sum(w for c, w in worse.items() if c != "irregular")
    fit /= total - evidence["irregular"]
    return {
        "lhPeak": quantiles(peak, sum(peak_mass.values()), grid.step, LEVELS),
        "ovulation": quantiles(ovulation, sum(ovulation_mass.values()), grid.step, LEVELS),
        "courses": {c: evidence[c] / total for c in COURSES},
        "fit": fit if results.numbers else 1.0,
    }
