"""Pages of makers' sites: heads of two rows, captions, groups, blocks of slots, with lists around."""

from __future__ import annotations

from intake.corpus.content import M, Made, P, R, span
from intake.corpus.grids import C
from intake.corpus.open import fresh_kit as k
from intake.corpus.open.fifth_b_kit import Cell, beside, p, page, web_rows
from intake.corpus.registry import chart

INTENSITY = P(("dimmer",), "Intensity", fine=("Intensity fine",), text="0–100%", spans=k.LEVEL)
PROFILE_STROBE = p("shutter strobe", "Strobe", "0-15 open: Open", k.flash(16, 255, "1–20 Hz", (1, 20)))
SMOOTHING = p(
    "smoothing",
    "Dimmer smoothing",
    R(0, 31, "As set in the menu", "as-menu", may={"sets": ("smoothing",)}),
    R(32, 95, "Off", sets=("smoothing", "off", "Off"), may={"does": ("nothing",)}),
    R(96, 159, "Fast", sets=("smoothing", "fast", "Fast")),
    R(160, 223, "Medium", sets=("smoothing", "medium", "Medium")),
    R(224, 255, "Slow", sets=("smoothing", "slow", "Slow")),
)
PROFILE = (
    (
        "Direct",
        (
            INTENSITY,
            *(k.level(label.lower(), label, "0–100%") for label in ("Red", "Green", "Blue", "Lime")),
            PROFILE_STROBE,
            SMOOTHING,
        ),
        "1/2 3 4 5 6 7 8",
    ),
    (
        "Studio",
        (
            INTENSITY,
            P(("color-temperature",), "CCT", text="2700–6500 K", spans=(span(2700, 6500, "K"),)),
            P(("tint", "green-correction"), "Tint", text="Minus green to plus green"),
            PROFILE_STROBE,
            SMOOTHING,
        ),
        "1/2 3 4 5 6",
    ),
)


@chart(
    "fifth-b-profile",
    "headings of modes, slots and names that reach over rows, steps and a menu around",
    "html",
    "en",
    "Farrowgate",
    "Linnet Profile 200",
)
def profile(seed: int) -> Made:
    parts = [
        "<header><h1>Linnet Profile 200</h1><p>LED profile with 19°, 26° and 36° tubes</p></header>",
        "<h2>Set up DMX</h2>",
        "<ol><li>Connect the data cable to the 5-pin input.</li><li>Choose DMX &gt; Mode in the menu.</li>"
        "<li>Set the start address, 1 to 512.</li></ol>",
        "<table><tr><th>Menu</th><th>Choices</th></tr>",
        web_rows(
            [["DMX > Mode", "Direct, Studio"], ["DMX > No signal", "Hold, Off"], ["Fan", "Auto, Quiet"]]
        ),
        "</table>",
        "<h2>DMX modes</h2>",
    ]
    modes = []
    for name, params, plan in PROFILE:
        m = k.mode(k.seat(params, plan), name)
        title = f"{name} mode – {m.footprint} slots"
        modes.append(M(title, (name, title, f"{name} mode"), m.footprint, m.params))
        rows: list[list[Cell]] = []
        for line in k.lines(m.params):
            rows += beside([line.slot, line.name], [[k.dash(lo, hi), text] for lo, hi, text in line.rows])
        head = web_rows([["Slot", "Parameter", "Value", "Result"]], "th")
        parts += [
            f"<h3>{title}</h3>",
            f"<table><thead>{head}</thead><tbody>",
            web_rows(rows),
            "</tbody></table>",
        ]
    parts += ["<h2>Care</h2><ul><li>Clean the lens with a dry cloth.</li><li>Fuse F1: T 4 A only.</li></ul>"]
    data = page("en", "Linnet Profile 200 – support", "\n".join(parts), "td, th { border: 1px solid #bbb }")
    return k.made("Farrowgate", "Linnet Profile 200", modes, data)


FACADE = (
    P(("dimmer",), "Intensité", fine=("Intensité fin",), text="0 à 100 %", spans=k.LEVEL),
    *(
        k.level(word, label, "0 à 100 %")
        for word, label in (("red", "Rouge"), ("green", "Vert"), ("blue", "Bleu"))
    ),
    k.level("white", "Blanc 4000 K", "0 à 100 %", also=("natural-white",)),
    p(
        "color-preset color-macro virtual-color-wheel",
        "Couleurs prédéfinies",
        "0-15 nothing: Inactif",
        *k.steps(16, 40, "Blanc chaud", "Blanc froid", "Ambre", "Turquoise", "Bleu nuit", "Fuchsia"),
    ),
    P(("color-time",), "Temps de fondu des couleurs", text="0 à 20 s", spans=(span(0, 20, "s"),)),
)
FACADE_PLANS = (("Éco", "- 1 2 3 4 - -"), ("Standard", "1 2 3 4 5 - -"), ("Étendu", "1/2 3 4 5 6 7 8"))


@chart(
    "fifth-b-facade",
    "a head of two rows, three modes beneath one cell",
    "html",
    "fr",
    "Façades et Lueurs",
    "Liseré 36",
)
def facade(seed: int) -> Made:
    head = [
        [C("Mode DMX", cols=3), *(C(text, rows=2) for text in ("Paramètre", "Valeur DMX", "Effet"))],
        [C(name) for name, _ in FACADE_PLANS],
    ]
    rows: list[list[Cell]] = []
    for side in k.sides(FACADE, *(plan for _, plan in FACADE_PLANS)):
        first = ["—" if s is None else s for s in side.slots]
        rows += beside([*first, side.name], [[f"{lo} – {hi}", text] for lo, hi, text in side.rows])
    body = "\n".join(
        [
            "<h1>Liseré 36</h1>",
            "<p>Projecteur linéaire pour façades, 36 LED, IP 66, classe I.</p>",
            "<ul><li>Alimentation : 100 – 240 V</li><li>Consommation : 58 W</li><li>Poids : 4,1 kg</li></ul>",
            "<h2>Protocole DMX</h2>",
            f'<table class="dmx"><thead>{web_rows(head, "th")}</thead>',
            f"<tbody>{web_rows(rows)}</tbody></table>",
            "<p>L'adressage se fait par RDM ou avec le boîtier de réglage.</p>",
            "<h2>Documents</h2><ul><li><a href='#'>Notice</a></li><li><a href='#'>Photométrie</a></li></ul>",
        ]
    )
    modes = [k.mode(k.seat(FACADE, plan), name) for name, plan in FACADE_PLANS]
    return k.made("Façades et Lueurs", "Liseré 36", modes, page("fr", "Liseré 36", body))


TUB_COLORS = tuple(k.level(label.lower(), label, "0-100%") for label in ("Red", "Green", "Blue", "White"))
TUB = (
    ("4-channel mode", (("Color", TUB_COLORS),)),
    (
        "9-channel mode",
        (
            (
                "Output",
                (
                    k.level("dimmer", "Dimmer", "0-100%"),
                    p("strobe shutter", "Strobe", "0-9 out: Off", "10-255 flash: Slow to fast"),
                ),
            ),
            ("Color", TUB_COLORS),
            (
                "Programs",
                (
                    p(
                        "macro effect color-macro",
                        "Program",
                        "0-9 nothing: No program",
                        "10-59 perhaps: Fade",
                        "60-109 perhaps: Jump",
                        "110-159 perhaps: Pulse",
                        "160-209 perhaps: Rainbow",
                        R(210, 255, "Sound control", may={"does": ("runs", "random")}),
                    ),
                    P(
                        ("macro-speed", "effect-speed", "color-macro-speed"),
                        "Program speed",
                        text="Slow to fast",
                    ),
                    p(
                        "dimmer-curve",
                        "Dimmer curve",
                        "0-63 curve: Linear",
                        "64-127 curve: Square law",
                        "128-191 curve: Inverse square law",
                        "192-255 curve: S-curve",
                    ),
                ),
            ),
        ),
    ),
)


@chart(
    "fifth-b-tub",
    "captions name the modes, groups reach down beside the slots",
    "html",
    "en",
    "Tidewick",
    "Tub 7 QCL",
)
def tub(seed: int) -> Made:
    parts = [
        "<h1>Tub 7 QCL: frequently asked questions</h1>",
        "<h2>Why does the lamp not react to DMX?</h2>",
        "<p>Check that the display shows <b>d001</b> and that the last unit has a 120 Ω terminator.</p>",
        "<h2>Which DMX channels does it have?</h2>",
        "<p>Two modes can be chosen in the menu:</p>",
        "<ul><li>A.4, four channels</li><li>A.9, nine channels</li></ul>",
    ]
    modes = []
    for title, groups in TUB:
        at, params, rows = 1, [], list[list[Cell]]()
        for group, inside in groups:
            seated = [q.at(at + n) for n, q in enumerate(inside)]
            at += len(inside)
            params += seated
            body: list[list[Cell]] = []
            for line in k.lines(seated):
                body += beside(
                    [line.slot, line.name], [[k.hyphen(lo, hi), text] for lo, hi, text in line.rows]
                )
            rows += beside([group], body)
        modes.append(k.mode(params, title, title.removesuffix(" mode")))
        head = web_rows([["Group", "Channel", "Function", "Value", "Description"]], "th")
        parts.append(f"<table><caption>{title}</caption>\n{head}\n{web_rows(rows)}\n</table>")
    parts.append(
        "<h2>How many units fit on one line?</h2><p>Up to 32, or up to 8 with a 3-pin cable of 100 m.</p>"
    )
    return k.made("Tidewick", "Tub 7 QCL", modes, page("en", "Tub 7 QCL – FAQ", "\n".join(parts)))


EYES = tuple(
    P(("dimmer", "warm-white"), f"Dimmer {side}", text="0–100 %", spans=k.LEVEL)
    for side in ("links", "rechts")
)
EYE_MORE = (
    p(
        "strobe shutter",
        "Strobe",
        "0-9 out: aus",
        "10-199 flash: langsam bis schnell",
        "200-255 random: zufällig",
    ),
    *(
        P((word,), label, text="0–100 %", spans=k.LEVEL)
        for word, label in (("red", "Ring Rot"), ("green", "Ring Grün"), ("blue", "Ring Blau"))
    ),
    p(
        "dim-to-warm",
        "Warmdimmen",
        k.optional(R(0, 127, "aus"), sets=("dim-to-warm",), does=("nothing",)),
        k.optional(R(128, 255, "ein"), sets=("dim-to-warm",)),
    ),
)
EYE_MODES = (("2-Kanal-Modus", EYES), ("7-Kanal-Modus", (*EYES, *EYE_MORE)))


@chart(
    "fifth-b-auge", "a heading and a small table for each slot", "html", "de", "Saalfunkel", "Doppelauge 2"
)
def auge(seed: int) -> Made:
    parts = ["<h1>Doppelauge 2</h1>", "<p>Blinder mit zwei Warmweiß-LEDs zu je 100 W und farbigem Ring.</p>"]
    parts.append("<h2>DMX-Kanalbelegung</h2>")
    modes = []
    for title, params in EYE_MODES:
        modes.append(k.mode([q.at(n) for n, q in enumerate(params, 1)], title, title.removesuffix("-Modus")))
        parts.append(f"<h3>{title}</h3>")
        for line in k.lines(modes[-1].params):
            rows = [[k.hyphen(lo, hi), text] for lo, hi, text in line.rows]
            head = web_rows([["Wert", "Funktion"]], "th")
            parts.append(
                f"<h4>Kanal {line.slot}: {line.name}</h4>\n<table>{head}\n{web_rows(rows)}\n</table>"
            )
    parts += [
        "<h2>Lieferumfang</h2><ul><li>1 Doppelauge 2</li><li>1 Bügel</li><li>1 Netzkabel 1,5 m</li></ul>",
        "<p>Mindestabstand zu brennbaren Flächen: 0,8 m.</p>",
    ]
    return k.made("Saalfunkel", "Doppelauge 2", modes, page("de", "Doppelauge 2", "\n".join(parts)))
