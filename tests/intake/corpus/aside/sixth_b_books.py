"""Workbooks by five makers: revisions and byte columns, groups and holds, gels, tables beside each other."""

from __future__ import annotations

import datetime
from dataclasses import replace
from typing import Any

from intake.corpus.content import M, Made, P, R, span
from intake.corpus.grids import C
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open.fifth_b_kit import beside, p
from intake.corpus.registry import chart


def _wide(word: str, label: str, text: str, first: float, last: float, unit: str) -> P:
    """Two bytes that the chart gives one name."""
    return P((word,), label, fine=(label,), text=text, spans=(span(first, last, unit),))


MANTLE_DIM = _wide("dimmer", "Dimmer", "0 to 100%", 0, 100, "%")
MANTLE_STROBE = p("strobe shutter", "Strobe", "0-7 out: Off", k.flash(8, 255, "1 to 25 Hz", (1, 25)))
MANTLE_FAN = p("fan-mode fan", "Fan", "0-84 fan: Auto", "85-169 fan: Low noise", "170-255 fan: High output")
MANTLE_COLORS = (
    ("red", "Red"),
    ("green", "Green"),
    ("blue", "Blue"),
    ("amber", "Amber"),
    ("cyan-emitter", "Cyan"),
    ("lime", "Lime"),
)
MANTLE_WHITES = p(
    "color-preset source-match white-point color-temperature color-macro",
    "White preset",
    "0-9 nothing: No preset",
    *(
        s.figure(10 + 41 * n, 50 + 41 * n, f"{kelvin} K", kelvin, "K")
        for n, kelvin in enumerate((2700, 3200, 4300, 5600, 6500, 8000))
    ),
)
MANTLE = (
    (
        "CCT",
        (
            MANTLE_DIM,
            _wide("color-temperature", "CCT", "2000 to 10000 K", 2000, 10000, "K"),
            P(
                ("tint", "green-correction"),
                "Green/magenta",
                text="-100 to +100%",
                spans=(span(-100, 100, "%"),),
            ),
            MANTLE_WHITES,
            MANTLE_STROBE,
            MANTLE_FAN,
        ),
    ),
    (
        "HSI",
        (
            MANTLE_DIM,
            _wide("hue", "Hue", "0 to 360°", 0, 360, "deg"),
            k.level("saturation", "Saturation", "0 to 100%"),
            MANTLE_STROBE,
            MANTLE_FAN,
        ),
    ),
    (
        "Direct",
        (MANTLE_DIM, *(k.level(word, label, "0 to 100%") for word, label in MANTLE_COLORS), MANTLE_STROBE),
    ),
)


@chart(
    "sixth-b-mantle",
    "revisions with dates first, a column that says which byte, from and to as numbers",
    "xlsx",
    "en",
    "Solarkite",
    "Mantle 120 C",
)
def mantle(seed: int) -> Made:
    sheets: list[tuple[str, list[list[s.Item]]]] = [
        (
            "Revisions",
            [
                ["Revision", "Date", "Changes"],
                ["1.0", datetime.date(2025, 2, 11), "First release"],
                ["1.1", datetime.date(2025, 6, 30), "Direct mode"],
                ["2.0", datetime.date(2025, 11, 4), "White presets, low noise fan"],
            ],
        )
    ]
    modes: list[M] = []
    for number, (name, params) in enumerate(MANTLE, 1):
        m = k.mode(s.row_of(params))
        title = f"Mode {number}: {name} ({m.footprint} slots)"
        modes.append(
            k.mode(m.params, title, name, f"Mode {number}", f"{number} {name}", f"Mode {number}: {name}")
        )
        rows: list[list[s.Item]] = [[C(title, cols=6), None, None, None, None, None], []]
        rows.append(["Slot", "Name", "Byte", "From", "To", "Meaning"])
        bytes_of = {
            line.slot: "8 bit" if len(line.p.slots) == 1 else ("MSB", "LSB")[line.byte]
            for line in k.lines(m.params)
        }
        for row in s.body(m.params, "slot name from to text"):
            rows.append([*row[:2], bytes_of.get(row[0], ""), *row[2:]])
        sheets.append((name, rows))
    return k.made("Solarkite", "Mantle 120 C", modes, s.book(sheets))


def _held(lo: int, hi: int, text: str, note: str, **more: Any) -> R:
    """A choice that must be held: the note stands in brackets behind it."""
    return R(lo, hi, f"{text} ({note})", also=(text,), **more)


STORED = "3 s halten, bleibt gespeichert"
SPOT: tuple[tuple[str, tuple[P, ...]], ...] = (
    (
        "Bewegung",
        (
            P(("pan",), "Pan", (1, 2), ("Pan fein",), "0° bis 540°", (span(0, 540, "deg"),)),
            P(("tilt",), "Tilt", (3, 4), ("Tilt fein",), "0° bis 270°", (span(0, 270, "deg"),)),
            P(("movement-speed",), "Pan/Tilt-Geschwindigkeit", (5,), text="schnell bis langsam"),
        ),
    ),
    (
        "Licht",
        (
            p(
                "shutter strobe",
                "Shutter",
                "0-19 closed: geschlossen",
                "20-24 open: offen",
                "25-94 flash: Strobe, langsam bis schnell",
                "95-174 pulse: Puls, langsam bis schnell",
                "175-249 random: Zufallsstrobe, langsam bis schnell",
                "250-255 open: offen",
                slots=(6,),
            ),
            P(("dimmer",), "Dimmer", (7, 8), ("Dimmer fein",), "0 bis 100 %", k.LEVEL),
        ),
    ),
    (
        "Farbe",
        (
            *(
                P((word,), label, (9 + n,), text="0 bis 100 %", spans=k.LEVEL)
                for n, (word, label) in enumerate(
                    (("cyan", "Cyan"), ("magenta", "Magenta"), ("yellow", "Gelb"))
                )
            ),
            P(("warm-correction", "color-correction"), "CTO", (12,), text="0 bis 100 %", spans=k.LEVEL),
            p(
                "color-wheel",
                "Farbrad",
                "0-15 open: offen",
                *k.steps(16, 20, "Rot", "Blau", "Grün", "Orange", "Nachtblau"),
                "116-185 rainbow: Drehung vorwärts, schnell bis langsam",
                "186-255 rainbow: Drehung rückwärts, langsam bis schnell",
                slots=(13,),
            ),
        ),
    ),
    (
        "Effekte",
        (
            p(
                "rotating-gobo-wheel gobo-wheel",
                "Drehgoborad",
                "0-15 open: offen",
                *k.steps(16, 20, *(f"Gobo {n}" for n in range(1, 7))),
                *(f"{136 + 20 * n}-{155 + 20 * n} shake: Gobo {n + 1} schütteln" for n in range(6)),
                slots=(14,),
            ),
            p(
                "gobo-index-rotation gobo-rotation gobo-index",
                "Gobodrehung",
                "0-127 index gobo: Position",
                "128-187 spin gobo: vorwärts, schnell bis langsam",
                "188-195 stop: Halt",
                "196-255 spin gobo: rückwärts, langsam bis schnell",
                slots=(15, 16),
                fine=("Gobodrehung fein",),
            ),
            p("prism", "Prisma", "0-127 out: ausgefahren", "128-255: 3-fach-Prisma", slots=(17,)),
            P(("frost",), "Frost", (18,), text="0 bis 100 %", spans=k.LEVEL),
        ),
    ),
    (
        "Optik",
        (
            P(("iris",), "Iris", (19,), text="offen bis klein"),
            P(("zoom",), "Zoom", (20,), text="eng bis weit"),
            P(("focus",), "Fokus", (21, 22), ("Fokus fein",), "nah bis fern"),
        ),
    ),
    (
        "Gerät",
        (
            p(
                "control reset",
                "Steuerung",
                "0-9 nothing: ohne Funktion",
                _held(
                    10, 19, "Lüfter leise", STORED, sets=("fan", "quiet", "leise"), hold_s=3, kept="stored"
                ),
                _held(
                    20,
                    29,
                    "Lüfter automatisch",
                    STORED,
                    sets=("fan", "auto", "automatisch"),
                    hold_s=3,
                    kept="stored",
                ),
                "30-199 nothing: ohne Funktion",
                _held(200, 209, "Reset Pan/Tilt", "5 s halten", hazard="reset", hold_s=5),
                _held(210, 219, "Reset gesamt", "5 s halten", hazard="reset", hold_s=5),
                "220-255 nothing: ohne Funktion",
                slots=(23,),
            ),
        ),
    ),
)


@chart(
    "sixth-b-falken",
    "groups merged before the slots, a slot of control that holds and stores",
    "xlsx",
    "de",
    "Falkenried Bühnenlicht",
    "FS 300 P",
)
def falken(seed: int) -> Made:
    rows: list[Any] = [["FS 300 P, DMX-Protokoll"], ["Stand", datetime.date(2025, 3, 17)], []]
    rows.append(["Gruppe", "Kanal", "Funktion", "DMX-Wert", "Bedeutung"])
    params: list[P] = []
    for group, inside in SPOT:
        params += inside
        rows += beside([group], s.body(inside, "slot name value text", k.dash, reach=True))
    rows += [[], ["Alle Werte dezimal. Gerät vor dem Reset nicht berühren."]]
    mode = k.mode(params)
    return k.made("Falkenried Bühnenlicht", "FS 300 P", [mode], s.book([("DMX", rows)], "dd.mm.yyyy"))


def _head(fine: bool) -> tuple[P, ...]:
    fines = ("Tilt fine",) if fine else ()
    tilt = P(("tilt",), "Tilt", fine=fines, text="0-220°", spans=(span(0, 220, "deg"),), default=128)
    return (tilt if not fine else replace(tilt, fine_default=0), replace(QUAD_DIM, label="Dimmer"))


QUAD_DIM = P(("dimmer",), "Master", text="0-100%", spans=k.LEVEL, default=0)
QUAD_ALL = (
    replace(QUAD_DIM, words=("intensity-master", "dimmer")),
    p("strobe shutter", "Strobe", "0-9 out: Off", k.flash(10, 255, "1-15 Hz", (1, 15)), default=0),
    P(("movement-speed",), "Tilt speed", text="Fast to slow", default=0),
)


@chart(
    "sixth-b-quad",
    "a sheet a mode, heads merged before their slots, defaults in the last column",
    "xlsx",
    "en",
    "Brackenridge Automation",
    "Fourtilt",
)
def quad(seed: int) -> Made:
    sheets: list[tuple[str, list[list[s.Item]]]] = []
    modes: list[M] = []
    for name, shared, fine in (("Basic", QUAD_ALL[:2], False), ("Full", QUAD_ALL, True)):
        groups = [("All heads", shared), *((f"Head {n}", _head(fine)) for n in range(1, 5))]
        params = s.row_of([q for _, inside in groups for q in inside])
        modes.append(k.mode(params, name))
        rows: list[list[Any]] = [["Part", "Slot", "Parameter", "DMX value", "Result", "Default"]]
        at = 0
        for group, inside in groups:
            mine = params[at : at + len(inside)]
            rows += beside([group], s.body(mine, "slot name value text default"))
            at += len(inside)
        sheets.append((name, rows))
    return k.made("Brackenridge Automation", "Fourtilt", modes, s.book(sheets))
