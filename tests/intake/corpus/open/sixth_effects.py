"""Smoke, strobes, follow spots, lasers, dimmers and a panel of cells, in PDFs by other hands."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from intake.corpus.content import Made
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

DUNST = x.params("""
haze-output fog-output fluid-pump: Dunstmenge
  0-5 off: aus | 6-255: 1 bis 100 % [1 100 %]
fan: Gebläse = 20 bis 100 % [20 100 %]
control other power: Betrieb
  0-127 maybe-set standby: Bereitschaft | 128-250 maybe-set standby: Betrieb
  251-255: Pumpe spülen, nach 5 Sekunden {hold 5}
""")
DUNST_TEXT = (
    "Der Dunst 3 belegt drei Kanäle. Die Aufheizzeit beträgt vier Minuten. Werden 10 Sekunden lang keine "
    "Daten empfangen, schaltet er die Pumpe ab. Die folgende Tabelle gilt ab Software 2.0."
)


@chart("sixth-dunst", "a small framed table amid prose", "pdf", "de", "Nebelhof", "Dunst 3")
def dunst(seed: int) -> Made:
    seated = x.run(DUNST)
    pdf = f.book("serif", "", "Nebelhof · Dunst 3 · Kurzanleitung ·", f.A5)
    pdf.say("Steuerung mit DMX", 13, True)
    pdf.say(DUNST_TEXT, 9, after=4)
    rows = [["Kan.", "Name", "Wert", "Wirkung"], *f.body(seated, "slot name value text", f.tilde)]
    pdf.grid([[cell.replace("~", " … ") for cell in row] for row in rows], (12, 30, 24, 48), (0, 1), 8.5)
    pdf.say("Nachfüllen", 13, True)
    pdf.say("Nur Fluid auf Wasserbasis verwenden. Der Tank fasst 2,5 l und reicht bei 50 % etwa 12 Stunden.")
    return k.made("Nebelhof", "Dunst 3", [k.mode(seated)], bytes(pdf.output()))


SNAP = x.params("""
dimmer: Intensity = 0-100% [0 100 %]
strobe: Flash rate
  0-9 off: No flash | 10-255: 0.5-25 Hz [0.5 25 Hz]
strobe-duration: Flash length = 5-650 ms [5 650 ms]
effect macro: Effect
  0-127 nothing: No effect | 128-159 runs: Ramp up | 160-191 runs: Ramp down | 192-223 erratic: Lightning
  224-255 erratic: Random flash
effect-speed macro-speed: Effect speed = Slow to fast
fan-mode fan: Fan
  0-127 fan: Auto | 128-255 fan: Silent
""")


@chart(
    "sixth-snap",
    "what a slot needs stands in notes below the table",
    "pdf",
    "en",
    "Crackle & Hum",
    "Snap 48",
)
def snap(seed: int) -> Made:
    params = [replace(p, key="effect") if p.label == "Effect" else p for p in SNAP]
    seated = list(k.seat(params, "1 2 3 4 5 6"))
    seated[4] = replace(
        seated[4],
        when=({"parameter": "effect", "from": 128, "to": 255},),
        doubt="may",
        why="its condition stands in a note below the table",
    )
    rows = [["Slot", "Function", "Value", "Description"], *f.body(seated, "slot name value text", k.dash)]
    marks: list[tuple[Any, ...]] = [("LINEBELOW", (0, n), (-1, n), 0.3, "#999999") for n in range(len(rows))]
    parts = [
        f.say("Snap 48: DMX in 6-slot mode", 13, "Helvetica-Bold", 8),
        f.grid(rows, [40, 110, 80, 180], *marks),
        f.say("Notes", 10, "Helvetica-Bold"),
        f.say("Slot 5 works only with slot 4 at 128 or more.", 8.5),
        f.say("Flashing light may set off seizures: warn people before you use this product.", 8.5),
    ]
    mode = x.mode(seated, "6-slot mode", "6-slot")
    data = f.flow(parts, "Snap 48 guide", (612, 792), "Crackle & Hum")
    return k.made("Crackle & Hum", "Snap 48", [mode], data)


OCCHIO = x.params("""
dimmer: Intensità + Intensità fine = chiuso - aperto
shutter strobe: Shutter
  0-9 closed: chiuso | 10-49 open: aperto | 50-229 flash: strobo lento - veloce | 230-255 open: aperto
iris: Iride = aperta - chiusa
zoom: Zoom = 5° - 15° [5 15 deg]
focus: Fuoco = vicino - lontano
warm-correction color-correction: CTO = 0 - 100% [0 100 %]
color-wheel color-scroller: Ruota colori
  0-19 white: bianco | 20-59: rosa | 60-99: ambra | 100-139: azzurro | 140-179: lavanda | 180-255: rosso
frost: Frost
  0-127 out: escluso | 128-255: inserito
""")


@chart(
    "sixth-occhio",
    "percent before decimal, names in a merged first column, slots behind them",
    "pdf",
    "it",
    "Seguivento",
    "Occhio 700",
)
def occhio(seed: int) -> Made:
    seated = x.run(OCCHIO)
    pdf = f.book("Times", "Seguipersona Occhio 700", "Seguivento -", across=True)
    pdf.say("PROTOCOLLO DMX", 14, True)
    pdf.say("Con il DMX collegato le leve del corpo macchina restano attive per pan e tilt.")
    rows = [["Funzione", "Canale", "%", "Decimale", "Effetto"]]
    for row in f.body(seated, "name slot share value text", lambda lo, hi: f"{lo} - {hi}"):
        rows.append([*row[:2], row[2].removesuffix("%").replace("-", " - "), *row[3:]])
    pdf.grid(rows, (56, 20, 28, 34, 80), (0, 1), 9.5)
    return k.made("Seguivento", "Occhio 700", [k.mode(seated)], bytes(pdf.output()))


LASER = x.params("""
laser-output: Laser output
  0-9 closed: Laser off | 10-255: Power, low to full
laser-pattern: Pattern
  0-49: Single beam | 50-99: Fan, 5 beams | 100-149: Fan, 9 beams | 150-199: Line | 200-255: Wave
image-scale zoom: Size = Narrow to wide
image-rotation: Rotation
  0-127: Angle, 0 to 360° [0 360 deg] | 128-191 spin image: Turn right, slow to fast
  192-255 spin image: Turn left, slow to fast
image-position-x: X position = Left to right
image-position-y: Y position = Down to up
color-preset virtual-color-wheel color-macro swatch color-wheel: Color
  0-63: White | 64-127: Red | 128-191: Green | 192-255: Blue
""")


@chart(
    "sixth-laser",
    "a heading a channel on a bare canvas, values indented under it",
    "pdf",
    "en",
    "Tindlebrook Optical",
    "Fan Beam G1",
)
def laser(seed: int) -> Made:
    soft: dict[str, dict[str, Any]] = {
        "Laser off": {"hazard": ("blackout", "laser"), "does": ("nothing", "stop")}
    }
    soft |= {"Power, low to full": {"hazard": ("laser",)}}
    soft |= {"Angle, 0 to 360°": {"does": ("index",), "parameter": ("image-rotation",)}}
    seated = [
        replace(p, ranges=tuple(k.optional(r, **soft.get(r.text, {})) for r in p.ranges))
        for p in x.run(LASER)
    ]
    sheet = x.Sheet(head="Fan Beam G1", foot="Tindlebrook Optical   Class 4: only for trained operators")
    sheet.say("DMX channels", 15, True)
    sheet.say("DMX is no emergency stop. Keep the remote interlock connected at all times.", after=10)
    for line in k.lines(seated):
        sheet.say(f"Channel {line.slot}   {line.name}", 10, True, 2)
        for lo, hi, text in line.rows:
            sheet.canvas.setFont("Helvetica", 9)
            sheet.canvas.drawString(70, sheet.y - 9, k.zeros(lo, hi))
            sheet.canvas.drawString(140, sheet.y - 9, text)
            sheet.y -= 13
        sheet.y -= 6
    return k.made("Tindlebrook Optical", "Fan Beam G1", [k.mode(seated)], sheet.data())


DIM = x.params("""
dimmer: Dimmer 1 = 0 to 100% [0 100 %]
dimmer: Dimmer 2 = 0 to 100% [0 100 %]
dimmer: Dimmer 3 = 0 to 100% [0 100 %]
dimmer: Dimmer 4 = 0 to 100% [0 100 %]
dimmer-curve: Curve
  0-63 set dimmer-curve linear: Linear | 64-127 set dimmer-curve square: Square law
  128-191 set dimmer-curve s: S-law | 192-255 set dimmer-curve switched: Non-dim
minimum-level: Preheat = 0 to 10% [0 10 %]
dimmer-fade-time: Fade time = 0 to 5 s [0 5 s]
""")


@chart(
    "sixth-dim",
    "values before names, two modes told by a line of text each",
    "pdf",
    "en",
    "Pennywell Controls",
    "Dim 4",
)
def dim(seed: int) -> Made:
    sheet = x.Sheet("Times-Roman", "Dim 4 installation sheet", "Pennywell Controls", (612, 792))
    sheet.say("SECTION 6: DMX", 12, True)
    sheet.say("Switch 10 selects the mode. Changes take effect after power is cycled.", after=10)
    modes = []
    for name, plan in (("Mode 1", "1 2 3 4 - - -"), ("Mode 2", "1 2 3 4 5 6 7")):
        seated = k.seat(DIM, plan)
        modes.append(f.named(seated, name, f"{len(seated)} slots", joint=", "))
        sheet.say(modes[-1].title, 10.5, after=3)
        rows = [["Slot", "DMX value", "Controls", "Range"], *f.body(seated, "slot value name text", k.hyphen)]
        sheet.table(rows, (40, 80, 110, 120), "head", 9.5)
    return k.made("Pennywell Controls", "Dim 4", modes, sheet.data())


CELLS = tuple(
    p
    for n in range(1, 17)
    for p in x.params(
        f"warm-white: Cell {n} warm = 0-100% [0 100 %]\ncool-white: Cell {n} cool = 0-100% [0 100 %]"
    )
)


@chart(
    "sixth-cells",
    "one table in two halves beside each other, 32 slots",
    "pdf",
    "en",
    "Quillmere",
    "Panel 16",
)
def cells(seed: int) -> Made:
    seated = x.run(CELLS)
    rows = f.body(seated, "slot name value text")
    head = ["Slot", "Function", "Value", "Range"]
    pdf = f.book("dejavu", "", "Quillmere Panel 16 -")
    pdf.say("DMX mode 32 slots", 13, True)
    pdf.say("Cells count from the top left to the bottom right, seen from the front.")
    halves = [[*head, *head], *(a + b for a, b in zip(rows[:16], rows[16:], strict=True))]
    pdf.grid(halves, (13, 32, 20, 20) * 2)
    mode = x.mode(seated, "DMX mode 32 slots", "32 slots", "mode 32 slots")
    return k.made("Quillmere", "Panel 16", [mode], bytes(pdf.output()))
