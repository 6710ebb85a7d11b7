"""Rarer charts: one table a mode, in orders and looks that the open ones do not have."""

from __future__ import annotations

from dataclasses import replace

from intake.corpus import making as m
from intake.corpus.content import Made
from intake.corpus.grids import Heading, Look
from intake.corpus.layouts.bands import band_grid, joined_grid, stacked_grid
from intake.corpus.layouts.rows import rows_grid
from intake.corpus.registry import chart
from intake.corpus.scenes import moving_head, panel, spot, wash


@chart("a-name-last", "slot, value, description, function", "pdf", "en", "Wuthermoor", "Kestle 3")
def name_last(seed: int) -> Made:
    b = m.start("en", seed, rare=True)
    modes = [m.mode(b, 1, "Advanced", moving_head(b))]
    look = Look("frame", 9)
    grid = rows_grid(b, modes[0].params, ["slot", "value", "text", "label"], m.style(b, "dots", merge=False))
    return m.as_pdf(
        b, "Wuthermoor", "Kestle 3", modes, m.mode_tables(modes, [grid], look), look, font="stix", size=10
    )


@chart("a-bands", "a band over each slot's values", "pdf", "de", "Zwirnhart", "Lohe 7")
def bands(seed: int) -> Made:
    b = m.start("de", seed, rare=True)
    modes = [m.mode(b, 2, "Komfort", spot(b, fine=True), "dash")]
    look = Look("ruled", 9)
    grid = band_grid(b, modes[0].params, m.style(b, "en"))
    inner = m.mode_tables(modes, [grid], look)
    return m.as_pdf(b, "Zwirnhart", "Lohe 7", modes, inner, look, m.REPORTLAB, font="vera")


@chart("a-joined", "number and name in one cell", "pdf", "fr", "Brumaire-Loic", "Luciole 2")
def joined(seed: int) -> Made:
    b = m.start("fr", seed, rare=True)
    modes = [m.mode(b, 1, "Simple", wash(b)), m.mode(b, 2, "Avancé", moving_head(b, fine=False))]
    look = Look("ruled", 8.5)
    grids = [joined_grid(b, one.params, m.style(b, "to")) for one in modes]
    return m.as_pdf(
        b, "Brumaire-Loic", "Luciole 2", modes, m.mode_tables(modes, grids, look), look, font="vera"
    )


@chart("a-hex-only", "hex values alone", "pdf", "en", "Wuthermoor", "Kestle 9")
def hex_only(seed: int) -> Made:
    b = m.start("en", seed, rare=True)
    modes = [m.untitled(wash(b, fourth="amber"))]
    look = Look("rows", 9)
    st = m.style(b, "hyphen", hexes="0x", merge=False)
    grid = rows_grid(b, modes[0].params, ["slot", "label", "hex", "text"], st)
    return m.as_pdf(
        b,
        "Wuthermoor",
        "Kestle 9",
        modes,
        m.mode_tables(modes, [grid], look),
        look,
        m.REPORTLAB,
        font="times",
    )


@chart("a-default-from-to", "default with from and to", "pdf", "it", "Sgrullone", "Fiocco 1")
def default_from_to(seed: int) -> Made:
    b = m.start("it", seed, rare=True)
    params = [replace(p, default=255 if p.words[0] == "zoom" else 0) for p in wash(b, fourth="lime")] + [
        replace(b.plain("zoom"), default=255)
    ]
    modes = [m.mode(b, 1, "Avanzato", params, "word")]
    look = Look("ruled", 9)
    grid = rows_grid(b, modes[0].params, ["slot", "default", "label", "from", "to", "text"], m.style(b))
    return m.as_pdf(
        b,
        "Sgrullone",
        "Fiocco 1",
        modes,
        m.mode_tables(modes, [grid], look),
        look,
        m.REPORTLAB,
        paper="letter",
    )


@chart("a-percent-first", "percent before decimal", "pdf", "es", "Mirtalejo", "Candil 6")
def percent_first(seed: int) -> Made:
    b = m.start("es", seed, rare=True)
    modes = [m.untitled(spot(b))]
    look = Look("ruled", 9)
    grid = rows_grid(b, modes[0].params, ["slot", "label", "pct", "value", "text"], m.style(b, "hyphen"))
    return m.as_pdf(b, "Mirtalejo", "Candil 6", modes, m.mode_tables(modes, [grid], look), look, font="serif")


@chart("a-stacked", "both numbers in one cell", "pdf", "en", "Wuthermoor", "Tuft 2x2")
def stacked(seed: int) -> Made:
    b = m.start("en", seed, rare=True)
    modes = [m.mode(b, 3, "Enhanced", panel(b))]
    look = Look("ruled", 9)
    grid = stacked_grid(b, modes[0].params, m.style(b, "spaceden"))
    return m.as_pdf(b, "Wuthermoor", "Tuft 2x2", modes, m.mode_tables(modes, [grid], look), look, m.REPORTLAB)


@chart("a-bare-german", "slot, function, value, description", "pdf", "de", "Zwirnhart", "Lohe 1")
def bare_german(seed: int) -> Made:
    b = m.start("de", seed, rare=True)
    modes = [
        m.mode(b, n, name, ps, "word")
        for n, (name, ps) in enumerate((("Einfach", wash(b)), ("Voll", panel(b))), 1)
    ]
    look = Look("bare", 10)
    grids = [
        rows_grid(b, one.params, ["slot", "label", "value", "text"], m.style(b, "ellipsis", merge=False))
        for one in modes
    ]
    inner = [Heading("DMX"), *m.mode_tables(modes, grids, look)]
    return m.as_pdf(b, "Zwirnhart", "Lohe 1", modes, inner, look, font="stix", size=10)
