"""Moving heads in PDFs: a small spot, a beam, a zoom wash and a hybrid from Spain."""

from __future__ import annotations

from typing import Any

from intake.corpus.aside import eighth_kit as e
from intake.corpus.content import Made
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_b_kit as v
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

INNO = x.params("""
pan: Pan + Pan Fine = 0-540° [0 540 deg]
tilt: Tilt + Tilt Fine = 0-230° [0 230 deg]
color-wheel: Color Wheel
  0-9 white: White | 10-19: Red | 20-29: Green | 30-39: Blue | 40-49: Yellow | 50-59: Orange | 60-69: Magenta
  70-79: Light Blue | 80-139: Split Colors | 140-255 rainbow: Rainbow Effect, slow to fast
gobo-wheel: Gobo Wheel
  0-9 white: Open | 10-19: Gobo 1 | 20-29: Gobo 2 | 30-39: Gobo 3 | 40-49: Gobo 4 | 50-59: Gobo 5
  60-69: Gobo 6 | 70-79 shake: Gobo 6 Shake | 80-89 shake: Gobo 5 Shake | 90-99 shake: Gobo 4 Shake
  100-109 shake: Gobo 3 Shake | 110-119 shake: Gobo 2 Shake | 120-129 shake: Gobo 1 Shake
  130-255 spin gobo-wheel: Gobo Wheel Rotation, slow to fast
shutter strobe: Shutter
  0-7 closed: Blackout | 8-15 open: Open | 16-215 flash: Strobe, slow to fast
  216-255 open: Open
dimmer: Dimmer = 0-100% [0 100 %]
movement-speed: Pan/Tilt Speed = Fast to slow
macro movement-macro effect: Auto Programs
  0-7 nothing: No Function | 8-71 perhaps: Program 1 | 72-135 perhaps: Program 2 | 136-199 perhaps: Program 3
  200-255 sound: Sound Active
reset control: Reset
  0-199 nothing: No Function | 200-255 reset: Reset
""")
INNO_PLANS = (("9CH", "1 2 3 4 5 6 7 8 9"), ("11CH", "1/2 3/4 5 6 7 8 9 10 11"))


@chart(
    "eighth-kestrel",
    "two modes side by side, merged slots, head repeated over two small pages",
    "pdf",
    "en",
    "Stellmark Pro",
    "Kestrel Spot 60",
)
def kestrel(seed: int) -> Made:
    pdf = f.book("Helvetica", "Kestrel Spot 60", "Stellmark Pro User Manual  -  Page", (170, 230))
    pdf.say("DMX Channel Functions and Values", 14, True)
    pdf.say("The fixture offers two DMX modes. To select one, press MENU until CHND shows and then ENTER.")
    rows = [["9CH", "11CH", "Function", "Value", "Description"]]
    rows += f.beside(INNO, [plan for _, plan in INNO_PLANS], "slots name value text", k.zeros, "--")
    pdf.grid(rows, (14, 14, 32, 24, 54), (0, 1, 2), 8.5, v_align="MIDDLE", repeat_headings=1)
    pdf.say("-- : this function is not available in this mode.", 8)
    pdf.say("Setting the Address", 11, True)
    pdf.say("Example: with 11 channels, unit 1 gets address 001, unit 2 gets 012 and unit 3 gets 023.")
    modes = [k.mode(k.seat(INNO, plan), name) for name, plan in INNO_PLANS]
    return k.made("Stellmark Pro", "Kestrel Spot 60", modes, bytes(pdf.output()))


BEAM = x.params("""
color-wheel: Color wheel
  0-4 white: White | 5-9: Color 1 | 10-14: Color 2 | 15-19: Color 3 | 20-24: Color 4 | 25-29: Color 5
  30-34: Color 6 | 35-39: Color 7 | 40-44: Color 8 | 45-127: Linear change of color
  128-189 rainbow: Forward rotation from fast to slow | 190-193 stop: Stop
  194-255 rainbow: Reverse rotation from slow to fast
strobe shutter: Strobe
  0-3 closed: Close the light | 4-103 flash: Strobe from slow to fast | 104-107 open: Open the light
  108-207 pulse: Pulse strobe from slow to fast | 208-212 open: Open the light
  213-251 random: Random strobe from slow to fast | 252-255 open: Open the light
dimmer: Dimming = 0~100% dimming [0 100 %]
gobo-wheel: Pattern
  0-4 white: White light | 5-9: Pattern 1 | 10-14: Pattern 2 | 15-19: Pattern 3 | 20-24: Pattern 4
  25-29: Pattern 5 | 30-34: Pattern 6 | 35-99: Pattern 7
  100-177 spin gobo-wheel: Forward rotation from fast to slow
  178-255 spin gobo-wheel: Reverse rotation from slow to fast
prism: Prism
  0-127 out: Prism out | 128-255: Prism in
prism-rotation: Prism rotation
  0-127 index prism: Prism angle | 128-190 spin: Forward rotation from fast to slow
  191-192 stop: Stop | 193-255 spin: Reverse rotation from slow to fast
frost: Atomization
  0-127 out: No atomization | 128-255: Atomization
focus: Focus = Focus from far to near
pan: X axis + X axis fine = 0~540° [0 540 deg]
tilt: Y axis + Y axis fine = 0~270° [0 270 deg]
movement-speed: XY speed = Speed from fast to slow
lamp-control control: Lamp
  0-25 nothing: No function
  26-100 lamp-off: Lamp off, hold 3 seconds {hold 3}
  101-255 lamp-on: Lamp on, hold 3 seconds {hold 3}
reset control: Reset
  0-25 nothing: No function | 26-255 reset: Reset, hold 3 seconds {hold 3}
""")


@chart(
    "eighth-leopard",
    "CH1 to CH15, tildes, a ruled table over two pages, translated English",
    "pdf",
    "en",
    "Haoyun Stage Lighting",
    "HY-B250",
)
def leopard(seed: int) -> Made:
    seated = x.run(BEAM)
    rows = [["CHANNEL", "FUNCTION", "VALUE", "CONTENT"]]
    rows += [
        [f"CH{row[0]}" if row[0] else "", *row[1:]]
        for row in f.body(seated, "slot name value text", f.tilde, "Fine adjust")
    ]
    marks: list[tuple[Any, ...]] = [("GRID", (0, 0), (-1, -1), 0.6, "#000000")]
    marks += [("BACKGROUND", (0, 0), (-1, 0), "#c9daf1")]
    font = f.letter("dejavu")
    parts = [
        f.say("15 Channel mode", 13, f"{font}-Bold", 6, 1),
        f.grid(rows, [66, 110, 74, 230], *marks, font=font, size=8),
        f.say("Note: lamp must cool down for 10 minutes before it is switched on again.", 8, font),
    ]
    data = f.flow(parts, "HY-B250 Beam Moving Head", head="User Manual")
    names = ("15 Channel", "15CH")
    return k.made("Haoyun Stage Lighting", "HY-B250", [x.mode(seated, "15 Channel mode", *names)], data)


WASH = x.params("""
pan: Pan + Pan fine
tilt: Tilt + Tilt fine
movement-speed: Pan / tilt speed = Fast → slow
dimmer intensity-master: Dimmer + Dimmer fine = 0 → 100 % [0 100 %]
shutter strobe: Shutter
  0-19 closed: Closed | 20-24 open: Open | 25-129 flash: Strobe, slow → fast
  130-189 random: Random strobe, slow → fast | 190-249 pulse: Pulse, slow → fast | 250-255 open: Open
red: Red + Red fine = 0 → 100 % [0 100 %]
green: Green + Green fine = 0 → 100 % [0 100 %]
blue: Blue + Blue fine = 0 → 100 % [0 100 %]
white: White + White fine = 0 → 100 % [0 100 %]
color-temperature color-correction warm-correction white-point: CTC = 8000 K → 2700 K [8000 2700 K]
zoom: Zoom + Zoom fine = 5° → 45° [5 45 deg]
control reset: Control
  0-99 nothing: No function | 100-119 reset: Reset | 120-255 nothing: No function
""")
WASH_MODES = (
    (
        "Basic",
        "Pan* | Tilt* | Dimmer* | Shutter | Red* | Green* | Blue* | White* | CTC | Zoom* | Control",
    ),
    (
        "Standard",
        "Pan | Tilt | Pan / tilt speed | Dimmer* | Shutter | Red* | Green* | Blue* | White* | CTC | Zoom* | "
        "Control",
    ),
    (
        "Extended",
        "Pan | Tilt | Pan / tilt speed | Dimmer | Shutter | Red | Green | Blue | White | CTC | Zoom | "
        "Control",
    ),
)


@chart(
    "eighth-halcyon",
    "three modes each on its page, function first and number second, lines over names",
    "pdf",
    "en",
    "Ridgeline Entertainment Lighting",
    "Halcyon Wash 19",
)
def halcyon(seed: int) -> Made:
    pdf = f.book("dejavu", "Halcyon Wash 19 — DMX protocol 1.2", "ridgeline entertainment lighting", "letter")
    modes = []
    for n, (name, labels) in enumerate(WASH_MODES):
        m = e.part(WASH, labels)
        title = f"{name} mode – {m.footprint} channels"
        names = (name, f"{name} mode", f"{m.footprint} channels")
        modes.append(e.named(m.params, title, *names))
        if n:
            pdf.add_page()
        pdf.say(title, 13, True)
        rows = [["Function", "Channel", "DMX", "Effect"]]
        rows += f.body(m.params, "name slot value text", v.en)
        pdf.grid(rows, (44, 20, 26, 76), borders_layout="SINGLE_TOP_LINE")
    return k.made("Ridgeline Entertainment Lighting", "Halcyon Wash 19", modes, bytes(pdf.output()))


HIBRIDO = x.params("""
pan: Pan + Pan fino = De 0° a 540° [0 540 deg]
tilt: Tilt + Tilt fino = De 0° a 265° [0 265 deg]
movement-speed: Velocidad de movimiento = De rápido a lento
dimmer: Atenuador = De 0 a 100 % [0 100 %]
shutter strobe: Obturador
  0-9 closed: Cerrado | 10-29 open: Abierto | 30-199 flash: Estrobo de lento a rápido
  200-255 open: Abierto
color-wheel: Rueda de colores
  0-14 white: Blanco | 15-29: Rojo | 30-44: Azul | 45-59: Verde | 60-74: Amarillo | 75-89: Magenta
  90-104: Naranja | 105-127: Cian | 128-255 rainbow: Arco iris de lento a rápido
gobo-wheel rotating-gobo-wheel: Rueda de gobos
  0-19 white: Abierto | 20-39: Gobo 1 | 40-59: Gobo 2 | 60-79: Gobo 3 | 80-99: Gobo 4 | 100-127: Gobo 5
  128-255 spin gobo-wheel: Giro de la rueda de lento a rápido
gobo-rotation: Rotación del gobo
  0-127 index gobo: Posición fija | 128-190 spin: Giro a la derecha | 191-192 stop: Parado
  193-255 spin: Giro a la izquierda
prism: Prisma
  0-99 out: Sin prisma | 100-255 spin prism: Prisma giratorio de lento a rápido
focus: Enfoque = De cerca a lejos
zoom: Zoom = De 8° a 38° [8 38 deg]
reset control: Reinicio
  0-239 nothing: Sin función | 240-255 reset: Reinicio
""")


@chart(
    "eighth-serrania",
    "one table over the page with its width filled, gray slots, spaced dashes",
    "pdf",
    "es",
    "Luminotecnia Serranía",
    "Cabeza Híbrida 280",
)
def serrania(seed: int) -> Made:
    sheet = x.Sheet("Times-Roman", "Cabeza Híbrida 280 – Manual de instrucciones", "Luminotecnia Serranía")
    sheet.say("6. Canales DMX", 15, True)
    sheet.say("El aparato ocupa 14 canales. Conecte un terminador de 120 ohmios en el último aparato.", 10)
    seated = x.run(HIBRIDO)
    rows = [["Canal", "Función", "Valor DMX", "Descripción"]]
    rows += f.body(seated, "slot name value text", k.dash)
    sheet.table(rows, (46, 150, 80, 218), "slots", 9)
    return k.made("Luminotecnia Serranía", "Cabeza Híbrida 280", [x.mode(seated)], sheet.data())
