"""Rarer charts: lists below headings, prose, definition blocks on the web."""

from __future__ import annotations

from intake.corpus import making as m
from intake.corpus.content import Made, truth
from intake.corpus.grids import Element, Heading, Look, Para, Table
from intake.corpus.layouts.bands import band_grid, list_elements
from intake.corpus.layouts.blocks import block_elements, prose_elements
from intake.corpus.layouts.rows import rows_grid
from intake.corpus.registry import chart
from intake.corpus.scenes import moving_head, panel, spot
from intake.corpus.writers.web import html_page


@chart("a-lists", "a heading a slot, a line a range", "pdf", "de", "Zwirnhart", "Lohe 4")
def lists(seed: int) -> Made:
    b = m.start("de", seed, rare=True)
    modes = [m.untitled(moving_head(b, fine=False))]
    inner = list_elements(b, modes[0].params, m.style(b, "to"))
    return m.as_pdf(b, "Zwirnhart", "Lohe 4", modes, inner, Look("ruled", 9), m.REPORTLAB)


@chart("a-prose", "prose", "pdf", "en", "Wuthermoor", "Tuft 1")
def prose(seed: int) -> Made:
    b = m.start("en", seed, rare=True)
    items = ("warm", "cool")
    modes = [
        m.untitled(
            [
                b.plain("dimmer"),
                *(b.plain(item) for item in items),
                b.strobe(),
                b.choices("fan", ["fanauto", "fanlow", "fanfull"]),
            ]
        )
    ]
    inner = prose_elements(b, modes[0].params, m.style(b, "to"))
    return m.as_pdf(b, "Wuthermoor", "Tuft 1", modes, inner, Look("ruled", 9), m.REPORTLAB, font="times")


@chart("a-web-bands", "a band over each slot's values", "html", "en", "Wuthermoor", "Tuft 5")
def web_bands(seed: int) -> Made:
    b = m.start("en", seed, rare=True)
    modes = [m.mode(b, 1, "Enhanced", panel(b, fine=False), "dash")]
    grid = band_grid(b, modes[0].params, m.style(b, "en"))
    data = html_page([Heading("Tuft 5"), *m.mode_tables(modes, [grid], Look())], "Tuft 5", "en")
    return Made(data, truth("Wuthermoor", "Tuft 5", modes))


@chart("a-web-default", "default column", "html", "fr", "Brumaire-Loic", "Luciole 9")
def web_default(seed: int) -> Made:
    from dataclasses import replace

    b = m.start("fr", seed, rare=True)
    params = [replace(p, default=0) for p in spot(b) if p.words[0] not in ("pan", "tilt")]
    modes = [m.untitled(params)]
    grid = rows_grid(b, modes[0].params, ["slot", "label", "value", "text", "default"], m.style(b, "spaced"))
    inner: list[Element] = [Heading(b.head("chart")), Para("Toutes les valeurs sont décimales."), Table(grid)]
    return Made(html_page(inner, "Luciole 9", "fr", plain=True), truth("Brumaire-Loic", "Luciole 9", modes))


@chart("a-blocks", "a block a slot", "pdf", "it", "Sgrullone", "Fiocco 12")
def blocks(seed: int) -> Made:
    b = m.start("it", seed, rare=True)
    modes = [m.untitled(spot(b, fine=True))]
    look = Look("frame", 9)
    inner = block_elements(b, modes[0].params, m.style(b, "spaced"), look, "{slot}. {label}")
    return m.as_pdf(b, "Sgrullone", "Fiocco 12", modes, inner, look, m.REPORTLAB, font="vera")
