"""Pages of five makers' sites: a PAR, a moving wash, a beam head, a film tube and a strobe."""

from __future__ import annotations

from html import escape
from typing import Any

from intake.corpus.aside import eighth_b_kit as e
from intake.corpus.content import M, Made
from intake.corpus.grids import C
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.open.fifth_b_kit import page, web_rows
from intake.corpus.registry import chart

PUCK = x.params("""
dimmer intensity-master: Master dimmer = 0~100% [0 100 %]
red: Red = 0~100% [0 100 %]
green: Green = 0~100% [0 100 %]
blue: Blue = 0~100% [0 100 %]
white: White = 0~100% [0 100 %]
strobe shutter: Strobe
  0-10 out: No strobe | 11-255 flash: Slow to fast
macro color-macro effect: Auto mode
  0-50 nothing: No function | 51-100: Fixed color | 101-150 perhaps: Jump change
  151-200 perhaps: Gradual change | 201-250 perhaps: Pulse change | 251-255 sound: Sound active
macro-speed effect-speed color-macro-speed: Auto speed = Slow to fast
""")
PUCK_PLANS = (("4-channel mode", "- 1 2 3 4 - - -"), ("8-channel mode", "1 2 3 4 5 6 7 8"))


@chart(
    "eighth-b-puck",
    "a table a mode with reaching cells for slot and name, a menu and links around",
    "html",
    "en",
    "Marlpit Lighting",
    "Puck 12 Quad",
)
def puck(seed: int) -> Made:
    modes: list[M] = []
    body = '<ul class="nav"><li><a href="#">Home</a></li><li><a href="#">Support</a></li></ul>\n'
    body += "<h1>Puck 12 Quad</h1>\n<p>12 x 8 W quad color PAR with flicker-free output.</p>\n"
    body += "<h2>DMX channels</h2>\n"
    for title, plan in PUCK_PLANS:
        names = (title.removesuffix(" mode"), title.removesuffix(" mode").replace("-", " "))
        modes.append(k.mode(k.seat(PUCK, plan), title, *names))
        rows = s.body(modes[-1].params, "slot name value text", e.between("-", 3), reach=True)
        heads = web_rows([["Channel", "Function", "Value", "Description"]], "th")
        body += f"<h3>{title}</h3>\n<table>\n<thead>{heads}</thead>\n"
        body += f"<tbody>\n{web_rows(rows)}\n</tbody></table>\n"
    body += '<p><a href="#">Download the manual</a> or <a href="#">ask a question</a>.</p>'
    return k.made(
        "Marlpit Lighting", "Puck 12 Quad", modes, page("en", "Puck 12 Quad | Marlpit Lighting", body)
    )


KORONA = x.params("""
pan: Pan + Pan fein = 0° bis 540° [0 540 deg]
tilt: Tilt + Tilt fein = 0° bis 220° [0 220 deg]
dimmer: Dimmer + Dimmer fein = 0 bis 100 % [0 100 %]
shutter strobe: Shutter
  0-15 closed: Geschlossen | 16-95 flash: Strobe langsam bis schnell
  96-175 random: Zufallsstrobe langsam bis schnell | 176-255 open: Offen
red: Rot = 0 bis 100 % [0 100 %]
green: Grün = 0 bis 100 % [0 100 %]
blue: Blau = 0 bis 100 % [0 100 %]
white: Weiß = 0 bis 100 % [0 100 %]
color-temperature color-correction: CTC
  0-15 nothing: Keine Korrektur | 16-255: 8000 K bis 2700 K [8000 2700 K]
zoom: Zoom = eng bis weit
control reset: Steuerung
  0-199 nothing: Keine Funktion | 200-219 reset: Reset Kopf (3 Sekunden halten) {hold 3}
  220-239 reset: Reset gesamt (3 Sekunden halten) {hold 3} | 240-255 nothing: Keine Funktion
""")
KORONA_PLANS = (("Basic", "1 2 3 4 5 6 7 8 - 9 -"), ("Extended", "1/2 3/4 5/6 7 8 9 10 11 12 13 14"))


@chart(
    "eighth-b-korona",
    "two modes beside each other under a two-story head, name before values",
    "html",
    "de",
    "Elbtal Lichttechnik",
    "Korona 7 Wash",
)
def korona(seed: int) -> Made:
    names = [name for name, _ in KORONA_PLANS]
    heads: list[list[Any]] = [
        [
            C("Kanal im Modus", cols=2),
            None,
            C("Funktion", rows=2),
            C("DMX", rows=2),
            C("Beschreibung", rows=2),
        ],
        [*names, None, None, None],
    ]
    rows = e.abreast(
        KORONA,
        [plan for _, plan in KORONA_PLANS],
        lambda slots, name, value, text: [*slots, name, value, text],
        e.between(" – "),
        "-",
        "Feinauflösung",
    )
    table = f'<table class="dmx">\n<thead>{web_rows(heads, "th")}</thead>\n{web_rows(rows)}\n</table>'
    body = f"<h1>Korona 7 Wash</h1>\n<p>Alle Angaben ab Software 2.0.</p>\n<h2>DMX-Belegung</h2>\n{table}\n"
    body += "<h2>Zubehör</h2>\n<ul><li>Omega-Bügel</li><li>Sicherungsseil 60 cm</li></ul>"
    modes = [k.mode(k.seat(KORONA, plan), name) for name, plan in KORONA_PLANS]
    return k.made("Elbtal Lichttechnik", "Korona 7 Wash", modes, page("de", "Korona 7 Wash", body))


STILETTO = s.row_of(
    x.params("""
pan: Pan + Pan fine = 0° - 540° [0 540 deg]
tilt: Tilt + Tilt fine = 0° - 270° [0 270 deg]
dimmer: Dimmer = 0 - 100% [0 100 %]
shutter strobe: Otturatore
  0-31 closed: Chiuso | 32-63 open: Aperto | 64-191 flash: Strobo da lento a veloce
  192-223 random: Strobo casuale | 224-255 open: Aperto
color-wheel: Ruota colori
  0-15 white: Bianco | 16-31: Rosso | 32-47: Arancio | 48-63: Giallo | 64-79: Verde | 80-95: Azzurro
  96-111: Blu | 112-127: Viola | 128-255 rainbow: Rotazione da lenta a veloce
gobo-wheel: Ruota gobo
  0-15 open: Aperto | 16-55: Gobo 1 | 56-95: Gobo 2 | 96-135: Gobo 3 | 136-175: Gobo 4
  176-255 spin gobo-wheel: Rotazione da lenta a veloce
prism: Prisma
  0-127 out: Escluso | 128-255: Inserito
frost: Frost
  0-127 out: Escluso | 128-255: Inserito
focus: Fuoco = Da vicino a lontano
reset control: Reset
  0-239 nothing: Nessuna funzione | 240-255 reset: Reset completo
""")
)


@chart(
    "eighth-b-stiletto",
    "plain cells with a caption, slot and name only once, a data sheet's table above",
    "html",
    "it",
    "Valdarco Luci",
    "Stiletto 150",
)
def stiletto(seed: int) -> Made:
    specs = web_rows([["Sorgente", "LED 150 W"], ["Apertura", "2,5°"], ["Peso", "9,8 kg"]])
    rows = [["Canale", "Funzione", "Valori DMX", "Descrizione"]]
    rows += s.body(STILETTO, "slot name value text", e.between("-"), "Regolazione fine")
    body = f"<h1>Stiletto 150</h1>\n<table>\n<caption>Dati tecnici</caption>\n{specs}\n</table>\n"
    body += f'<table border="1">\n<caption>Tabella DMX, 12 canali</caption>\n{web_rows(rows)}\n</table>'
    mode = k.mode(STILETTO)
    return k.made("Valdarco Luci", "Stiletto 150", [mode], page("it", "Stiletto 150", body))


REED = x.params("""
dimmer intensity-master: Dimmer = 0 to 100% [0 100 %]
color-temperature: Color temperature = 2200 K to 8000 K [2200 8000 K]
tint green-correction: Tint = Minus green to plus green
red: Red = 0 to 100% [0 100 %]
green: Green = 0 to 100% [0 100 %]
blue: Blue = 0 to 100% [0 100 %]
hue: Hue = 0° to 360° [0 360 deg]
saturation: Saturation = 0 to 100% [0 100 %]
effect macro: Effect
  0-25 nothing: No effect | 26-76 runs: Lightning | 77-127 runs: TV | 128-178 runs: Candle
  179-229 runs: Siren | 230-255 runs: Disco
effect-speed macro-speed: Effect speed = Slow to fast
""")
REED_PLANS = (
    ("P1 White", "1 2 3 - - - - - - -"),
    ("P2 RGB", "1 - - 2 3 4 - - - -"),
    ("P3 HSI", "1 - - - - - 2 3 - -"),
    ("P4 Effects", "1 2 3 - - - - - 4 5"),
)


@chart(
    "eighth-b-reed",
    "four short tables under headings, the word to between values, units in the texts",
    "html",
    "en",
    "Sallow Lane Lights",
    "Reed 60",
)
def reed(seed: int) -> Made:
    modes: list[M] = []
    parts = ["<h1>Reed 60 help center</h1>", "<h2>Which DMX profiles does Reed 60 have?</h2>"]
    parts.append("<p>Pick a profile under Settings, DMX, Profile.</p>")
    for title, plan in REED_PLANS:
        modes.append(k.mode(k.seat(REED, plan), title, *title.split()))
        rows: list[list[Any]] = [["Slot", "Control", "DMX", "Effect on the light"]]
        rows += s.body(modes[-1].params, "slot name value text", e.between(" to "))
        parts.append(f"<h4>{escape(title)}</h4>\n<table>\n{web_rows(rows)}\n</table>")
    parts.append("<p>Was this answer helpful? Yes / No</p>")
    return k.made(
        "Sallow Lane Lights", "Reed 60", modes, page("en", "DMX profiles of Reed 60", "\n".join(parts))
    )


ECLAIR = s.row_of(
    x.params("""
dimmer intensity-master: Intensité = De 0 à 100 % [0 100 %]
strobe shutter: Vitesse des éclairs
  0-5 out: Lumière fixe | 6-255 flash: De 1 à 25 Hz [1 25 Hz]
strobe-duration: Durée de l'éclair = De 5 à 650 ms [5 650 ms]
macro effect strobe-mode: Effets
  0-42 nothing: Aucun effet | 43-85 perhaps: Montée | 86-128 perhaps: Descente
  129-171 perhaps: Montée et descente | 172-213 random: Éclairs aléatoires | 214-255 perhaps: Foudre
""")
)


@chart(
    "eighth-b-eclair",
    "a strobe's page, lower-case head, values with the word à, a notice of dangers before",
    "html",
    "fr",
    "Bruyère Scénique",
    "Éclair 1500",
)
def eclair(seed: int) -> Made:
    rows: list[list[Any]] = s.body(ECLAIR, "slot name value text", e.between(" à ", 3))
    heads = web_rows([["canal", "paramètre", "valeur", "résultat"]], "th")
    body = "<h1>Éclair 1500</h1>\n<p><strong>Attention :</strong> la lumière clignotante peut provoquer des "
    body += "crises d'épilepsie.</p>\n<h2>Canaux DMX (mode unique à 4 canaux)</h2>\n"
    body += f"<table>\n<thead>\n{heads}\n</thead>\n<tbody>\n{web_rows(rows)}\n</tbody>\n</table>"
    mode = k.mode(ECLAIR)
    return k.made("Bruyère Scénique", "Éclair 1500", [mode], page("fr", "Éclair 1500", body))
