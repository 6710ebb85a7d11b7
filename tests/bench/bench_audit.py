"""Times the audit of 2,000 units over 64 universes as a whole process, against 10,000 generated fixtures.

Run it with the project's Python: python tests/bench/bench_audit.py [--fixtures N] [--units N] [--runs N]
Prints the best of several runs, as wall time, as processor time, and as a multiple of importing typer.
Modules are compiled once before, as in any installation, whatever the environment says.
"""

from __future__ import annotations

import argparse
import json
import os
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

USED = 40
"""Different fixtures that the rig uses."""
SLOTS = 15
"""Slots of each unit."""

LIBRARY = """
import sys
from modebook.rig.audit import audit
from modebook.rig.open_rig import open_rig
from modebook.shelf.catalog import Catalog
from pathlib import Path
import json
found = audit(open_rig(sys.argv[1], Catalog(Path(sys.argv[2]))))
print(json.dumps(found.to_json()))
"""


def fixture(number: int) -> dict[str, object]:
    """A moving light of 15 slots, with coarse parameters and a smoothing that a slot changes."""
    plain = ["dimmer", "red", "green", "blue", "white", "amber", "zoom", "focus", "iris", "frost", "strobe"]
    fine = [
        {"parameter": "pan", "slots": [1, 2], "span": {"from": -270, "to": 270, "unit": "deg"}},
        {"parameter": "tilt", "slots": [3], "span": {"from": -130, "to": 130, "unit": "deg"}},
    ]
    rest = [{"parameter": word, "slots": [4 + i]} for i, word in enumerate(plain)]
    control = {
        "parameter": "control",
        "slots": [15],
        "ranges": [
            {"from": 0, "to": 99, "meaning": "No function", "does": "nothing"},
            {"from": 100, "to": 149, "meaning": "Response: fast", "sets": {"smoothing": "off"}, "hold_s": 3},
            {"from": 150, "to": 255, "meaning": "Response: smooth", "sets": {"smoothing": "on"}, "hold_s": 3},
        ],
    }
    return {
        "maker": f"Bench {number % 100}",
        "model": f"Lamp {number}",
        "category": "moving yoke",
        "standing": "transcribed",
        "sources": [{"key": "guide", "title": f"Lamp {number} guide"}],
        "settings": [
            {
                "key": "smoothing",
                "setting": "smoothing",
                "choices": [
                    {"key": "off", "length": {"packets": 0}},
                    {"key": "on", "length": {"packets": 4}, "factory": True},
                ],
                "ways": [{"by": "menu", "path": ["Setup", "Response"]}],
            }
        ],
        "modes": [
            {
                "name": name,
                "number": place,
                "footprint": SLOTS,
                "source": "guide",
                "parameters": [*fine, *rest, control],
            }
            for place, name in enumerate(("Basic", "Extended", "Full"), 1)
        ],
    }


def write(root: Path, fixtures: int, units: int, universes: int) -> Path:
    """A catalog and, inside it, a rig of `units` units over `universes` universes."""
    for number in range(fixtures):
        path = root / "fixtures" / f"bench-{number % 100}" / f"lamp-{number}.json"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(json.dumps(fixture(number)))
    rig = root / "rigs" / "large"
    rig.mkdir(parents=True)
    (rig / "rig.json").write_text(json.dumps({"name": "Large rig", "refresh_hz": 30}))
    lines = ["Unit,Fixture,Mode,Universe,Address,Position,Group,Throw"]
    next_free = [1] * universes
    for unit in range(units):
        number, universe = unit % USED, unit * universes // units
        name = f"Bench {number % 100} Lamp {number},Extended"
        place = f"{universe + 1},{next_free[universe]},Truss {unit % 9},Group {unit % 25},{6 + unit % 7}"
        lines.append(f"{unit + 1},{name},{place}")
        next_free[universe] += SLOTS
    (rig / "patch.csv").write_text("\n".join(lines) + "\n")
    return rig


def best(command: list[str], runs: int, environment: dict[str, str]) -> tuple[float, float, str]:
    """The least wall time and the least processor time of a command in s, and what it printed.

    On a machine that others use too, the processor time says more. Exit statuses 0 and 1 are results.
    """
    walls, works, out = [], [], ""
    subprocess.run(command, capture_output=True, check=False, env=environment)
    for _ in range(runs):
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        start = time.perf_counter()
        done = subprocess.run(command, capture_output=True, text=True, check=False, env=environment)
        walls.append(time.perf_counter() - start)
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        works.append(after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime)
        if done.returncode not in (0, 1) or "Traceback" in done.stderr:
            raise SystemExit(f"{' '.join(command[:3])} failed: {done.stderr[-2000:]}")
        out = done.stdout
    return min(walls), min(works), out


def main() -> None:
    """Make the catalog, time, print."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--fixtures", type=int, default=10_000)
    parser.add_argument("--units", type=int, default=2_000)
    parser.add_argument("--universes", type=int, default=64)
    parser.add_argument("--runs", type=int, default=5)
    told = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        rig = write(root, told.fixtures, told.units, told.universes)
        python = sys.executable
        command = str(Path(python).with_name("modebook"))
        told_rig = [str(rig), str(root)]
        environment = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
        environment["PYTHONPYCACHEPREFIX"] = str(root / "compiled")

        def timing(*words: str) -> tuple[float, float, str]:
            return best(list(words), told.runs, environment)

        audit = [command, "audit", str(rig), "--catalog", str(root)]
        timed = {
            "empty python": timing(python, "-c", "pass"),
            "import typer": timing(python, "-c", "import typer"),
            "import the fixture models": timing(python, "-c", "import modebook.documents.fixture"),
            "audit as a library": timing(python, "-c", LIBRARY, *told_rig),
            "modebook audit --json": timing(*audit, "--json"),
            "modebook audit": timing(*audit),
        }
        found = json.loads(timed["audit as a library"][2])
        print(
            f"{found['units']} units, {len(found['universes'])} universes, "
            f"{len(found['findings'])} findings, {told.fixtures} fixtures in the catalog"
        )
        floor_s = timed["import typer"][1]
        print(f"{'':26}    wall  processor  times import typer")
        for name, (wall_s, work_s, _) in timed.items():
            print(f"{name:26} {wall_s:6.3f} s   {work_s:6.3f} s  {work_s / floor_s:6.1f}")


if __name__ == "__main__":
    main()
