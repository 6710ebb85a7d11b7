"""Charts copied out of PDF viewers by other hands: columns of blanks, tabs, blocks, one cell a line."""

from __future__ import annotations

from dataclasses import replace

from intake.corpus.content import Made
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

SPOT = x.params("""
pan: Pan + Pan fine = 0 to 540 degrees [0 540 deg]
tilt: Tilt + Tilt fine = 0 to 250 degrees [0 250 deg]
dimmer: Dimmer = 0 to 100% [0 100 %]
shutter strobe: Shutter
  0-9 closed: Blackout | 10-19 open: Open | 20-120 flash: Strobe effect from slow to fast
  121-220 random: Random strobe effect from slow to fast | 221-255 open: Open
color-wheel: Color wheel
  0-9 white: White | 10-19: Red | 20-29: Amber | 30-39: Green | 40-49: Blue | 50-59: Violet
  60-127: Split colors | 128-255 rainbow: Rainbow effect from slow to fast
gobo-wheel: Gobo wheel
  0-9 white: Open | 10-29: Gobo 1 | 30-49: Gobo 2 | 50-69: Gobo 3 | 70-89: Gobo 4
  90-179 shake: Gobo 1 to 4 shake from slow to fast
  180-255 spin gobo-wheel: Continuous wheel rotation from slow to fast
focus: Focus = Near to far
prism: Prism
  0-20 out: No prism | 21-255: 3-facet prism
control: Special functions
  0-99 nothing: No function | 100-119 maybe-set blackout-on-move: Blackout while pan or tilt moves
  120-139 maybe-set blackout-on-move: No blackout while pan or tilt moves | 140-199 nothing: No function
  200-219 reset: Reset all motors, hold for 3 seconds {hold 3} | 220-255 nothing: No function
""")


@chart(
    "sixth-paste-spot",
    "wide columns with wrapped cells, page foot and repeated head in between",
    "txt",
    "en",
    "Moorgate Stage",
    "Wisp 150",
)
def spot(seed: int) -> Made:
    seated = x.run(SPOT)
    widths = (10, 18, 14, 28)
    head = x.columns([["Channel", "Function", "DMX value", "Effect"]], widths)
    rows = f.body(seated, "slot name value text", lambda lo, hi: f"{lo:03} - {hi:03}")
    out = ["7   DMX CHANNEL ASSIGNMENT", "", "7.1   11-channel mode", "", *head]
    out += x.columns(rows[:18], widths)
    out += [
        "",
        "Wisp 150 User Manual                                        Page 14",
        "\f7   DMX CHANNEL ASSIGNMENT",
    ]
    out += ["", *head, *x.columns(rows[18:], widths), "", "8   CLEANING", "", "Clean the lens once a month."]
    mode = x.mode(seated, "11-channel mode", "11-channel", "7.1 11-channel mode")
    return k.made("Moorgate Stage", "Wisp 150", [mode], "\n".join(out) + "\n")


LAMP = x.params("""
dimmer: Brightness = 0-100% [0 100 %]
color-temperature: CCT = 2700-6500K [2700 6500 K]
red: Red = 0-100% [0 100 %]
green: Green = 0-100% [0 100 %]
blue: Blue = 0-100% [0 100 %]
effect macro: Scene
  0-9 off: Off | 10-99 runs: Candle | 100-179 runs: Storm | 180-255 runs: Party
""")


@chart(
    "sixth-paste-lamp",
    "each cell on a line of its own",
    "txt",
    "en",
    "Pebblelight",
    "Orb Mini",
)
def lamp(seed: int) -> Made:
    seated = [replace(p, doubt="may", why="no columns are left") for p in x.run(LAMP)]
    cells = ["Channel", "Function", "Value", "Description"]
    cells += [cell for row in f.body(seated, "slot name value text") for cell in row if cell]
    text = "\n".join(["Orb Mini DMX mode", *cells, "Made for indoor use only."])
    return k.made("Pebblelight", "Orb Mini", [k.mode(seated)], text + "\n")


LEISTE = x.params("""
intensity-master dimmer: Gesamthelligkeit = 0 bis 100 % [0 100 %]
red: Rot = 0 bis 100 % [0 100 %]
green: Grün = 0 bis 100 % [0 100 %]
blue: Blau = 0 bis 100 % [0 100 %]
amber: Amber = 0 bis 100 % [0 100 %]
strobe shutter: Stroboskop
  0-10 out: aus | 11-255 flash: langsam bis schnell
color-macro macro effect: Farbwechsel
  0-10 off: aus | 11-120 runs: Überblenden | 121-230 runs: Springen | 231-255 sound: Musiksteuerung
color-macro-speed macro-speed effect-speed: Tempo = langsam bis schnell
""")
LEISTE_PLANS = (
    ("4-Kanal", "- 1 2 3 4 - - -"),
    ("6-Kanal", "1 2 3 4 5 6 - -"),
    ("8-Kanal", "1 2 3 4 5 6 7 8"),
)


@chart(
    "sixth-paste-leiste",
    "tabs, names first, three slot columns behind, a dash where a mode lacks it",
    "txt",
    "de",
    "Ilmenrode Licht",
    "Wandleiste 4",
)
def leiste(seed: int) -> Made:
    rows = [["Funktion", *(name for name, _ in LEISTE_PLANS), "Wert", "Bedeutung"]]
    rows += f.beside(
        LEISTE, [plan for _, plan in LEISTE_PLANS], "name slots value text", lambda lo, hi: f"{lo}–{hi}", "–"
    )
    lines = ["DMX-Kanäle der Wandleiste 4", "", *("\t".join(row) for row in rows)]
    lines += ["", "Mit den Tasten UP und DOWN wird der Modus gewählt."]
    modes = [f.named(k.seat(LEISTE, plan), name) for name, plan in LEISTE_PLANS]
    return k.made("Ilmenrode Licht", "Wandleiste 4", modes, "\r\n".join(lines) + "\r\n")


FARO = x.params("""
pan: Pan = 0 a 540° [0 540 deg]
tilt: Tilt = 0 a 270° [0 270 deg]
color-wheel: Rueda de color
  0-14 white: Blanco | 15-29: Rojo | 30-44: Naranja | 45-59: Amarillo | 60-74: Verde | 75-89: Azul
  90-127: Colores partidos | 128-255 rainbow: Rotación de lenta a rápida
gobo-wheel: Rueda de gobos
  0-19 white: Abierto | 20-39: Gobo 1 | 40-59: Gobo 2 | 60-79: Gobo 3 | 80-99: Gobo 4
  100-255 spin gobo-wheel: Rotación de lenta a rápida
shutter strobe: Obturador
  0-15 closed: Cerrado | 16-240 flash: Estrobo de lento a rápido | 241-255 open: Abierto
dimmer: Dimmer = 0 a 100% [0 100 %]
prism: Prisma
  0-127 out: Fuera | 128-255: Dentro
movement-speed: Velocidad Pan/Tilt = De rápida a lenta
reset control: Reset
  0-249 nothing: Sin función | 250-255 reset: Reset
""")


@chart(
    "sixth-paste-faro",
    "a number and a name in brackets, values indented below",
    "txt",
    "es",
    "Ardentía",
    "Haz 230",
)
def faro(seed: int) -> Made:
    seated = x.run(FARO)
    out = ["MODO DE 9 CANALES", ""]
    for line in k.lines(seated):
        out.append(f"Canal {line.slot} ({line.name})")
        out += [f"    {lo:03} a {hi:03}   {text}" for lo, hi, text in line.rows]
    out += ["", "MANTENIMIENTO", "Desconecte el equipo y espere 15 minutos antes de limpiar la óptica."]
    mode = x.mode(seated, "MODO DE 9 CANALES", "9 CANALES")
    return k.made("Ardentía", "Haz 230", [mode], "\n".join(out) + "\n")


GOCCIA = x.params("""
red: Rosso = 0-100% [0 100 %]
green: Verde = 0-100% [0 100 %]
blue: Blu = 0-100% [0 100 %]
warm-white: Bianco caldo = 0-100% [0 100 %]
dimmer intensity-master: Dimmer = 0-100% [0 100 %]
strobe shutter: Strobo
  0-7 out: Nessuno strobo | 8-255 flash: Da lento a veloce
dimmer-fade-time: Tempo di dissolvenza = 0-8 s [0 8 s]
""")


@chart(
    "sixth-paste-goccia",
    "single blanks, the sign of division between values, a table a mode",
    "txt",
    "it",
    "Brillantella",
    "Goccia 7",
)
def goccia(seed: int) -> Made:
    out, modes = ["GOCCIA 7 - TABELLE DMX", ""], []
    for name, plan in (("Modo A", "1 2 3 4 - - -"), ("Modo B", "2 3 4 5 1 6 7")):
        seated = k.seat(GOCCIA, plan)
        modes.append(f.named(seated, name, f"({len(seated)} canali)"))
        out += [modes[-1].title, "Canale Funzione Valori Descrizione"]
        for row in f.body(seated, "slot name value text", lambda lo, hi: f"{lo}÷{hi}"):
            out.append(" ".join(cell for cell in row if cell))
        out.append("")
    out.append("Grado di protezione IP65. Potenza massima 84 W.")
    return k.made("Brillantella", "Goccia 7", modes, "\n".join(out) + "\n")


VELUM = x.params("""
dimmer: Intensité + Intensité fine = 0 à 100 % [0 100 %]
color-temperature: Température de couleur = 2800 à 5600 K [2800 5600 K]
saturation: Saturation = 0 à 100 % [0 100 %]
hue: Teinte = 0 à 360° [0 360 deg]
white-color-crossfade: Fondu blanc/couleur = de blanc à couleur
strobe shutter: Stroboscope
  0-9 out: Arrêt | 10-255 flash: 1 à 20 Hz [1 20 Hz]
fan-mode fan: Ventilateur
  0-99 fan: Automatique | 100-199 fan: Silencieux | 200-255 maybe-set fan: Arrêt pour la prise de son
""")


@chart(
    "sixth-paste-velum",
    "the word à between values, single blanks, one mode named in the running text",
    "txt",
    "fr",
    "Maison Telluride",
    "Vélum 2",
)
def velum(seed: int) -> Made:
    seated = x.run(VELUM)
    out = ["4.2 Canaux DMX", "Le Vélum 2 n'a qu'un mode. Les valeurs sont décimales.", ""]
    out.append("Canal Fonction Valeur Résultat")
    for row in f.body(seated, "slot name value text", lambda lo, hi: f"{lo} à {hi}", "réglage fin"):
        out.append(" ".join(cell for cell in row if cell))
    out += ["", "Maison Telluride – Vélum 2 – page 9"]
    return k.made("Maison Telluride", "Vélum 2", [k.mode(seated)], "\n".join(out) + "\n")
