"""A mode's chart in a terminal: slots, parameter, values, meaning, in the width that there is."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from modebook.documents.fixture import Fixture
from modebook.render.chart_rows import ChartLine, chart_lines
from modebook.render.terminal import paint, printed, table, width
from modebook.shelf.errors import printable

CAUTION = (
    "CAUTION marks what can move, reset or put out a fixture, or hurt: try it on one fixture, off the take, "
    "with people clear of it."
)


def chart_text(fixture: Fixture, modes: Sequence[int]) -> str:
    """The charts of some modes (by their places in the document, from 0)."""
    out = []
    for index in modes:
        mode = fixture.modes[index]
        name = f"{fixture.maker} {fixture.model}, {mode.name}"
        told = [f"mode {mode.number}"] if mode.number is not None else []
        told += [f"{mode.footprint} slots", fixture.standing] + (
            [f"given {mode.given}"] if mode.given else []
        )
        out.append(_wrapped(printable(f"{name} ({', '.join(told)})"), bold=True))
        source = source_words(fixture, mode.source)
        if source:
            out.append(_wrapped(printable(f"From {source}.")))
        if mode.note:
            out.append(_wrapped(printable(mode.note)))
        lines = chart_lines(fixture, index)
        out += ["", _table(lines)]
        if any(line.hazard for line in lines):
            out.append(_wrapped(CAUTION) + "\n")
    return "\n".join(out).rstrip() + "\n"


def source_words(fixture: Fixture, key: str | None) -> str:
    """``Torvane 40 operating guide, revision B, firmware 1.6, pages 22-29``; empty for no source."""
    source = next((one for one in fixture.sources if one.key == key), None)
    if source is None:
        return ""
    told = [source.title]
    told += [f"revision {source.revision}"] if source.revision else []
    told += [f"firmware {source.firmware}"] if source.firmware else []
    told += [f"pages {source.pages}"] if source.pages else []
    return ", ".join(told)


def _table(lines: Sequence[ChartLine]) -> str:
    rows = []
    for line in lines:
        pad = "  " * line.depth
        if line.kind == "block":
            kind = "part" if line.pointer.split("/")[-2] == "parts" else "cells"
            rows.append((pad + kind, "", "", line.meaning))
            continue
        name = line.parameter + (f" ({line.label})" if line.label else "")
        rows.append((pad + line.slots if line.slots else "", name, line.values, line.meaning))
    return printed(
        table([("slots", "left"), ("parameter", "left"), ("values", "right"), ("meaning", "left")], rows)
    )


def _wrapped(words: str, *, bold: bool = False) -> str:
    text = textwrap.fill(words, width=width(), break_on_hyphens=False)
    return paint(text, "bold") if bold else text
