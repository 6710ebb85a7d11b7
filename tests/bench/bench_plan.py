"""Times the plan of 150 units in 20 groups over 120 setups and 600 cues, as a whole process.

Run it with the project's Python: python tests/bench/bench_plan.py [--runs N] [--seed N]
Prints wall and processor time of the best run, the most memory, and how many figures the plan holds against
how many distinct cases the response engine was asked; then the same with the engine's answers kept, and after
one cue was edited. The target is 5 s and 500 MB for each. Modules are compiled once before, as in any
installation.
"""

from __future__ import annotations

import argparse
import csv
import json
import os
import random
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from typing import Any

Json = dict[str, Any]

UNITS, GROUPS, SETUPS, CUES = 150, 20, 120, 600
TIED = 5
"""Groups that matches may tie to each other: two at a time, among so many."""
MOST_S, MOST_MB = 5.0, 500.0
LEVELS = (0, 5, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 100)
"""Levels as people write them: round figures, which come back."""
SECONDS = (0.5, 1, 2, 2, 3, 3, 5, 5, 8, 10, 10, 20, 30)
INTENTS = ("smooth",) * 7 + ("unseen",) * 2 + ("snap",) * 5 + ("pixels",) + ("match",) * 2 + ("any",) * 3
AVERAGE = "average"

CHILD = """
import json, sys
from pathlib import Path
from modebook.rig.open_rig import open_rig
from modebook.shelf.catalog import Catalog
from modebook.shots.planning import plan
from modebook.shots.reading import read_shots
reading = open_rig(sys.argv[1], Catalog(Path(sys.argv[2])))
shots = read_shots(Path(sys.argv[1]) / sys.argv[3], reading)
made = plan(reading, shots)
figures = sum(one.figures is not None for setup in made.setups for taken in setup.settings
              for candidate in taken.candidates for one in candidate.verdicts)
print(json.dumps({
    "setups": len(made.setups), "cues": shots.cues, "faults": len(shots.faults), "gap": made.gap,
    "conflicts": len(made.conflicts), "figures": figures, "asked": made.asked,
    "settings": sum(len(one.settings) for one in made.setups),
}))
"""


def _choices(number: int) -> list[Json]:
    """What the fixtures offer: none to two lengths beside off, one of them of unknown length."""
    off = {"key": "off", "length": {"packets": 0}}
    two = {"key": "two", "length": {"packets": 2}, "method": AVERAGE, "factory": True}
    lists: list[list[Json]] = [
        [off, two, {"key": "eight", "length": {"packets": 8}, "method": AVERAGE}],
        [off, two, {"key": "five", "length": {"packets": 5}, "method": "interpolate"}],
        [off, {"key": "soft", "length": {"seconds": 0.1}, "method": "lag", "factory": True}],
        [],
        [
            {"key": "one", "length": {"packets": 1}, "method": "interpolate", "factory": True},
            two | {"factory": False},
        ],
        [off, two, {"key": "film"}],
    ]
    return lists[number]


def fixture(number: int) -> Json:
    """A light with a 16-bit dimmer and a control slot that reaches every choice of its smoothing."""
    choices = _choices(number)
    ranges: list[Json] = [{"from": 0, "to": 99, "meaning": "No function", "does": "nothing"}]
    for place, choice in enumerate(choices):
        start = 100 + 20 * place
        told = {"smoothing": choice["key"]}
        ranges.append({"from": start, "to": start + 19, "meaning": choice["key"], "sets": told, "hold_s": 3})
    ranges.append({"from": 100 + 20 * len(choices), "to": 255, "meaning": "No function", "does": "nothing"})
    values = {choice["key"]: place for place, choice in enumerate(choices)}
    ways = [{"by": "menu", "path": ["Setup"]}, {"by": "rdm", "pid": "0x8345", "size": 1, "values": values}]
    smoothing: Json = {"key": "smoothing", "setting": "smoothing", "acts_on": ["intensity"]}
    smoothing |= {"choices": choices, "ways": ways} if choices else {"none": True, "source": "guide"}
    return {
        "maker": "Bench",
        "model": f"Lamp {number}",
        "category": "fixed",
        "standing": "transcribed",
        "sources": [{"key": "guide", "title": f"Lamp {number} guide"}],
        "settings": [smoothing],
        "modes": [
            {
                "name": "M",
                "footprint": 3,
                "parameters": [
                    {"parameter": "dimmer", "slots": [1, 2] if number else [1]}
                    | ({} if number else {"label": "coarse"}),
                    {"parameter": "control", "slots": [3], "ranges": ranges},
                ]
                + ([] if number else [{"parameter": "fan", "slots": [2]}]),
            }
        ],
    }


def write(root: Path, seed: int) -> None:
    """Write catalog, patch, rig.json, and the shots twice: as they are, and with one cue edited."""
    chance = random.Random(seed)
    (root / "fixtures" / "bench").mkdir(parents=True)
    for number in range(6):
        text = json.dumps(fixture(number))
        (root / "fixtures" / "bench" / f"lamp-{number}.json").write_text(text, encoding="utf-8")
    rig = root / "rigs" / "bench"
    rig.mkdir(parents=True)
    burst = {"rate": 0.01, "burst_packets": 2, "kind": "missing"}
    links = {
        "1": {"gateway_hz": 44, "delay_s": 0.004, "rdm": True},
        "2": {"rdm": True},
        "3": {"gateway_hz": 40, "delay_s": 0.01, "loss": burst},
    }
    told = {"name": "Bench", "refresh_hz": 30, "camera": {"fps": 24, "shutter_deg": 180}, "links": links}
    (rig / "rig.json").write_text(json.dumps(told), encoding="utf-8")
    with (rig / "patch.csv").open("w", newline="", encoding="utf-8") as file:
        table = csv.writer(file)
        table.writerow(["Unit", "Fixture", "Mode", "Universe", "Address", "Group", "Reach"])
        for number in range(UNITS):
            group = number % GROUPS
            universe = 3 if group % 10 == 9 else 1 + group % 2
            reach = ("floor", "ladder", "lift")[group % 3]
            row = [number + 1, f"Bench Lamp {group % 6}", "M", universe, 1 + 3 * number, f"g{group}", reach]
            table.writerow(row)
    rows = [_cue(chance, number) for number in range(CUES)]
    _write_shots(rig / "shots.csv", rows)
    at = next(place for place, row in enumerate(rows) if row[-1] == "smooth")
    rows[at] = [*rows[at][:-2], 4.5, "smooth"]
    _write_shots(rig / "edited.csv", rows)


def _cue(chance: random.Random, number: int) -> list[object]:
    intent = chance.choice(INTENTS)
    start, end = chance.sample(LEVELS, 2)
    if intent == "match":
        family = TIED * chance.randrange(GROUPS // TIED)
        groups = [family + place for place in chance.sample(range(TIED), 2)]
    else:
        groups = chance.sample(range(GROUPS), chance.choice((1, 1, 2)))
    seconds = 0 if intent in ("snap", "pixels") else chance.choice(SECONDS)
    per = CUES // SETUPS
    units = ", ".join(f"group:g{group}" for group in sorted(groups))
    return [
        number // per + 1,
        f"{number // per + 1}A",
        number + 1,
        40 * (number % per),
        units,
        start,
        end,
        seconds,
        intent,
    ]


def _write_shots(path: Path, rows: list[list[object]]) -> None:
    with path.open("w", newline="", encoding="utf-8") as file:
        table = csv.writer(file)
        table.writerow(["Setup", "Shot", "Cue", "Time", "Units", "From", "To", "Seconds", "Intent"])
        table.writerows(rows)


def _run(root: Path, shots: str, kept: str) -> tuple[float, float, Json]:
    """Wall and processor time in s of a plan as a process, and what it says; `kept`: its memory."""
    os.environ["XDG_CACHE_HOME"] = str(root / kept)
    command = [sys.executable, "-c", CHILD, str(root / "rigs" / "bench"), str(root), shots]
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    start_s = time.perf_counter()
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    wall_s = time.perf_counter() - start_s
    if done.returncode:
        sys.exit(done.stderr)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    took_s = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return wall_s, took_s, json.loads(done.stdout)


def main() -> int:
    """Write the rig, plan it, print; 1 where a target is missed."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--runs", type=int, default=2)
    parser.add_argument("--seed", type=int, default=1)
    told = parser.parse_args()
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
    missed = False
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        os.environ["PYTHONPYCACHEPREFIX"] = str(root / "pycache")
        write(root, told.seed)
        _run(root, "shots.csv", "compiling")
        rounds = [
            [_run(root, shots, f"kept-{turn}") for shots in ("shots.csv", "shots.csv", "edited.csv")]
            for turn in range(told.runs)
        ]
    for what, runs in zip(
        ("plan", "the same again", "after one edit"), zip(*rounds, strict=True), strict=True
    ):
        wall_s, took_s, said = min(runs, key=lambda one: one[0])
        print(
            f"{what}: {said['setups']} setups, {said['cues']} cues, {said['settings']} settings decided, "
            f"{said['conflicts']} conflicts, gap {said['gap']:.1%}: {wall_s:.2f} s "
            f"({took_s:.2f} s of one core; at most {MOST_S:g} s)"
        )
        print(f"    {said['figures']} figures from {said['asked']} distinct cases")
        missed = missed or wall_s > MOST_S
    most_mb = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
    print(f"most memory: {most_mb:.0f} MB (at most {MOST_MB:g} MB)")
    return int(missed or most_mb > MOST_MB)


if __name__ == "__main__":
    sys.exit(main())
