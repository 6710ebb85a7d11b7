"""Charts copied out of PDF viewers: tabs, single blanks, wide columns, lists of slots, feet of pages."""

from __future__ import annotations

from intake.corpus.content import Made
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

DERBY = x.params("""
red: Red = 0-100% [0 100 %]
green: Green = 0-100% [0 100 %]
blue: Blue = 0-100% [0 100 %]
strobe shutter: Strobe
  0-9 out: Off | 10-255 flash: Slow to fast
motor-speed gobo-rotation pan-rotation other mirror-rotation gobo-wheel-rotation: Motor rotation
  0-4 stop: Stop | 5-127 spin: Clockwise slow to fast | 128-133 stop: Stop
  134-255 spin: Counterclockwise slow to fast
macro effect color-macro: Auto programs
  0-7 nothing: Off | 8-127 runs: Program 1 | 128-247 runs: Program 2 | 248-255 sound: Sound active
""")


@chart(
    "seventh-paste-derby",
    "tabs between cells, slot and name in the first row of each slot, a foot behind",
    "txt",
    "en",
    "Hollybank Party Light",
    "Double Derby 3",
)
def derby(seed: int) -> Made:
    seated = x.run(DERBY)
    out = ["DMX Operation", "6 Channel Mode", "Channel\tFunction\tValue\tDescription"]
    out += [
        "\t".join(row) for row in f.body(seated, "slot name value text", lambda lo, hi: f"{lo:03}-{hi:03}")
    ]
    out += ["", "Hollybank Party Light\tDouble Derby 3 User Guide\t9", ""]
    mode = s.titled(seated, "6 Channel Mode", "6 Channel")
    return k.made("Hollybank Party Light", "Double Derby 3", [mode], "\n".join(out))


STRAHLER = x.params("""
dimmer: Helligkeit + Helligkeit fein = 0-100 % [0 100 %]
color-temperature: Farbtemperatur + Farbtemperatur fein = 2700-4000 K [2700 4000 K]
zoom: Ausstrahlwinkel = 10-45 Grad [10 45 deg]
dimmer-fade-time: Überblendzeit = 0-5 s [0 5 s]
""")
STRAHLER_PLANS = (
    ("2-Kanal-Modus", "1 2 - -"),
    ("4-Kanal-Modus", "1 2 3 4"),
    ("6-Kanal-Modus", "1/2 3/4 5 6"),
)


@chart(
    "seventh-paste-strahler",
    "single blanks, three modes under their titles, a page number between",
    "txt",
    "de",
    "Grünwald Messetechnik",
    "Schienenstrahler 30",
)
def strahler(seed: int) -> Made:
    out = ["4.3 DMX-Belegung", "Der Strahler kennt drei Betriebsarten.", ""]
    modes = []
    for title, plan in STRAHLER_PLANS:
        seated = k.seat(STRAHLER, plan)
        modes.append(s.titled(seated, title, title.removesuffix("-Modus"), title.replace("-", " ")))
        out += [title, "Kanal Funktion DMX-Wert Bereich"]
        out += s.blanks(
            f.body(seated, "slot name value text", lambda lo, hi: f"{lo}–{hi}", "Feineinstellung")
        )
        out.append("")
        if title.startswith("4"):
            out += ["Seite 7", ""]
    out += ["4.4 Fehlersuche", "Blinkt die grüne LED nicht, fehlt das DMX-Signal."]
    return k.made("Grünwald Messetechnik", "Schienenstrahler 30", modes, "\n".join(out) + "\n")


CANON = x.params("""
dimmer uv: Intensidad UV = 0 a 100 % [0 100 %]
strobe shutter: Estrobo
  0-9 out: Sin estrobo | 10-255 flash: De lento a rápido
dimmer-fade-time: Tiempo de fundido = 0 a 6 s [0 6 s]
""")


@chart(
    "seventh-paste-canon",
    "one line a slot or range behind its heading, a warning after",
    "txt",
    "es",
    "Sotavento Espectáculo",
    "Cañón UV 90",
)
def canon(seed: int) -> Made:
    out = ["CONTROL DMX", "El Cañón UV 90 tiene dos modos.", ""]
    modes = []
    for name, plan in (("Modo 1 canal", "1 - -"), ("Modo 3 canales", "1 2 3")):
        seated = k.seat(CANON, plan)
        modes.append(s.titled(seated, name, name.removeprefix("Modo ")))
        out.append(name)
        for line in k.lines(seated):
            out.append(f"Canal {line.slot}. {line.name}")
            out += [f"{lo} - {hi}: {text}" for lo, hi, text in line.rows]
        out.append("")
    out += ["ATENCIÓN", "No mire la fuente. Respete una distancia de 2 m a las personas."]
    return k.made("Sotavento Espectáculo", "Cañón UV 90", modes, "\r\n".join(out) + "\r\n")


SCANNER = x.params("""
pan: Pan = 0 to 180° [0 180 deg]
tilt: Tilt = 0 to 90° [0 90 deg]
color-wheel: Color
  0-14 white: White | 15-29: Red | 30-44: Yellow | 45-59: Green | 60-74: Magenta | 75-89: Blue
  90-104: Orange | 105-127: Light blue | 128-255 rainbow: Color wheel rotation, slow to fast
gobo-wheel: Gobo
  0-31 white: Open | 32-63: Dots | 64-95: Spiral | 96-127: Star | 128-159: Rings | 160-191: Bars
  192-255 spin gobo-wheel: Gobo wheel rotation, slow to fast
shutter strobe: Shutter
  0-7 closed: Closed | 8-199 flash: Strobe, slow to fast | 200-255 open: Open
dimmer: Dimmer = 0 to 100% [0 100 %]
movement-speed: Mirror speed = Fast to slow
control reset: Control
  0-229 nothing: No function | 230-255 reset: Reset, hold for 2 s {hold 2}
""")


@chart(
    "seventh-paste-scanner",
    "wide columns, slot and name set before values, the head again on the second page",
    "txt",
    "en",
    "Kestrel Motion Lights",
    "Mirrorscan 75",
)
def scanner(seed: int) -> Made:
    seated = x.run(SCANNER)
    rows = [["DMX Ch", "Feature", "Value", "Effect"], *f.body(seated, "slot name value text", k.dash)]
    lines = s.columns(rows, 4)
    # The second page begins where the slot of gobos does.
    cut = next(n for n, row in enumerate(rows) if row[1] == "Gobo")
    out = ["Mirrorscan 75", "DMX features", "", *lines[:cut], "", "12", "\fMirrorscan 75", "", lines[0]]
    out += [*lines[cut:], "", "13", ""]
    return k.made("Kestrel Motion Lights", "Mirrorscan 75", [k.mode(seated)], "\n".join(out))


BALLOON = x.params("""
dimmer: Dimmer = 0-100% [0 100 %]
color-temperature: CCT = 2800-6200K [2800 6200 K]
tint green-correction: Tint = magenta to green
fan: Fan = slow to fast
""")


@chart(
    "seventh-paste-balloon",
    "a list of slots with colons, values in brackets, short",
    "txt",
    "en",
    "Larkfield Airlight",
    "Moonball 4",
)
def balloon(seed: int) -> Made:
    seated = x.run(BALLOON)
    out = ["MOONBALL 4 QUICK START", "", "DMX footprint: 4 slots", ""]
    out += [f"Slot {p.slots[0]}: {p.label} (0-255), {p.text}" for p in seated]
    out += ["", "Inflate fully before the lamp is lit. Land the balloon in wind above 6 m/s."]
    return k.made("Larkfield Airlight", "Moonball 4", [k.mode(seated)], "\n".join(out) + "\n")


PINCEAU = x.params("""
dimmer: Gradateur = 0 à 100 % [0 100 %]
red: Rouge = 0 à 100 % [0 100 %]
green: Vert = 0 à 100 % [0 100 %]
blue: Bleu = 0 à 100 % [0 100 %]
white: Blanc = 0 à 100 % [0 100 %]
strobe shutter: Stroboscope
  0-15 out: Pas de stroboscope | 16-255 flash: Lent à rapide
macro effect color-macro: Programmes
  0-15 nothing: Pas de programme | 16-135 runs: Changement de couleur | 136-255 runs: Fondu de couleurs
""")
PINCEAU_PLANS = (("4 canaux", "- 1 2 3 4 - -"), ("7 canaux", "1 2 3 4 5 6 7"))


@chart(
    "seventh-paste-pinceau",
    "wide columns, two slot columns first, a dash where a mode lacks it",
    "txt",
    "fr",
    "Scénovar",
    "Pinceau 10",
)
def pinceau(seed: int) -> Made:
    rows = [[*(name for name, _ in PINCEAU_PLANS), "Fonction", "Valeurs", "Description"]]
    plans = [plan for _, plan in PINCEAU_PLANS]
    rows += f.beside(PINCEAU, plans, "slots name value text", lambda lo, hi: f"{lo:03} à {hi:03}")
    out = ["Tableau des canaux DMX", "", *s.columns(rows), "", "Scénovar - Pinceau 10 - notice v2", ""]
    modes = [s.titled(k.seat(PINCEAU, plan), name, f"Mode {name}") for name, plan in PINCEAU_PLANS]
    return k.made("Scénovar", "Pinceau 10", modes, "\n".join(out))
