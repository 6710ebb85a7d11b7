"""Open charts: XLSX, ODS, CSV."""

from __future__ import annotations

from dataclasses import replace

from intake.corpus import making as m
from intake.corpus.content import M, Made, truth
from intake.corpus.grids import Element, Heading, Para, Table
from intake.corpus.layouts.rows import group_grid, pair_grid, rows_grid
from intake.corpus.layouts.sides import side_grid
from intake.corpus.open.sides import head_items, side
from intake.corpus.registry import chart
from intake.corpus.scenes import moving_head, panel, spot, wash
from intake.corpus.writers.sheets import csv_file, ods, xlsx

COLS = ["slot", "label", "value", "text"]


@chart("sheet-a-mode", "one sheet a mode", "xlsx", "en", "Quibbern", "Varl 12")
def sheet_a_mode(seed: int) -> Made:
    b = m.start("en", seed)
    modes = [
        m.mode(b, 1, "Basic", wash(b), "name"),
        m.mode(b, 2, "Extended", moving_head(b, smoothing=True), "name"),
    ]
    sheets: list[tuple[str, list[Element]]] = [
        ("Notes", [Para("All values are decimal."), Para("Revision C, 2 modes")])
    ]
    for one in modes:
        sheets.append((one.title, [Table(rows_grid(b, one.params, COLS, m.style(b, "hyphen")))]))
    return Made(xlsx(sheets), truth("Quibbern", "Varl 12", modes))


@chart("sheet-merged", "merged cells in a sheet", "xlsx", "de", "Feldnarr", "Leiste 3")
def sheet_merged(seed: int) -> Made:
    b = m.start("de", seed)
    named, params, at = [], [], 0
    for cell in range(1, 7):
        rows = []
        for item in ("red", "green", "blue", "amber"):
            at += 1
            p = b.plain(item, text="").at(at)
            rows.append((at, p.label))
            params.append(replace(p, key=f"{p.words[0]}-{cell}"))
        named.append((f"Segment {cell}", rows))
    modes = [M("", (), at, tuple(params))]
    inner: list[Element] = [
        Heading("DMX-Kanalbelegung Leiste 3"),
        Table(group_grid(b, named, m.style(b, "hyphen"))),
    ]
    return Made(xlsx([("Tabelle1", inner)]), truth("Feldnarr", "Leiste 3", modes))


@chart("sheet-side", "three modes side by side", "xlsx", "fr", "Ostrelune", "Mirliton 11")
def sheet_side(seed: int) -> Made:
    b = m.start("fr", seed)
    items = head_items(b, 3)
    modes = side(b, ["Base", "Standard", "Étendu"], items)
    grid = side_grid(b, modes, [p for p, _ in items], m.style(b, "hyphen"), "")
    return Made(
        xlsx([("DMX", [Heading("Tableau DMX"), Table(grid)])]), truth("Ostrelune", "Mirliton 11", modes)
    )


@chart("sheet-ods", "slot, function, value, description", "ods", "es", "Tascorza", "Pavesa 8")
def sheet_ods(seed: int) -> Made:
    b = m.start("es", seed)
    modes = [m.mode(b, 1, "Estándar", spot(b, fine=True), "name")]
    grid = rows_grid(b, modes[0].params, COLS, m.style(b, "spaced"))
    return Made(ods([(modes[0].title, [Table(grid)])]), truth("Tascorza", "Pavesa 8", modes))


@chart("csv-semicolon", "from and to columns", "csv", "de", "Feldnarr", "Docht 2")
def csv_semicolon(seed: int) -> Made:
    b = m.start("de", seed)
    modes = [m.untitled(panel(b, fine=True))]
    grid = rows_grid(b, modes[0].params, ["slot", "label", "from", "to", "text"], m.style(b, merge=False))
    return Made(csv_file([Table(grid)], ";", "utf-8-sig"), truth("Feldnarr", "Docht 2", modes))


@chart("csv-side", "two modes side by side", "csv", "en", "Nubberly", "Croft 2")
def csv_side(seed: int) -> Made:
    b = m.start("en", seed)
    items = head_items(b, 2)
    modes = side(b, ["Compact", "Full"], items)
    grid = side_grid(b, modes, [p for p, _ in items], m.style(b, "dots", merge=False), "-")
    return Made(csv_file([Table(grid)]), truth("Nubberly", "Croft 2", modes))


@chart("csv-pairs", "5-6 with one range", "csv", "it", "Orvacetti", "Faro 30")
def csv_pairs(seed: int) -> Made:
    b = m.start("it", seed)
    modes = [m.untitled(spot(b, fine=True))]
    grid = pair_grid(b, modes[0].params, m.style(b, "hyphen"))
    return Made(csv_file([Para("Tabella DMX"), Table(grid)], ","), truth("Orvacetti", "Faro 30", modes))
