"""Open charts: one table a mode, in many orders of columns, as PDF."""

from __future__ import annotations

from intake.corpus import making as m
from intake.corpus.content import Made
from intake.corpus.grids import Look
from intake.corpus.layouts.rows import rows_grid
from intake.corpus.registry import chart
from intake.corpus.scenes import moving_head, panel, spot, wash


@chart("rows-ruled", "slot, value, function", "pdf", "en", "Quibbern", "Varl 300")
def rows_ruled(seed: int) -> Made:
    b = m.start("en", seed)
    modes = [m.untitled(moving_head(b))]
    look = Look("ruled", 9)
    grid = rows_grid(b, modes[0].params, ["slot", "value", "both"], m.style(b, "hyphen", zeros=True))
    return m.as_pdf(b, "Quibbern", "Varl 300", modes, m.mode_tables(modes, [grid], look), look)


@chart("rows-two-modes", "slot, function, value, description", "pdf", "de", "Feldnarr", "Glimmer 12")
def rows_two_modes(seed: int) -> Made:
    b = m.start("de", seed)
    modes = [m.mode(b, 1, "Basis", wash(b)), m.mode(b, 2, "Erweitert", moving_head(b, smoothing=True))]
    look = Look("ruled", 8.5)
    cols = ["slot", "label", "value", "text"]
    grids = [rows_grid(b, one.params, cols, m.style(b, "spaceden")) for one in modes]
    return m.as_pdf(b, "Feldnarr", "Glimmer 12", modes, m.mode_tables(modes, grids, look), look, m.REPORTLAB)


@chart("rows-zebra", "slot, function, value, description", "pdf", "fr", "Ostrelune", "Mirliton 7")
def rows_zebra(seed: int) -> Made:
    b = m.start("fr", seed)
    modes = [m.mode(b, 1, "Complet", spot(b, fine=True), "dash")]
    look = Look("zebra", 9)
    cols = ["slot", "label", "value", "text"]
    grid = rows_grid(b, modes[0].params, cols, m.style(b, "to", merge=False))
    return m.as_pdf(
        b, "Ostrelune", "Mirliton 7", modes, m.mode_tables(modes, [grid], look), look, font="serif"
    )


@chart("rows-bare", "slot, function, value, description", "pdf", "es", "Tascorza", "Brizna 5")
def rows_bare(seed: int) -> Made:
    b = m.start("es", seed)
    modes = [m.untitled(wash(b, fine=True, fourth="amber"))]
    look = Look("bare", 9)
    cols = ["slot", "label", "value", "text"]
    grid = rows_grid(b, modes[0].params, cols, m.style(b, "spaced", merge=False))
    inner = m.mode_tables(modes, [grid], look)
    return m.as_pdf(b, "Tascorza", "Brizna 5", modes, inner, look, m.REPORTLAB, font="times")


@chart("function-first", "function, slot, value, description", "pdf", "en", "Harrowmint", "Pell 2")
def function_first(seed: int) -> Made:
    b = m.start("en", seed)
    modes = [m.mode(b, 1, "Standard", spot(b), "dash"), m.mode(b, 2, "Extended", spot(b, fine=True), "dash")]
    look = Look("ruled", 8.5)
    cols = ["label", "slot", "value", "text"]
    grids = [rows_grid(b, one.params, cols, m.style(b, "ellipsis")) for one in modes]
    inner = m.mode_tables(modes, grids, look)
    return m.as_pdf(b, "Harrowmint", "Pell 2", modes, inner, look, m.REPORTLAB, paper="letter")


@chart("value-last", "slot, function, description, value", "pdf", "it", "Orvacetti", "Lume 40")
def value_last(seed: int) -> Made:
    b = m.start("it", seed)
    modes = [m.untitled(panel(b))]
    look = Look("rows", 9)
    cols = ["slot", "label", "text", "value"]
    grid = rows_grid(b, modes[0].params, cols, m.style(b, "hyphen", merge=False))
    return m.as_pdf(b, "Orvacetti", "Lume 40", modes, m.mode_tables(modes, [grid], look), look, font="vera")


@chart("rows-three-small", "several modes a page", "pdf", "es", "Tascorza", "Pavesa 3")
def rows_three_small(seed: int) -> Made:
    b = m.start("es", seed)
    first = [b.plain(item, text="") for item in ("red", "green", "blue")]
    second = [b.plain("dimmer"), *first, b.strobe()]
    third = [
        b.plain("dimmer", True, ""),
        *(b.plain(item, True, "") for item in ("red", "green", "blue")),
        b.shutter(),
    ]
    modes = [
        m.mode(b, n, name, ps, "word")
        for n, (name, ps) in enumerate((("RGB", first), ("Básico", second), ("16 bits", third)), 1)
    ]
    look = Look("ruled", 9)
    cols = ["slot", "value", "label", "text"]
    grids = [rows_grid(b, one.params, cols, m.style(b, "en")) for one in modes]
    inner = m.mode_tables(modes, grids, look)
    return m.as_pdf(b, "Tascorza", "Pavesa 3", modes, inner, look, m.REPORTLAB)
