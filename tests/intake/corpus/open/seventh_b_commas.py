"""CSV by five more makers, from a ring light to a hazer, and the page of a batten for backdrops."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from intake.corpus.content import M, Made
from intake.corpus.grids import C
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_b_kit as v
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.open.fifth_b_kit import Cell, beside, csv_text, page, web_rows
from intake.corpus.registry import chart

HALO = x.params("""
dimmer intensity-master: Brightness = 0% to 100% [0 100 %]
color-temperature: Color temperature = 3000 K to 6000 K [3000 6000 K]
strobe shutter: Strobe
  0-9 out: No strobe | 10-255 flash: 1 Hz to 15 Hz [1 15 Hz]
effect macro: FX
  0-19 nothing: No FX | 20-59 runs: Candle | 60-99 runs: Breathing | 100-139 runs: Storm
  140-179 runs: TV set | 180-219 runs: Welding | 220-255 runs: Party
effect-speed macro-speed: FX speed = Slow to fast
""")


@chart(
    "seventh-b-halo",
    "the mode's name in its first row alone, start and end columns, a blank row between modes",
    "csv",
    "en",
    "Fallowfield Screen Lights",
    "Halo Ring 45",
)
def halo(seed: int) -> Made:
    rows: list[list[Any]] = [["Mode", "Ch", "Function", "Start", "End", "Notes"]]
    modes: list[M] = []
    for name, plan in (("Simple", "1 2 - - -"), ("Standard", "1 2 3 - -"), ("Effects", "1 2 3 4 5")):
        modes.append(k.mode(k.seat(HALO, plan), name))
        body = s.body(modes[-1].params, "slot name from to text")
        rows += [[name if n == 0 else "", *row] for n, row in enumerate(body)]
        rows.append([""] * 6)
    return k.made("Fallowfield Screen Lights", "Halo Ring 45", modes, csv_text(rows[:-1]))


GUANRUI = x.params("""
pan: Pan + Pan fine tuning = Horizontal move of the head
tilt: Tilt + Tilt fine tuning = Vertical move of the head
movement-speed: X/Y speed = Move speed from fast to slow
dimmer intensity-master: Total dimming = Brightness from dark to light
shutter strobe: Strobe
  0-7 closed: Light closed | 8-15 open: Light open | 16-240 flash: Strobe from slow to quick
  241-255 open: Light open
red: Red = Red from dark to light
green: Green = Green from dark to light
blue: Blue = Blue from dark to light
white: White = White from dark to light
color-preset color-macro virtual-color-wheel: Color choose
  0-10 nothing: Invalid | 11-50: Red | 51-90: Green | 91-130: Blue | 131-170: Yellow | 171-210: Purple
  211-255: Cyan
macro effect movement-macro color-macro: Built-in program
  0-20 nothing: Invalid | 21-110 perhaps: Auto program 1 | 111-200 perhaps: Auto program 2
  201-255 sound: Sound program
reset control: Reset
  0-249 nothing: Invalid | 250-255 reset: Reset, keep 5 seconds {hold 5}
""")
GUANRUI_PLANS = ("1 2 - 3 4 5 6 7 8 - - 9", "1/2 3/4 5 6 7 8 9 10 11 12 13 14")


@chart(
    "seventh-b-guanrui",
    "values before names, channels as CH01, two modes under each other, translated wording",
    "csv",
    "en",
    "Guanrui Stage Equipment",
    "GR-W736 Mini Wash",
)
def guanrui(seed: int) -> Made:
    rows: list[list[Any]] = [["GR-W736 channel table"]]
    modes: list[M] = []
    for plan in GUANRUI_PLANS:
        modes.append(v.sized(k.seat(GUANRUI, plan), "", "{}{} channel mode", "{1} channel", "{1}CH"))
        rows += [[modes[-1].title], ["Channel", "Numerical value", "Function", "Instruction"]]
        for line in k.lines(modes[-1].params):
            for n, (lo, hi, text) in enumerate(line.rows):
                first = ["", k.zeros(lo, hi), ""] if n else [f"CH{line.slot:02}", k.zeros(lo, hi), line.name]
                rows.append([*first, text])
    return k.made("Guanrui Stage Equipment", "GR-W736 Mini Wash", modes, csv_text(rows))


KUBUS = x.params("""
dimmer intensity-master: Gesamthelligkeit = 0 % bis 100 % [0 100 %]
red: Rot = 0 % bis 100 % [0 100 %]
green: Grün = 0 % bis 100 % [0 100 %]
blue: Blau = 0 % bis 100 % [0 100 %]
white: Weiß = 0 % bis 100 % [0 100 %]
strobe shutter: Stroboskop
  0-9 out: aus | 10-255 flash: langsam bis schnell
color-macro macro effect: Farbprogramm
  0-15 nothing: kein Programm | 16-63 perhaps: Farbwechsel hart | 64-111 perhaps: Farbwechsel weich
  112-159 perhaps: Regenbogen | 160-207 perhaps: Kaminfeuer | 208-255 perhaps: Meeresrauschen
color-macro-speed macro-speed effect-speed: Programmtempo = langsam bis schnell
""")
KUBUS_PLANS = (("Modus 1", "- 1 2 3 4 - - -"), ("Modus 2", "1 2 3 4 5 6 - -"), ("Modus 3", "1 2 3 4 5 6 7 8"))


@chart(
    "seventh-b-kubus",
    "a line that names the delimiter, slot columns of three modes first, empty where absent",
    "csv",
    "de",
    "Wiesengrund Raumlicht",
    "Kubus 4 RGBW",
)
def kubus(seed: int) -> Made:
    rows: list[list[Any]] = [[*(name for name, _ in KUBUS_PLANS), "Funktion", "DMX-Wert", "Beschreibung"]]
    for side in k.sides(KUBUS, *(plan for _, plan in KUBUS_PLANS)):
        for n, (lo, hi, text) in enumerate(side.rows):
            slots = ["" if n or at is None else at for at in side.slots]
            rows.append([*slots, "" if n else side.name, v.spaced(lo, hi), text])
    modes = [k.mode(k.seat(KUBUS, plan), name) for name, plan in KUBUS_PLANS]
    data = "\ufeffsep=;\r\n" + csv_text(rows, ";")
    return k.made("Wiesengrund Raumlicht", "Kubus 4 RGBW", modes, data)


POURSUITE = s.row_of(
    x.params("""
dimmer: Intensité + Intensité (fin) = 0 à 100 % [0 100 %]
shutter strobe douser: Obturateur
  0-15 closed: Fermé | 16-31 open: Ouvert | 32-223 flash: Stroboscope lent à rapide | 224-255 open: Ouvert
iris: Iris = Grand à petit
zoom: Zoom = 6° à 14° [6 14 deg]
focus: Netteté = Proche à lointain
color-scroller color-wheel color-semaphore color-preset: Changeur de couleurs
  0-19 white: Sans filtre | 20-58: Rose pâle | 59-97: Paille | 98-136: Ambre | 137-175: Bleu acier
  176-214: Lavande | 215-255: Vert mousse
frost: Diffuseur
  0-127 out: Hors du faisceau | 128-255: Dans le faisceau
fan-mode fan: Ventilation
  0-127 fan: Normale | 128-255 fan: Silencieuse
""")
)


@chart(
    "seventh-b-poursuite",
    "address lines above, the word à between three digits, a list of spare parts below, semicolons",
    "csv",
    "fr",
    "Lucarne et Fils",
    "Poursuite 1200 L",
)
def poursuite(seed: int) -> Made:
    rows: list[list[Any]] = [
        ["Lucarne et Fils - projecteurs de poursuite"],
        ["Poursuite 1200 L : plan des canaux DMX (version 2 du logiciel)"],
        [],
        ["N° de canal", "Fonction", "Valeurs", "Effet"],
        *s.body(POURSUITE, "slot name value text", v.worded("à", zeros=True), "Réglage fin"),
        [],
        ["Pièces détachées", "Référence"],
        ["Cassette de filtres", "LF-1207"],
        ["Poignée", "LF-1233"],
    ]
    return k.made("Lucarne et Fils", "Poursuite 1200 L", [k.mode(POURSUITE)], csv_text(rows, ";"))


VEIL = s.row_of(
    x.params("""
haze-output fog-output fluid-pump: Haze
  0-5 off: Off | 6-255: 5% to 100% [5 100 %]
fan: Fan speed = 10% to 100% [10 100 %]
output-duration: Burst time = 1 s to 60 s [1 60 s]
output-interval: Wait time = 0 s to 180 s [0 180 s]
""")
)


@chart(
    "seventh-b-veil",
    "remarks behind number signs, four slots, small letters in the head",
    "csv",
    "en",
    "Drumlin Haze Works",
    "Veil 2",
)
def veil(seed: int) -> Made:
    top = "# Veil 2 DMX map\n# applies to serial numbers from 2200 on\n# warm-up takes 90 seconds\n"
    rows = [["slot", "name", "dmx", "description"], *s.body(VEIL, "slot name value text")]
    return k.made("Drumlin Haze Works", "Veil 2", [k.mode(VEIL)], top + csv_text(rows, ",", "\n"))


BATTEN = x.params("""
dimmer intensity-master: Dimmer = Da 0 a 100% [0 100 %]
red: Rosso = Da 0 a 100% [0 100 %]
green: Verde = Da 0 a 100% [0 100 %]
blue: Blu = Da 0 a 100% [0 100 %]
amber: Ambra = Da 0 a 100% [0 100 %]
strobe shutter: Strobo
  0-7 out: Spento | 8-255 flash: Da lento a veloce
dimmer-curve: Curva del dimmer
  0-63 curve: Lineare | 64-127 curve: Quadratica | 128-191 curve: Quadratica inversa | 192-255 curve: A S
smoothing dimmer-fade-time: Velocità dimmer
  0-127 maybe-set smoothing: Veloce (LED) | 128-255 maybe-set smoothing: Lenta (alogena)
""")
BATTEN = (*BATTEN[:7], replace(BATTEN[7], doubt="may", why="its name may mean smoothing or a time"))
BATTEN_PLANS = (
    ("4 canali", "- 1 2 3 4 - - -"),
    ("6 canali", "1 2 3 4 5 6 - -"),
    ("8 canali", "1 2 3 4 5 6 7 8"),
)


@chart(
    "seventh-b-batten",
    "three slot columns under one head, three digits, a row of thead for the names of modes",
    "html",
    "it",
    "Teatro Lumiera",
    "Bilancia 8 RGBA",
)
def batten(seed: int) -> Made:
    names = ("Parametro", "Valori", "Significato")
    heads = [[C("Canale DMX", cols=3), *(C(text, rows=2) for text in names)], [C(n) for n, _ in BATTEN_PLANS]]
    rows: list[list[Cell]] = []
    for side in k.sides(BATTEN, *(plan for _, plan in BATTEN_PLANS)):
        slots = ["" if at is None else at for at in side.slots]
        rows += beside([*slots, side.name], [[k.zeros(lo, hi), text] for lo, hi, text in side.rows])
    body = "\n".join(
        [
            "<h1>Bilancia 8 RGBA</h1>",
            "<p>Bilancia a LED per fondali &amp; quinte, 8 celle, 240 W.</p>",
            "<h2>Scheda tecnica</h2><ul><li>Lunghezza 1 m</li><li>Angolo 45°</li><li>IP 20</li></ul>",
            "<h2>Canali</h2>",
            f"<table><thead>\n{web_rows(heads, 'th')}\n</thead><tbody>\n{web_rows(rows)}\n</tbody></table>",
        ]
    )
    modes = [k.mode(k.seat(BATTEN, plan), name, name.split()[0]) for name, plan in BATTEN_PLANS]
    return k.made("Teatro Lumiera", "Bilancia 8 RGBA", modes, page("it", "Bilancia 8 RGBA", body))
