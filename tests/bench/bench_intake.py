"""Measures how well and how fast charts are read: the corpus of tests/intake/corpus, open and aside apart.

Run it with the project's Python: python tests/bench/bench_intake.py [--only NAME] [--kept open|aside]
[--show-aside] [--show-doubts] [--seed N] [--no-timing] [--json]
Prints for each format and layout the parameters that are right, doubted, and silently wrong, lists every
silently wrong one (of the charts aside with --show-aside), and times a 40-page PDF with 6 chart pages, and a
sheet.
"""

from __future__ import annotations

import argparse
import json
import resource
import subprocess
import sys
import tempfile
from dataclasses import replace
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from intake.corpus import tally
from intake.corpus.content import Made
from intake.corpus.long_manual import CHART_PAGES, PAGES, long_manual
from intake.corpus.registry import Chart, charts

CHILD = """
import json, resource, sys, time
begin = time.perf_counter()
from modebook.intake.draft import About, draft
made = draft(sys.argv[1], About(maker="Bench", model="Bench"), pages=sys.argv[2] or None)
took = time.perf_counter() - begin
# Linux hands the parent's peak on in ru_maxrss; VmHWM begins anew with the program.
try:
    status = open("/proc/self/status").read()
    peak = int(status.split("VmHWM:")[1].split()[0]) / 1024
except (OSError, IndexError):
    unit = 1024 * 1024 if sys.platform == "darwin" else 1024
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / unit
placed = sum(len(mode.parameters) for mode in made.document.modes)
print(json.dumps({"draft_s": round(took, 2), "peak_mb": round(peak), "parameters": placed}))
"""
COLUMNS = (
    ("charts", "charts", 6),
    ("params", "parameters", 6),
    ("right%", "right_percent", 7),
    ("due%", "doubt_due_percent", 6),
    ("may%", "doubt_may_percent", 6),
    ("else%", "doubt_else_percent", 6),
    ("silent%", "silently_wrong_percent", 7),
    ("silent", "silently_wrong", 6),
    ("thin", "thin", 5),
    ("refused", "refused", 7),
)


def read(path: Path, chart: Chart, made: Made) -> dict[str, Any]:
    from modebook.intake.draft import About, draft

    found = draft(path, About(maker=chart.maker, model=chart.model), pages=made.pages)
    document: dict[str, Any] = found.document.model_dump(mode="json", by_alias=True, exclude_none=True)
    return document


def table(title: str, groups: dict[str, tally.Counts]) -> None:
    print(f"\n{title:<46}" + "".join(f"{name:>{width + 1}}" for name, _, width in COLUMNS))
    for name, counts in sorted(groups.items()):
        figures = counts.figures()
        cells = (
            f"{figures[key]:>{width + 1}.1f}" if name_.endswith("%") else f"{figures[key]:>{width + 1}}"
            for name_, key, width in COLUMNS
        )
        print(f"{name[:46]:<46}" + "".join(cells))


def listed(results: list[tally.Result]) -> None:
    for result in results:
        name = f"{result.chart.name} ({result.chart.suffix}, {result.chart.language})"
        if result.refusal:
            print(f"\n{name}: {'CRASHED' if result.crashed else 'refused'}: {result.refusal}")
        for fault in result.compared.mode_faults if result.compared else ():
            print(f"\n{name}: {fault}")
        for outcome in result.outcomes:
            if outcome.kind in ("silent", "extra"):
                print(
                    f"\n{name} {outcome.pointer}: {outcome.why}\n"
                    f"  printed: {outcome.printed}\n  read:    {outcome.read}"
                )


def doubted(results: list[tally.Result]) -> None:
    for result in results:
        found = [o for o in result.outcomes if o.kind == "doubt else"]
        if found:
            print(f"\n{result.chart.name}: {len(found)} doubted where no doubt is due")
            for o in found[:8]:
                print(f"  {o.pointer}: {o.why or 'read as printed'}")
            for told in (result.compared.doubts if result.compared else [])[:8]:
                print(f"  doubt {told}")


def timed(folder: Path) -> dict[str, Any]:
    """The long PDF read whole, the same with its chart pages asked for, and a sheet: a process each."""
    pdf = folder / "long.pdf"
    pdf.write_bytes(long_manual())
    sheet = next(c for c in charts("open") if c.name == "sheet-merged")
    xlsx = folder / "sheet.xlsx"
    xlsx.write_bytes(sheet.make(sheet.seed).data)
    jobs = {
        f"pdf_{PAGES}_pages_whole": (pdf, ""),
        "pdf_chart_pages_asked_for": (pdf, CHART_PAGES),
        "sheet": (xlsx, ""),
    }
    return {name: _child(path, pages) for name, (path, pages) in jobs.items()}


def _child(path: Path, pages: str) -> dict[str, Any]:
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    done = subprocess.run(
        [sys.executable, "-c", CHILD, str(path), pages], capture_output=True, text=True, check=False
    )
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    used = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    if done.returncode:
        return {"failed": done.stderr.strip().splitlines()[-1]}
    return {**json.loads(done.stdout), "process_cpu_s": round(used, 2)}


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else "")
    parser.add_argument("--only", action="append", default=[], help="only charts whose name contains this")
    parser.add_argument("--kept", choices=("open", "aside", "both"), default="both")
    parser.add_argument("--show-aside", action="store_true", help="list those of the charts aside, too")
    parser.add_argument(
        "--show-doubts", action="store_true", help="list doubts where none is due (open charts)"
    )
    parser.add_argument(
        "--seed", type=int, help="another seed than each chart's own: other numbers and wordings"
    )
    parser.add_argument("--no-timing", action="store_true")
    parser.add_argument("--json", action="store_true", help="one object on standard output and nothing else")
    args = parser.parse_args()

    from modebook.intake.errors import IntakeError

    answer: dict[str, Any] = {}
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        for kept in ("open", "aside") if args.kept == "both" else (args.kept,):
            chosen = [c for c in charts(kept) if not args.only or any(part in c.name for part in args.only)]
            if args.seed is not None:
                chosen = [replace(c, seed=args.seed) for c in chosen]
            results = [tally.run(c, read, folder, IntakeError) for c in chosen]
            total = tally.grouped(results, lambda _: "all")
            answer[kept] = {key: counts.figures() for key, counts in total.items()}.get("all", {})
            if args.json:
                continue
            print(f"\n=== {kept}: {len(results)} charts, {len({c.layout for c in chosen})} layouts")
            table("format", tally.grouped(results, lambda c: c.suffix))
            table("layout", tally.grouped(results, lambda c: c.layout))
            table("language", tally.grouped(results, lambda c: c.language))
            table("traps", tally.grouped(results, lambda c: "a trap" if c.trap else "no trap"))
            table("all", total)
            print(f"\n{json.dumps(answer[kept])}")
            if kept == "open" or args.show_aside:
                listed(results)
            if args.show_doubts and (kept == "open" or args.show_aside):
                doubted(results)
        if not args.no_timing:
            answer["timing"] = timed(folder)
            if not args.json:
                print(f"\ntiming: {json.dumps(answer['timing'])}")
    if args.json:
        print(json.dumps(answer))
    return 0


if __name__ == "__main__":
    sys.exit(main())
