"""Times the universe maps of 2,000 units over 64 universes, and the whole folder of sheets.

Run it with the project's Python: python tests/bench/bench_sheets.py [--fixtures N] [--units N] [--runs N]
The floor is the audit of the same rig in the same run, as a whole process.
"""

from __future__ import annotations

import argparse
import os
import sys
import tempfile
from pathlib import Path

from bench_audit import best, write

MAPS = """
import sys, time
from modebook.rig.open_rig import open_rig
from modebook.shelf.catalog import Catalog
from pathlib import Path
reading = open_rig(sys.argv[1], Catalog(Path(sys.argv[2])))
reading.rows
start = time.perf_counter()
from modebook.render.sheets.crew import by_universe, crew_lines
from modebook.render.sheets.page import page
text = page("by_universe.html", "maps", pages=(), universes=by_universe(reading, crew_lines(reading)))
print(time.perf_counter() - start, len(text))
"""


def main() -> None:
    """Make the catalog, time, print."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--fixtures", type=int, default=2_000)
    parser.add_argument("--units", type=int, default=2_000)
    parser.add_argument("--universes", type=int, default=64)
    parser.add_argument("--runs", type=int, default=3)
    told = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        rig = write(root, told.fixtures, told.units, told.universes)
        command = str(Path(sys.executable).with_name("modebook"))
        environment = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
        environment["PYTHONPYCACHEPREFIX"] = str(root / "compiled")
        named = [str(rig), "--catalog", str(root)]
        floor, _, _ = best([command, "audit", *named, "--json"], told.runs, environment)
        out = ["-o", str(root / "out"), "--overwrite"]
        whole, _, _ = best([command, "sheets", *named, *out], told.runs, environment)
        _, _, printed = best([sys.executable, "-c", MAPS, str(rig), str(root)], told.runs, environment)
        maps_s, size = printed.split()
        print(f"audit, whole process (floor)       {floor:6.3f} s")
        print(f"all sheets, whole process          {whole:6.3f} s  {whole / floor:5.2f} x")
        print(f"page of all universe maps          {float(maps_s):6.3f} s  {int(size) / 1000:.0f} kB")


if __name__ == "__main__":
    main()
