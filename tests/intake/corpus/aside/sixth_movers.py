"""Moving heads in PDFs: a spot over several pages, a beam in decimal and hex, a zoom wash with defaults."""

from __future__ import annotations

from dataclasses import replace

from intake.corpus.content import Made
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

SPOT = x.params("""
pan: Pan + Pan fine = 0 to 540° [0 540 deg]
tilt: Tilt + Tilt fine = 0 to 265° [0 265 deg]
movement-speed: Pan/tilt speed = Maximum to minimum speed
dimmer: Dimmer + Dimmer fine = 0 to 100 % [0 100 %]
shutter strobe: Shutter
  0-19 closed: Shutter closed | 20-49 open: Shutter open | 50-99 flash: Strobe, slow to fast
  100-149 pulse: Pulse opening, slow to fast | 150-199 random: Random strobe, slow to fast
  200-255 open: Shutter open
color-wheel: Color wheel
  0-9 white: Open | 10-19: Red | 20-29: Deep blue | 30-39: Orange | 40-49: Green | 50-59: Magenta
  60-69: Congo | 70-79: CTO | 80-127: Linear color positions
  128-189 rainbow: Rainbow forward, fast to slow | 190-193 stop: Stop
  194-255 rainbow: Rainbow reverse, slow to fast
rotating-gobo-wheel gobo-wheel: Rotating gobo wheel
  0-9 white: Open | 10-19: Gobo 1 | 20-29: Gobo 2 | 30-39: Gobo 3 | 40-49: Gobo 4 | 50-59: Gobo 5
  60-89 shake: Gobo 1 shake, slow to fast | 90-119 shake: Gobo 2 shake, slow to fast
  120-149 shake: Gobo 3 shake, slow to fast | 150-199 spin gobo-wheel: Wheel rotation, slow to fast
  200-255 nothing: Reserved
gobo-index-rotation gobo-rotation gobo-index: Gobo rotation + Gobo rotation fine
  0-127 index gobo: Gobo index | 128-189 spin gobo: Clockwise, fast to slow | 190-193 stop: No rotation
  194-255 spin gobo: Counterclockwise, slow to fast
prism: Prism
  0-127 out: Prism out | 128-255: Prism in
prism-rotation: Prism rotation
  0-127 index prism: Prism index | 128-189 spin prism: Clockwise, fast to slow | 190-193 stop: No rotation
  194-255 spin prism: Counterclockwise, slow to fast
focus: Focus + Focus fine = Far to near
zoom: Zoom = 8° to 42° [8 42 deg]
frost: Frost
  0-9 out: No frost | 10-255: Frost, 0 to 100 % [0 100 %]
iris: Iris
  0-191: Open to closed | 192-219 pulse: Pulse, slow to fast | 220-255 open: Open
control: Control
  0-9 nothing: No function | 10-19 lamp-on: Lamp on (hold 3 s) {hold 3}
  20-29 lamp-off: Lamp off (hold 3 s) {hold 3} | 30-39 reset: Reset pan and tilt (hold 3 s) {hold 3}
  40-49 reset: Reset all (hold 3 s) {hold 3} | 50-255 nothing: No function
""")
SPOT_PLANS = (
    ("Basic", "1 2 3 4 5 6 7 8 9 10 11 12 13 14 15"),
    ("Extended", "1/2 3/4 5 6/7 8 9 10 11/12 13 14 15/16 17 18 19 20"),
)


@chart(
    "sixth-spot",
    "ruled over several pages with head and foot, two slot columns, menus before and faults after",
    "pdf",
    "en",
    "Ravelin Stage",
    "Corvo 440",
)
def spot(seed: int) -> Made:
    pdf = f.book("Helvetica", "Corvo 440 discharge spot  |  user manual  |  rev. C", "Ravelin Stage  |")
    pdf.say("8. Menu", 14, True)
    menu = [["Menu", "Choice", "Explanation"], ["Address", "001-512", "Start address"]]
    menu += [["Mode", "Basic, Extended", "15 or 20 channels"], ["Pan invert", "On, Off", "Turns pan round"]]
    pdf.grid(menu, (34, 40, 60))
    pdf.add_page()
    pdf.say("9. DMX protocol", 14, True)
    pdf.say("The start address is set in the menu. Fine channels exist in Extended mode alone.")
    rows = [[*(name for name, _ in SPOT_PLANS), "Function", "Value", "Description"]]
    rows += f.beside(SPOT, [plan for _, plan in SPOT_PLANS], "slots name value text", k.zeros)
    pdf.grid(rows, (16, 20, 42, 26, 74), size=9)
    pdf.add_page()
    pdf.say("10. Messages", 14, True)
    faults = [
        ["No.", "Message", "What to do"],
        ["1", "Pan not found", "Reset"],
        ["2", "Lamp cold", "Wait 10 min"],
    ]
    pdf.grid(faults, (16, 50, 50))
    modes = [f.named(k.seat(SPOT, plan), name) for name, plan in SPOT_PLANS]
    return k.made("Ravelin Stage", "Corvo 440", modes, bytes(pdf.output()))


BEAM = x.params("""
pan: X axis + X axis fine = 0-540 degree [0 540 deg]
tilt: Y axis + Y axis fine = 0-270 degree [0 270 deg]
movement-speed: XY speed = Fast to slow
color-wheel: Color
  0-4 white: White | 5-9: Red | 10-14: Orange | 15-19: Aquamarine | 20-24: Green | 25-29: Light green
  30-34: Lavender | 35-39: Pink | 40-44: Yellow | 45-49: Blue | 50-127: Half color
  128-191 rainbow: Forward rotate fast to slow | 192-255 rainbow: Reverse rotate slow to fast
shutter strobe: Strobe
  0-3 closed: Light off | 4-103 flash: Strobe slow to fast | 104-107 open: Light on
  108-207 pulse: Pulse slow to fast | 208-251 random: Random strobe slow to fast | 252-255 open: Light on
dimmer: Dimming = Dark to bright
gobo-wheel: Fixed pattern
  0-15 white: White circle | 16-31: Pattern 1 | 32-47: Pattern 2 | 48-63: Pattern 3 | 64-79: Pattern 4
  80-95: Pattern 5 | 96-111: Pattern 6 | 112-127: Pattern 7
  128-191 spin gobo-wheel: Forward rotate fast to slow | 192-255 spin gobo-wheel: Reverse rotate slow to fast
prism: Prism
  0-127 out: Prism out | 128-255: Prism in
prism-rotation: Prism rotate
  0-127 index prism: Prism angle | 128-190 spin prism: Forward rotate fast to slow | 191-192 stop: Stop
  193-255 spin prism: Reverse rotate slow to fast
frost: Atomization
  0-127 out: Frost out | 128-255: Frost in
focus: Focus = Far to near
control reset: Reset
  0-99 nothing: No function | 100-105 lamp-off: Lamp off | 106-199 nothing: No function
  200-205 lamp-on: Lamp on | 206-249 nothing: No function | 250-255 reset: Reset all motor
""")


@chart(
    "sixth-beam",
    "values in decimal and hex before the name, boxed on a bare canvas, translated English",
    "pdf",
    "en",
    "Huanteng Stage",
    "HT-B300",
)
def beam(seed: int) -> Made:
    seated = x.run(BEAM)
    sheet = x.Sheet(head="HT-B300 Beam moving head light", foot="Huanteng Stage Lighting Equipment")
    sheet.say("14CH DMX channel table", 13, True, 8)
    rows = [["CH", "DEC", "HEX", "NAME", "EXPLAIN"]]
    for row in f.body(seated, "slot value hex name text", k.zeros):
        row[2] = "-".join(f"{end}H" for end in row[2].split("-"))
        rows.append(row)
    sheet.table(rows, (36, 66, 70, 120, 190), "box", 8.5)
    sheet.say("Remark: after reset please wait 30 second, lamp off need cool 10 minute can light again.", 8.5)
    title = "14CH DMX channel table"
    return k.made("Huanteng Stage", "HT-B300", [x.mode(seated, title, "14CH", "14CH DMX")], sheet.data())


WASH = x.params("""
pan: Pan + Pan fein = 0° – 630° [0 630 deg] @128+0
tilt: Tilt + Tilt fein = 0° – 240° [0 240 deg] @128+0
movement-time: Bewegungszeit = 0 – 20 s [0 20 s] @0
dimmer: Dimmer + Dimmer fein = 0 – 100 % [0 100 %] @0+0
shutter strobe: Shutter @25
  0-19 closed: geschlossen | 20-39 open: offen | 40-149 flash: Strobe 1 – 25 Hz [1 25 Hz]
  150-229 random: Zufallsstrobe, langsam – schnell | 230-255 open: offen
red: Rot = 0 – 100 % [0 100 %] @255
green: Grün = 0 – 100 % [0 100 %] @255
blue: Blau = 0 – 100 % [0 100 %] @255
white: Weiß = 0 – 100 % [0 100 %] @255
color-temperature color-correction: CTC @0
  0-9 nothing: keine Funktion | 10-255: 2500 – 8000 K [2500 8000 K]
zoom: Zoom = 6° – 50° [6 50 deg] @128
effect macro: Ringeffekt @0
  0-9 nothing: kein Effekt | 10-49 runs: Lauflicht rechts | 50-89 runs: Lauflicht links
  90-129 runs: Wechsel innen/außen | 130-255 runs: Funkeln
effect-speed macro-speed: Effektgeschwindigkeit = langsam – schnell @128
control: Steuerung @0
  0-19 nothing: keine Funktion | 20-29 set fan auto: Lüfter automatisch | 30-39 set fan quiet: Lüfter leise
  40-49 set smoothing off: Dimmer ungeglättet | 50-59 set smoothing on: Dimmer geglättet
  60-199 nothing: keine Funktion | 200-209 reset: Reset Bewegung | 210-219 reset: Reset Zoom
  220-229 reset: Gesamtreset | 230-255 nothing: keine Funktion
""")
WASH_PLANS = (
    ("Standard", "1/2 3/4 - 5 6 7 8 9 10 11 12 - - -"),
    ("Erweitert", "1/2 3/4 5 6/7 8 9 10 11 12 13 14 15 16 17"),
)


@chart(
    "sixth-zoomkopf",
    "zebra with from and to columns, the default behind the name, a table a mode",
    "pdf",
    "de",
    "Lichthaus Ebersroth",
    "Zoomkopf 12",
)
def zoomkopf(seed: int) -> Made:
    pdf = f.book("vera", "", "Lichthaus Ebersroth · Zoomkopf 12 · Seite")
    pdf.say("DMX-Protokoll", 15, True)
    modes = []
    for name, plan in WASH_PLANS:
        seated = k.seat(WASH, plan)
        modes.append(
            f.named(seated, f"Modus {name}", f"{max(s for p in seated for s in p.slots)} Kanäle", joint=", ")
        )
        modes[-1] = replace(modes[-1], names=(*modes[-1].names, name))
        pdf.say(modes[-1].title, 11, True)
        rows = [["Kanal", "Funktion", "Vorgabe", "von", "bis", "Beschreibung"]]
        rows += f.body(seated, "slot name default low high text", fine="Feinauflösung")
        pdf.grid(
            rows,
            (16, 48, 20, 14, 14, 66),
            borders_layout="NONE",
            cell_fill_color=(226, 230, 236),
            cell_fill_mode="ROWS",
        )
    return k.made("Lichthaus Ebersroth", "Zoomkopf 12", modes, bytes(pdf.output()))
