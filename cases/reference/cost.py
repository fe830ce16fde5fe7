"""What the independent posterior costs where it is just as accurate as the engine's.

For each case the coarsest grid is looked for whose quantiles and courses lie as near to those of
results.json as the engine's are held to (ReferencePosteriorTest), and timed. One line a case: its
name, how often the grid was halved, milliseconds.
"""

import json
import time
from datetime import datetime

import make
import model

HOURS = 1.0
SHARE_OF_WIDTH = 0.01
COURSE = 0.01
MOST_HALVINGS = 5
TRIES = 3


def day(text):
    return (datetime.fromisoformat(text.replace("Z", "+00:00")) - model.ANCHOR).total_seconds() / 86400


def near(found, known):
    for what in ("lhPeak", "ovulation"):
        truth = {name: day(text) for name, text in known[what].items()}
        allowed = max(HOURS / 24, SHARE_OF_WIDTH * (truth["p95"] - truth["p05"]))
        for q, value in found[what].items():
            if abs(value - truth[f"p{int(q):02d}"]) > allowed:
                return False
    return all(abs(found["courses"][c] - known["courses"][c]) <= COURSE for c in model.COURSES)


def main():
    known = {case["case"]: case for case in json.loads((make.HERE / "results.json").read_text())["cases"]}
    for path in sorted((make.HERE / "cases").glob("*.json")):
        case = model.read_case(json.loads(path.read_text(encoding="utf-8")))
        for halvings in range(MOST_HALVINGS, -1, -1):
            grid = model.Grid()
            for _ in range(halvings):
                grid = grid.halved()
            times = []
            for _ in range(TRIES):
                start = time.perf_counter()
                found = model.posterior(case, grid)
                times.append(time.perf_counter() - start)
            if near(found, known[path.stem]):
                print(path.stem, halvings, round(1000 * sorted(times)[TRIES // 2], 2), flush=True)
                break
        else:
            print(path.stem, "never", flush=True)


if __name__ == "__main__":
    main()
