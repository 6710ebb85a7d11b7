"""Short forms for the pages of this hand: paper, headings, ruled tables with merged slots."""

from __future__ import annotations

import io
from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from intake.corpus.content import P
from intake.corpus.open import fresh_kit as k

GRID: list[Any] = [("GRID", (0, 0), (-1, -1), 0.4, "#555555"), ("VALIGN", (0, 0), (-1, -1), "MIDDLE")]


def paper(parts: list[Any], title: str, across: bool = False) -> bytes:
    """A manual's pages with its name and the page's number at the foot."""
    from reportlab.lib.pagesizes import A4, landscape
    from reportlab.platypus import SimpleDocTemplate

    def foot(page: Any, _: Any) -> None:
        page.setFont("Helvetica", 7)
        page.drawString(50, 24, title)
        page.drawRightString(540, 24, f"- {page.getPageNumber()} -")

    kept = io.BytesIO()
    doc = SimpleDocTemplate(kept, pagesize=landscape(A4) if across else A4, title=title, invariant=1)
    doc.build(parts, onFirstPage=foot, onLaterPages=foot)
    return kept.getvalue()


def head(text: str, level: int = 2) -> Any:
    from reportlab.lib.styles import getSampleStyleSheet
    from reportlab.platypus import Paragraph

    return Paragraph(text, getSampleStyleSheet()[f"Heading{level}" if level else "BodyText"])


def table(rows: Sequence[Sequence[object]], widths: Sequence[float], *marks: Any, top: int = 1) -> Any:
    """A ruled table in small type; `top` rows are its head and come again on each page."""
    from reportlab.platypus import LongTable

    style = [*GRID, ("FONTSIZE", (0, 0), (-1, -1), 8), ("LEADING", (0, 0), (-1, -1), 9.5), *marks]
    return LongTable([list(row) for row in rows], list(widths), style=style, repeatRows=top, spaceBefore=6)


def merged(params: Sequence[P], show: Any, slot: str = "{}") -> tuple[list[list[object]], list[Any]]:
    """Slot, name, value and text of each range; the first two reach down over all values of a slot."""
    rows: list[list[object]] = []
    marks: list[Any] = []
    for line in k.lines(params):
        first = len(rows) + 1
        for n, (lo, hi, text) in enumerate(line.rows):
            at = ["", ""] if n else [slot.format(line.slot), line.name]
            rows.append([*at, show(lo, hi), text])
        if len(line.rows) > 1:
            marks += [("SPAN", (c, first), (c, len(rows))) for c in (0, 1)]
            marks.append(("NOSPLIT", (0, first), (-1, len(rows))))
    return rows, marks


def tilde(lo: int, hi: int) -> str:
    return str(lo) if lo == hi else f"{lo} ~ {hi}"


def vary(params: Sequence[P], seed: int) -> tuple[P, ...]:
    """The same with the ends between wide ranges moved by the seed, up to five values."""
    shift = (seed - 1) % 6
    made = []
    for p in params:
        ranges = list(p.ranges)
        for n in range(1, len(ranges)):
            before, after = ranges[n - 1], ranges[n]
            if shift and before.hi + 1 == after.lo and after.hi - after.lo > 8 and before.hi - before.lo > 2:
                ranges[n - 1] = replace(before, hi=before.hi + shift)
                ranges[n] = replace(after, lo=after.lo + shift)
        made.append(replace(p, ranges=tuple(ranges)))
    return tuple(made)
