"""OpenDocument sheets by four makers: a sheet a mode, numbers of a workshop, defaults, pairs of slots."""

from __future__ import annotations

from typing import Any

from intake.corpus.content import M, Made, P, R, span
from intake.corpus.grids import C, Element, Heading, Para
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open.fifth_b_kit import Cell, beside, p, table
from intake.corpus.registry import chart
from intake.corpus.writers.sheets import Sheet, ods

FLOOD_ALL = P(("uv", "dimmer"), "UV output", text="0% to 100%", spans=k.LEVEL)
FLOOD_STROBE = p("strobe shutter", "Strobe", "0-9 out: Off", "10-255 flash: Slow to fast")
FLOOD_PARTS = tuple(
    P(("uv", "dimmer"), f"Panel {n} UV", text="0% to 100%", spans=k.LEVEL) for n in range(1, 5)
)
FLOOD_MASTER = P(("intensity-master", "dimmer"), "Master", text="0% to 100%", spans=k.LEVEL)
FLOOD_PROGRAM = p(
    "effect macro",
    "Program",
    "0-9 nothing: Off",
    "10-89 runs: Pulse",
    "90-169 runs: Chase",
    "170-255 random: Random panels",
)
FLOOD = (
    ("2 slot", (FLOOD_ALL, FLOOD_STROBE)),
    ("4 slot", FLOOD_PARTS),
    ("7 slot", (FLOOD_MASTER, *FLOOD_PARTS, FLOOD_STROBE, FLOOD_PROGRAM)),
)


@chart(
    "sixth-b-flood",
    "a sheet for each mode with a heading and a warning, function before slot",
    "ods",
    "en",
    "Violet Hour Effects",
    "Gloam UV 4",
)
def flood(seed: int) -> Made:
    sheets: list[Sheet] = []
    modes: list[M] = []
    for name, params in FLOOD:
        title = f"{name} personality"
        modes.append(k.mode(s.row_of(params), title, name))
        rows: list[list[Cell]] = [["Function", "Slot", "Value", "Output"]]
        for line in k.lines(modes[-1].params):
            rows += beside([line.name, line.slot], [[s.spaced(lo, hi), text] for lo, hi, text in line.rows])
        inner: list[Element] = [Heading(title), table(rows)]
        inner.append(Para("Ultraviolet light: keep 1 m away from people and limit the time of use."))
        sheets.append((name, inner))
    return k.made("Violet Hour Effects", "Gloam UV 4", modes, ods(sheets))


FLUTER = s.row_of(
    (
        P(("dimmer", "intensity-master"), "Gesamthelligkeit", text="dunkel bis hell"),
        *(
            P((word,), label, text="dunkel bis hell")
            for word, label in (
                ("red", "Rot"),
                ("green", "Grün"),
                ("blue", "Blau"),
                ("amber", "Bernstein"),
                ("warm-white", "Warmweiß"),
            )
        ),
        p("strobe shutter", "Blitz", "0-5 out: kein Blitz", "6-255 flash: langsam bis schnell"),
        p(
            "smoothing",
            "Glättung",
            s.smooth(0, 84, "keine", "none", may={"does": ("nothing",)}),
            s.smooth(85, 169, "kurz", "short"),
            s.smooth(170, 255, "lang (wie Glühlampe)", "long", also=("lang",)),
        ),
        P(("reserved",), "frei"),
    )
)


@chart(
    "sixth-b-fluter",
    "a workshop's own sheet: numbers in columns from and to, remarks above",
    "ods",
    "de",
    "Werkstatt Holzgasse",
    "Umbaufluter 6",
)
def fluter(seed: int) -> Made:
    rows: list[list[Cell]] = [["Kanal", "Was", "von", "bis", "Wirkung"]]
    for row in s.body(FLUTER[:-1], "slot name from to text"):
        rows.append(row)
    rows.append([9, "frei", "", "", ""])
    inner: list[Element] = [
        Para("Umbaufluter 6 (alte Rampenfluter mit neuen LED)"),
        Para("Adresse am Drehschalter, letzte Änderung 12.01.2026"),
        table(rows),
        Para("Geräte 1 bis 14 hängen in der Rampe, 15 und 16 liegen im Lager."),
    ]
    return k.made("Werkstatt Holzgasse", "Umbaufluter 6", [k.mode(FLUTER)], ods([("Tabelle1", inner)]))


def _rest(word: str, label: str, text: str, default: int, fine: bool = False, *spans: Any) -> P:
    fines = (f"{label} fine",) if fine else ()
    return P((word,), label, fine=fines, text=text, spans=spans, default=default, fine_default=0)


PROIETTORE = (
    _rest("dimmer", "Intensità", "0 - 100%", 0, True, span(0, 100, "%")),
    p(
        "shutter strobe",
        "Otturatore",
        "0-9 closed: Chiuso",
        "10-99 flash: Stroboscopio lento - veloce",
        "100-255 open: Aperto",
        default=255,
    ),
    p(
        "color-wheel",
        "Ruota colori",
        "0-19 white: Bianco",
        *k.steps(20, 20, "Rosso", "Arancio", "Giallo", "Verde", "Azzurro", "Blu", "Magenta"),
        "160-255 rainbow: Rotazione lenta - veloce",
        default=0,
    ),
    p(
        "rotating-gobo-wheel gobo-wheel",
        "Ruota gobo rotanti",
        "0-39 open: Aperto",
        *k.steps(40, 36, *(f"Gobo {n}" for n in range(1, 7))),
        default=0,
    ),
    p(
        "gobo-rotation gobo-index-rotation",
        "Rotazione gobo",
        "0-127 index gobo: Indicizzazione",
        "128-190 spin gobo: Rotazione oraria veloce - lenta",
        "191-192 stop: Fermo",
        "193-255 spin gobo: Rotazione antioraria lenta - veloce",
        default=0,
    ),
    _rest("zoom", "Zoom", "15° - 40°", 128, False, span(15, 40, "deg")),
    _rest("focus", "Fuoco", "Vicino - lontano", 128, True),
)
PROIETTORE_PLANS = (("Base", "1 2 3 4 - 5 6"), ("Avanzato", "1/2 3 4 5 6 7 8/9"))


@chart(
    "sixth-b-proiettore",
    "merged names, defaults beside them, slots of two modes before",
    "ods",
    "it",
    "Luceforma",
    "PG 80 Gobo",
)
def proiettore(seed: int) -> Made:
    rows: list[list[Cell]] = [
        [C("Canale", cols=2), None, *(C(t, rows=2) for t in ("Funzione", "Predef.", "DMX", "Effetto"))],
        [*(name for name, _ in PROIETTORE_PLANS), None, None, None, None],
    ]
    defaults = {q.label: q.default for q in PROIETTORE}
    for side in k.sides(PROIETTORE, *(plan for _, plan in PROIETTORE_PLANS)):
        first: list[Cell] = ["" if at is None else at for at in side.slots]
        first += [side.name, defaults.get(side.name) or 0]
        rows += beside(first, [[k.zeros(lo, hi), text] for lo, hi, text in side.rows])
    modes = [k.mode(k.seat(PROIETTORE, plan), name) for name, plan in PROIETTORE_PLANS]
    notes: list[Element] = [Para("Proiettore PG 80, IP65"), table(rows)]
    return k.made("Luceforma", "PG 80 Gobo", modes, ods([("Canali", notes)]))


DOCENT_LEVEL = P(("dimmer",), "Level", fine=("",), text="0.1% to 100%", spans=(span(0.1, 100, "%"),))
DOCENT_WHITE = P(
    ("color-temperature",),
    "White tone",
    fine=("",),
    text="2200 K to 5000 K",
    spans=(span(2200, 5000, "K"),),
)
DOCENT_WARM = p(
    "dim-to-warm",
    "Warm dimming",
    k.optional(R(0, 127, "Off"), sets=("dim-to-warm",), does=("nothing",)),
    k.optional(R(128, 255, "On"), sets=("dim-to-warm",)),
)
DOCENT_FADE = P(("dimmer-fade-time",), "Fade time", text="0 s to 10 s", spans=(span(0, 10, "s"),))
DOCENT = (
    ("Static", (DOCENT_LEVEL, DOCENT_WHITE)),
    ("Evening", (DOCENT_LEVEL, DOCENT_WHITE, DOCENT_WARM, DOCENT_FADE)),
)


@chart(
    "sixth-b-docent",
    "pairs of slots in one row with one large range, a table of wiring after the modes",
    "ods",
    "en",
    "Galleon Lane Optics",
    "Docent 12",
)
def docent(seed: int) -> Made:
    inner: list[Element] = [Heading("Docent 12 gallery downlight, DMX512")]
    modes: list[M] = []
    for name, params in DOCENT:
        modes.append(s.counted(s.row_of(params), name, "slots", "{} mode, {} {}"))
        rows: list[list[Cell]] = [["Slots", "Control", "Values", "Meaning"]]
        for q in modes[-1].params:
            where = " + ".join(map(str, q.slots))
            entries = q.ranges or (R(0, q.top, q.text),)
            rows += beside([where, q.label], [[s.spaced(r.lo, r.hi), r.text] for r in entries])
        inner += [Heading(modes[-1].title), table(rows)]
    wires = [["Wire", "Color"], ["Data +", "orange"], ["Data -", "white"], ["Common", "brown"]]
    inner += [Heading("Wiring"), table(wires)]
    return k.made("Galleon Lane Optics", "Docent 12", modes, ods([("Docent 12", inner)]))
