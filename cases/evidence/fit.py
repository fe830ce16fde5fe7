#!/usr/bin/env python3
"""Estimates the parameters of the egg model, and of pups from eggs, together from published results.

    OPENBLAS_NUM_THREADS=1 /usr/bin/python3 cases/evidence/fit.py

Reads results.csv (what was published, how it was timed there, how many), priors.csv (what is held
before the results) and fixed.csv (what no result speaks to). Writes fitted.csv (the most likely value
of each, nine in ten, and how much of what is known the results brought), predicted.csv (each result
beside what the fit makes of it) and the values of the parameter file of the scope eggs. The model is
that of the page of the package io.github.tiderule.engine.days, written a second time: eggs are cut into
more kinds here. Nothing is random.

A trial has a zero of its own (how its day of ovulation lies beside ours), a share of fertile females of
its own and a worth of an egg of its own; these are drawn about what is common to all trials.
"""
import csv
import pathlib

import numpy as np
from scipy.special import expit, logit, ndtr

HERE = pathlib.Path(__file__).resolve().parent
PARAMETERS = HERE.parents[1] / "rules/src/main/resources/io/github/tiderule/parameters"
SINCE = "2026-11-30"

# A value about which the results brought less than this part of what is known is still practice's.
LEAST_BROUGHT = 0.1

# How far trials lie apart: of the log odds that a female is fertile, that an egg met becomes a pup, and
# that semen left in the vagina comes up.
FERTILE_APART = 0.5
EGG_APART = 0.4
ARRIVES_APART = 0.7

RIPE_X, RIPE_W = np.polynomial.hermite_e.hermegauss(21)
RIPE_W = RIPE_W / RIPE_W.sum()
FEW_X, FEW_W = np.polynomial.hermite_e.hermegauss(7)
FEW_W = FEW_W / FEW_W.sum()


def rows(name):
    with open(HERE / name, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


RESULTS = rows("results.csv")
PRIORS = rows("priors.csv")
FIXED = {row["parameter"]: float(row["value"]) for row in rows("fixed.csv")}
SERIES = sorted({row["series"] for row in RESULTS if row["series"]})


class Point:
    """Parameters and what each trial adds, from standardised coordinates."""

    def __init__(self, x):
        self.value = dict(FIXED)
        n, s = len(PRIORS), len(SERIES)
        for z, prior in zip(x, PRIORS):
            centre, step = float(prior["centre"]), z * float(prior["spread"])
            self.value[prior["parameter"]] = {
                "plain": lambda: centre + step,
                "log": lambda: centre * np.exp(step),
                "logit": lambda: expit(logit(centre) + step),
            }[prior["scale"]]()
        self.zero = dict(zip(SERIES, x[n:n + s]))
        self.fertile = dict(zip(SERIES, x[n + s:n + 2 * s]))
        self.egg = dict(zip(SERIES, x[n + 2 * s:n + 3 * s]))
        self.way = dict(zip(SERIES, x[n + 3 * s:n + 4 * s]))
        self.kinds = {frozen: self._kinds(frozen) for frozen in (False, True)}

    def __getitem__(self, name):
        return self.value[name]

    def _kinds(self, frozen):
        """Weight, ripe, wait and life of each kind of egg; each lives for one time exactly."""
        late = self["frozen-late-weight"] if frozen else 0
        ripe = self["ripening-mean"] + np.hypot(self["spread-sd"], self["ripening-sd"]) * RIPE_X
        views = (
            (1 - self["life-long-weight"], self["life-short"], self["life-short-log-sd"]),
            (self["life-long-weight"], self["life-long"], self["life-long-log-sd"]),
        )
        weight, when, wait, life = [], [], [], []
        for school, opens in ((1 - late, 0.0), (late, self["frozen-late-wait"])):
            for view, median, log_sd in views:
                for x, w in zip(FEW_X, FEW_W):
                    if school > 0:
                        weight.append(school * view * w * RIPE_W)
                        when.append(ripe)
                        wait.append(np.full_like(ripe, opens))
                        life.append(np.full_like(ripe, median * np.exp(log_sd * x)))
        return tuple(np.concatenate(part) for part in (weight, when, wait, life))

    def met(self, semen, route, day):
        """Probability that a dose so many days after ovulation meets each kind of egg."""
        _, ripe, opens, life = self.kinds[semen == "frozen"]
        lives = self["life." + ("natural" if semen == "fresh" else semen)]
        log_sd = self["life." + ("natural" if semen == "fresh" else semen) + "-log-sd"]
        age = ripe + opens - day
        alive = np.where(age > 0, 1 - ndtr(np.log(np.maximum(age, 1e-9) / lives) / log_sd), 1)
        waits = np.maximum(np.maximum(day + self["sperm-ready"] - ripe, opens), 1e-9)
        # a step would make the sum over kinds uneven
        egg = 1 - ndtr(np.log(waits / life) / 0.12)
        arrives = 1 if route == "uterus" else 1 - ndtr((day - self["closed-after"]) / self["closed-sd"])
        return arrives * alive * egg

    def share(self, semen, route, days):
        missed = 1
        for day in days:
            missed = missed * (1 - self.met(semen, route, day))
        return 1 - (self.kinds[semen == "frozen"][0] * missed).sum()

    def worth(self, row):
        """Probability that an egg met becomes a pup, before her own fertility."""
        semen = row["semen"]
        worth = expit(logit(self["pups.egg." + semen]) + EGG_APART * self.egg[row["series"]])
        if row["route"] == "vagina" and semen != "natural":
            worth *= self["pups.vagina"]
        if row["dose"]:
            full = 1 - 2 ** (-150 / self["pups.dose-half"])
            worth *= min((1 - 2 ** (-float(row["dose"]) / self["pups.dose-half"])) / full, 1.05)
        if row["motility"] in ("poor", "good"):
            worth *= self["pups.motility." + row["motility"]]
        return min(worth, 1)

    def predicted(self, row):
        """What the fit makes of one result."""
        days = [float(day) for day in row["days"].split(";")]
        return getattr(self, row["measure"].replace("-", "_"))(row, days)

    def ripe(self, row, days):
        return ndtr((days[0] - self["ripening-mean"]) / np.hypot(self["spread-sd"], self["ripening-sd"]))

    def egg_life(self, row, days):
        short = 1 - ndtr(np.log(days[0] / self["life-short"]) / self["life-short-log-sd"])
        long = 1 - ndtr(np.log(days[0] / self["life-long"]) / self["life-long-log-sd"])
        return (1 - self["life-long-weight"]) * short + self["life-long-weight"] * long

    def sperm_life(self, row, days):
        name = "life." + row["semen"]
        return 1 - ndtr(np.log(days[0] / self[name]) / self[name + "-log-sd"])

    def closed(self, row, days):
        return ndtr((days[0] - self["closed-after"]) / self["closed-sd"])

    def best_day(self, row, days):
        """Middle of what a frozen dose meets, each day weighed by the eighth power of its share."""
        at = np.arange(1, 7.01, 0.25)
        share = np.array([self.share("frozen", "uterus", [day]) for day in at]) ** 8
        return (share * at).sum() / share.sum()

    def _over_dates(self, row, days):
        late = self.zero[row["series"]] * float(row["zero-sd"])
        for x, weight in zip(FEW_X, FEW_W):
            yield weight, [day + late + float(row["scatter"]) * x for day in days]

    def eggs(self, row, days):
        weight = self.kinds[True][0]
        worth = self.worth(row)
        taken = left = 0
        for part, at in self._over_dates(row, days):
            still = 1
            for day in at[:-1]:
                still = still * (1 - worth * self.met("frozen", "uterus", day))
            left += part * (weight * still).sum()
            taken += part * (weight * still * worth * self.met("frozen", "uterus", at[-1])).sum()
        return taken / left

    def _pups(self, row, days):
        """Probability that at least one egg becomes a pup, and the mean number that do."""
        eggs, worth = float(row["eggs"]), self.worth(row)
        any_ = mean = 0
        for part, at in self._over_dates(row, days):
            share = worth * self.share(row["semen"], row["route"], at)
            any_ += part * (1 - (1 - share) ** eggs)
            mean += part * eggs * share
        return any_, mean

    def conceived(self, row, days):
        fertile = expit(logit(self["pups.fertile"]) + FERTILE_APART * self.fertile[row["series"]])
        return fertile * self.arrives(row) * self._pups(row, days)[0]

    def arrives(self, row):
        """Probability that semen left in the vagina comes up at all; the trials differ most in this."""
        if row["route"] != "vagina" or row["semen"] == "natural":
            return 1
        return expit(logit(self["pups.arrives." + row["semen"]]) + ARRIVES_APART * self.way[row["series"]])

    def whelped(self, row, days):
        return self["pups.carried"] * self.conceived(row, days)

    def litter(self, row, days):
        any_, mean = self._pups(row, days)
        return mean / any_


def surprise(x, made):
    """Minus the log of prior and likelihood together."""
    sum_ = 0.5 * (x ** 2).sum()
    for row, one in zip(RESULTS, made):
        value = float(row["value"])
        if row["se"]:
            sum_ += 0.5 * ((one - value) / float(row["se"])) ** 2
        else:
            sum_ -= float(row["n"]) * (value * np.log(one) + (1 - value) * np.log(1 - one))
    return sum_


def made_by(point, wanted=None):
    """What a point makes of each result; NaN of those not wanted. No chance is quite 0 or 1."""
    out = np.full(len(RESULTS), np.nan)
    for i, row in enumerate(RESULTS):
        if wanted is None or wanted[i]:
            one = point.predicted(row)
            out[i] = one if row["se"] else min(max(one, 1e-4), 1 - 1e-4)
    return out


def slopes(x, made, step=1e-3):
    """How each result moves with each coordinate; a trial's own move only its results."""
    out = np.zeros((len(RESULTS), len(x)))
    for i in range(len(x)):
        own = i - len(PRIORS)
        wanted = [own < 0 or row["series"] == SERIES[own % len(SERIES)] for row in RESULTS]
        aside = x.copy()
        aside[i] += step
        out[:, i] = np.nan_to_num((made_by(Point(aside), wanted) - made) / step)
    return out


def most_likely():
    """The most likely point and its standard deviations, by Fisher's scoring."""
    x = np.zeros(len(PRIORS) + 4 * len(SERIES))
    made = made_by(Point(x))
    value = np.array([float(row["value"]) for row in RESULTS])
    for _ in range(60):
        precision = np.array([
            float(row["se"]) ** -2 if row["se"] else float(row["n"]) / (one * (1 - one))
            for row, one in zip(RESULTS, made)])
        slope = slopes(x, made)
        curve = np.eye(len(x)) + slope.T @ (precision[:, None] * slope)
        step = np.linalg.solve(curve, slope.T @ (precision * (value - made)) - x)
        step *= min(1, 1 / np.abs(step).max())
        before = surprise(x, made)
        for _ in range(12):
            there = made_by(Point(x + step))
            if surprise(x + step, there) < before:
                break
            step = step / 2
        else:
            break
        x, made = x + step, there
        if before - surprise(x, made) < 1e-4:
            break
    return x, np.sqrt(np.diag(np.linalg.inv(curve)))


def moved(prior, z):
    x = np.zeros(len(PRIORS) + 4 * len(SERIES))
    x[PRIORS.index(prior)] = z
    return Point(x)[prior["parameter"]]


def write(name, header, lines):
    with open(HERE / name, "w", encoding="utf-8", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(header)
        out.writerows(lines)


def parameters(lines):
    """Puts the fitted values into the parameter file, and leaves all else as it stands."""
    path = PARAMETERS / "eggs.csv"
    fitted = {line[0]: line for line in lines}
    with open(path, encoding="utf-8", newline="") as file:
        table = list(csv.reader(file))
    for line in table[1:]:
        name = line[0].removeprefix("eggs.")
        name = "life.natural" if name == "life.fresh" else name
        if name in fitted:
            _, _, value, low, high, brought = fitted[name]
            held = "fitted to results" if float(brought) >= LEAST_BROUGHT else "common practice, results say little"
            line[1], line[6], line[7] = value, f"{held}; nine in ten {low} to {high}", SINCE
    with open(path, "w", encoding="utf-8", newline="") as file:
        csv.writer(file, lineterminator="\n").writerows(table)


def main():
    x, sd = most_likely()
    point = Point(x)
    lines = []
    for i, prior in enumerate(PRIORS):
        low, high = (moved(prior, x[i] + side * 1.645 * sd[i]) for side in (-1, 1))
        brought = max(0.0, 1 - sd[i] ** 2)
        lines.append([prior["parameter"], prior["unit"], f"{point[prior['parameter']]:.3g}", f"{low:.3g}",
                      f"{high:.3g}", f"{brought:.2f}"])
    write("fitted.csv", ["parameter", "unit", "value", "low", "high", "from-results"], lines)
    write("predicted.csv", ["id", "published", "fitted"],
          [[row["id"], row["value"], f"{point.predicted(row):.3f}"] for row in RESULTS])
    write("trials.csv", ["series", "zero", "fertile", "egg", "way"],
          [[s, *(f"{part[s]:.3f}" for part in (point.zero, point.fertile, point.egg, point.way))] for s in SERIES])
    parameters(lines)


if __name__ == "__main__":
    main()
