"""Rarer charts: sheets with two modes below each other, side by side in ODS, text with tabs."""

from __future__ import annotations

from intake.corpus import making as m
from intake.corpus.content import Made, truth
from intake.corpus.grids import Element, Heading, Look, Para, Table
from intake.corpus.layouts.bands import joined_grid
from intake.corpus.layouts.rows import rows_grid
from intake.corpus.layouts.sides import side_grid
from intake.corpus.open.sides import head_items, side
from intake.corpus.registry import chart
from intake.corpus.scenes import moving_head, panel, spot, wash
from intake.corpus.writers.sheets import csv_file, ods, xlsx


@chart("a-sheet-stacked", "two modes below each other in a sheet", "xlsx", "it", "Sgrullone", "Fiocco 8")
def sheet_stacked(seed: int) -> Made:
    b = m.start("it", seed, rare=True)
    modes = [m.mode(b, 1, "Semplice", wash(b)), m.mode(b, 2, "Avanzato", spot(b, fine=True))]
    grids = [
        rows_grid(b, one.params, ["slot", "label", "value", "text"], m.style(b, "hyphen", merge=False))
        for one in modes
    ]
    return Made(
        xlsx([("Foglio1", m.mode_tables(modes, grids, Look()))]), truth("Sgrullone", "Fiocco 8", modes)
    )


@chart("a-ods-side", "modes side by side, numbers last", "ods", "en", "Wuthermoor", "Kestle 2")
def ods_side(seed: int) -> Made:
    b = m.start("en", seed, rare=True)
    items = head_items(b, 2)
    modes = side(b, ["Short", "Enhanced"], items)
    grid = side_grid(b, modes, [p for p, _ in items], m.style(b, "dots"), "", numbers_last=True)
    return Made(ods([("Chart", [Table(grid)])]), truth("Wuthermoor", "Kestle 2", modes))


@chart("a-csv-tabs", "slot, function, value, description", "csv", "fr", "Brumaire-Loic", "Luciole 4")
def csv_tabs(seed: int) -> Made:
    b = m.start("fr", seed, rare=True)
    modes = [m.untitled(moving_head(b, smoothing=True))]
    grid = rows_grid(b, modes[0].params, ["slot", "label", "value", "text"], m.style(b, "to", merge=False))
    inner: list[Element] = [Para("Luciole 4"), Table(grid)]
    return Made(csv_file(inner, "\t", newline="\n"), truth("Brumaire-Loic", "Luciole 4", modes))


@chart("a-sheet-joined", "number and name in one cell", "xlsx", "es", "Mirtalejo", "Candil 2")
def sheet_joined(seed: int) -> Made:
    b = m.start("es", seed, rare=True)
    modes = [m.mode(b, 1, "Avanzado", panel(b, fine=False), "name")]
    grid = joined_grid(b, modes[0].params, m.style(b, "en"))
    inner: list[Element] = [Heading("Avanzado"), Table(grid)]
    return Made(xlsx([("DMX", inner)]), truth("Mirtalejo", "Candil 2", modes))
