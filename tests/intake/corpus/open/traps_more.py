"""Open charts with what else charts do: reserved pairs, two languages, lone defaults, points, page breaks."""

from __future__ import annotations

from dataclasses import replace

from intake.corpus import making as m
from intake.corpus.building import LONE
from intake.corpus.content import M, Made, P, R, span, truth
from intake.corpus.grids import Element, Heading, Para
from intake.corpus.open.traps_pdf import DIMMER, FOUR, WIDE, one, table
from intake.corpus.registry import chart
from intake.corpus.writers.web import html_page


@chart("reserved-pair", "slot, function, value, description", "pdf", "en", "Nubberly", "Ewer 14")
def reserved_pair(seed: int) -> Made:
    words = ["dimmer", "red", "green", "blue", "white", "amber", "lime", "zoom", "focus", "iris", "frost"]
    plain = [
        P((word, *(DIMMER.words[1:] if word == "dimmer" else ())), word.title(), (n,))
        for n, word in enumerate(words, 1)
    ]
    rows = [[str(p.slots[0]), p.label, "0-255", ""] for p in plain]
    rows += [["12-13", "RESERVED", "", ""], ["14", "Fan", "0-255", ""]]
    spare = [P(("reserved",), "RESERVED", (12,)), P(("reserved",), "RESERVED", (13,))]
    fan = P(("fan", "fan-mode"), "Fan", (14,))
    return one("Nubberly", "Ewer 14", [table(FOUR, rows, WIDE)], 14, *plain, *spare, fan, pdf=m.REPORTLAB)


@chart("two-languages", "two languages beside each other", "pdf", "de", "Feldnarr", "Docht 70")
def two_languages(seed: int) -> Made:
    rows = [
        ["1", "0-255", "Dimmer 0-100 %", "Dimmer 0-100 %"],
        ["2", "", "Shutter", "Shutter"],
        ["", "0-15", "Closed", "Geschlossen"],
        ["", "16-95", "Open", "Offen"],
        ["", "96-255", "Strobe, slow to fast", "Strobe, schnell nach langsam"],
        ["3", "0-255", "Red", "Rot"],
    ]
    flash = R(96, 255, "Strobe, slow to fast", also=("Strobe, schnell nach langsam",))
    both = " / ".join
    flash = replace(flash, also=(*flash.also, both([flash.text, flash.also[0]])))
    ranges = (
        R(0, 15, "Closed", does="closed", also=("Geschlossen", "Closed / Geschlossen")),
        R(16, 95, "Open", does="open", also=("Offen", "Open / Offen")),
        flash,
    )
    shutter = P(
        ("shutter", "strobe"),
        "Shutter",
        (2,),
        ranges=ranges,
        doubt="must",
        why="the two languages disagree on 96-255",
    )
    inner: list[Element] = [
        table(["Channel / Kanal", "Value / Wert", "Function", "Funktion"], rows, [28, 28, 52, 56])
    ]
    return one(
        "Feldnarr", "Docht 70", inner, 3, DIMMER.at(1), shutter, P(("red",), "Red", (3,)), language="de"
    )


@chart("default-in-text", "default in the text", "pdf", "en", "Nubberly", "Ewer 5")
def default_in_text(seed: int) -> Made:
    rows = [
        ["1", "Pan", "0-255", "540° (128 = default)"],
        ["2", "Pan fine", "0-255", ""],
        ["3", "Tilt", "0-255", "270° (128 = default)"],
        ["4", "Dimmer", "0-255", "0-100 % (0 = default)"],
        ["5", "Zoom", "0-255", "Narrow to wide"],
    ]
    arcs = {
        540: (span(0, 540, "deg"), span(-270, 270, "deg")),
        270: (span(0, 270, "deg"), span(-135, 135, "deg")),
    }
    pan = P(
        ("pan",),
        "Pan",
        (1, 2),
        text="540° (128 = default)",
        spans=arcs[540],
        default=128,
        doubt="may",
        why=LONE,
    )
    tilt = P(
        ("tilt",),
        "Tilt",
        (3,),
        text="270° (128 = default)",
        spans=arcs[270],
        default=128,
        doubt="may",
        why=LONE,
    )
    dimmer = replace(DIMMER.at(4), text="0-100 % (0 = default)", default=0)
    zoom = P(("zoom",), "Zoom", (5,), text="Narrow to wide")
    return one("Nubberly", "Ewer 5", [table(FOUR, rows, WIDE)], 5, pan, tilt, dimmer, zoom)


@chart("points-between", "slot, function, value, description", "html", "en", "Nubberly", "Ewer 2")
def points_between(seed: int) -> Made:
    points = ((0, 2700), (64, 3200), (128, 4300), (255, 6500))
    rows = [["1", "Dimmer", "0-255", "0-100 %"]]
    rows += [
        ["2" if n == 0 else "", "CCT" if n == 0 else "", str(v), f"{k} K"] for n, (v, k) in enumerate(points)
    ]
    rows.append(["3", "Tint", "0-255", ""])
    also = [(span(k, k, "K"),) for _, k in points]
    ranges = tuple(R(v, v, f"{k} K", spans_also=a) for (v, k), a in zip(points, also, strict=True))
    cct = P(
        ("color-temperature",), "CCT", (2,), ranges=ranges, doubt="may", why="values between are interpolated"
    )
    modes = [M("", (), 3, (DIMMER.at(1), cct, P(("tint",), "Tint", (3,))))]
    inner: list[Element] = [
        Heading("DMX chart"),
        table(FOUR, rows, WIDE),
        Para("Values between the points are interpolated."),
    ]
    return Made(html_page(inner, "Ewer 2", "en"), truth("Nubberly", "Ewer 2", modes))


@chart("cie-panel", "slot, function, value, description", "pdf", "en", "Harrowmint", "Sedge 2x1")
def cie_panel(seed: int) -> Made:
    rows = [
        ["1-2", "Dimmer", "0-65535", "0-100 %"],
        ["3-4", "CIE x", "0-65535", "0.0000 - 0.8000"],
        ["5-6", "CIE y", "0-65535", "0.0000 - 0.8000"],
        ["7", "Dimmer smoothing", "0-9", "As set in the menu"],
        ["", "", "10-127", "Dimmer response: fast"],
        ["", "", "128-255", "Dimmer response: smooth"],
    ]
    unit = span(0, 0.8, "1")
    ranges = (
        R(0, 9, "As set in the menu", does="as-menu"),
        R(10, 127, "Dimmer response: fast", sets=("smoothing", "fast", "fast")),
        R(128, 255, "Dimmer response: smooth", sets=("smoothing", "smooth", "smooth")),
    )
    x, y = (
        P((f"cie-{c}",), f"CIE {c}", s, text="0.0000 - 0.8000", spans=(unit,))
        for c, s in (("x", (3, 4)), ("y", (5, 6)))
    )
    smoothing = P(("smoothing",), "Dimmer smoothing", (7,), ranges=ranges)
    return one("Harrowmint", "Sedge 2x1", [table(FOUR, rows, WIDE)], 7, DIMMER.at(1, 2), x, y, smoothing)


@chart("repeated-heads", "tables over pages, header repeated", "pdf", "en", "Quibbern", "Varl 90")
def repeated_heads(seed: int) -> Made:
    from intake.corpus.grids import Look
    from intake.corpus.layouts.rows import rows_grid
    from intake.corpus.scenes import moving_head, spot

    b = m.start("en", seed)
    modes = [
        m.mode(
            b, 1, "Full", [*moving_head(b), *spot(b)[2:5], b.numbered("macro", 30), b.numbered("effect", 8)]
        )
    ]
    look = Look("rows", 10)
    grid = rows_grid(b, modes[0].params, ["slot", "label", "value", "text"], m.style(b, "mixed", merge=False))
    return m.as_pdf(
        b, "Quibbern", "Varl 90", modes, m.mode_tables(modes, [grid], look), look, paper="letter", size=10.5
    )
