"""Four more CSV files and three plain texts: theater, events, a tube, a pendant and a laser."""

from __future__ import annotations

from typing import Any

from intake.corpus.content import M, Made, P, R
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_b_kit as v
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.open.fifth_b_kit import csv_text
from intake.corpus.registry import chart

SOMBRA = x.params("""
dimmer intensity-master: Intensidad + Intensidad fina = 0 % a 100 % [0 100 %]
color-temperature: Temperatura de color + Temperatura de color fina = 2800 K a 6200 K [2800 6200 K]
tint green-correction: Verde/Magenta = De magenta a verde, neutro en 128
zoom: Apertura del haz = 15° a 55° [15 55 deg]
strobe shutter: Estroboscopio
  0-9 out: Sin efecto | 10-255 flash: 1 Hz a 25 Hz [1 25 Hz]
dimmer-curve: Curva de regulación
  0-63 curve: Lineal | 64-127 curve: Exponencial | 128-191 curve: Logarítmica | 192-255 curve: En S
fan-mode fan: Ventilador
  0-85 fan: Automático | 86-170 fan: Silencioso | 171-255 fan: Máximo
""")
SOMBRA_PLANS = (("Canal 8 bit", "1 2 3 4 5 - -"), ("Canal 16 bit", "1/2 3/4 5 6 7 8 9"))


@chart(
    "seventh-b-sombra",
    "two slot columns first with hyphens where absent, the word a between values, texts with commas",
    "csv",
    "es",
    "Sombra Larga Iluminación",
    "Fresnel 300 TW",
)
def sombra(seed: int) -> Made:
    rows: list[list[Any]] = [[*(name for name, _ in SOMBRA_PLANS), "Parámetro", "Rango DMX", "Descripción"]]
    value = v.worded("a")
    for side in k.sides(SOMBRA, *(plan for _, plan in SOMBRA_PLANS)):
        for n, (lo, hi, text) in enumerate(side.rows):
            slots = ["" if n else "-" if at is None else at for at in side.slots]
            rows.append([*slots, "" if n else side.name, value(lo, hi), text])
    modes = [k.mode(k.seat(SOMBRA, plan), name, name.removeprefix("Canal ")) for name, plan in SOMBRA_PLANS]
    return k.made("Sombra Larga Iluminación", "Fresnel 300 TW", modes, csv_text(rows))


FESTOON = (
    *(P(("dimmer",), f"Circuit {n}", (n,), text="Dims 0-100%", spans=k.LEVEL) for n in range(1, 13)),
    P(("intensity-master", "dimmer"), "Master", (13,), text="Limits all circuits"),
)


@chart(
    "seventh-b-festoon",
    "a row a slot without values, a column of watts",
    "csv",
    "en",
    "Tallow Hill Lamps",
    "Festoon Controller 12",
)
def festoon(seed: int) -> Made:
    rows: list[list[Any]] = [["DMX slot", "Output", "Max. load (W)", "Behavior"]]
    for p in FESTOON:
        rows.append([p.slots[0], p.label, 300 if p.label != "Master" else "", p.text])
    return k.made("Tallow Hill Lamps", "Festoon Controller 12", [k.mode(FESTOON)], csv_text(rows))


SLAB = x.params("""
dimmer intensity-master: Intensity = Off to full
strobe: Flash rate
  0-7 off: No flash | 8-255: 1 to 25 flashes per second [? 1 25 Hz]
strobe-duration: Flash duration = 1 to 120 ms [1 120 ms]
effect macro strobe-mode: Effect
  0-9 nothing: Off | 10-58 erratic: Random flash | 59-107 perhaps: Ramp up | 108-156 perhaps: Ramp down
  157-205 perhaps: Heartbeat | 206-255 erratic: Lightning
effect-speed macro-speed: Effect speed = Slow to fast
""")
SEGMENTS = (
    *SLAB[:3],
    *(P(("white", "dimmer", "cool-white"), f"White segment {n}", text="Off to full") for n in range(1, 25)),
    *(P((name.lower(),), f"Back {name.lower()}", text="Off to full") for name in ("Red", "Green", "Blue")),
)
SLAB_MODES = (("Basic", SLAB), ("Segments", SEGMENTS))


@chart(
    "seventh-b-slab",
    "modes under each other, the name in every row and the slot in the first, low and high before it",
    "csv",
    "en",
    "Arkwright & Boone",
    "Slab 24",
)
def slab(seed: int) -> Made:
    rows: list[list[Any]] = [["Arkwright & Boone", "Slab 24 strobe", "", "", ""]]
    modes: list[M] = []
    for name, params in SLAB_MODES:
        modes.append(v.sized(s.row_of(params), name, "{} mode ({} channels)", "{} mode", "{1} channels"))
        rows += [[""] * 5, [modes[-1].title, "", "", "", ""], ["Ch", "Low", "High", "Function", "Detail"]]
        for line in k.lines(modes[-1].params):
            rows += [
                ["" if n else line.slot, lo, hi, line.name, text]
                for n, (lo, hi, text) in enumerate(line.rows)
            ]
    return k.made("Arkwright & Boone", "Slab 24", modes, csv_text(rows))


SPOT = s.row_of(
    x.params("""
pan: Pan + Pan fine = 0° – 540° [0 540 deg] @128+0
tilt: Tilt + Tilt fine = 0° – 270° [0 270 deg] @128+0
movement-speed: Velocità Pan/Tilt = Da veloce a lento @0
color-wheel: Ruota colori @0
  0-13 white: Bianco | 14-27: Rosso | 28-41: Giallo | 42-55: Verde | 56-69: Azzurro | 70-83: Arancio
  84-97: Magenta | 98-127: Blu | 128-255 rainbow: Arcobaleno da lento a veloce
rotating-gobo-wheel gobo-wheel: Gobo rotanti @0
  0-9 open: Aperto | 10-29: Gobo 1 | 30-49: Gobo 2 | 50-69: Gobo 3 | 70-89: Gobo 4 | 90-109: Gobo 5
  110-129: Gobo 6 | 130-149 shake: Gobo 1 vibrante | 150-169 shake: Gobo 2 vibrante
  170-255 spin gobo-wheel: Rotazione continua della ruota
gobo-index-rotation gobo-rotation gobo-index: Rotazione gobo @0
  0-127 index gobo: Posizione 0° – 360° [0 360 deg] | 128-189 spin gobo: Rotazione oraria
  190-193 stop: Fermo | 194-255 spin gobo: Rotazione antioraria
prism: Prisma @0
  0-127 out: Escluso | 128-255: Inserito
prism-rotation prism-index: Rotazione prisma @0
  0-9 stop: Ferma | 10-255 spin prism: Da lenta a veloce
focus: Fuoco = Da vicino a lontano @128
shutter strobe: Otturatore @32
  0-31 closed: Chiuso | 32-63 open: Aperto | 64-199 flash: Strobo da lento a veloce
  200-255 random: Strobo casuale
dimmer intensity-master: Dimmer + Dimmer fine = 0% – 100% [0 100 %] @0+0
control reset: Comandi @0
  0-199 nothing: Nessuna funzione | 200-219 reset: Reset generale (tenere 3 s) {hold 3}
  220-255 nothing: Nessuna funzione
""")
)


@chart(
    "seventh-b-spot",
    "from and to, then text, defaults last, the mode in the title, semicolons",
    "csv",
    "it",
    "Stellanera",
    "Spot 200 M",
)
def spot(seed: int) -> Made:
    rows: list[list[Any]] = [["Stellanera Spot 200 M"], ["Modo 15 canali"]]
    rows.append(["Canale", "Funzione", "Da", "A", "Descrizione", "Default"])
    rows += s.body(SPOT, "slot name from to text default")
    mode = k.mode(SPOT, "Modo 15 canali", "15 canali", "15")
    return k.made("Stellanera", "Spot 200 M", [mode], csv_text(rows, ";"))


STALK = x.params("""
dimmer intensity-master: Intensity = 0 to 100% [0 100 %]
color-temperature: CCT = 2400 K to 7500 K [2400 7500 K]
white-color-crossfade: White/color mix = White only to color only
hue: Hue = 0 to 360 degrees [0 360 deg]
saturation: Saturation = 0 to 100% [0 100 %]
strobe shutter: Strobe
  0-4 out: Off | 5-255 flash: 0.5 Hz to 20 Hz [0.5 20 Hz]
""")
STALK_MODES = (("White", "1 2 - - - -"), ("Color", "1 - - 2 3 -"), ("Full", "1 2 3 4 5 6"))
STALK_TOP = """STALK 100 - wireless LED tube
Quick reference for lighting desks

Pair the tube with your transmitter: hold the button until the ring turns blue.
Then tap the button to step through modes 1 to 3.

"""


@chart(
    "seventh-b-stalk",
    "columns of blanks without heads, a numbered mode underlined before each list",
    "txt",
    "en",
    "Foxglove Wireless",
    "Stalk 100",
)
def stalk(seed: int) -> Made:
    out: list[str] = []
    modes: list[M] = []
    for number, (name, plan) in enumerate(STALK_MODES, 1):
        form = f"Mode {number}: {{}} ({{}} slots)"
        names = (f"Mode {number}: {{}}", f"Mode {number}", f"{number} {{}}", "{} mode")
        modes.append(v.sized(k.seat(STALK, plan), name, form, *names))
        out += [modes[-1].title, "-" * len(modes[-1].title)]
        for line in k.lines(modes[-1].params):
            for n, (lo, hi, text) in enumerate(line.rows):
                first = "" if n else f"{line.slot:>2}  {line.name}"
                out.append(f"{first:<22}{k.hyphen(lo, hi):<10}{text}")
        out.append("")
    out.append("The tube runs 6 hours at full white. Charge it below 40 C.")
    return k.made("Foxglove Wireless", "Stalk 100", modes, STALK_TOP + "\n".join(out) + "\n")


PENDEL = (
    P(("dimmer", "intensity-master"), "Helligkeit", (1, 2), text="0 bis 100 %", spans=k.LEVEL),
    *x.run(
        x.params("""
color-temperature: Lichtfarbe = 2200 K bis 5000 K [2200 5000 K]
dim-to-warm: Warmdimmen
  0-127 maybe-set dim-to-warm: aus | 128-255 maybe-set dim-to-warm: ein
dimmer-fade-time: Fadezeit = 0 s bis 10 s [0 10 s]
"""),
        3,
    ),
)


@chart(
    "seventh-b-pendel",
    "tabs, a slash between two slots with values up to 65535, one mode",
    "txt",
    "de",
    "Osterloh Saalbau",
    "Saalpendel 40",
)
def pendel(seed: int) -> Made:
    out = ["Saalpendel 40", "DMX-Kanäle (5 Kanäle)", "", "Kanal\tFunktion\tWert\tWirkung"]
    out += ["\t".join(row) for row in x.joined(PENDEL, v.en, "slot name value text", "/")]
    out += ["", "Schutzklasse I, IP 20. Pendellänge bis 6 m."]
    mode = k.mode(PENDEL)
    return k.made("Osterloh Saalbau", "Saalpendel 40", [mode], "\n".join(out) + "\n")


LASER = s.row_of(
    (
        P(
            ("laser-output", "control", "playback-mode", "macro", "effect"),
            "Work mode",
            ranges=(
                R(
                    0,
                    49,
                    "Light close",
                    "closed",
                    may={"does": ("nothing",), "hazard": ("blackout", "laser")},
                ),
                R(50, 99, "Sound control", may={"does": ("runs", "random"), "hazard": ("laser",)}),
                R(100, 149, "Auto run", may={"does": ("runs",), "hazard": ("laser",)}),
                R(150, 255, "DMX control", may={"hazard": ("laser",), "does": ("open",)}),
            ),
        ),
        *x.params("""
laser-pattern: Pattern choose
  0-31: Circle | 32-63: Dot circle | 64-95: Square | 96-127: Triangle | 128-159: Star | 160-191: Wave
  192-223: Line | 224-255: Cross
image-rotation: Pattern rotation
  0-127 index image: Rotation angle | 128-191 spin image: Clockwise rotation speed
  192-255 spin image: Anti-clockwise rotation speed
image-position-x: Horizontal position = Move left to right
image-position-y: Vertical position = Move down to up
image-scale zoom: Pattern size = From small to big
"""),
    )
)


@chart(
    "seventh-b-laser",
    "a line for each channel, its values with colons on lines below, nothing indented",
    "txt",
    "en",
    "Xingpu Laser Equipment",
    "XP-3 Green",
)
def laser(seed: int) -> Made:
    out = ["XP-3 Green animation laser", "Warning: avoid exposure, laser light is emitted from this aperture"]
    out += ["", "DMX channel definition:"]
    for line in k.lines(LASER):
        out += ["", f"CH{line.slot} {line.name}"]
        out += [f"{k.hyphen(lo, hi)}: {text}" for lo, hi, text in line.rows]
    out += ["", "Power supply: AC 100-240V 50/60Hz"]
    return k.made("Xingpu Laser Equipment", "XP-3 Green", [k.mode(LASER)], "\r\n".join(out) + "\r\n")
