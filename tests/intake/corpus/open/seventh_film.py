"""Film lights in PDFs: a color panel, a bi-color spot, a softlight, a profile and a tube of pixels."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from intake.corpus.content import Made
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

TESSERA = x.params("""
dimmer: Intensity + Intensity fine = 0–100% [0 100 %]
color-temperature: CCT + CCT fine = 2500–9900 K [2500 9900 K]
tint green-correction: Green/magenta shift = Full magenta to full green
red: Red = 0–100% [0 100 %]
green: Green = 0–100% [0 100 %]
blue: Blue = 0–100% [0 100 %]
warm-white: Warm white = 0–100% [0 100 %]
cool-white: Cool white = 0–100% [0 100 %]
strobe shutter: Strobe
  0-4 out: Off | 5-255 flash: 1–25 Hz [1 25 Hz]
""")
TESSERA_MODES = (
    ("Mode 1", "CCT 8-bit", "1 2 3 - - - - - 4"),
    ("Mode 2", "CCT 16-bit", "1/2 3/4 5 - - - - - 6"),
    ("Mode 3", "RGBWW 8-bit", "1 - - 2 3 4 5 6 7"),
)


@chart(
    "seventh-tessera",
    "the mode's title as the first row of its table, lines between parameters",
    "pdf",
    "en",
    "Aurelstone Lighting",
    "Tessera 2x1",
)
def tessera(seed: int) -> Made:
    parts: list[Any] = [
        f.say("DMX Operation", 16, "Helvetica-Bold", 8),
        f.say("Set the address and mode in Menu > DMX. Tessera answers to wired DMX512 and to wireless DMX."),
    ]
    modes = []
    for number, name, plan in TESSERA_MODES:
        seated = k.seat(TESSERA, plan)
        count = max(slot for p in seated for slot in p.slots)
        title = f"{number}: {name} ({count} channels)"
        modes.append(s.titled(seated, title, f"{number}: {name}", name, number))
        rows = [[title, "", "", ""], ["Ch", "Parameter", "DMX value", "Range"]]
        rows += f.body(seated, "slot name value text", lambda lo, hi: f"{lo}–{hi}", "Fine adjustment")
        marks = [*s.across(rows[:1], "#3a4652"), ("BACKGROUND", (0, 1), (-1, 1), "#7d8995"), *s.above(rows)]
        parts.append(f.grid(rows, [36, 150, 90, 190], *marks, heads=2, white=True))
    parts.append(f.say("Intensity below 1% follows the low-end curve that the menu selects.", 8))
    data = f.flow(parts, "Tessera 2x1 User Guide", (612, 792), "aurelstone.example")
    return k.made("Aurelstone Lighting", "Tessera 2x1", modes, data)


XINLUMO = x.params("""
dimmer: BRIGHTNESS = 0%~100% [0 100 %]
color-temperature: COLOR TEMP = 2700K~6500K [2700 6500 K]
effect macro: SCENE
  0-19 nothing: No scene | 20-39 runs: Flash bulb | 40-59 runs: Thunder | 60-79 runs: TV screen
  80-99 runs: Bad lamp | 100-119 runs: Candle | 120-139 runs: Explosion | 140-159 runs: Welding
  160-255 runs: Breathe
effect-speed macro-speed: SCENE SPEED = Slow to fast
""")


@chart(
    "seventh-xinlumo",
    "a small leaflet, all ranges of a slot as lines of two cells",
    "pdf",
    "en",
    "Xinlumo Photographic",
    "XL-220B",
)
def xinlumo(seed: int) -> Made:
    pdf = f.book("vera", "XL-220B LED Video Light", "Xinlumo -", (125.0, 176.0))
    pdf.say("DMX connect", 11, True)
    pdf.say("1. Use 5-pin cable connect DMX controller to the lamp.", 7.5, after=0)
    pdf.say("2. Press DMX button, rotate knob for choose address 001-512.", 7.5, after=0)
    pdf.say("3. Rotate FX knob for choose 2CH or 4CH.", 7.5)
    modes = []
    for title, plan in (("2CH", "1 2 - -"), ("4CH", "1 2 3 4")):
        seated = k.seat(XINLUMO, plan)
        modes.append(s.titled(seated, f"{title} mode", title))
        pdf.say(f"{title} mode", 9, True, 1)
        rows = [["CH", "FUNCTION", "VALUE", "NOTE"], *s.stacked(seated, f.tilde)]
        pdf.grid(rows, (10, 30, 20, 32), size=7, text_align="CENTER", v_align="MIDDLE")
    pdf.say("The lamp and the picture in this manual may be different, please take the real lamp.", 7)
    return k.made("Xinlumo Photographic", "XL-220B", modes, bytes(pdf.output()))


WEICH = x.params("""
dimmer: Helligkeit + Helligkeit fein = 0 – 100 % [0 100 %]
color-temperature: Farbtemperatur + Farbtemperatur fein = 2800 – 6800 K [2800 6800 K]
tint green-correction: Grünanteil = Magenta bis Grün
strobe shutter: Blitz
  0-9 out: aus | 10-255 flash: 0,5 – 15 Hz [0.5 15 Hz]
smoothing: Glättung
  0-50 menu smoothing: nach Menü | 51-101 set smoothing off: aus | 102-152 set smoothing short: kurz
  153-203 set smoothing medium: mittel | 204-255 set smoothing long: lang
fan-mode fan: Lüfter
  0-127 fan: temperaturgeregelt | 128-255 fan: gleichmäßig leise
reserved: Reserve = ohne Funktion
""")
WEICH_PLANS = (("8 Bit", "1 2 3 4 5 6 7"), ("16 Bit", "1/2 3/4 5 6 7 8 9"))


@chart(
    "seventh-weichlicht",
    "a head of two rows, slots of two modes first, zeros before",
    "pdf",
    "de",
    "Kernlicht Filmtechnik",
    "Weichlicht W4",
)
def weichlicht(seed: int) -> Made:
    rows = [["Kanal", "", "Funktion", "DMX-Wert", "Wirkung"], ["8 Bit", "16 Bit", "", "", ""]]
    rows += f.beside(
        WEICH, [p for _, p in WEICH_PLANS], "slots name value text", lambda lo, hi: f"{lo:03}–{hi:03}"
    )
    marks: list[tuple[Any, ...]] = [("GRID", (0, 0), (-1, -1), 0.5, "#555555"), ("SPAN", (0, 0), (1, 0))]
    marks += [("SPAN", (column, 0), (column, 1)) for column in (2, 3, 4)]
    marks += [("BACKGROUND", (0, 0), (-1, 1), "#dfe6ea"), *f.merges(rows, (0, 1, 2), 2)]
    font = f.letter("dejavu")
    parts = [
        f.say("7  DMX-Protokoll", 14, f"{font}-Bold", 8),
        f.say("Betriebsart im Menü unter Einstellungen / DMX wählen: 8 Bit (7 Kanäle) oder 16 Bit.", 9, font),
        f.grid(rows, [42, 42, 130, 70, 150], *marks, font=font, heads=2),
        f.say("8  Pflege", 14, f"{font}-Bold"),
        f.say("Die Streuscheibe mit lauwarmem Wasser reinigen. Keine Lösungsmittel verwenden.", 9, font),
    ]
    modes = [s.titled(k.seat(WEICH, plan), name) for name, plan in WEICH_PLANS]
    data = f.flow(parts, "Kernlicht Filmtechnik · Weichlicht W4 · Ausgabe 2", head="Bedienungsanleitung")
    return k.made("Kernlicht Filmtechnik", "Weichlicht W4", modes, data)


LENS = x.params("""
dimmer: Intensity + Intensity fine = Blackout to full @0+0
red: Red = 0 to 100 % [0 100 %] @255
lime: Lime = 0 to 100 % [0 100 %] @255
amber: Amber = 0 to 100 % [0 100 %] @255
cyan-emitter: Cyan = 0 to 100 % [0 100 %] @255
blue: Blue = 0 to 100 % [0 100 %] @255
color-temperature white-point: White CCT @0
  0-9 nothing: Off | 10-255: 2700 K to 8000 K [2700 8000 K]
shutter strobe: Shutter @32
  0-9 closed: Closed | 10-49 open: Open | 50-199 flash: Strobe, slow to fast
  200-239 random: Random strobe, slow to fast | 240-255 open: Open
fan-mode fan: Fan @0
  0-99 fan: Regulated | 100-199 fan: Low | 200-255 fan: High
""")


@chart(
    "seventh-lens",
    "fade or snap and a default in the last columns, lines between rows",
    "pdf",
    "en",
    "Obscura Nord",
    "Lens 5C",
)
def lens(seed: int) -> Made:
    seated = x.run(LENS)
    steps = {"Shutter", "Fan"}
    rows = [["Ch.", "Parameter", "DMX", "Effect", "Type", "Default"]]
    for slot, name, value, text, default in f.body(seated, "slot name value text default", k.dash):
        kind = "" if not name else "Snap" if name in steps else "Fade"
        rows.append([slot, name, value, text, kind, default])
    pdf = f.book("serif", "Obscura Nord AS", "Lens 5C reference / page")
    pdf.say("DMX chart", 15, True, 3)
    pdf.say("One mode, ten channels. Firmware 3.0 or later. Default is what the light uses before any data.")
    pdf.grid(rows, (12, 36, 28, 62, 14, 18), size=8, borders_layout="HORIZONTAL_LINES")
    pdf.say("Channels 3 to 8 add up. The light dims to black without a step.", 8)
    return k.made("Obscura Nord", "Lens 5C", [k.mode(seated)], bytes(pdf.output()))


REED = x.params("""
intensity-master dimmer: Master
color-temperature: White CCT [? 2400 7000 K]
red: Red
green: Green
blue: Blue
white: White
""")


@chart(
    "seventh-reed",
    "slots and names in two column sets across the page, no values",
    "pdf",
    "en",
    "Lichen & Moth",
    "Reed 90",
)
def reed(seed: int) -> Made:
    pixels = [
        replace(p, label=f"Pixel {n} {p.label.lower()}", text="") for n in range(1, 11) for p in REED[2:5]
    ]
    plans = (
        ("Simple", "6 slots", list(REED)),
        ("Pixels", "32 slots", [*REED[:2], *pixels]),
    )
    pdf = f.book("stix", "", "Lichen & Moth  Reed 90  sheet", "letter")
    pdf.say("Reed 90 slot list", 15, True, 3)
    pdf.say(
        "All slots run 0 to 255. White CCT covers 2400 K to 7000 K. Pixel 1 is at the end with the plug.", 9.5
    )
    modes = []
    for name, count, params in plans:
        seated = x.run(params)
        modes.append(f.named(seated, name, f"({count})"))
        pdf.say(modes[-1].title, 11, True)
        half = (len(seated) + 1) // 2
        rows = [["Slot", "Function", "Slot", "Function"]]
        rows += [
            [str(a.slots[0]), a.label, str(b.slots[0]), b.label]
            for a, b in zip(seated[:half], seated[half:], strict=True)
        ]
        pdf.grid(rows, (14, 44, 14, 44), size=9)
    pdf.say("Run time at full white is 4 h. The tube may be charged while lit.", 9)
    return k.made("Lichen & Moth", "Reed 90", modes, bytes(pdf.output()))
