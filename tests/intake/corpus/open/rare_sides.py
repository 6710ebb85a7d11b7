"""Rarer charts: modes side by side, with the numbers last, and slots across."""

from __future__ import annotations

from intake.corpus import making as m
from intake.corpus.content import Made
from intake.corpus.grids import C, Look, Para
from intake.corpus.layouts.bands import across_grid
from intake.corpus.layouts.sides import bare, side_grid
from intake.corpus.open.sides import Item, head_items, side
from intake.corpus.registry import chart


@chart("a-numbers-last", "modes side by side, numbers last", "pdf", "de", "Zwirnhart", "Lohe 30")
def numbers_last(seed: int) -> Made:
    b = m.start("de", seed, rare=True)
    items = head_items(b, 3)
    modes = side(b, ["Einfach", "Voll", "Komfort"], items)
    look = Look("ruled", 8)
    grid = side_grid(b, modes, [p for p, _ in items], m.style(b, "hyphen"), "—", numbers_last=True)
    return m.as_pdf(
        b,
        "Zwirnhart",
        "Lohe 30",
        modes,
        m.mode_tables([m.untitled(modes[0].params)], [grid], look),
        look,
        m.REPORTLAB,
    )


@chart("a-side-five", "five modes side by side", "pdf", "es", "Mirtalejo", "Candil 50")
def side_five(seed: int) -> Made:
    b = m.start("es", seed, rare=True)
    order = [(b.plain("dimmer", True), [1, 1, 1, 2, 2]), (b.shutter(), [0, 1, 1, 1, 1])]
    order += [(b.plain(item, True, ""), [1, 1, 1, 1, 2]) for item in ("red", "green", "blue", "amber")]
    order += [
        (b.numbered("macro", 6), [0, 0, 1, 1, 1]),
        (b.plain("macros"), [0, 0, 1, 1, 1]),
        (b.choices("fan", ["fanauto", "fanlow", "fanfull"]), [0, 0, 0, 1, 1]),
    ]
    items: list[Item] = [(p, list(w)) for p, w in order]
    modes = side(b, ["1", "2", "3", "4", "5"], items, "count")
    look = Look("ruled", 8.5)
    grid = side_grid(b, modes, [p for p, _ in items], m.style(b, "en", named_row=True), "")
    return m.as_pdf(
        b, "Mirtalejo", "Candil 50", modes, m.mode_tables([m.untitled(modes[0].params)], [grid], look), look
    )


@chart("a-marked-absent", "three modes side by side", "pdf", "en", "Wuthermoor", "Kestle 20", trap=13)
def marked_absent(seed: int) -> Made:
    b = m.start("en", seed, rare=True)
    items = head_items(b, 3)
    modes = side(b, ["Short", "Advanced", "Raw"], items)
    look = Look("rows", 8.5)
    order = [p for p, _ in items]
    grid = side_grid(b, modes, order, m.style(b, "hyphen", merge=False), "-")
    at = 0
    for row in grid.body:
        at = int(row[2].text) if row[2] and row[2].text.isdigit() else at
        for col in (0, 1):
            cell = row[col]
            if cell is not None and cell.text == "-":
                row[col] = C(f"* {at} *")
    inner = [
        *m.mode_tables([m.untitled(modes[0].params)], [grid], look),
        Para("* n * = channel n is not available in this mode"),
    ]
    return m.as_pdf(b, "Wuthermoor", "Kestle 20", modes, inner, look, m.REPORTLAB)


@chart("a-across", "modes down, slots across", "pdf", "it", "Sgrullone", "Fiocco 4")
def across(seed: int) -> Made:
    b = m.start("it", seed, rare=True)
    order = [
        (b.plain("dimmer"), [1, 1, 1]),
        (b.plain("red"), [1, 1, 1]),
        (b.plain("green"), [1, 1, 1]),
        (b.plain("blue"), [1, 1, 1]),
    ]
    order += [(b.plain("white"), [0, 1, 1]), (b.plain("strobe"), [0, 0, 1])]
    items: list[Item] = [(bare(p), list(w)) for p, w in order]
    modes = side(b, ["Semplice", "Avanzato", "Pieno"], items)
    look = Look("ruled", 8.5)
    grid = across_grid(b, modes)
    return m.as_pdf(
        b, "Sgrullone", "Fiocco 4", modes, m.mode_tables([m.untitled(modes[0].params)], [grid], look), look
    )
