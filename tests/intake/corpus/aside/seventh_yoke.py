"""Moving heads in PDFs: a beam, a wash and a spot."""

from __future__ import annotations

from typing import Any

from intake.corpus.content import Made
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

BEAM = x.params("""
color-wheel: Color
  0-4 white: White | 5-9: Red | 10-14: Orange | 15-19: Aquamarine | 20-24: Green | 25-29: Light green
  30-34: Lavender | 35-39: Pink | 40-44: Yellow | 45-49: Magenta | 50-54: Blue | 55-59: CTO | 60-64: CTB
  65-127: Half color | 128-189 rainbow: Clockwise rotation from fast to slow
  190-193 stop: Stop | 194-255 rainbow: Anticlockwise rotation from slow to fast
strobe shutter: Strobe
  0-3 closed: Light off | 4-103 flash: Strobe from slow to fast | 104-107 open: Light on
  108-207 pulse: Pulse strobe from slow to fast | 208-212 open: Light on
  213-251 random: Random strobe from slow to fast | 252-255 open: Light on
dimmer: Dimmer = 0-100% dimming [0 100 %]
gobo-wheel: Gobo
  0-9 white: White light | 10-14: Gobo 1 | 15-19: Gobo 2 | 20-24: Gobo 3 | 25-29: Gobo 4 | 30-34: Gobo 5
  35-39: Gobo 6 | 40-59 shake: Gobo 1 shake from slow to fast | 60-79 shake: Gobo 2 shake from slow to fast
  80-127 shake: Gobo 3 shake from slow to fast
  128-191 spin gobo-wheel: Clockwise flow from fast to slow
  192-255 spin gobo-wheel: Anticlockwise flow from slow to fast
prism: Prism
  0-127 out: Prism off | 128-255: 8 facet prism
prism-rotation: Prism rotate
  0-127 index prism: Prism angle 0-360 [? 0 360 deg]
  128-190 spin prism: Clockwise rotation from fast to slow
  191-192 stop: Stop | 193-255 spin prism: Anticlockwise rotation from slow to fast
frost: Frost
  0-127 out: Frost off | 128-255: Frost on
focus: Focus = From far to near
pan: Pan + Pan fine = 0-540 degree [0 540 deg]
tilt: Tilt + Tilt fine = 0-270 degree [0 270 deg]
movement-speed: Pan/Tilt speed = From fast to slow
reset control: Reset
  0-254 nothing: Invalid | 255 reset: Reset
lamp-control: Lamp switch
  0-99 nothing: Invalid | 100-105 lamp-off: Lamp off, keep 3 seconds {hold 3} | 106-199 nothing: Invalid
  200-205 lamp-on: Lamp on, keep 3 seconds {hold 3} | 206-255 nothing: Invalid
""")
BEAM_PLANS = (
    ("15CH", "1 2 3 4 5 6 7 8 9/10 11/12 13 14 15"),
    ("12CH", "1 2 3 4 5 6 - 7 8 9 10 11 12"),
)


@chart(
    "seventh-zhenghao",
    "two slot columns with CH, all in a merged and centered grid over pages",
    "pdf",
    "en",
    "Zhenghao Stage Equipment",
    "ZH-B295",
)
def zhenghao(seed: int) -> Made:
    rows = [[*(name for name, _ in BEAM_PLANS), "Function", "DMX value", "Detailed description"]]
    rows += [
        [*(f"CH{cell}" if cell.isdecimal() else cell for cell in row[:2]), *row[2:]]
        for row in f.beside(BEAM, [p for _, p in BEAM_PLANS], "slots name value text", f.tilde, "/")
    ]
    pdf = f.book("dejavu", "ZH-B295 moving head beam light", "Zhenghao Stage Equipment Co. -")
    pdf.say("5. Channel table", 13, True)
    pdf.say("Note: after power on please wait 60 seconds, then light the lamp by channel Lamp switch.")
    pdf.grid(rows, (17, 17, 34, 26, 80), range(3), 8, text_align="CENTER", v_align="MIDDLE")
    pdf.say("6. Error information", 13, True)
    pdf.grid(
        [["Display", "Reason"], ["Pan error", "Check pan Hall and motor"], ["Lamp error", "Change lamp"]],
        (40, 70),
    )
    modes = [s.titled(k.seat(BEAM, plan), name) for name, plan in BEAM_PLANS]
    return k.made("Zhenghao Stage Equipment", "ZH-B295", modes, bytes(pdf.output()))


ONDA = x.params("""
pan: Pan + Pan fine = 0 – 540° [0 540 deg]
tilt: Tilt + Tilt fine = 0 – 220° [0 220 deg]
movement-speed: Velocità Pan/Tilt = veloce – lenta
shutter strobe: Otturatore
  0-15 closed: chiuso | 16-31 open: aperto | 32-143 flash: strobo, lento – veloce
  144-239 random: strobo casuale, lento – veloce | 240-255 open: aperto
dimmer: Dimmer + Dimmer fine = 0 – 100% [0 100 %]
red: Rosso = 0 – 100% [0 100 %]
green: Verde = 0 – 100% [0 100 %]
blue: Blu = 0 – 100% [0 100 %]
white: Bianco = 0 – 100% [0 100 %]
color-temperature color-correction white-point: CTC
  0-9 nothing: nessuna correzione | 10-255: 8000 K – 2500 K [8000 2500 K]
zoom: Zoom = 7° – 55° [7 55 deg]
control reset: Funzioni
  0-99 nothing: nessuna funzione | 100-119 set fan quiet: ventole silenziose
  120-139 set fan auto: ventole automatiche | 140-199 nothing: nessuna funzione
  200-209 reset: reset generale (tenere 5 s) {hold 5} | 210-255 nothing: nessuna funzione
""")
ONDA_PLANS = (("Base", "1 2 3 4 5 6 7 8 9 - 10 11"), ("Estesa", "1/2 3/4 5 6 7/8 9 10 11 12 13 14 15"))


@chart(
    "seventh-onda",
    "a table a mode, from and to under one head, gray rows of heads",
    "pdf",
    "it",
    "Altamarea Luci",
    "Onda 37",
)
def onda(seed: int) -> Made:
    parts: list[Any] = [
        f.say("Protocollo DMX", 15, "Times-Bold", 8),
        f.say(
            "La modalità si sceglie nel menu DMX. In modalità Estesa pan, tilt e dimmer hanno 16 bit.",
            10,
            "Times-Roman",
        ),
    ]
    modes = []
    for name, plan in ONDA_PLANS:
        seated = k.seat(ONDA, plan)
        count = max(slot for p in seated for slot in p.slots)
        modes.append(f.named(seated, f"Modalità {name}", f"({count} canali)"))
        modes[-1] = s.titled(seated, modes[-1].title, *modes[-1].names, name)
        rows = [["Canale", "Parametro", "Valore", "", "Azione"], ["", "", "da", "a", ""]]
        rows += f.body(seated, "slot name low high text", fine="regolazione fine")
        marks: list[tuple[Any, ...]] = [("SPAN", (2, 0), (3, 0)), ("BACKGROUND", (0, 0), (-1, 1), "#e4e4e4")]
        marks += [("SPAN", (column, 0), (column, 1)) for column in (0, 1, 4)]
        marks += [("ALIGN", (2, 0), (3, -1), "CENTER")]
        marks += [("LINEABOVE", (0, y), (-1, y), 0.4, "#444444") for y in range(2, len(rows)) if rows[y][0]]
        marks.append(("BOX", (0, 0), (-1, -1), 0.8, "#000000"))
        parts += [
            f.say(modes[-1].title, 12, "Times-Bold"),
            f.grid(rows, [45, 130, 35, 35, 210], *marks, font="Times-Roman", size=9, heads=2),
        ]
    data = f.flow(parts, "Altamarea Luci srl", head="Onda 37 – Manuale utente")
    return k.made("Altamarea Luci", "Onda 37", modes, data)


GIRO = x.params("""
pan: Pan + Pan fino = 0-540° [0 540 deg]
tilt: Tilt + Tilt fino = 0-265° [0 265 deg]
movement-speed: Velocidad de Pan y Tilt = De máxima a mínima
color-wheel: Rueda de color
  0-15 white: Abierto | 16-31: Rojo | 32-47: Amarillo | 48-63: Verde | 64-79: Azul | 80-95: Naranja
  96-111: Violeta | 112-127: Rosa | 128-255 rainbow: Arco iris de lento a rápido
gobo-wheel: Rueda de gobos
  0-15 white: Abierto | 16-31: Gobo 1 | 32-47: Gobo 2 | 48-63: Gobo 3 | 64-79: Gobo 4 | 80-95: Gobo 5
  96-111 shake: Gobo 1 con temblor | 112-127 shake: Gobo 2 con temblor
  128-255 spin gobo-wheel: Giro de la rueda de lento a rápido
prism: Prisma
  0-9 out: Sin prisma | 10-127: Prisma de 3 caras
  128-255 spin prism: Prisma giratorio de lento a rápido
focus: Enfoque = De cerca a lejos
dimmer: Dimmer = 0-100% [0 100 %]
strobe shutter: Estrobo
  0-9 open: Abierto | 10-249 flash: De lento a rápido | 250-255 open: Abierto
macro: Programas
  0-49 nothing: Sin función | 50-99 runs: Programa 1 | 100-149 runs: Programa 2 | 150-199 runs: Programa 3
  200-255 sound: Modo audiorrítmico
reset control: Reset
  0-239 nothing: Sin función | 240-255 reset: Reset
""")
GIRO_PLANS = (
    ("Modo 11 canales", "1 2 3 4 5 6 7 8 9 10 11"),
    ("Modo 13 canales", "1/2 3/4 5 6 7 8 9 10 11 12 13"),
)


@chart(
    "seventh-giro",
    "name and values in every row, stripes, a table a mode",
    "pdf",
    "es",
    "Estudio Relumbre",
    "Giro 150 S",
)
def giro(seed: int) -> Made:
    parts: list[Any] = [f.say("TABLA DE CANALES DMX", 14, "Helvetica-Bold", 8)]
    modes = []
    for title, plan in GIRO_PLANS:
        seated = k.seat(GIRO, plan)
        modes.append(s.titled(seated, title, title.removeprefix("Modo ")))
        rows = [["Canal", "Función", "Valor DMX", "Descripción"]]
        rows += f.body(seated, "slot name value text", s.padded, "Ajuste fino de 16 bits", again=True)
        marks = [("BACKGROUND", (0, 0), (-1, 0), "#1e3d59")]
        marks += [("BACKGROUND", (0, y), (-1, y), "#eef2f5") for y in range(1, len(rows), 2)]
        parts += [
            f.say(title, 11, "Helvetica-Bold"),
            f.grid(rows, [40, 140, 80, 210], *marks, size=8, white=True),
        ]
    parts.append(f.say("No mire fijamente al haz. Distancia mínima a objetos: 1 m.", 8))
    data = f.flow(parts, "Manual de usuario - Giro 150 S", head="ESTUDIO RELUMBRE")
    return k.made("Estudio Relumbre", "Giro 150 S", modes, data)
