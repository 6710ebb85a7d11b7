"""Runs a reader over charts and counts what came of their parameters."""

from __future__ import annotations

import json
import traceback
from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from pathlib import Path

from intake.corpus.compare import Compared, Outcome, compare
from intake.corpus.content import Json, Made
from intake.corpus.registry import Chart

Reader = Callable[[Path, Chart, Made], Json]
"""Reads a chart's file into a document as plain JSON; raises the reader's own error where it refuses."""


@dataclass
class Result:
    """One chart: its outcomes, or why it was refused. `crashed` says that the refusal was no clear error."""

    chart: Chart
    parameters: int
    compared: Compared | None = None
    refusal: str = ""
    crashed: bool = False

    @property
    def outcomes(self) -> list[Outcome]:
        return self.compared.outcomes if self.compared else []


@dataclass
class Counts:
    """Parameters by what became of them. Extra ones count as silently wrong."""

    charts: int = 0
    kinds: Counter[str] = field(default_factory=Counter)
    modes: int = 0
    modes_right: int = 0

    def add(self, result: Result) -> None:
        self.charts += 1
        if result.compared is None:
            self.kinds["refused"] += result.parameters
            return
        self.kinds.update(o.kind for o in result.outcomes)
        self.modes += result.compared.modes
        self.modes_right += result.compared.modes_right

    @property
    def total(self) -> int:
        return self.kinds.total()

    def figures(self) -> Json:
        """Counts and percentages; `right` includes `thin`, `silently_wrong` includes `extra`."""
        kinds = self.kinds
        made: Json = {
            "charts": self.charts,
            "parameters": self.total,
            "right": kinds["right"] + kinds["thin"],
            "thin": kinds["thin"],
            "doubt_due": kinds["doubt due"],
            "doubt_may": kinds["doubt may"],
            "doubt_else": kinds["doubt else"],
            "silently_wrong": kinds["silent"] + kinds["extra"],
            "refused": kinds["refused"],
            "modes": self.modes,
            "modes_right": self.modes_right,
        }
        for key in ("right", "doubt_due", "doubt_may", "doubt_else", "silently_wrong", "refused"):
            made[f"{key}_percent"] = round(100 * made[key] / self.total, 2) if self.total else 0.0
        # Where a doubt is right a reading cannot be right: the rest is what a reader can be held to.
        clear = self.total - kinds["doubt due"] - kinds["doubt may"]
        made["right_of_clear_percent"] = round(100 * made["right"] / clear, 2) if clear else 0.0
        return made


def run(chart: Chart, reader: Reader, folder: Path, error: type[Exception]) -> Result:
    """Makes one chart, reads it, compares."""
    made = chart.make(chart.seed)
    path = folder / f"{chart.name}.{chart.suffix}"
    path.write_bytes(made.data)
    count = sum(len(mode["parameters"]) for mode in made.truth["document"]["modes"])
    try:
        document = reader(path, chart, made)
    except error as refusal:
        return Result(chart, count, refusal=str(refusal))
    except Exception as crash:  # noqa: BLE001 - a benchmark counts crashes, it must not end with the first one
        where = traceback.extract_tb(crash.__traceback__)[-1]
        return Result(
            chart,
            count,
            refusal=f"{type(crash).__name__}: {crash} ({Path(where.filename).name}:{where.lineno})",
            crashed=True,
        )
    return Result(chart, count, compare(made.truth, json.loads(json.dumps(document))))


def grouped(results: Iterable[Result], key: Callable[[Chart], str]) -> dict[str, Counts]:
    found: dict[str, Counts] = {}
    for result in results:
        found.setdefault(key(result.chart), Counts()).add(result)
    return found
