"""A manual of 40 pages with 6 pages of charts, for timing."""

from __future__ import annotations

from random import Random

from intake.corpus import making as m
from intake.corpus import manual
from intake.corpus.grids import Break, Element, Heading, Look, Para
from intake.corpus.layouts.rows import rows_grid
from intake.corpus.scenes import moving_head, spot, wash
from intake.corpus.writers.pdf_reportlab import reportlab_pdf

PAGES = 40
FIRST, LAST = 18, 23
CHART_PAGES = f"{FIRST}-{LAST}"


def _filler(rng: Random, page: int) -> list[Element]:
    """One page of prose, at times with a menu or messages."""
    text = manual.TEXTS["en"]
    made: list[Element] = [Heading(f"Chapter {page}", 2)]
    made += [Para(str(rng.choice(list(text["safe"])))) for _ in range(rng.randint(6, 9))]
    if page % 3 == 0:
        made += manual.after("en", rng, Look("ruled"))[1:3]
    return [*made, Break()]


def long_manual(seed: int = 1) -> bytes:
    """The PDF's bytes: 17 pages, then six with a mode each, then 17."""
    rng = Random(seed)
    b = m.start("en", seed)
    look = Look("ruled", 7)
    elements: list[Element] = []
    for page in range(1, FIRST):
        elements += _filler(rng, page)
    for number in range(1, LAST - FIRST + 2):
        params = [moving_head, spot, wash][number % 3](b, fine=number % 2 == 0)
        mode = m.mode(b, number, f"Layout {number}", params)
        grid = rows_grid(b, mode.params, ["slot", "label", "value", "text"], m.style(b, "hyphen"))
        elements += [*m.mode_tables([mode], [grid], look), Break()]
    for page in range(LAST + 1, PAGES + 1):
        elements += _filler(rng, page)
    return reportlab_pdf(elements[:-1], size=9, foot="Bench")
