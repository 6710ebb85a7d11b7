"""Manuals' pages: tildes, turned heads, and other tables on the chart's page."""

from __future__ import annotations

from random import Random
from typing import Any

from intake.corpus.aside.fourth_kit import head, merged, paper, table, tilde, vary
from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart


def beam_params(seed: int) -> tuple[P, ...]:
    rnd = Random(seed)
    colors = ["Deep red", "Pale green", "Amber", "Congo", "Lavender", "Sea blue"]
    rnd.shuffle(colors)
    return (
        P(("pan",), "X axis (Pan)", (1, 3), ("X axis fine",), "0 ~ 540°", (span(0, 540, "deg"),)),
        P(("tilt",), "Y axis (Tilt)", (2, 4), ("Y axis fine",), "0 ~ 270°", (span(0, 270, "deg"),)),
        P(("movement-speed",), "X/Y speed", (5,), text="Max to min speed"),
        P(
            ("color-wheel",),
            "Colour wheel",
            (6,),
            ranges=(
                k.opened(0, 9, "White"),
                *k.steps(10, 20, *colors),
                k.rainbow(130, 190, "Rainbow CW, fast to slow"),
                k.rainbow(191, 255, "Rainbow CCW, slow to fast"),
            ),
        ),
        P(
            ("strobe", "shutter"),
            "Strobe",
            (7,),
            ranges=(
                k.closed(0, 3, "Shut"),
                k.flash(4, 103, "Strobe, slow to fast"),
                k.opened(104, 107, "Open"),
                k.pulse(108, 207, "Pulse strobe, slow to fast"),
                k.opened(208, 212, "Open"),
                k.chance(213, 251, "Random strobe"),
                k.opened(252, 255, "Open"),
            ),
        ),
        P(("dimmer",), "Dimmer", (8,), text="0 ~ 100%", spans=k.LEVEL),
        P(
            ("gobo-wheel",),
            "Static gobos",
            (9,),
            ranges=(
                k.opened(0, 7, "White"),
                *k.steps(8, 10, *(f"Gobo {n}" for n in range(1, 10))),
                *(k.shake(98 + 16 * n, 113 + 16 * n, f"Gobo {n + 1} shake") for n in range(6)),
                k.spin(194, 255, "Gobo wheel rotation", "gobo-wheel"),
            ),
        ),
        P(("prism",), "8-facet prism", (10,), ranges=(k.out(0, 127, "Prism out"), R(128, 255, "Prism in"))),
        P(
            ("prism-rotation", "prism-index"),
            "Prism rotation",
            (11,),
            ranges=(
                k.index(0, 127, "Prism angle 0 ~ 360°", "prism", (0, 360)),
                k.spin(128, 190, "Forward rotation, fast to slow"),
                k.stop(191, 192, "No rotation"),
                k.spin(193, 255, "Reverse rotation, slow to fast"),
            ),
        ),
        P(("focus",), "Focus", (12,), text="Far to near"),
        P(("frost",), "Frost", (13,), ranges=(k.out(0, 127, "Frost out"), R(128, 255, "Frost in"))),
        P(
            ("lamp-control", "control"),
            "Lamp",
            (14,),
            ranges=(
                k.nothing(0, 25, "Unused"),
                R(26, 100, "Lamp off (after 5 s)", hazard="lamp off", hold_s=5),
                k.nothing(101, 199, "Unused"),
                R(200, 255, "Lamp on (after 5 s)", hazard="lamp on", hold_s=5),
            ),
        ),
        P(
            ("reset", "control"),
            "Reset",
            (15,),
            ranges=(k.nothing(0, 249, "Unused"), k.reset(250, 255, "Reset all motors (after 5 s)", 5)),
        ),
    )


@chart("fourth-beam", "CH before each number, tildes, merged slots", "pdf", "en", "Ravenstoke", "Kite B230")
def beam(seed: int) -> Made:
    params = beam_params(seed)
    rows, marks = merged(params, tilde, "CH{}")
    menu = [
        ["Menu", "Item", "Choice"],
        ["Address", "A001", "001 ~ 498"],
        ["Mode", "Auto / Sound / DMX", ""],
        ["Invert X", "ON / OFF", "OFF"],
        ["Hours", "Lamp hours", "0000"],
    ]
    parts = [
        head("5. Operation", 1),
        head(
            "Keep 3 m clear of the beam. Let the fixture cool for 20 minutes before the lamp is changed.", 0
        ),
        head("5.1 Display menu"),
        table(menu, [80, 120, 90]),
        head("5.2 Channel list (15CH)"),
        table([["Channel", "Function", "DMX value", "Details"], *rows], [50, 110, 70, 200], *marks),
    ]
    data = paper(parts, "Kite B230 user manual, rev. C")
    return k.made("Ravenstoke", "Kite B230", [k.mode(params, "", "15CH", "15 CH")], data)


PANEL = (
    P(("dimmer",), "Helligkeit", (1, 2), ("Helligkeit fein",), "0 bis 100 %", k.LEVEL),
    P(
        ("color-temperature",),
        "Farbtemperatur",
        (3,),
        text="2800 K bis 6500 K",
        spans=(span(2800, 6500, "K"),),
    ),
    P(
        ("green-correction", "tint"),
        "Grünanteil",
        (4,),
        ranges=(
            R(0, 120, "Minus Grün, stark bis schwach"),
            R(121, 134, "Neutral", may={"does": ("nothing",)}),
            R(135, 255, "Plus Grün, schwach bis stark"),
        ),
    ),
    P(
        ("strobe",),
        "Blitz",
        (5,),
        ranges=(
            k.out(0, 9, "Aus"),
            k.flash(10, 255, "Blitz von 1 Hz bis 20 Hz", (1, 20)),
        ),
    ),
    P(
        ("fan-mode", "fan"),
        "Lüfter",
        (6,),
        ranges=(
            k.fan_choice(0, 84, "Automatisch"),
            k.fan_choice(85, 169, "Leise"),
            k.fan_choice(170, 255, "Volle Drehzahl"),
        ),
    ),
)


@chart("fourth-panel", "switch and error tables above the chart", "pdf", "de", "Lindwerth", "Heckengimpel 40")
def panel(seed: int) -> Made:
    params = vary(PANEL, seed)
    rows, marks = merged(params, k.hyphen)
    switches = [["DIP", "1", "2", "3", "4", "5"], ["Wert", "1", "2", "4", "8", "16"]]
    errors = [
        ["Meldung", "Ursache", "Abhilfe"],
        ["E1", "Übertemperatur", "Lüftungsschlitze freihalten"],
        ["E2", "Lüfter steht", "Fachwerkstatt"],
    ]
    parts = [
        head("7 Startadresse"),
        table(switches, [50, 30, 30, 30, 30, 30]),
        head("8 Störungen"),
        table(errors, [60, 110, 170]),
        head("9 DMX-Belegung"),
        table([["Adresse", "Parameter", "DMX-Werte", "Wirkung"], *rows], [55, 110, 65, 190], *marks),
        head("Alle Werte gelten ab Softwarestand 2.4.", 0),
    ]
    data = paper(parts, "Bedienungsanleitung Heckengimpel 40")
    return k.made("Lindwerth", "Heckengimpel 40", [k.mode(params)], data)


def alone(deg: float) -> dict[str, Any]:
    """One figure for a whole travel: where it begins is not printed."""
    why = "one figure is printed, and not where it begins"
    return {"spans": (None, span(0, deg, "deg")), "doubt": "may", "why": why}


LAVAGE = (
    P(("pan",), "Pan", fine=("Pan fin",), text="540°", **alone(540)),
    P(("tilt",), "Tilt", fine=("Tilt fin",), text="220°", **alone(220)),
    P(("movement-speed",), "Vitesse Pan/Tilt", text="rapide à lent"),
    P(("dimmer",), "Gradateur", text="0 à 100 %", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Stroboscope",
        ranges=(
            k.closed(0, 7, "Fermé"),
            k.opened(8, 15, "Ouvert"),
            k.flash(16, 239, "Stroboscope lent à rapide"),
            k.opened(240, 255, "Ouvert"),
        ),
    ),
    *(
        P((word,), name, text="0 à 100 %", spans=k.LEVEL)
        for word, name in (("red", "Rouge"), ("green", "Vert"), ("blue", "Bleu"), ("white", "Blanc"))
    ),
    P(("zoom",), "Zoom", text="serré à large"),
    P(
        ("reset", "control"),
        "Réinitialisation",
        ranges=(k.nothing(0, 249, "Sans effet"), k.reset(250, 255, "Réinitialisation générale")),
    ),
)
LAVAGE_PLANS = (("9 canaux", "1 2 - 3 - 4 5 6 7 8 9"), ("13 canaux", "1/2 3/4 5 6 7 8 9 10 11 12 13"))


def upright(text: str) -> Any:
    """A head that is turned by a quarter, as narrow columns have it."""
    from reportlab.platypus import Flowable

    class Turned(Flowable):  # type: ignore[misc]
        def wrap(self, *_: float) -> tuple[float, float]:
            return 12, 52

        def draw(self) -> None:
            self.canv.rotate(90)
            self.canv.setFont("Helvetica-Bold", 8)
            self.canv.drawString(2, -8, text)

    return Turned()


@chart("fourth-lavage", "turned heads over the mode columns", "pdf", "fr", "Corvalune", "Gobemouche 712")
def lavage(seed: int) -> Made:
    params = vary(LAVAGE, seed)
    titled = [upright(name) for name, _ in LAVAGE_PLANS]
    rows: list[list[object]] = [[*titled, "Fonction", "Valeurs", "Action"]]
    marks: list[Any] = []
    for side in k.sides(tuple(params), *(plan for _, plan in LAVAGE_PLANS)):
        top = len(rows)
        for n, (lo, hi, text) in enumerate(side.rows):
            slots = ["" if n or s is None else s for s in side.slots]
            rows.append([*slots, "" if n else side.name, k.zeros(lo, hi), text])
        if len(side.rows) > 1:
            marks += [("SPAN", (c, top), (c, len(rows) - 1)) for c in range(3)]
    parts = [head("Canaux DMX", 1), table(rows, [28, 28, 120, 70, 170], *marks)]
    data = paper(parts, "Notice Gobemouche 712")
    modes = [k.mode(k.seat(params, plan), name) for name, plan in LAVAGE_PLANS]
    return k.made("Corvalune", "Gobemouche 712", modes, data)
