"""Open charts: modes side by side, and matrices."""

from __future__ import annotations

from dataclasses import replace

from intake.corpus import making as m
from intake.corpus.building import Builder
from intake.corpus.content import M, Made, P
from intake.corpus.grids import Look, Para
from intake.corpus.layouts.sides import bare, matrix_grid, side_grid, spread
from intake.corpus.registry import chart

Item = tuple[P, list[bool | int]]


def head_items(b: Builder, count: int) -> list[Item]:
    """A moving light whose larger modes have more slots and fine bytes."""
    last = count - 1
    wide: list[bool | int] = [1] + [2] * last
    more: list[bool | int] = [0] + [1] * last
    every: list[bool | int] = [1] * count
    only: list[bool | int] = [0] * last + [1]
    items: list[Item] = [
        (b.angle("pan", 540), wide),
        (b.angle("tilt", 270), wide),
        (b.plain("speed"), only),
        (b.shutter(), every),
        (b.plain("dimmer", True), wide),
        (b.wheel(5), every),
        (b.gobos("gobo", 4, shake=False), more),
        (b.prism(), more),
        (b.plain("zoom"), more),
        (b.control(), every),
    ]
    return items


def side(b: Builder, names: list[str], items: list[Item], form: str = "name") -> list[M]:
    modes = spread([(name, (name,)) for name in names], items)
    if form == "count":
        return [
            replace(x, title=(t := b.words.HEADS["channels"][0][0].format(x.footprint)), names=(t,))
            for x in modes
        ]
    return [
        replace(x, title=n, names=(n, b.words.HEADS["mode"][0][0].format(n)))
        for x, n in zip(modes, names, strict=True)
    ]


@chart("side-two", "two modes side by side", "pdf", "en", "Quibbern", "Sorrel 30")
def side_two(seed: int) -> Made:
    b = m.start("en", seed)
    items = head_items(b, 2)
    modes = side(b, ["Basic", "Extended"], items)
    look = Look("ruled", 8.5)
    grid = side_grid(b, modes, [p for p, _ in items], m.style(b, "hyphen"), "")
    return m.as_pdf(
        b, "Quibbern", "Sorrel 30", modes, m.mode_tables([m.untitled(modes[0].params)], [grid], look), look
    )


@chart("side-three", "three modes side by side", "pdf", "de", "Feldnarr", "Glimmer 30")
def side_three(seed: int) -> Made:
    b = m.start("de", seed)
    items = head_items(b, 3)
    modes = side(b, ["", "", ""], items, "count")
    look = Look("ruled", 8.5)
    grid = side_grid(b, modes, [p for p, _ in items], m.style(b, "spaced", named_row=True), "–")
    inner = m.mode_tables([m.untitled(modes[0].params)], [grid], look)
    return m.as_pdf(b, "Feldnarr", "Glimmer 30", modes, inner, look, m.REPORTLAB)


@chart("side-four", "four modes side by side", "pdf", "fr", "Ostrelune", "Mirliton 4")
def side_four(seed: int) -> Made:
    b = m.start("fr", seed)
    items: list[Item] = [
        (b.plain("dimmer", True), [1, 1, 2, 2]),
        (b.plain("red", True, ""), [1, 1, 1, 2]),
        (b.plain("green", True, ""), [1, 1, 1, 2]),
        (b.plain("blue", True, ""), [1, 1, 1, 2]),
        (b.plain("white", True, ""), [0, 1, 1, 2]),
        (b.strobe(), [0, 1, 1, 1]),
        (b.numbered("macro", 4), [0, 0, 1, 1]),
        (b.plain("macros"), [0, 0, 1, 1]),
    ]
    modes = side(b, ["M1", "M2", "M3", "M4"], items)
    look = Look("zebra", 9)
    grid = side_grid(b, modes, [p for p, _ in items], m.style(b, "en", merge=False), "*")
    inner = [*m.mode_tables([m.untitled(modes[0].params)], [grid], look), Para("* canal absent dans ce mode")]
    return m.as_pdf(b, "Ostrelune", "Mirliton 4", modes, inner, look, font="serif")


@chart("side-six", "six modes side by side", "pdf", "en", "Nubberly", "Tarn 6")
def side_six(seed: int) -> Made:
    b = m.start("en", seed)
    order = [(b.plain("dimmer", True, ""), [1, 1, 1, 1, 2, 2]), (b.shutter(), [0, 0, 1, 1, 1, 1])]
    order += [(b.plain(item, True, ""), [1, 1, 1, 1, 2, 2]) for item in ("red", "green", "blue")]
    order += [(b.plain("white", True, ""), [0, 1, 1, 1, 2, 2]), (b.kelvin(2700, 8000), [0, 0, 0, 1, 1, 1])]
    order += [
        (b.wheel(7), [0, 0, 1, 1, 1, 1]),
        (b.numbered("effect", 5), [0, 0, 0, 1, 1, 1]),
        (b.plain("effects"), [0, 0, 0, 1, 1, 1]),
    ]
    order += [
        (b.plain("zoom"), [0, 0, 0, 1, 1, 1]),
        (b.choices("fan", ["fanauto", "fanlow", "fanfull"]), [0, 0, 0, 0, 0, 1]),
    ]
    order += [(b.control(lamp=False, smoothing=True), [0, 0, 0, 0, 1, 1])]
    items: list[Item] = [(p, list(w)) for p, w in order]
    modes = side(b, ["A", "B", "C", "D", "E", "F"], items)
    look = Look("ruled", 8)
    grid = side_grid(b, modes, [p for p, _ in items], m.style(b, "hyphen", merge=False), "")
    inner = m.mode_tables([m.untitled(modes[0].params)], [grid], look)
    return m.as_pdf(b, "Nubberly", "Tarn 6", modes, inner, look, m.REPORTLAB)


@chart("matrix", "slot by mode matrix", "pdf", "en", "Harrowmint", "Pell 5")
def matrix(seed: int) -> Made:
    b = m.start("en", seed)
    items = [(bare(p), w) for p, w in head_items(b, 3)]
    modes = side(b, ["Basic", "Standard", "Extended"], items)
    look = Look("ruled", 9)
    grid = matrix_grid(b, modes, "-")
    return m.as_pdf(
        b, "Harrowmint", "Pell 5", modes, m.mode_tables([m.untitled(modes[0].params)], [grid], look), look
    )


@chart("matrix-blank", "slot by mode matrix", "pdf", "it", "Orvacetti", "Faro 2")
def matrix_blank(seed: int) -> Made:
    b = m.start("it", seed)
    order = [
        (b.plain("dimmer", True), [1, 1, 2]),
        (b.plain("red"), [1, 1, 1]),
        (b.plain("green"), [1, 1, 1]),
        (b.plain("blue"), [1, 1, 1]),
    ]
    order += [
        (b.plain("white"), [0, 1, 1]),
        (b.plain("strobe", text=""), [0, 1, 1]),
        (b.plain("macro", text=""), [0, 0, 1]),
    ]
    items: list[Item] = [(bare(p), list(w)) for p, w in order]
    modes = side(b, ["", "", ""], items, "count")
    look = Look("rows", 9)
    grid = matrix_grid(b, modes, "")
    inner = m.mode_tables([m.untitled(modes[0].params)], [grid], look)
    return m.as_pdf(b, "Orvacetti", "Faro 2", modes, inner, look, m.REPORTLAB)
