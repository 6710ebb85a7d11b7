"""Pages of makers' sites: bands of slots, definitions, headings with lists, a matrix of modes."""

from __future__ import annotations

from html import escape

from intake.corpus.content import Made, P, R, span
from intake.corpus.grids import C
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open.fifth_b_kit import Cell, p, page, web_rows
from intake.corpus.registry import chart

BEAM = s.row_of(
    (
        P(("pan",), "Pan", fine=("Pan fine",), text="0 to 540°", spans=(span(0, 540, "deg"),)),
        P(("tilt",), "Tilt", fine=("Tilt fine",), text="0 to 250°", spans=(span(0, 250, "deg"),)),
        P(("movement-speed",), "Pan and tilt speed", text="Fast to slow"),
        p(
            "color-wheel",
            "Color wheel",
            "0-11 open: Open",
            *k.steps(12, 12, "Red", "Deep blue", "Yellow", "Green", "Pink", "Sky blue", "Orange", "CTO"),
            "108-127 white: White",
            "128-189 rainbow: Clockwise rotation, fast to slow",
            "190-193 stop: Stop",
            "194-255 rainbow: Counterclockwise rotation, slow to fast",
        ),
        p(
            "gobo-wheel",
            "Gobo wheel",
            "0-9 open: Open",
            *k.steps(10, 10, *(f"Gobo {n}" for n in range(1, 11))),
            *(f"{110 + 10 * n}-{119 + 10 * n} shake: Gobo {n + 1} shake" for n in range(10)),
            "210-255 spin gobo-wheel: Wheel rotation, slow to fast",
        ),
        p("prism", "Prism", "0-84 out: No prism", "85-169: 6-facet prism", "170-255: Linear prism"),
        p(
            "prism-rotation prism-index",
            "Prism rotation",
            "0-127 index prism: Position",
            "128-189 spin prism: Clockwise, fast to slow",
            "190-193 stop: Stop",
            "194-255 spin prism: Counterclockwise, slow to fast",
        ),
        P(("focus",), "Focus", text="Far to near"),
        P(("frost",), "Frost", text="0 to 100%", spans=k.LEVEL),
        p(
            "shutter strobe",
            "Shutter",
            "0-3 closed: Closed",
            "4-103 flash: Strobe, slow to fast",
            "104-107 open: Open",
            "108-207 pulse: Pulse, slow to fast",
            "208-212 open: Open",
            "213-251 random: Random strobe, slow to fast",
            "252-255 open: Open",
        ),
        P(("dimmer",), "Dimmer", fine=("Dimmer fine",), text="0 to 100%", spans=k.LEVEL),
        p(
            "control reset lamp-control",
            "Function",
            "0-25 nothing: No function",
            R(26, 76, "Lamp off if sent for 5 seconds", also=("Lamp off",), hazard="lamp off", hold_s=5),
            "77-127 nothing: No function",
            R(128, 178, "Lamp on", hazard="lamp on"),
            "179-199 nothing: No function",
            R(200, 229, "Reset if sent for 3 seconds", also=("Reset",), hazard="reset", hold_s=3),
            "230-255 nothing: No function",
        ),
    )
)


@chart(
    "sixth-b-pike",
    "a band across the table for each slot, its values beneath",
    "html",
    "en",
    "Stormcrown Stage",
    "Pike 230 Beam",
)
def pike(seed: int) -> Made:
    title = "15-channel mode"
    rows: list[list[Cell]] = []
    for line in k.lines(BEAM):
        rows.append([C(f"Channel {line.slot}: {line.name}", cols=2), None])
        rows += [[k.hyphen(lo, hi), text or "Fine adjustment"] for lo, hi, text in line.rows]
    body = "\n".join(
        [
            "<nav><a href='#'>Products</a> <a href='#'>Support</a> <a href='#'>Dealers</a></nav>",
            "<h1>Pike 230 Beam</h1>",
            "<h2>Facts</h2><ul><li>230 W discharge lamp, 2000 h</li><li>17.5 kg</li><li>IP20</li></ul>",
            f"<h2>DMX: {title}</h2>",
            f"<table>{web_rows([['Value', 'Function']], 'th')}\n{web_rows(rows)}\n</table>",
            "<h2>Lamp life</h2><p>Switch the lamp on at most 6 times a day.</p>",
        ]
    )
    mode = k.mode(BEAM, title, "15-channel", f"DMX: {title}")
    return k.made("Stormcrown Stage", "Pike 230 Beam", [mode], page("en", "Pike 230 Beam", body))


LAMPYRE_LEVELS = (
    P(("warm-white",), "Blanc chaud", text="éteint à 100 %", spans=(None, *k.LEVEL)),
    P(("cool-white",), "Blanc froid", text="éteint à 100 %", spans=(None, *k.LEVEL)),
)
LAMPYRE_MORE = (
    P(("dimmer",), "Intensité générale", text="0 à 100 %", spans=k.LEVEL),
    P(
        ("color-temperature",),
        "Température de couleur",
        text="2700 K à 5700 K",
        spans=(span(2700, 5700, "K"),),
    ),
    p(
        "dimmer-fade-time",
        "Temps de fondu",
        k.optional(R(0, 9, "sans fondu"), does=("nothing",)),
        R(10, 255, "0,2 s à 8 s", span=span(0.2, 8, "s")),
    ),
    p(
        "dimmer-curve",
        "Courbe de gradation",
        "0-127 curve: linéaire",
        "128-255 curve: logarithmique",
    ),
)
LAMPYRE = (("Mode direct", LAMPYRE_LEVELS), ("Mode blanc réglable", LAMPYRE_MORE))


@chart(
    "sixth-b-lampyre",
    "lists of definitions: a slot as the term, a definition for each range",
    "html",
    "fr",
    "Maison Lampyre",
    "Applique Trois",
)
def lampyre(seed: int) -> Made:
    parts = [
        "<h1>Applique Trois</h1>",
        "<p>Applique murale en laiton, 2 x 6 W, pilotage DMX par bornier.</p>",
        "<h2>Caractéristiques</h2>",
        "<dl><dt>Hauteur</dt><dd>32 cm</dd><dt>Tension</dt><dd>24 V</dd></dl>",
        "<h2>Canaux DMX</h2>",
    ]
    modes = []
    for name, params in LAMPYRE:
        modes.append(k.mode(s.row_of(params), name, name.removeprefix("Mode ")))
        parts.append(f"<h3>{name}</h3>\n<dl>")
        for line in k.lines(modes[-1].params):
            parts.append(f"<dt>Canal {line.slot} – {line.name}</dt>")
            parts += [f"<dd>{lo} à {hi} : {escape(text)}</dd>" for lo, hi, text in line.rows]
        parts.append("</dl>")
    parts.append("<h2>Entretien</h2><p>Essuyer le laiton avec un chiffon sec, sans produit.</p>")
    return k.made("Maison Lampyre", "Applique Trois", modes, page("fr", "Applique Trois", "\n".join(parts)))


GRATE = s.row_of(
    (
        P(("dimmer", "warm-white"), "Warm lamps", text="Dark to full"),
        p("strobe shutter", "Warm lamps strobe", "0-10 out: Off", k.flash(11, 255, "1-14 Hz", (1, 14))),
        P(("dimmer", "intensity-master", "background-dimmer"), "Grid dimmer", text="Dark to full"),
        P(("red",), "Grid red", text="Dark to full"),
        P(("green",), "Grid green", text="Dark to full"),
        P(("blue",), "Grid blue", text="Dark to full"),
        p(
            "pixel-effect effect macro pixel-macro",
            "Grid pattern",
            "0-19 nothing: None",
            "20-78 runs: Spiral",
            "79-137 runs: Rain",
            "138-196 runs: Heartbeat",
            "197-255 random: Random squares",
        ),
        P(
            ("pixel-effect-speed", "effect-speed", "macro-speed", "pixel-macro-speed"),
            "Pattern speed",
            text="Slow to fast",
        ),
    )
)


@chart(
    "sixth-b-grate",
    "a heading and a bullet list for each slot",
    "html",
    "en",
    "Copse Lane Lighting",
    "Grate 2x2",
)
def grate(seed: int) -> Made:
    parts = [
        "<h1>Grate 2x2</h1>",
        "<p>A blinder with four warm lamps over a grid of 64 small colored squares.</p>",
        "<h2>In the box</h2><ul><li>Grate 2x2</li><li>Bracket and two M10 bolts</li></ul>",
        "<h2>DMX channels</h2>",
        "<p>There is one mode. Set the address with the three rotary switches.</p>",
    ]
    for line in k.lines(GRATE):
        items = "".join(f"<li><b>{k.hyphen(lo, hi)}</b> {escape(text)}</li>" for lo, hi, text in line.rows)
        parts.append(f"<h3>{line.slot}. {line.name}</h3>\n<ul>{items}</ul>")
    parts.append("<h2>Warranty</h2><p>Two years from the day of purchase.</p>")
    data = page("en", "Grate 2x2 manual", "\n".join(parts))
    return k.made("Copse Lane Lighting", "Grate 2x2", [k.mode(GRATE)], data)


LEISTE_COLORS = (("red", "Rot"), ("green", "Grün"), ("blue", "Blau"), ("white", "Weiß"), ("amber", "Amber"))
LEISTE = (
    ("4-Kanal", LEISTE_COLORS[:4]),
    ("6-Kanal", (("dimmer intensity-master", "Dimmer"), *LEISTE_COLORS)),
    (
        "12-Kanal",
        (
            ("dimmer intensity-master", "Dimmer"),
            ("strobe shutter", "Strobe"),
            *((word, f"{label} links") for word, label in LEISTE_COLORS),
            *((word, f"{label} rechts") for word, label in LEISTE_COLORS),
        ),
    ),
)


@chart(
    "sixth-b-leiste",
    "slots down, three modes across, names in the cells",
    "html",
    "de",
    "Lichtkontor Amrathal",
    "Leiste 18 QA",
)
def leiste(seed: int) -> Made:
    rows: list[list[Cell]] = []
    for at in range(12):
        rows.append([at + 1, *(inside[at][1] if at < len(inside) else "–" for _, inside in LEISTE)])
    head = web_rows([["Kanal", *(name for name, _ in LEISTE)]], "th")
    body = "\n".join(
        [
            "<h1>Leiste 18 QA</h1><p>LED-Leiste mit 18 Linsen zu 8 W.</p>",
            "<h2>DMX-Modi</h2>",
            f"<table><thead>{head}</thead><tbody>\n{web_rows(rows)}\n</tbody></table>",
            "<h2>Zubehör</h2><ul><li>Bodenstativ</li><li>Blendschutz</li><li>Regenhaube</li></ul>",
        ]
    )
    modes = [
        k.mode([P(tuple(words.split()), label, (n,)) for n, (words, label) in enumerate(inside, 1)], name)
        for name, inside in LEISTE
    ]
    return k.made("Lichtkontor Amrathal", "Leiste 18 QA", modes, page("de", "Leiste 18 QA", body))
