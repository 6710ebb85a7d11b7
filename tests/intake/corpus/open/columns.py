"""Open charts: from and to, percent, hex, defaults, numbers of bytes, two column sets, groups, footnotes."""

from __future__ import annotations

from dataclasses import replace

from intake.corpus import making as m
from intake.corpus.building import place
from intake.corpus.content import M, Made, P, R
from intake.corpus.grids import Look, Para
from intake.corpus.layouts.rows import group_grid, pair_grid, rows_grid, two_column_grid, weight_grid
from intake.corpus.registry import chart
from intake.corpus.scenes import moving_head, panel, spot, wash


@chart("default-column", "default column", "pdf", "it", "Orvacetti", "Faro 9")
def default_column(seed: int) -> Made:
    b = m.start("it", seed)
    params = []
    for p in spot(b, fine=True):
        if "pan" in p.words or "tilt" in p.words:
            p = replace(p, default=128, fine_default=0)
        elif "zoom" in p.words:
            p = replace(p, default=128)
        elif p.words[0] in ("cyan", "magenta", "yellow", "control", "frost"):
            p = replace(p, default=0)
        elif "iris" in p.words:
            p = replace(p, default=255)
        params.append(p)
    modes = [m.untitled(params)]
    look = Look("ruled", 8.5)
    grid = rows_grid(b, modes[0].params, ["slot", "label", "value", "text", "default"], m.style(b, "hyphen"))
    return m.as_pdf(b, "Orvacetti", "Faro 9", modes, m.mode_tables(modes, [grid], look), look)


@chart("from-to", "from and to columns", "pdf", "de", "Feldnarr", "Docht 4")
def from_to(seed: int) -> Made:
    b = m.start("de", seed)
    modes = [m.mode(b, 1, "Standard", moving_head(b, lamp=True))]
    look = Look("ruled", 9)
    grid = rows_grid(b, modes[0].params, ["slot", "label", "from", "to", "text"], m.style(b))
    return m.as_pdf(b, "Feldnarr", "Docht 4", modes, m.mode_tables(modes, [grid], look), look)


@chart("percent-beside", "percent beside decimal", "pdf", "fr", "Ostrelune", "Fanal 20")
def percent_beside(seed: int) -> Made:
    b = m.start("fr", seed)
    modes = [m.untitled(moving_head(b, fine=False))]
    look = Look("ruled", 8.5)
    grid = rows_grid(b, modes[0].params, ["slot", "label", "value", "pct", "text"], m.style(b, "hyphen"))
    return m.as_pdf(b, "Ostrelune", "Fanal 20", modes, m.mode_tables(modes, [grid], look), look, m.REPORTLAB)


@chart("dec-hex-percent", "decimal, hex and percent", "pdf", "en", "Quibbern", "Sorrel 8")
def dec_hex_percent(seed: int) -> Made:
    b = m.start("en", seed)
    modes = [m.mode(b, 1, "Full", wash(b, fourth="lime"))]
    look = Look("ruled", 9)
    cols = ["slot", "label", "value", "hex", "pct", "text"]
    grid = rows_grid(b, modes[0].params, cols, m.style(b, "hyphen", zeros=True))
    return m.as_pdf(b, "Quibbern", "Sorrel 8", modes, m.mode_tables(modes, [grid], look), look)


@chart("weights", "MSB and LSB number columns", "pdf", "en", "Harrowmint", "Tolter 60", trap=4)
def weights(seed: int) -> Made:
    b = m.start("en", seed)
    placed = []
    for p in place(
        [
            b.angle("pan", 540),
            b.angle("tilt", 270),
            b.plain("dimmer", True),
            b.shutter(),
            b.plain("zoom", True),
        ]
    ):
        placed.append(replace(p, slots=p.slots[::-1]) if len(p.slots) == 2 else p)
    modes = [m.untitled(placed)]
    st = m.style(b, "to")
    st.values.number = lambda value: f"{value:,}"  # type: ignore[method-assign]
    look = Look("ruled", 9)
    grid = weight_grid(b, modes[0].params, st)
    inner = m.mode_tables(modes, [grid], look)
    return m.as_pdf(b, "Harrowmint", "Tolter 60", modes, inner, look, m.REPORTLAB)


@chart("pairs", "5-6 with one range", "pdf", "it", "Orvacetti", "Lampo 2")
def pairs(seed: int) -> Made:
    b = m.start("it", seed)
    modes = [m.mode(b, 1, "Esteso", panel(b), "dash")]
    look = Look("ruled", 9)
    grid = pair_grid(b, modes[0].params, m.style(b, "hyphen"))
    return m.as_pdf(b, "Orvacetti", "Lampo 2", modes, m.mode_tables(modes, [grid], look), look)


@chart("two-column-sets", "two column sets across a page", "pdf", "en", "Quibbern", "Varl 40")
def two_column_sets(seed: int) -> Made:
    b = m.start("en", seed)
    modes = [m.untitled(spot(b, fine=True))]
    look = Look("rows", 7.5)
    grid = rows_grid(
        b, modes[0].params, ["slot", "label", "value", "text"], m.style(b, "hyphen", merge=False)
    )
    # Each half begins with a slot number, as a typesetter would cut it.
    half = max(i for i in range(1, len(grid.body) // 2 + 2) if grid.body[i][0].text)  # type: ignore[union-attr]
    grid.widths = [10, 22, 14, 38]
    folded = two_column_grid(grid, half)
    inner = m.mode_tables(modes, [folded], look)
    return m.as_pdf(b, "Quibbern", "Varl 40", modes, inner, look, m.REPORTLAB)


@chart("groups", "group label merged beside rows", "pdf", "en", "Nubberly", "Batten 4")
def groups(seed: int) -> Made:
    b = m.start("en", seed)
    named, params, at = [], [], 1
    master = b.plain("dimmer", text="").at(1)
    named.append(("Master", [(1, master.label)]))
    params.append(master)
    for cell in range(1, 5):
        rows = []
        for item in ("red", "green", "blue"):
            at += 1
            p = b.plain(item, text="").at(at)
            rows.append((at, p.label))
            params.append(replace(p, key=f"{p.words[0]}-{cell}"))
        named.append((f"Pixel {cell}", rows))
    modes = [M("", (), at, tuple(params))]
    look = Look("ruled", 9)
    grid = group_grid(b, named, m.style(b, "hyphen"))
    return m.as_pdf(b, "Nubberly", "Batten 4", modes, m.mode_tables(modes, [grid], look), look)


@chart("written-out", "cells written out in full", "pdf", "de", "Feldnarr", "Leiste 6")
def written_out(seed: int) -> Made:
    b = m.start("de", seed)
    params: list[P] = []
    for cell in range(1, 7):
        for item in ("red", "green", "blue", "white"):
            p = b.plain(item, text="")
            word = p.words[0]
            params.append(replace(p, label=f"{p.label} {cell}", key=f"{word}-{cell}"))
    modes = [m.mode(b, 1, "Pixel", params)]
    look = Look("ruled", 9)
    grid = rows_grid(b, modes[0].params, ["slot", "label", "value"], m.style(b, "hyphen"))
    return m.as_pdf(b, "Feldnarr", "Leiste 6", modes, m.mode_tables(modes, [grid], look), look, m.REPORTLAB)


@chart("footnotes", "footnotes with a legend", "pdf", "de", "Feldnarr", "Docht 9", trap=13)
def footnotes(seed: int) -> Made:
    b = m.start("de", seed)
    made = [b.angle("pan", 540), b.angle("tilt", 270), b.shutter(), b.plain("dimmer", True)]
    control = P(
        ("control",),
        "Steuerung",
        ranges=(
            R(0, 19, "Keine Funktion", does="nothing"),
            R(20, 39, "Pan/Tilt-Reset *", hazard="reset", hold_s=3.0, also=("Pan/Tilt-Reset",)),
            R(40, 59, "Gesamtreset *", hazard="reset", hold_s=3.0, also=("Gesamtreset",)),
            R(60, 255, "Keine Funktion", does="nothing"),
        ),
    )
    modes = [m.untitled([*made, control])]
    look = Look("ruled", 9)
    grid = rows_grid(b, modes[0].params, ["slot", "label", "value", "text"], m.style(b, "en"))
    inner = [*m.mode_tables(modes, [grid], look), Para("* Wert 3 Sekunden lang senden.")]
    return m.as_pdf(b, "Feldnarr", "Docht 9", modes, inner, look)
