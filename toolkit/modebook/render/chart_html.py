"""The charts of a fixture's modes as one page for printing: what a person pins beside the desk."""

from __future__ import annotations

from typing import Any

from modebook.documents.fixture import Fixture
from modebook.render.chart_rows import chart_lines
from modebook.render.chart_text import CAUTION, source_words
from modebook.render.sheets.page import page


def chart_html(fixture: Fixture) -> str:
    """All modes of a document, each on a sheet of its own; needs nothing beside it."""
    modes = [_mode(fixture, index) for index in range(len(fixture.modes))]
    name = f"{fixture.maker} {fixture.model}"
    return page("mode_chart.html", name, subtitle=_standing(fixture), modes=modes)


def _standing(fixture: Fixture) -> str:
    doubts = len(fixture.open_doubts)
    told = f"{fixture.category}; the record is {fixture.standing}"
    return told + (
        f", with {doubts} open doubt{'s' * (doubts != 1)}: not to be relied on." if doubts else "."
    )


def _mode(fixture: Fixture, index: int) -> dict[str, Any]:
    mode = fixture.modes[index]
    about = [f"mode {mode.number}"] if mode.number is not None else []
    about += [f"{mode.footprint} slots"] + ([f"given {mode.given}"] if mode.given else [])
    lines = chart_lines(fixture, index)
    return {
        "name": mode.name,
        "about": ", ".join(about),
        "source": source_words(fixture, mode.source),
        "note": mode.note or "",
        "lines": lines,
        "caution": CAUTION if any(line.hazard for line in lines) else "",
    }
