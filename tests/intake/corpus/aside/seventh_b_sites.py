"""Pages of five more makers: a tile, a fan in a list, two moving heads and a light for facades."""

from __future__ import annotations

from dataclasses import replace

from intake.corpus.content import M, Made
from intake.corpus.grids import C
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_b_kit as v
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.open.fifth_b_kit import Cell, beside, page, web_rows
from intake.corpus.registry import chart

TILE = x.params("""
dimmer intensity-master: Dimmer + Dimmer (fine) = 0–100% [0 100 %]
color-temperature: CCT + CCT (fine) = 2500–9000 K [2500 9000 K]
tint green-correction: Green/magenta = full magenta to full green
white-color-crossfade: Crossfade = white to color
hue: Hue = 0–360° [0 360 deg]
saturation: Saturation = 0–100% [0 100 %]
strobe shutter: Strobe
  0-9 out: off | 10-255 flash: 1–20 Hz [1 20 Hz]
""")
TILE_MODES = (
    ("White", "1 2 3 - - - -"),
    ("White and color", "1 2 3 4 5 6 7"),
    ("16 bit", "1/2 3/4 5 6 7 8 9"),
)


@chart(
    "seventh-b-tile",
    "headings of modes, all values of a slot as lines of one cell, colons between value and text",
    "html",
    "en",
    "Copperbeech Film",
    "Tile 4",
)
def tile(seed: int) -> Made:
    parts = [
        "<nav><a href='#'>Products</a> <a href='#'>Support</a></nav>",
        "<h1>Tile 4 support</h1>",
        "<h2>Firmware</h2><p>Version 1.7 makes dimming below 2% smoother. Update from a USB stick.</p>",
        "<h2>DMX</h2>",
    ]
    modes: list[M] = []
    for name, plan in TILE_MODES:
        modes.append(v.sized(k.seat(TILE, plan), name, "{} ({} ch)", "{} mode", "{1} ch"))
        parts.append(f"<h3>{modes[-1].title}</h3>\n<table>\n<tr><th>Ch</th><th>Name</th><th>Values</th></tr>")
        for line in k.lines(modes[-1].params):
            values = [f"{v.en(lo, hi)}: {text}" if text else v.en(lo, hi) for lo, hi, text in line.rows]
            parts.append(f"<tr><td>{line.slot}</td><td>{line.name}</td><td>{'<br>'.join(values)}</td></tr>")
        parts.append("</table>")
    parts.append("<h2>Contact</h2><p>Write to us and tell us the serial number on the rear.</p>")
    return k.made("Copperbeech Film", "Tile 4", modes, page("en", "Tile 4 support", "\n".join(parts)))


GALE = s.row_of(
    x.params("""
fan: Fan speed
  0-9 off: Off | 10-255: 5% to 100% [5 100 %]
red: Red ring = Off to full
green: Green ring = Off to full
blue: Blue ring = Off to full
strobe shutter: Ring strobe
  0-9 out: No strobe | 10-255 flash: Slow to fast
""")
)


@chart(
    "seventh-b-gale",
    "a list of slots with inner lists of values and no table",
    "html",
    "en",
    "Stagewright & Daughters",
    "Zephyr 3",
)
def gale(seed: int) -> Made:
    items = []
    for line in k.lines(GALE):
        inner = "".join(f"<li>{k.dash(lo, hi)}: {text}</li>" for lo, hi, text in line.rows)
        items.append(f"<li><b>Channel {line.slot}: {line.name}</b><ul>{inner}</ul></li>")
    body = "\n".join(
        [
            "<h1>Zephyr 3 stage fan</h1>",
            "<p>Quiet fan with a ring of LEDs. Runs on 100 to 240 V and draws 280 W.</p>",
            "<ul><li>Weight 9 kg</li><li>Tilts by 90°</li><li>Guard to stage standards</li></ul>",
            "<h2>DMX channels</h2>",
            "<ul>",
            *items,
            "</ul>",
            "<h2>Questions</h2><p>Does it dry paint? <i>We do not recommend it.</i></p>",
        ]
    )
    return k.made("Stagewright & Daughters", "Zephyr 3", [k.mode(GALE)], page("en", "Zephyr 3", body))


KOPF = x.params("""
pan: Pan + Pan fein = 0° bis 540° [0 540 deg]
tilt: Tilt + Tilt fein = 0° bis 230° [0 230 deg]
movement-speed: Geschwindigkeit Pan/Tilt = schnell bis langsam
dimmer intensity-master: Dimmer = 0 % bis 100 % [0 100 %]
shutter strobe: Shutter
  0-9 closed: geschlossen | 10-19 open: offen | 20-199 flash: Strobe langsam bis schnell
  200-239 random: Zufallsstrobe | 240-255 open: offen
color-wheel: Farbrad
  0-15 white: weiß | 16-31: rot | 32-47: orange | 48-63: gelb | 64-79: grün | 80-95: hellblau | 96-111: blau
  112-127: magenta | 128-255 rainbow: Regenbogen langsam bis schnell
gobo-wheel rotating-gobo-wheel: Goborad
  0-15 open: offen | 16-31: Gobo 1 | 32-47: Gobo 2 | 48-63: Gobo 3 | 64-79: Gobo 4 | 80-95: Gobo 5
  96-111: Gobo 6 | 112-127: Gobo 7 | 128-191 shake: Gobo 7 bis 1 schütteln
  192-255 spin gobo-wheel: Rotation langsam bis schnell
prism: Prisma
  0-127 out: kein Prisma | 128-255: 3-fach-Prisma
focus: Fokus = nah bis fern
macro effect movement-macro: Automatik
  0-31 nothing: keine Funktion | 32-127 perhaps: Programm 1 | 128-223 perhaps: Programm 2
  224-255 sound: Musiksteuerung
reset control: Reset
  0-200 nothing: keine Funktion | 201-255 reset: Reset
""")
KOPF_PLANS = (("Basis", "1 2 - 3 4 5 6 7 8 - -"), ("Erweitert", "1/2 3/4 5 6 7 8 9 10 11 12 13"))


@chart(
    "seventh-b-kopf",
    "slots of two modes behind the name, a break in their heads, data of the product before",
    "html",
    "de",
    "Leuchtenhaus Brömmel",
    "Kopfspot 75",
)
def kopf(seed: int) -> Made:
    data = [
        ["Leistung", "75 W"],
        ["Abstrahlwinkel", "14°"],
        ["Pan / Tilt", "540° / 230°"],
        ["Gewicht", "7,4 kg"],
    ]
    heads = "".join(f"<th>Kanal<br>{name}</th>" for name, _ in KOPF_PLANS)
    rows: list[list[Cell]] = []
    for side in k.sides(KOPF, *(plan for _, plan in KOPF_PLANS)):
        first: list[Cell] = [side.name, *("&ndash;" if at is None else at for at in side.slots)]
        rows += beside(first, [[k.hyphen(lo, hi), text] for lo, hi, text in side.rows])
    body = "\n".join(
        [
            "<div id='kopf'><h1>Kopfspot 75</h1><p>Kompakter LED-Moving-Head für kleine Bühnen.</p></div>",
            f"<h2>Technische Daten</h2>\n<table>{web_rows(data)}</table>",
            "<h2>DMX-Kanäle</h2>",
            f"<table class='dmx'>\n<tr><th>Funktion</th>{heads}<th>DMX-Wert</th><th>Beschreibung</th></tr>",
            web_rows(rows).replace("&amp;ndash;", "&ndash;"),
            "</table>",
            "<p>Irrtümer und Änderungen vorbehalten.</p>",
        ]
    )
    modes = [k.mode(k.seat(KOPF, plan), name, f"Kanal {name}") for name, plan in KOPF_PLANS]
    return k.made("Leuchtenhaus Brömmel", "Kopfspot 75", modes, page("de", "Kopfspot 75", body))


OMBRE = x.params("""
intensity-master dimmer: Intensité générale = 0 à 100 % [0 100 %]
red: Rouge = 0 à 100 % [0 100 %]
green: Vert = 0 à 100 % [0 100 %]
blue: Bleu = 0 à 100 % [0 100 %]
warm-white white: Blanc chaud = 0 à 100 % [0 100 %]
macro effect color-macro: Scénario
  0-20 nothing: Aucun | 21-80 perhaps: Aurore | 81-140 perhaps: Vagues | 141-200 perhaps: Braises
  201-255 perhaps: Arc-en-ciel
macro-speed effect-speed color-macro-speed: Vitesse = Lente à rapide
""")
OMBRE_ALL = (
    *OMBRE[:5],
    replace(OMBRE[5], key="scenario"),
    replace(
        OMBRE[6],
        when=({"parameter": "scenario", "from": 21, "to": 255},),
        doubt="may",
        why="a note under the table says so",
    ),
)
OMBRE_MODES = (
    ("Mode Couleur", OMBRE[1:5], "1 2 3 4"),
    ("Mode Maître", OMBRE[:5], "1 2 3 4 5"),
    ("Mode Scénario", OMBRE_ALL, "1 2 3 4 5 6 7"),
)


@chart(
    "seventh-b-ombre",
    "a star at one name and its note under the table, modes as captions, from and to",
    "html",
    "fr",
    "Ombreval Éclairage",
    "Corniche 18",
)
def ombre(seed: int) -> Made:
    parts = [
        "<h1>Corniche 18</h1>",
        "<p>Réglette encastrée pour corniches et façades, 18 LED de 3 W, IP 67.</p>",
        "<h2>Pilotage DMX512</h2>",
    ]
    modes: list[M] = []
    head = web_rows([["Canal", "Paramètre", "De", "À", "Fonction"]], "th")
    for name, params, plan in OMBRE_MODES:
        modes.append(k.mode(k.seat(params, plan), name, name.removeprefix("Mode ")))
        rows: list[list[Cell]] = []
        for line in k.lines(modes[-1].params):
            label = f"{line.name}*" if line.p.when else line.name
            rows += beside([line.slot, label], [[lo, hi, text] for lo, hi, text in line.rows])
        parts.append(f"<table><caption>{name}</caption>\n{head}\n{web_rows(rows)}\n</table>")
    parts.append("<p>* Actif seulement si le canal 6 (Scénario) est entre 21 et 255.</p>")
    parts.append(
        "<h2>Accessoires</h2><ul><li>Câble de départ 3 m</li><li>Grille anti-éblouissement</li></ul>"
    )
    return k.made("Ombreval Éclairage", "Corniche 18", modes, page("fr", "Corniche 18", "\n".join(parts)))


HAZ = s.row_of(
    x.params("""
pan: Pan + Pan fino = 0° a 540° [0 540 deg] @128+128
tilt: Tilt + Tilt fino = 0° a 250° [0 250 deg] @128+128
movement-speed: Velocidad de movimiento = De rápida a lenta @0
dimmer intensity-master: Dimmer = De 0 a 100 % [0 100 %] @0
shutter strobe: Obturador @255
  0-3 closed: Cerrado | 4-127 flash: Estrobo de lento a rápido | 128-191 pulse: Pulsos de lento a rápido
  192-251 random: Estrobo aleatorio | 252-255 open: Abierto
color-wheel: Rueda de color @0
  0-9 white: Blanco | 10-19: Rojo | 20-29: Verde | 30-39: Azul | 40-49: Amarillo | 50-59: Magenta
  60-69: Naranja | 70-79: CTO | 80-127: Violeta | 128-255 rainbow: Arcoíris
gobo-wheel: Rueda de gobos @0
  0-7 open: Abierto | 8-15: Gobo 1 | 16-23: Gobo 2 | 24-31: Gobo 3 | 32-39: Gobo 4 | 40-47: Gobo 5
  48-127: Gobo 6 | 128-255 spin gobo-wheel: Giro de la rueda
prism: Prisma @0
  0-127 out: Sin prisma | 128-255: Prisma de 8 caras
prism-rotation prism-index: Giro del prisma @0
  0-127 index prism: Posición fija | 128-191 spin prism: Giro horario | 192-255 spin prism: Giro antihorario
frost: Difusor @0
  0-127 out: Fuera | 128-255: Dentro
focus: Enfoque = De cerca a lejos @100
control lamp-control reset: Control @0
  0-99 nothing: Sin función | 100-119 lamp-on: Encender lámpara (5 s) {hold 5}
  120-139 lamp-off: Apagar lámpara (5 s) {hold 5} | 140-199 nothing: Sin función
  200-219 reset: Reinicio (5 s) {hold 5} | 220-255 nothing: Sin función
""")
)


@chart(
    "seventh-b-haz",
    "one long table, slots and names reach down, the value at power on last",
    "html",
    "es",
    "Haces del Sur",
    "Faro 230 B",
)
def haz(seed: int) -> Made:
    rows: list[list[Cell]] = []
    for line in k.lines(HAZ):
        default = line.p.fine_default if line.byte else line.p.default
        for n, (lo, hi, text) in enumerate(line.rows):
            reach = len(line.rows)
            first: list[Cell] = [None, None] if n else [C(str(line.slot), reach), C(line.name, reach)]
            last: list[Cell] = [None] if n else [C(str(default), reach)]
            rows.append([*first, k.hyphen(lo, hi), text, *last])
    head = web_rows([["Canal", "Función", "Valor", "Descripción", "Por defecto"]], "th")
    body = "\n".join(
        [
            "<h1>Faro 230 B</h1><p>Cabeza móvil con lámpara de descarga de 230 W.</p>",
            "<h2>Tabla de canales DMX</h2>",
            f"<table><thead>{head}</thead><tbody>\n{web_rows(rows)}\n</tbody></table>",
            "<p>Los segundos entre paréntesis indican cuánto tiempo hay que mantener el valor.</p>",
            "<p>Deje enfriar la lámpara 10 minutos antes de encenderla de nuevo.</p>",
        ]
    )
    return k.made("Haces del Sur", "Faro 230 B", [k.mode(HAZ)], page("es", "Faro 230 B", body))
