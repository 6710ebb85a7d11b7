"""Charts as text pasted from a viewer of PDFs, by six makers: columns kept, columns lost, and blocks."""

from __future__ import annotations

from intake.corpus.aside import eighth_kit as e
from intake.corpus.content import Made
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_b_kit as v
from intake.corpus.open import seventh_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

FRESNEL = x.params("""
dimmer: Dimmer + Dimmer Fine = 0 to 100% [0 100 %]
color-temperature: Color Temperature = 2800K to 6000K [2800 6000 K]
zoom: Zoom = 15° to 50° [15 50 deg]
strobe shutter: Strobe
  0-10 out: Off | 11-255 flash: Slow to fast
""")
FRESNEL_MODES = (
    ("3 Channel Mode", "Dimmer* | Color Temperature | Zoom"),
    ("5 Channel Mode", "Dimmer | Color Temperature | Zoom | Strobe"),
)


@chart(
    "eighth-alder",
    "pasted with one blank between columns, two modes, the foot of a page between them",
    "txt",
    "en",
    "Alderwick Lanterns",
    "Alder 150 Fresnel",
)
def alder(seed: int) -> Made:
    lines = ["Alder 150 Fresnel", "DMX Control Channels", ""]
    modes = []
    for n, (title, labels) in enumerate(FRESNEL_MODES):
        modes.append(e.part(FRESNEL, labels, title, title.removesuffix(" Mode")))
        lines += ["Alder 150 Fresnel User Manual 9", ""] if n else []
        lines += [title, "Channel Function DMX Value Description"]
        lines += s.blanks(f.body(modes[-1].params, "slot name value text", k.hyphen))
    lines += ["Alder 150 Fresnel User Manual 10", ""]
    return k.made("Alderwick Lanterns", "Alder 150 Fresnel", modes, "\n".join(lines))


MINI = x.params("""
pan: Pan + Pan fine = 0 - 540 degrees [0 540 deg]
tilt: Tilt + Tilt fine = 0 - 210 degrees [0 210 deg]
movement-speed: Pan/Tilt speed = fast to slow
dimmer intensity-master: Master dimmer = 0 - 100% [0 100 %]
shutter strobe: Shutter
  0-7 closed: closed | 8-247 flash: strobe slow to fast | 248-255 open: open
red: Red = 0 - 100% [0 100 %]
green: Green = 0 - 100% [0 100 %]
blue: Blue = 0 - 100% [0 100 %]
white: White = 0 - 100% [0 100 %]
macro effect movement-macro: Auto mode
  0-50 out: DMX control | 51-150 perhaps: auto show | 151-255 sound: sound show
reset control: Reset
  0-249 nothing: no function | 250-255 reset: reset
""")
MINI_PLANS = (("10 channels", "1 2 - 3 4 5 6 7 8 9 10"), ("13 channels", "1/2 3/4 5 6 7 8 9 10 11 12 13"))


@chart(
    "eighth-sparrow",
    "pasted with the columns kept, two modes under each other, small letters",
    "txt",
    "en",
    "Trelawn Stage Products",
    "Sparrow Wash 7",
)
def sparrow(seed: int) -> Made:
    lines = ["Sparrow Wash 7", "", "DMX table", ""]
    modes = []
    for title, plan in MINI_PLANS:
        modes.append(k.mode(k.seat(MINI, plan), title, title.split()[0], title.split()[0] + " ch"))
        rows = [["channel", "function", "value", "description"]]
        rows += f.body(modes[-1].params, "slot name value text", v.zeros_spaced, "fine movement")
        lines += [title, "", *s.columns(rows, 3), ""]
    return k.made("Trelawn Stage Products", "Sparrow Wash 7", modes, "\n".join(lines))


VERFOLGER = x.params("""
dimmer: Dimmer + Dimmer fein = 0 – 100 % [0 100 %]
shutter strobe: Shutter
  0-9 closed: Geschlossen | 10-19 open: Offen | 20-229 flash: Strobe langsam bis schnell
  230-255 open: Offen
iris: Iris = Offen bis geschlossen
color-wheel color-scroller: Farbwechsler
  0-24 white: Weiß | 25-49: CTO | 50-74: Rosa | 75-99: Hellblau | 100-124: Lavendel | 125-149: Grün
  150-255: Kongoblau
frost: Frost
  0-127 out: Aus | 128-255: Ein
fan-mode fan: Lüfter
  0-127 fan: Automatisch | 128-255 fan: Leise
""")


@chart(
    "eighth-fahrt",
    "pasted German, one blank between columns, head repeated after a page's foot",
    "txt",
    "de",
    "Hattorfer Bühnengeräte",
    "Verfolger 600 LED",
)
def fahrt(seed: int) -> Made:
    seated = x.run(VERFOLGER)
    rows = s.blanks(f.body(seated, "slot name value text", v.en))
    head = "Kanal Funktion Wert Bedeutung"
    cut = next(n for n, row in enumerate(rows) if row.startswith("5 "))
    lines = [
        "5.2 DMX-Belegung",
        "Der Verfolger belegt 7 Kanäle. Die Adresse wird am Display eingestellt.",
        head,
    ]
    lines += [*rows[:cut], "", "Verfolger 600 LED | Bedienungsanleitung | Seite 14", "\f" + head, *rows[cut:]]
    lines += ["", "5.3 Wartung", "Linsen monatlich reinigen, Lüfter alle 200 Stunden prüfen."]
    return k.made("Hattorfer Bühnengeräte", "Verfolger 600 LED", [x.mode(seated)], "\n".join(lines))


STRIP = x.params("""
dimmer intensity-master: Total dimming = From dark to bright
red: Red dimming = From dark to bright
green: Green dimming = From dark to bright
blue: Blue dimming = From dark to bright
amber: Amber dimming = From dark to bright
strobe shutter: Strobe
  0-4 out: No strobe | 5-255 flash: Strobe from slow to fast
color-preset color-macro virtual-color-wheel: Color selection
  0-9 white: No color | 10-59: Red | 60-109: Green | 110-159: Blue | 160-209: Amber | 210-255: Full bright
""")


@chart(
    "eighth-lvdu",
    "pasted CH1 lines of a wall washer, tildes of three digits, translated English",
    "txt",
    "en",
    "Lvdu Engineering Lighting",
    "LD-W2415",
)
def lvdu(seed: int) -> Made:
    seated = x.run(STRIP)
    rows = f.body(seated, "slot name value text", lambda lo, hi: f"{lo:03}~{hi:03}")
    rows = [[f"CH{row[0]}" if row[0] else "", *row[1:]] for row in rows]
    lines = [
        "LD-W2415 Wall Washer Product Manual",
        "Input voltage AC100-240V 50/60Hz",
        "Power 240W",
        "IP rating IP65",
    ]
    lines += ["", "Channel table (7 channels)", "Channel Function Value Explain", *s.blanks(rows)]
    lines += [
        "",
        "Attention: please cut off the power before maintenance.",
        "Thank you for choosing our product!",
    ]
    mode = x.mode(seated, "Channel table (7 channels)", "7 channels", "Channel table")
    return k.made("Lvdu Engineering Lighting", "LD-W2415", [mode], "\r\n".join(lines))


DECOUPE = x.params("""
dimmer: Intensité + Intensité fine = De 0 à 100 % [0 100 %]
color-temperature: Température de couleur = De 2700 K à 6500 K [2700 6500 K]
tint green-correction: Correction vert/magenta = Du magenta au vert
strobe shutter: Stroboscope
  0-7 out: Aucun éclair | 8-255 flash: Éclairs du plus lent au plus rapide
dimmer-curve: Courbe de gradation
  0-84 curve: Linéaire | 85-169 curve: Quadratique | 170-255 curve: Courbe en S
fan-mode fan: Ventilateur
  0-84 fan: Automatique | 85-169 fan: Silencieux | 170-255 fan: Vitesse maximale
""")


@chart(
    "eighth-corbeille",
    "pasted French with the columns kept, a blank line between channels",
    "txt",
    "fr",
    "Lanternes Morvandelles",
    "Découpe 180 BV",
)
def corbeille(seed: int) -> Made:
    seated = x.run(DECOUPE)
    rows = f.body(seated, "slot name value text", v.worded("à"))
    printed = s.columns([["Canal", "Paramètre", "Valeur DMX", "Effet"], *rows], 4)
    lines = ["Découpe 180 BV - notice technique", "", "Protocole DMX", "", printed[0]]
    for row, line in zip(rows, printed[1:], strict=True):
        lines += ["", line] if row[0] else [line]
    lines += ["", "Consommation : 210 W. Masse : 8,4 kg."]
    return k.made("Lanternes Morvandelles", "Découpe 180 BV", [x.mode(seated)], "\n".join(lines))


RETRO = x.params("""
dimmer: Lamp dimmer = 0 to 100 % [0 100 %]
dimmer: Ring dimmer = 0 to 100 % [0 100 %]
red: Ring red = 0 to 100 % [0 100 %]
green: Ring green = 0 to 100 % [0 100 %]
blue: Ring blue = 0 to 100 % [0 100 %]
strobe shutter: Lamp strobe
  0-9 out: off | 10-255 flash: 1 to 18 Hz [1 18 Hz]
""")


@chart(
    "eighth-filament",
    "pasted blocks: a line for the channel and its name, its values below, ranges with to",
    "txt",
    "en",
    "Cinderford Vintage Lighting",
    "Filament One",
)
def filament(seed: int) -> Made:
    seated = x.run(RETRO)
    lines = ["Filament One", "Retro lamp with a color ring", "", "DMX channels (6-channel mode)"]
    for row in f.body(seated, "slot name value text", v.worded("to")):
        lines += ["", f"Channel {row[0]} - {row[1]}"] if row[0] else []
        lines.append(f"{row[2]}: {row[3]}")
    names = ("6-channel mode", "6-channel", "6 channel", "DMX channels")
    mode = x.mode(seated, "DMX channels (6-channel mode)", *names)
    return k.made("Cinderford Vintage Lighting", "Filament One", [mode], "\n".join([*lines, ""]))
