"""Open charts: text as pasted from a viewer, with columns aligned or collapsed."""

from __future__ import annotations

from intake.corpus import making as m
from intake.corpus.content import Made, truth
from intake.corpus.grids import Heading, Look
from intake.corpus.layouts.rows import rows_grid
from intake.corpus.layouts.sides import side_grid
from intake.corpus.open.sides import head_items, side
from intake.corpus.registry import chart
from intake.corpus.scenes import moving_head, panel, wash
from intake.corpus.writers.plain import aligned, text_file

COLS = ["slot", "label", "value", "text"]


@chart("text-aligned", "aligned columns", "txt", "en", "Nubberly", "Croft 5")
def text_aligned(seed: int) -> Made:
    b = m.start("en", seed)
    modes = [m.mode(b, 1, "Standard", moving_head(b))]
    grid = rows_grid(b, modes[0].params, COLS, m.style(b, "hyphen", zeros=True))
    return Made(text_file(m.mode_tables(modes, [grid], Look())), truth("Nubberly", "Croft 5", modes))


@chart("text-side", "two modes side by side", "txt", "es", "Tascorza", "Pavesa 20")
def text_side(seed: int) -> Made:
    b = m.start("es", seed)
    items = head_items(b, 2)
    modes = side(b, ["Básico", "Completo"], items)
    grid = side_grid(b, modes, [p for p, _ in items], m.style(b, "hyphen", merge=False), "-")
    return Made((aligned(grid, 2) + "\n").encode(), truth("Tascorza", "Pavesa 20", modes))


@chart("text-collapsed", "collapsed columns", "txt", "de", "Feldnarr", "Glimmer 1")
def text_collapsed(seed: int) -> Made:
    b = m.start("de", seed)
    modes = [m.untitled(wash(b))]
    grid = rows_grid(b, modes[0].params, COLS, m.style(b, "hyphen"))
    return Made(
        text_file([Heading("DMX-Protokoll"), *m.mode_tables(modes, [grid], Look())], "collapsed"),
        truth("Feldnarr", "Glimmer 1", modes),
    )


@chart("text-from-to", "from and to columns", "txt", "fr", "Ostrelune", "Fanal 2")
def text_from_to(seed: int) -> Made:
    b = m.start("fr", seed)
    modes = [m.untitled(panel(b))]
    grid = rows_grid(b, modes[0].params, ["slot", "label", "from", "to", "text"], m.style(b, merge=False))
    return Made(
        text_file(m.mode_tables(modes, [grid], Look()), newline="\r\n"), truth("Ostrelune", "Fanal 2", modes)
    )
