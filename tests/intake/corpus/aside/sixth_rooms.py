"""Lights for events and buildings in PDFs: pixel bar, uplight, PAR, cyc in two languages, facade, blinder."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from intake.corpus.content import Made, P
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

BARRA = x.params("""
intensity-master dimmer: Dimmer general
strobe shutter: Estrobo
  0-9 out: Sin estrobo | 10-255 flash: Estrobo de lento a rápido
macro effect pixel-macro pixel-effect color-macro: Programas
  0-9 nothing: Sin función | 10-49 runs: Arco iris | 50-89 runs: Persecución | 90-129 runs: Ola
  130-169 runs: Fuego | 170-209 runs: Policía | 210-255 sound: Activado por sonido
macro-speed effect-speed pixel-macro-speed pixel-effect-speed color-macro-speed: Velocidad
  0-255: De lento a rápido
red: Rojo
green: Verde
blue: Azul
""")
BASE, COLORES = BARRA[:4], BARRA[4:]
PIXELES = tuple(replace(p, label=f"{p.label} {n}") for n in range(1, 13) for p in COLORES)


@chart(
    "sixth-barra",
    "plain slots without a description, a table a mode, up to forty slots over two pages",
    "pdf",
    "es",
    "Talleres Marimba",
    "Barra Pixel 12",
)
def barra(seed: int) -> Made:
    pdf = f.book("dejavu", "Barra Pixel 12", "Talleres Marimba ·")
    pdf.say("CANALES DMX", 14, True)
    pdf.say("El modo se elige en el menú CHND. Cada píxel tiene tres ledes de 3 W.")
    modes = []
    for params in (COLORES, (*BASE, *COLORES), (*BASE, *PIXELES)):
        seated = x.run(params)
        modes.append(x.mode(seated, f"Modo de {len(seated)} canales", f"{len(seated)} canales"))
        pdf.say(modes[-1].title, 10.5, True)
        rows = [["Canal", "Valor", "Función", "Descripción"]]
        rows += f.body(seated, "slot value name text", lambda lo, hi: f"{lo:03}~{hi:03}")
        pdf.grid(rows, (18, 30, 50, 66), size=8.5, borders_layout="MINIMAL")
    return k.made("Talleres Marimba", "Barra Pixel 12", modes, bytes(pdf.output()))


KEG = x.params("""
intensity-master dimmer: Total dimmer = 0-100% linear dimming [0 100 %]
red: Red dimmer = 0-100% linear dimming [0 100 %]
green: Green dimmer = 0-100% linear dimming [0 100 %]
blue: Blue dimmer = 0-100% linear dimming [0 100 %]
white: White dimmer = 0-100% linear dimming [0 100 %]
amber: Amber dimmer = 0-100% linear dimming [0 100 %]
uv violet: Purple dimmer = 0-100% linear dimming [0 100 %]
strobe shutter: Strobe
  0-7 out: No strobe | 8-255 flash: Strobe slow to fast
macro color-macro effect: Function choose
  0-50 nothing: No function | 51-100: Color choose | 101-150 runs: Color jump | 151-200 runs: Color gradual
  201-250 runs: Color pulse | 251-255 sound: Voice control
macro-speed effect-speed color-macro-speed: Function speed = Slow to fast
""")
KEG_PLANS = (
    ("4CH", "- 1 2 3 4 - - - - -"),
    ("6CH", "- 1 2 3 4 5 6 - - -"),
    ("8CH", "1 2 3 4 5 6 7 8 - -"),
    ("10CH", "1 2 3 4 5 6 7 8 9 10"),
)


@chart(
    "sixth-keg",
    "four slot columns filled with asterisks that the legend explains, all merged",
    "pdf",
    "en",
    "Brightcask Event",
    "Keg 6",
)
def keg(seed: int) -> Made:
    rows = [[*(name for name, _ in KEG_PLANS), "Function", "DMX Value", "Detail"]]
    rows += f.beside(KEG, [plan for _, plan in KEG_PLANS], "slots name value text", lacks="*")
    pdf = f.book("Helvetica", "Wireless battery uplight Keg 6", "")
    pdf.say("DMX Channel Description", 12, True)
    pdf.grid(rows, (14, 14, 14, 14, 36, 26, 58), (0, 1, 2, 3, 4), text_align="CENTER", v_align="MIDDLE")
    pdf.say('"*" mean this channel mode have not this function.')
    pdf.say("Battery: full charge 5 hours, working 8-12 hours. Please charge it every 3 months.")
    modes = [f.named(k.seat(KEG, plan), name) for name, plan in KEG_PLANS]
    return k.made("Brightcask Event", "Keg 6", modes, bytes(pdf.output()))


PAR = x.params("""
red: red = off to full
green: green = off to full
blue: blue = off to full
amber: amber = off to full
color-macro color-preset macro effect: color macros
  0-15 nothing: no function | 16-47: rose | 48-79: steel blue | 80-111: straw | 112-143: mint
  144-199 runs: color fade | 200-255 sound: sound active
strobe shutter: strobe
  0-15 out: no strobe | 16-255 flash: strobe, slow to fast
dimmer intensity-master: master dimmer = off to full
""")


@chart(
    "sixth-par",
    "lower case, value and percent before the function, unruled on a bare canvas",
    "pdf",
    "en",
    "Danforth & Pell",
    "PAR 64 LED",
)
def par(seed: int) -> Made:
    seated = x.run(PAR)
    sheet = x.Sheet("Times-Roman", foot="danforth & pell", paper=(396, 612), margin=36)
    sheet.say("using dmx", 14, True)
    sheet.say(
        "the PAR 64 LED takes seven channels. turn the dip switches to set the start address.", 9, after=10
    )
    rows = [["channel", "value", "percent", "function", ""]]
    for row in f.body(seated, "slot value share name text", k.hyphen):
        rows.append([*row[:2], row[2].removesuffix("%"), *row[3:]])
    sheet.table(rows, (44, 50, 50, 80, 100), "head", 9)
    return k.made("Danforth & Pell", "PAR 64 LED", [k.mode(seated)], sheet.data())


CYC = x.params("""
dimmer intensity-master: Dimmer / Intensity + Dimmer fein / Intensity fine = 0 – 100 % [0 100 %]
red: Rot / Red + Rot fein / Red fine = 0 – 100 % [0 100 %]
green: Grün / Green + Grün fein / Green fine = 0 – 100 % [0 100 %]
blue: Blau / Blue + Blau fein / Blue fine = 0 – 100 % [0 100 %]
lime: Limette / Lime + Limette fein / Lime fine = 0 – 100 % [0 100 %]
color-temperature: Weißpunkt / White point = 2700 – 8000 K [2700 8000 K]
shutter strobe: Shutter
  0-15 closed: geschlossen / closed | 16-31 open: offen / open
  32-223 flash: Strobe langsam – schnell / slow – fast | 224-255 open: offen / open
dimmer-curve: Dimmerkurve / Dimmer curve
  0-127 set dimmer-curve linear: linear | 128-255 set dimmer-curve square: quadratisch / square law
""")


def both(p: P) -> P:
    """Two languages stand in one cell: either is right, and so are both."""
    ranges = tuple(replace(r, also=tuple(r.text.split(" / "))) for r in p.ranges)
    return replace(p, ranges=ranges, doubt="may", why="two languages stand in one cell")


@chart(
    "sixth-cyc",
    "German and English in each cell, two slot columns, ruled",
    "pdf",
    "de",
    "Hellwig Bühnentechnik",
    "Cyc 4 RGBL",
)
def cyc(seed: int) -> Made:
    params = [both(replace(p, words=(*p.words, "white-point")) if p.label[:5] == "Weißp" else p) for p in CYC]
    plans = (("8 Bit", "1 2 3 4 5 6 7 8"), ("16 Bit", "1/2 3/4 5/6 7/8 9/10 11 12 13"))
    font = f.letter("serif")
    rows = [[*(name for name, _ in plans), "Funktion / Function", "DMX", "Wirkung / Effect"]]
    rows += f.beside(params, [plan for _, plan in plans], "slots name value text", k.dash, "–")
    parts: list[Any] = [
        f.say("DMX-Protokoll / DMX protocol", 13, f"{font}-Bold", 8),
        f.grid(rows, [40, 44, 170, 70, 175], ("GRID", (0, 0), (-1, -1), 0.5, "#777777"), font=font, size=8),
    ]
    modes = [f.named(k.seat(params, plan), name) for name, plan in plans]
    data = f.flow(parts, "Hellwig Bühnentechnik   Cyc 4 RGBL", head="Anleitung / Manual")
    return k.made("Hellwig Bühnentechnik", "Cyc 4 RGBL", modes, data)


LISIERE = x.params("""
dimmer intensity-master: Intensité = 0 à 100 % [0 100 %]
color-temperature: Blanc variable = 2200 à 5000 K [2200 5000 K]
warm-white: Blanc chaud = 0 à 100 % [0 100 %]
cool-white: Blanc froid = 0 à 100 % [0 100 %]
dimmer-fade-time: Temps de fondu
  0-9 nothing: aucun | 10-255: 0,1 à 10 s [0.1 10 s]
""")


@chart(
    "sixth-lisiere",
    "small paper, de and à columns, two short modes",
    "pdf",
    "fr",
    "Façadine",
    "Lisière 48",
)
def lisiere(seed: int) -> Made:
    sheet = x.Sheet(foot="Façadine – Lisière 48 – notice de pose", paper=(420, 595), margin=36)
    sheet.say("Pilotage DMX", 13, True)
    sheet.say("Réglez le mode avec le boîtier d'adressage. Sans signal, le luminaire garde le dernier état.")
    modes = []
    for letter, labels in (
        ("A", "Intensité | Blanc variable"),
        ("B", "Blanc chaud | Blanc froid | Temps de fondu"),
    ):
        count = labels.count("|") + 1
        seated = x.pick(LISIERE, labels, " ".join(map(str, range(1, count + 1))))
        modes.append(f.named(seated, f"Mode {letter}", f"{count} canaux", joint=" : "))
        sheet.say(modes[-1].title, 10, True)
        rows = [["Canal", "Fonction", "de", "à", "Effet"], *f.body(seated, "slot name low high text")]
        sheet.table(rows, (40, 95, 32, 32, 120), "rows", 8.5)
    return k.made("Façadine", "Lisière 48", modes, sheet.data())


DUET = x.params("""
dimmer: Lamp 1 = Off to full
dimmer: Lamp 2 = Off to full
intensity-master dimmer: Master = Off to full
strobe shutter: Strobe
  0-9 open: Open | 10-255 flash: 1-12 Hz [1 12 Hz]
dim-to-warm: Warm shift
  0-127 maybe-set dim-to-warm: Off | 128-255 maybe-set dim-to-warm: On
""")


@chart(
    "sixth-duet",
    "two modes in two tables next to each other",
    "pdf",
    "en",
    "Foundry Lane",
    "Duet 2",
)
def duet(seed: int) -> Made:
    sheet = x.Sheet(head="FOUNDRY LANE", foot="Duet 2 blinder", margin=40)
    sheet.say("DMX control", 14, True, 10)
    modes, top = [], sheet.y
    for n, (name, labels) in enumerate(
        (
            ("2-channel mode", "Lamp 1 | Lamp 2"),
            ("5-channel mode", "Master | Lamp 1 | Lamp 2 | Strobe | Warm shift"),
        )
    ):
        seated = x.pick(DUET, labels, " ".join(map(str, range(1, labels.count("|") + 2))))
        modes.append(x.mode(seated, name, name.removesuffix(" mode")))
        sheet.y = top
        sheet.say(name, 10, True, x=270 * n)
        rows = [["Ch", "Function", "Value", "Effect"], *f.body(seated, "slot name value text")]
        sheet.table(rows, (26, 80, 60, 80), "box", 8.5, x=270 * n)
    sheet.say("Lamp 1 is the upper lamp.", 8.5)
    return k.made("Foundry Lane", "Duet 2", modes, sheet.data())
