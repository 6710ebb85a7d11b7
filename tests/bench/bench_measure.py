"""Measures how well smoothing is recovered from synthetic clips and traces, and how fast a clip is read.

Run it with the project's Python: python tests/bench/bench_measure.py [--cases N] [--seed N] [--only K ...]
[--keep FOLDER] [--failures FILE] [--processes N] [--no-speed]
Prints over the cases of tests/measure/clips: right method, length within 0.3 packets, whether the interval
holds the truth, 'cannot tell' where the clip cannot, off known as off; then the time and memory of a 10 s
clip of 1080p at 240 frames a second beside decoding alone in the same run, and of a trace of 100,000 samples.
--keep keeps the files and truths in a folder and uses them again. --failures writes what is wrong, a line a
case.
"""

from __future__ import annotations

import argparse
import contextlib
import hashlib
import io
import json
import pickle
import sys
import tempfile
import time
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from measure.clips.case import Truth
from measure.clips.cases import one_case
from measure.clips.scoring import Score, score, tally

CASES, SEED = 330, 1
MAKING = ("camera", "light", "meter", "picture", "video", "wire")
JUDGING = ("case", "light", "telling")


def _sources(modules: tuple[str, ...]) -> str:
    """Tells whether a kept file was made by these modules as they are now."""
    folder = Path(__file__).resolve().parents[1] / "measure" / "clips"
    return hashlib.sha256(b"".join((folder / f"{name}.py").read_bytes() for name in modules)).hexdigest()


def answer(path: Path, arguments: tuple[str, ...]) -> dict[str, Any]:
    """Give what `modebook measure FILE --json` prints, run in this process, or its error."""
    from modebook.cli.app import main

    out, err = io.StringIO(), io.StringIO()
    sys.argv = ["modebook", "measure", str(path), *arguments, "--json"]
    try:
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
            main()
    except SystemExit as end:
        if end.code not in (0, 1, None):
            return {"error": err.getvalue().strip()}
    except Exception as fault:  # noqa: BLE001  (a crash is one case's fault and must not end the others)
        return {"error": f"crash: {type(fault).__name__}: {fault}"}
    try:
        found = json.loads(out.getvalue())
    except json.JSONDecodeError:
        return {"error": f"no JSON: {out.getvalue()[:200]} {err.getvalue()[:200]}"}
    return dict(found)


def judged(number: int, seed: int, folder: Path) -> tuple[Score, float]:
    """Make a case's file unless the folder has it, measure it, and give its score and the seconds taken."""
    case = one_case(seed, number)
    path, known = folder / f"{case.name}{case.ending}", folder / f"{case.name}.truth"
    made = (_sources(MAKING), pickle.dumps(case))
    judge = _sources(JUDGING)
    kept = pickle.loads(known.read_bytes()) if path.exists() and known.exists() else None
    if kept is None or kept[0] != made:
        case.write(folder)
    truth: Truth = kept[2] if kept and kept[:2] == (made, judge) else case.truth
    known.write_bytes(pickle.dumps((made, judge, truth)))
    start_s = time.process_time()
    found = answer(path, case.arguments)
    return score(case.name, truth, found), time.process_time() - start_s


def scores(numbers: list[int], seed: int, folder: Path, processes: int) -> Iterator[tuple[Score, float]]:
    """Judge cases, several at a time."""
    work = partial(judged, seed=seed, folder=folder)
    if processes == 1:
        yield from map(work, numbers)
        return
    with ProcessPoolExecutor(processes) as pool:
        yield from pool.map(work, numbers)


def recovery(numbers: list[int], seed: int, folder: Path, processes: int, failures: Path | None) -> None:
    """Print the tally over the cases, and write what is wrong."""
    found: list[Score] = []
    took_s: list[float] = []
    for one, seconds in scores(numbers, seed, folder, processes):
        found.append(one)
        took_s.append(seconds)
        if sys.stderr.isatty():
            print(f"\r{len(found)} of {len(numbers)}", end="", file=sys.stderr, flush=True)
        if failures:
            write_failures(found, took_s, failures)
    print("\n".join(told(found, took_s)), flush=True)


def told(found: list[Score], took_s: list[float]) -> list[str]:
    """The tally, and the time that measuring took."""
    time_line = f"processor time a case: {sum(took_s) / len(took_s):.2f} s, at most {max(took_s):.2f} s"
    return [*tally(found), time_line]


def write_failures(found: list[Score], took_s: list[float], path: Path) -> None:
    """Write the tally so far, and each case that is wrong, on a line of its own."""
    wrong = [one for one in found if not one.right and one.kind != "gray"]
    outside = [one for one in found if one.inside is False]
    text = [*told(found, took_s), "", "## Wrong", *(one.line for one in wrong)]
    text += ["", "## Interval does not hold the true length", *(one.line for one in outside)]
    path.write_text("\n".join(text) + "\n", encoding="utf-8")


def main() -> int:
    """Run it; 1 never: the figures are for people to judge."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--cases", type=int, default=CASES)
    asked.add_argument("--seed", type=int, default=SEED)
    asked.add_argument("--only", type=int, nargs="+", help="case numbers")
    asked.add_argument("--keep", type=Path, help="folder for the files, used again")
    asked.add_argument("--failures", type=Path, help="write what is wrong into this file")
    asked.add_argument("--processes", type=int, default=2)
    asked.add_argument("--no-speed", action="store_true")
    said = asked.parse_args()
    numbers = said.only or list(range(said.cases))
    with tempfile.TemporaryDirectory() as scratch:
        folder = said.keep or Path(scratch)
        folder.mkdir(parents=True, exist_ok=True)
        if numbers:
            recovery(numbers, said.seed, folder, said.processes, said.failures)
        if not said.no_speed:
            from measure_speed import speed

            speed(folder)
    return 0


if __name__ == "__main__":
    sys.exit(main())
