"""Facade lights, a dimmer pack, a wind machine and a pixel bar in PDFs."""

from __future__ import annotations

from typing import Any

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

HUES = (("red", "Rouge"), ("green", "Vert"), ("blue", "Bleu"), ("white", "Blanc"))
WHOLE = [P((word,), name, text="0 % à 100 %", spans=k.LEVEL) for word, name in HUES]
PARTS = [
    P((word,), f"{name} section {n}", text="0 % à 100 %", spans=k.LEVEL)
    for n in (1, 2, 3)
    for word, name in HUES
]
GENERAL = P(("dimmer", "intensity-master"), "Intensité générale", text="0 % à 100 %", spans=k.LEVEL)
SCENES = (
    P(
        ("macro", "color-macro", "effect"),
        "Scénario",
        ranges=(
            k.nothing(0, 15, "Aucun scénario"),
            k.runs(16, 75, "Fondu lent"),
            k.runs(76, 135, "Vague"),
            k.runs(136, 195, "Arc-en-ciel"),
            k.runs(196, 255, "Feu de bois"),
        ),
    ),
    P(("macro-speed", "effect-speed", "color-macro-speed"), "Vitesse du scénario", text="Lente à rapide"),
)
FACADE = (
    (("Mode 1", "Couleur unie"), WHOLE),
    (("Mode 2", "Couleur et scénarios"), [GENERAL, *WHOLE, *SCENES]),
    (("Mode 3", "Sections"), [GENERAL, *PARTS]),
)


@chart("fifth-facade", "columns without rules, a heading a mode", "pdf", "fr", "Lumerre Façades", "Ligne 24")
def facade(seed: int) -> Made:
    pdf = f.book("stix", "Ligne 24 — projecteur linéaire IP67", "Lumerre Façades   ")
    pdf.say("Pilotage DMX512", 16, True)
    pdf.say(
        "Longueur de ligne maximale : 200 m. Posez une résistance de 120 ohms sur le dernier appareil.", 10
    )
    modes = []
    for titles, params in FACADE:
        seated = k.seat(params, " ".join(map(str, range(1, len(params) + 1))))
        mode = f.named(seated, *titles, joint=" : ", count=False)
        modes.append(mode)
        pdf.say(mode.title, 12, True)
        rows = [["Canal", "Paramètre", "Valeurs DMX", "Action"]]
        rows += f.body(seated, "slot name value text", lambda lo, hi: f"de {lo} à {hi}")
        pdf.grid(rows, (20, 50, 38, 60), size=10, borders_layout="NONE")
    return k.made("Lumerre Façades", "Ligne 24", modes, bytes(pdf.output()))


DIMMER = (
    P(("intensity-master", "dimmer"), "Master generale", text="0 – 100 %", spans=k.LEVEL),
    *(P(("dimmer",), f"Dimmer uscita {n}", text="0 – 100 %", spans=k.LEVEL) for n in range(1, 7)),
    P(("dimmer-fade-time",), "Tempo di dissolvenza", text="0 – 10 s", spans=(span(0, 10, "s"),)),
    P(
        ("dimmer-curve",),
        "Curva",
        ranges=(
            R(0, 84, "Lineare", sets=("dimmer-curve", "linear", "Lineare")),
            R(85, 169, "Quadratica", sets=("dimmer-curve", "square", "Quadratica")),
            R(170, 255, "Commutata", sets=("dimmer-curve", "switched", "Commutata")),
        ),
    ),
)
DIMMER_PLANS = (("Modo A", "- 1 2 3 4 5 6 - -"), ("Modo B", "1 2 3 4 5 6 7 8 9"))


@chart("fifth-gradatore", "function first, slot columns last", "pdf", "it", "Gradatori Pellesina", "DP 6")
def gradatore(seed: int) -> Made:
    plans = [plan for _, plan in DIMMER_PLANS]
    head = ["Funzione", "Valore DMX", "Significato", *(name for name, _ in DIMMER_PLANS)]
    rows = [head, *f.beside(DIMMER, plans, "name value text slots", lambda lo, hi: f"{lo}–{hi}", "")]
    marks: list[tuple[Any, ...]] = [("BOX", (0, 0), (-1, -1), 0.8, "#000000")]
    marks += [("INNERGRID", (0, 0), (-1, -1), 0.3, "#000000"), ("BACKGROUND", (0, 0), (-1, 0), "#cfe3d4")]
    for y in [n for n in range(1, len(rows)) if rows[n][0]]:
        end = next((n for n in range(y + 1, len(rows)) if rows[n][0]), len(rows)) - 1
        marks += [("SPAN", (x, y), (x, end)) for x in (0, 3, 4) if end > y]
    parts = [
        f.say("Tabella dei canali DMX", 14, "Helvetica-Bold", 8),
        f.say("Carico per uscita: 10 A resistivi. Il lavoro sui morsetti spetta a personale qualificato."),
        f.grid(rows, [104, 60, 80, 42, 42], *marks),
        f.say("Codici di errore", 12, "Helvetica-Bold"),
        f.grid([["Codice", "Causa"], ["Er1", "Manca una fase"], ["Er2", "Temperatura alta"]], [80, 160]),
    ]
    modes = [f.named(k.seat(DIMMER, plan), name) for name, plan in DIMMER_PLANS]
    data = f.flow(parts, "DP 6 istruzioni d'uso", (420, 595))
    return k.made("Gradatori Pellesina", "DP 6", modes, data)


def _off(lo: int, hi: int, text: str) -> R:
    return k.optional(R(lo, hi, text), does=("nothing", "stop", "closed"))


WIND = (
    P(("fan",), "Wind", (1,), ranges=(_off(0, 12, "Off"), R(13, 255, "Slow to fast"))),
    P(("power",), "Motor relay", (2,), ranges=(_off(0, 127, "Off"), R(128, 255, "On"))),
)
WIND_MODES = (("Mode 1", "(1 slot)", "1 -"), ("Mode 2", "(2 slots)", "1 2"))


@chart("fifth-wind", "decimal and hex, one slot and two", "pdf", "en", "Galewick Stage Machines", "Gust 1")
def wind(seed: int) -> Made:
    pdf = f.book("Helvetica", "", "Galewick Gust 1, installation and use, page", f.A5)
    pdf.say("Remote control", 13, True)
    pdf.say("Guards must be fitted before the motor is powered. Keep hair and drapes 1 m away.")
    modes = []
    for name, count, plan in WIND_MODES:
        mode = f.named(k.seat(WIND, plan), name, count)
        modes.append(mode)
        pdf.say(mode.title, 10.5, True)
        rows = [["Slot", "Function", "Decimal", "Hex", "Result"]]
        rows += f.body(mode.params, "slot name value hex text")
        pdf.grid(rows, (12, 30, 24, 22, 28), (0, 1))
    pdf.say("Loss of DMX stops the motor after 1 second.", 8)
    return k.made("Galewick Stage Machines", "Gust 1", modes, bytes(pdf.output()))


PIXEL = (
    P(("intensity-master", "dimmer"), "Gesamthelligkeit", text="0 % bis 100 %", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Strobe",
        ranges=(k.out(0, 7, "Aus"), k.flash(8, 255, "Langsam bis schnell")),
    ),
    P(
        ("pixel-effect", "pixel-macro", "effect", "macro"),
        "Lauflicht",
        ranges=(
            k.nothing(0, 31, "Kein Lauflicht"),
            *(k.runs(32 + 32 * n, 63 + 32 * n, f"Muster {n + 1}") for n in range(7)),
        ),
    ),
    P(
        ("pixel-effect-speed", "pixel-macro-speed", "effect-speed", "macro-speed"),
        "Lauflicht Tempo",
        text="Langsam bis schnell",
    ),
    *(
        P((word,), f"Pixel {n} {name}", text="0 % bis 100 %", spans=k.LEVEL)
        for n in range(1, 13)
        for word, name in (("red", "Rot"), ("green", "Grün"), ("blue", "Blau"))
    ),
)
PIXEL_SEATS = k.seat(PIXEL, " ".join(map(str, range(1, 41))))


@chart("fifth-pixel", "forty slots in stripes, header again", "pdf", "de", "Nordvik Leuchten", "Leiste 12 P")
def pixel(seed: int) -> Made:
    pdf = f.book("vera", "Leiste 12 P", "Nordvik Leuchten · Seite")
    pdf.say("DMX-Protokoll", 15, True)
    pdf.say("40-Kanal-Modus", 11, True)
    rows = [["Kanal", "Funktion", "Wert", "Beschreibung"]]
    rows += f.body(PIXEL_SEATS, "slot name value text", lambda lo, hi: f"{lo:03}-{hi:03}")
    pdf.grid(
        rows,
        (20, 50, 30, 66),
        line_height=6.5,
        borders_layout="NONE",
        cell_fill_color=(226, 232, 240),
        cell_fill_mode="ROWS",
    )
    pdf.say("Technische Daten", 12, True)
    pdf.grid([["Größe", "Wert"], ["Leistung", "96 W"], ["Gewicht", "3,1 kg"]], (50, 50))
    mode = k.mode(PIXEL_SEATS, "40-Kanal-Modus", "40-Kanal", "40 Kanal", "40 Kanäle")
    return k.made("Nordvik Leuchten", "Leiste 12 P", [mode], bytes(pdf.output()))
