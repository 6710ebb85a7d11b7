"""Open charts: a block a slot, and prose."""

from __future__ import annotations

from intake.corpus import making as m
from intake.corpus.content import Made, truth
from intake.corpus.grids import Element, Heading, Look
from intake.corpus.layouts.blocks import block_elements, prose_elements
from intake.corpus.registry import chart
from intake.corpus.scenes import moving_head, panel, spot, wash
from intake.corpus.writers.plain import text_file
from intake.corpus.writers.web import html_page


@chart("blocks", "a block a slot", "pdf", "en", "Nubberly", "Croft 18")
def blocks(seed: int) -> Made:
    b = m.start("en", seed)
    modes = [m.untitled(moving_head(b))]
    look = Look("ruled", 9)
    inner = block_elements(b, modes[0].params, m.style(b, "hyphen"), look)
    return m.as_pdf(b, "Nubberly", "Croft 18", modes, inner, look)


@chart("blocks-two-modes", "a block a slot", "pdf", "fr", "Ostrelune", "Fanal 3")
def blocks_two_modes(seed: int) -> Made:
    b = m.start("fr", seed)
    modes = [m.mode(b, 1, "Base", wash(b)), m.mode(b, 2, "Complet", spot(b))]
    look = Look("rows", 9)
    inner: list[Element] = []
    for one in modes:
        inner.append(Heading(one.title, 2))
        inner += block_elements(b, one.params, m.style(b, "to"), look, "{word} {slot} – {label}", heads=False)
    return m.as_pdf(b, "Ostrelune", "Fanal 3", modes, inner, look, m.REPORTLAB)


@chart("prose", "prose", "pdf", "es", "Tascorza", "Brizna 1")
def prose(seed: int) -> Made:
    b = m.start("es", seed)
    modes = [
        m.untitled(
            [
                b.plain("dimmer"),
                b.shutter(),
                *(b.plain(item) for item in ("red", "green", "blue")),
                b.kelvin(2700, 6500),
            ]
        )
    ]
    inner = prose_elements(b, modes[0].params, m.style(b, "hyphen"))
    return m.as_pdf(b, "Tascorza", "Brizna 1", modes, inner, Look("ruled", 9))


@chart("blocks-web", "a block a slot", "html", "fr", "Ostrelune", "Fanal 8")
def blocks_web(seed: int) -> Made:
    b = m.start("fr", seed)
    modes = [m.untitled(panel(b, fine=False))]
    inner = block_elements(b, modes[0].params, m.style(b, "hyphen"), Look(), "{word} {slot} : {label}")
    data = html_page([Heading(b.head("chart")), *inner], "Fanal 8", "fr")
    return Made(data, truth("Ostrelune", "Fanal 8", modes))


@chart("blocks-text", "a block a slot", "txt", "it", "Orvacetti", "Lume 2")
def blocks_text(seed: int) -> Made:
    b = m.start("it", seed)
    modes = [m.untitled(wash(b))]
    inner = block_elements(
        b, modes[0].params, m.style(b, "spaced"), Look(), "{word} {slot}: {label}", heads=False
    )
    return Made(text_file(inner), truth("Orvacetti", "Lume 2", modes))
