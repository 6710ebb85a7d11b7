"""Open charts: web pages."""

from __future__ import annotations

from intake.corpus import making as m
from intake.corpus import manual
from intake.corpus.building import Builder
from intake.corpus.content import Made, truth
from intake.corpus.grids import Element, Heading, Look, Para, Table
from intake.corpus.layouts.rows import rows_grid, weight_grid
from intake.corpus.layouts.sides import side_grid
from intake.corpus.open.sides import head_items, side
from intake.corpus.registry import chart
from intake.corpus.scenes import moving_head, spot
from intake.corpus.writers.web import html_page


def site(b: Builder, maker: str, model: str, inner: list[Element], plain: bool = False) -> bytes:
    """A support page with menus and messages around the chart."""
    text = manual.TEXTS[b.language]
    around: list[Element] = [
        Heading(f"{maker} {model}"),
        Para(str(text["safe"][0])),
        Heading(b.head("chart"), 2),
    ]
    tail = [
        element
        for element in manual.after(b.language, b.rng, Look())
        if isinstance(element, Heading | Para | Table)
    ]
    return html_page([*around, *inner, *tail], f"{maker} {model}", b.language, plain)


@chart("web-rows", "slot, function, value, description", "html", "en", "Harrowmint", "Tolter 8")
def web_rows(seed: int) -> Made:
    b = m.start("en", seed)
    modes = [
        m.mode(b, 1, "Standard", moving_head(b, lamp=True)),
        m.mode(b, 2, "Extended", spot(b, fine=True)),
    ]
    grids = [rows_grid(b, one.params, ["slot", "label", "value", "text"], m.style(b, "en")) for one in modes]
    data = site(b, "Harrowmint", "Tolter 8", m.mode_tables(modes, grids, Look()))
    return Made(data, truth("Harrowmint", "Tolter 8", modes))


@chart("web-side", "three modes side by side", "html", "it", "Orvacetti", "Lume 77")
def web_side(seed: int) -> Made:
    b = m.start("it", seed)
    items = head_items(b, 3)
    modes = side(b, ["Base", "Standard", "Esteso"], items)
    grid = side_grid(b, modes, [p for p, _ in items], m.style(b, "hyphen", named_row=True), "-")
    return Made(site(b, "Orvacetti", "Lume 77", [Table(grid)]), truth("Orvacetti", "Lume 77", modes))


@chart("web-weights", "MSB and LSB number columns", "html", "de", "Feldnarr", "Glimmer 5")
def web_weights(seed: int) -> Made:
    b = m.start("de", seed)
    modes = [m.untitled(spot(b, fine=True))]
    st = m.style(b, "spaced")
    st.values.number = lambda value: f"{value:,}".replace(",", ".")  # type: ignore[method-assign]
    grid = weight_grid(b, modes[0].params, st)
    return Made(
        site(b, "Feldnarr", "Glimmer 5", [Table(grid)], plain=True), truth("Feldnarr", "Glimmer 5", modes)
    )
