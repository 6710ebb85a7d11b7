"""Lights for film and for buildings in PDFs: panels, a lamp head, a fresnel, a tube and a wall washer."""

from __future__ import annotations

from typing import Any

from intake.corpus.aside import eighth_kit as e
from intake.corpus.content import Made
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_b_kit as v
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

SLAB = x.params("""
dimmer intensity-master: Intensity + Intensity Fine = 0 - 100% [0 100 %]
color-temperature: CCT + CCT Fine = 2000K - 10000K [2000 10000 K]
green-correction tint: Green/Magenta Shift = Full magenta to full green, 128 = neutral
red: Red + Red Fine = 0 - 100% [0 100 %]
green: Green + Green Fine = 0 - 100% [0 100 %]
blue: Blue + Blue Fine = 0 - 100% [0 100 %]
warm-white: Warm White + Warm White Fine = 0 - 100% [0 100 %]
cool-white: Cool White + Cool White Fine = 0 - 100% [0 100 %]
strobe shutter: Strobe
  0-9 out: Off | 10-255 flash: 1 - 25 Hz [1 25 Hz]
""")
SLAB_MODES = (
    ("CCT 8-bit", "Intensity* | CCT* | Green/Magenta Shift | Strobe"),
    ("CCT 16-bit", "Intensity | CCT | Green/Magenta Shift | Strobe"),
    ("RGBWW 8-bit", "Intensity* | Red* | Green* | Blue* | Warm White* | Cool White* | Strobe"),
    ("RGBWW 16-bit", "Intensity | Red | Green | Blue | Warm White | Cool White | Strobe"),
)


@chart(
    "eighth-slab",
    "a small table a mode, gray head, spaced hyphens, modes numbered",
    "pdf",
    "en",
    "Lensmoor Lighting",
    "Slab 60 C",
)
def slab(seed: int) -> Made:
    parts = [
        f.say("DMX Modes", 17, "Helvetica-Bold", 8),
        f.say("Choose a mode on the fixture under Menu > DMX > Mode. All modes are also selectable via RDM."),
    ]
    modes = []
    for number, (name, labels) in enumerate(SLAB_MODES, 1):
        title = f"Mode {number} - {name}"
        modes.append(e.part(SLAB, labels, title, name, f"Mode {number}", f"{number} - {name}"))
        rows = [["Channel", "Parameter", "DMX Value", "Description"]]
        rows += f.body(modes[-1].params, "slot name value text", v.spaced)
        marks: list[tuple[Any, ...]] = [("GRID", (0, 0), (-1, -1), 0.4, "#b0b0b0")]
        marks += [("BACKGROUND", (0, 0), (-1, 0), "#e4e4e4")]
        parts += [f.say(title, 11.5, "Helvetica-Bold", 4), f.grid(rows, [54, 130, 80, 220], *marks)]
    return k.made(
        "Lensmoor Lighting", "Slab 60 C", modes, f.flow(parts, "lensmoor lighting", head="Slab 60 C")
    )


ZY = x.params("""
dimmer intensity-master: Dimming = The brightness from 0% to 100% [0 100 %]
strobe shutter: Strobe
  0-5 out: No strobe | 6-255 flash: Strobe speed from slow to fast
effect macro: Light effect
  0-10 nothing: No effect | 11-40 runs: Thunder | 41-70 runs: Broken bulb | 71-100 runs: Fire
  101-130 runs: TV | 131-160 runs: Explosion | 161-190 runs: Pulsing | 191-255 runs: Fireworks
effect-speed macro-speed: Effect frequency = The frequency from slow to fast
fan-mode fan: Fan
  0-127 fan: Smart fan | 128-255 fan: Mute
""")


@chart(
    "eighth-zy",
    "centered cells of three digits, one mode of five, a list of effects, translated English",
    "pdf",
    "en",
    "Zhongyao Film Lamp",
    "ZY-300D",
)
def zy(seed: int) -> Made:
    pdf = f.book("dejavu", "", "ZY-300D User's Manual", (148, 210))
    pdf.say("DMX control", 13, True)
    pdf.say("When the lamp receives DMX signal the screen displays DMX icon. The lamp occupies 5 channels.")
    rows = [["Channel", "Function", "Value", "Description"]]
    seated = x.run(ZY)
    rows += f.body(seated, "slot name value text", k.zeros)
    pdf.grid(rows, (17, 29, 21, 49), (0, 1), 8, text_align="CENTER", v_align="MIDDLE")
    pdf.say("Maintenance", 11, True)
    pdf.say("Clean the dust of the fan one time every month. Do not look at the lamp directly.")
    return k.made("Zhongyao Film Lamp", "ZY-300D", [x.mode(seated)], bytes(pdf.output()))


STUFE = x.params("""
dimmer: Helligkeit + Helligkeit fein = 0 bis 100 % [0 100 %]
color-temperature: Farbtemperatur = 2800 K bis 6200 K [2800 6200 K]
green-correction tint: Grünkorrektur = Minusgrün bis Plusgrün
zoom focus: Abstrahlwinkel = 14° bis 60° [14 60 deg]
fan-mode fan: Lüftersteuerung
  0-85 fan: Automatik | 86-170 fan: Leise | 171-255 fan: Volllast
""")
STUFE_MODES = (
    ("Standard", "Helligkeit* | Farbtemperatur | Abstrahlwinkel"),
    ("Präzision", "Helligkeit | Farbtemperatur | Grünkorrektur | Abstrahlwinkel"),
    ("Studio", "Helligkeit | Farbtemperatur | Grünkorrektur | Abstrahlwinkel | Lüftersteuerung"),
)


@chart(
    "eighth-hohlkehle",
    "title with the count in brackets, lines between rows, ranges with bis, name before values",
    "pdf",
    "de",
    "Kaltenstein Bühnenoptik",
    "Stufenlinse 220 TW",
)
def hohlkehle(seed: int) -> Made:
    pdf = f.book("serif", "Stufenlinse 220 TW – Bedienungsanleitung", "Kaltenstein Bühnenoptik GmbH  |")
    pdf.say("8 DMX-Betriebsarten", 15, True)
    pdf.say("Die Betriebsart wird im Menü „DMX“ eingestellt. Werkseinstellung ist die Betriebsart Standard.")
    modes = []
    for name, labels in STUFE_MODES:
        m = e.part(STUFE, labels)
        title = f"Betriebsart {name} ({m.footprint} Kanäle)"
        names = (name, f"Betriebsart {name}", f"{name} ({m.footprint} Kanäle)")
        modes.append(e.named(m.params, title, *names))
        rows = [["Kanal", "Funktion", "DMX-Werte", "Beschreibung"]]
        rows += f.body(m.params, "slot name value text", v.worded("bis"))
        pdf.say(title, 10.5, True, 1)
        pdf.grid(rows, (16, 46, 30, 70), borders_layout="HORIZONTAL_LINES")
    return k.made("Kaltenstein Bühnenoptik", "Stufenlinse 220 TW", modes, bytes(pdf.output()))


FACADE = x.params("""
dimmer intensity-master: Gradateur = 0 à 100 % [0 100 %]
red: Rouge = 0 à 100 % [0 100 %]
green: Vert = 0 à 100 % [0 100 %]
blue: Bleu = 0 à 100 % [0 100 %]
white: Blanc = 0 à 100 % [0 100 %]
strobe shutter: Stroboscope
  0-10 out: Arrêt | 11-255 flash: Lent à rapide
""")
FACADE_MODES = (("RVB", "Rouge | Vert | Bleu"), ("RVBB", "Rouge | Vert | Bleu | Blanc"))


@chart(
    "eighth-facade",
    "three short tables for a wall washer, the count before the name, en dashes",
    "pdf",
    "fr",
    "Ateliers Vauclair",
    "Rampe 36 RVBB",
)
def facade(seed: int) -> Made:
    sheet = x.Sheet(
        "Helvetica", "Ateliers Vauclair – éclairage architectural", "Rampe 36 RVBB, notice d'emploi"
    )
    sheet.say("Tableau des canaux DMX", 14, True)
    sheet.say(
        "La rampe se commande en 3, 4 ou 6 canaux. Le nombre de canaux et l'adresse se règlent avec la "
        "télécommande ou par RDM. Sans signal, la dernière valeur reste affichée."
    )
    modes = []
    every = (*FACADE_MODES, ("Complet", "Gradateur | Rouge | Vert | Bleu | Blanc | Stroboscope"))
    for name, labels in every:
        m = e.part(FACADE, labels)
        title = f"{m.footprint} canaux : {name}"
        modes.append(e.named(m.params, title, name, f"{m.footprint} canaux", f"{name} {m.footprint} canaux"))
        rows = [["Canal", "Fonction", "Valeur", "Description"]]
        rows += f.body(m.params, "slot name value text", v.en)
        sheet.band(title, 430)
        sheet.table(rows, (50, 120, 80, 180), "box")
    return k.made("Ateliers Vauclair", "Rampe 36 RVBB", modes, sheet.data())


REED = x.params("""
dimmer intensity-master: Master dimmer = 0 to 100 % [0 100 %]
red: Red = 0 to 100 % [0 100 %]
green: Green = 0 to 100 % [0 100 %]
blue: Blue = 0 to 100 % [0 100 %]
strobe shutter: Strobe
  0-15 out: Strobe off | 16-255 flash: Strobe slow to fast
""")


@chart(
    "eighth-reed",
    "three modes, cells of a tube written out, two rules only at the head",
    "pdf",
    "en",
    "Copperline Motion",
    "Reed 4",
)
def reed(seed: int) -> Made:
    modes = [
        e.part(REED, "Red | Green | Blue", "3-channel mode (RGB)", "3-channel mode", "RGB", "3-channel"),
        e.part(
            REED,
            "Master dimmer | Red | Green | Blue | Strobe",
            "5-channel mode (Dim RGB S)",
            "5-channel mode",
            "Dim RGB S",
            "5-channel",
        ),
        e.named(
            e.cells(8, "Red=red Green=green Blue=blue", "{color}, pixel {n}", text="0 to 100 %"),
            "24-channel mode (8 pixels)",
            "24-channel mode",
            "8 pixels",
            "24-channel",
        ),
    ]
    pdf = f.book("vera", "Reed 4 | battery pixel tube", "copperline motion | page", "letter")
    pdf.say("DMX charts", 16, True, 3)
    for m in modes:
        pdf.say(m.title, 11, True, 1)
        rows = [["Ch", "Function", "Range", "Details"], *f.body(m.params, "slot name value text", k.hyphen)]
        pdf.grid(rows, (14, 50, 26, 60), borders_layout="MINIMAL")
    pdf.say("Pixel 1 is the pixel next to the power button.", 8)
    return k.made("Copperline Motion", "Reed 4", modes, bytes(pdf.output()))


MAT = x.params("""
dimmer: Dimmer + Dimmer fine = 0-100% [0 100 %]
color-temperature: CCT = 2700-6500 K [2700 6500 K]
strobe shutter: Flash
  0-19 out: Steady | 20-255 flash: 1-20 Hz [1 20 Hz]
dimmer-curve: Curve
  0-63 curve: Linear | 64-127 curve: S-curve | 128-191 curve: Exponential | 192-255 curve: Logarithmic
""")
MAT_PLANS = (("A", "1 2 - -"), ("B", "1/2 3 4 -"), ("C", "1/2 3 4 5"))


@chart(
    "eighth-mat",
    "modes A to C side by side on a mat's card, blank where absent",
    "pdf",
    "en",
    "Dovetail Cine",
    "Flexa 2x1",
)
def mat(seed: int) -> Made:
    rows = [["Mode A", "Mode B", "Mode C", "Function", "Values", "Meaning"]]
    rows += f.beside(MAT, [plan for _, plan in MAT_PLANS], "slots name value text", k.hyphen, "")
    marks: list[tuple[Any, ...]] = [("BOX", (0, 0), (-1, -1), 0.8, "#000000")]
    marks += [
        ("LINEBELOW", (0, 0), (-1, 0), 0.8, "#000000"),
        *[("LINEABOVE", (0, y), (-1, y), 0.3, "#888888") for y in range(2, len(rows)) if rows[y][3]],
    ]
    parts = [
        f.say("Flexa 2x1: DMX quick reference", 14, "Helvetica-Bold", 6),
        f.grid(rows, [40, 40, 40, 70, 52, 84], *marks),
        f.say("Factory settings: mode A, address 1. Hold ESC for the settings menu.", 8),
    ]
    modes = [k.mode(k.seat(MAT, plan), f"Mode {name}", name) for name, plan in MAT_PLANS]
    return k.made("Dovetail Cine", "Flexa 2x1", modes, f.flow(parts, "Dovetail Cine", (420, 595)))
