"""Ratios for `modebook check` and the program's start, measured in one run.

    python tests/bench/bench_check.py --fixtures 10000

The floor: in one process, with the garbage collector as it comes, read each document, json.loads it, throw it
away. check-jsonschema is run on a sample and scaled, its own start taken out.
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

sys.path.insert(0, str(Path(__file__).parent))

from generate import write_catalog

ROOT = Path(__file__).resolve().parents[2]
BIN = Path(sys.executable).parent
SAMPLE = 300


def wall_s(command: list[str], environment: dict[str, str] | None = None) -> float:
    """How long a command takes, in s; what it prints is dropped."""
    began = time.perf_counter()
    subprocess.run(
        command, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False
    )
    return time.perf_counter() - began


def floor_s(files: list[Path]) -> float:
    """Reading and json.loads of every file, in s."""
    began = time.perf_counter()
    for path in files:
        with path.open("rb") as file:
            json.loads(file.read())
    return time.perf_counter() - began


def main() -> None:
    """Print the ratios."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--fixtures", type=int, default=10_000)
    told = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        catalog = Path(folder) / "catalog"
        write_catalog(catalog, told.fixtures)
        files = sorted((catalog / "fixtures").rglob("*.json"))
        environment = {**os.environ, "XDG_CACHE_HOME": str(Path(folder) / "cache")}
        check = [str(BIN / "modebook"), "check", "--json", "--catalog", str(catalog)]
        floor_s(files)
        floor = floor_s(files)
        cold = wall_s([*check, "--no-cache"], environment)
        wall_s(check, environment)
        warm = wall_s(check, environment)
        peak_mb = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
        schema = [str(BIN / "check-jsonschema"), "--schemafile", str(ROOT / "schema" / "fixture.schema.json")]
        start = wall_s([*schema, str(files[0])])
        sample = [str(path) for path in files[:SAMPLE]]
        other = (wall_s([*schema, *sample]) - start) * len(files) / len(sample) + start
    typer = min(wall_s([sys.executable, "-c", "import typer"]) for _ in range(5))
    helped = min(wall_s([str(BIN / "modebook"), "--help"]) for _ in range(5))
    print(f"{len(files)} documents; floor {floor:.2f} s")
    print(f"check, cold: {cold:.2f} s = {cold / floor:.2f} x floor (at most 2)")
    print(f"check, results kept: {warm:.2f} s = {warm / floor:.2f} x floor (at most 2)")
    print(f"check-jsonschema, a sample scaled: {other:.0f} s = {other / cold:.0f} x check (at least 10)")
    print(f"memory at most: {peak_mb:.0f} MB (at most 1500)")
    print(f"modebook --help: {helped:.3f} s = {helped / typer:.2f} x import typer (at most 2.5)")


if __name__ == "__main__":
    main()
