#!/usr/bin/env python3
"""Makes a twin of a case: the same season with one thing changed.

    python3 cases/make-twin.py dating/0011-daily-up-to-the-proof told-in-nmol --unit nmol/L
    python3 cases/make-twin.py dating/0011-daily-up-to-the-proof a-week-later --shift-days 7
    python3 cases/make-twin.py dating/0011-daily-up-to-the-proof lived-in-lagos --zone Africa/Lagos
    python3 cases/make-twin.py dating/0011-daily-up-to-the-proof without-p3 --drop p3

The new folder gets the next number of its topic. Its expect.yaml is a start: write your own "why",
and for --drop say what should change. Needs nothing but Python 3.9.
"""
import argparse
import copy
import datetime as dt
import json
import pathlib
import re
import sys
from zoneinfo import ZoneInfo

NMOL_PER_NG = 3.18
DAY = re.compile(r"\d{4}-\d{2}-\d{2}")


def moved(value, days, old, new):
    """Every date and time of a document, some days on, at the same local hour of another zone."""
    if isinstance(value, dict):
        return {key: moved(one, days, old, new) for key, one in value.items()}
    if isinstance(value, list):
        return [moved(one, days, old, new) for one in value]
    if isinstance(value, str) and DAY.match(value):
        if len(value) == 10:
            return (dt.date.fromisoformat(value) + dt.timedelta(days)).isoformat()
        at = dt.datetime.fromisoformat(value.replace("Z", "+00:00")).astimezone(old)
        return (at.replace(tzinfo=None) + dt.timedelta(days)).replace(tzinfo=new).isoformat()
    return value


def in_unit(cycle, unit):
    for one in cycle["observations"]:
        if one["kind"] == "progesterone" and one.get("unit") and one["unit"] != unit:
            factor = NMOL_PER_NG if unit == "nmol/L" else 1 / NMOL_PER_NG
            factor = 1 if {one["unit"], unit} == {"ng/mL", "ug/L"} else factor
            one["value"], one["unit"] = round(one["value"] * factor, 6), unit


def written(cycle):
    lines = []
    for key, value in cycle.items():
        if key == "observations" and value:
            rows = ",\n".join("    " + json.dumps(one, ensure_ascii=False) for one in value)
            lines.append('  "observations": [\n' + rows + "\n  ]")
        else:
            lines.append("  " + json.dumps(key) + ": " + json.dumps(value, ensure_ascii=False))
    return "{\n" + ",\n".join(lines) + "\n}\n"


def main():
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawTextHelpFormatter)
    ask.add_argument("case")
    ask.add_argument("slug")
    ask.add_argument("--unit", choices=["ng/mL", "nmol/L", "ug/L"])
    ask.add_argument("--shift-days", type=int, default=0)
    ask.add_argument("--zone")
    ask.add_argument("--drop", action="append", default=[], help="id of an observation to leave out")
    told = ask.parse_args()
    root = pathlib.Path(__file__).parent
    if not (root / told.case / "cycle.json").is_file():
        sys.exit(f"there is no case {told.case}")
    elder = json.loads((root / told.case / "cycle.json").read_text(encoding="utf-8"))
    cycle = copy.deepcopy(elder)
    unknown = set(told.drop) - {one["id"] for one in cycle["observations"]}
    if unknown:
        sys.exit(f"{told.case} has no observation {', '.join(sorted(unknown))}")
    cycle["observations"] = [one for one in cycle["observations"] if one["id"] not in told.drop]
    if told.unit:
        in_unit(cycle, told.unit)
    zone = told.zone or cycle["zone"]
    if told.shift_days or told.zone:
        born = cycle["female"].get("bornOn")
        cycle = moved(cycle, told.shift_days, ZoneInfo(cycle["zone"]), ZoneInfo(zone))
        if born:
            cycle["female"]["bornOn"] = born
    cycle["zone"] = zone
    if cycle == elder:
        sys.exit("nothing would differ: give --unit, --shift-days, --zone or --drop")
    topic = root / told.case.split("/")[0]
    numbers = [int(one.name[:4]) for one in topic.iterdir() if re.match(r"\d{4}-", one.name)]
    folder = topic / f"{max(numbers) + 1:04d}-{told.slug}"
    relation = "same: dates" if told.shift_days or told.zone else "same: answer"
    if told.drop:
        relation = "medianMovesHours: {least: -24, most: 24}  # say how far it may move, and why"
    shift = f"    shiftDays: {told.shift_days}\n" if told.shift_days else ""
    folder.mkdir()
    (folder / "cycle.json").write_text(written(cycle), encoding="utf-8")
    (folder / "expect.yaml").write_text(
        f"title: A twin of {told.case.split('/')[1]}\n"
        "why: >\n  Say here why the answer should be the same, or how it should differ.\n"
        "provenance: invented\nsources: [common-practice]\nexpect:\n"
        f"  twin:\n    of: {told.case}\n    {relation}\n{shift}",
        encoding="utf-8",
    )
    print(folder)


if __name__ == "__main__":
    main()
