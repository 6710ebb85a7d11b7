"""Pages with notes and defaults, and plain text: a drawn table and lines of a translated sheet."""

from __future__ import annotations

from html import escape

from intake.corpus.content import M, Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open.fifth_b_kit import Cell, beside, p, page, web_rows
from intake.corpus.registry import chart

WHY = "a note under the table says so"
SHIFTED = ({"parameter": "effect", "from": 10, "to": 255},)
FRAME = (
    P(("dimmer",), "Intensity", fine=("Intensity fine",), text="0–100%", spans=k.LEVEL),
    p(
        "shutter strobe",
        "Shutter",
        "0-9 closed: Closed",
        "10-19 open: Open",
        k.flash(20, 199, "Strobe 1–18 Hz", (1, 18)),
        "200-255 open: Open",
    ),
    *(k.level(name.lower(), name, "0–100%") for name in ("Red", "Green", "Blue", "Lime")),
    p(
        "effect macro",
        "Effect",
        "0-9 nothing: None",
        "10-91 runs: Clouds",
        "92-173 runs: Water",
        "174-255 runs: Fire",
        key="effect",
    ),
    P(
        ("effect-speed", "macro-speed"),
        "Effect speed",
        text="Slow to fast",
        when=SHIFTED,
        doubt="may",
        why=WHY,
    ),
    p(
        "control reset",
        "Service",
        "0-199 nothing: No function",
        R(
            200,
            219,
            "Reset",
            also=("Reset 2",),
            hazard="reset",
            hold_s=4,
            needs=(("shutter", 0, 9),),
        ),
        "220-255 nothing: No function",
        doubt="may",
        why=WHY,
    ),
)
FRAME_PLANS = (("Studio", "1/2 3 4 5 6 7 - - 8"), ("Show", "1/2 3 4 5 6 7 8 9 10"))
MARKS = {"Effect speed": "1", "Reset": "2"}


def _marked(name: str) -> str:
    return f"{escape(name)}<sup>{MARKS[name]}</sup>" if name in MARKS else escape(name)


@chart(
    "sixth-b-frame",
    "raised figures that lead to notes under the table, slots of two modes last",
    "html",
    "en",
    "Bridgefoot Optics",
    "Frame 26",
)
def frame(seed: int) -> Made:
    rows = []
    for side in k.sides(FRAME, *(plan for _, plan in FRAME_PLANS)):
        reach = f' rowspan="{len(side.rows)}"' if len(side.rows) > 1 else ""
        slots = "".join(f"<td{reach}>{'–' if at is None else at}</td>" for at in side.slots)
        for n, (lo, hi, text) in enumerate(side.rows):
            name = "" if n else f"<td{reach}>{_marked(side.name)}</td>"
            rows.append(f"<tr>{name}<td>{lo}–{hi}</td><td>{_marked(text)}</td>{'' if n else slots}</tr>")
    head = web_rows([["Parameter", "DMX value", "Effect", *(name for name, _ in FRAME_PLANS)]], "th")
    body = "\n".join(
        [
            "<h1>Frame 26</h1><p>Projector with framing blades for exhibitions and small stages.</p>",
            "<h2>DMX parameters</h2>",
            f"<table><thead>{head}</thead><tbody>",
            *rows,
            "</tbody></table>",
            "<p><small><sup>1</sup> Only while Effect is at 10–255.</small></p>",
            "<p><small><sup>2</sup> Send for 4 s while Shutter is at 0–9.</small></p>",
            "<h2>Downloads</h2><ul><li><a href='#'>Drawing</a></li><li><a href='#'>Photometry</a></li></ul>",
        ]
    )
    modes = [k.mode(k.seat(FRAME, plan), name) for name, plan in FRAME_PLANS]
    return k.made("Bridgefoot Optics", "Frame 26", modes, page("en", "Frame 26", body))


MINERO_STROBE = p(
    "strobe shutter", "Estrobo", "0-9 out: Apagado", k.flash(10, 255, "1 a 20 Hz", (1, 20)), default=0
)
MINERO = (
    P(
        ("dimmer",),
        "Intensidad",
        fine=("Intensidad fina",),
        text="0 a 100 %",
        spans=k.LEVEL,
        default=0,
        fine_default=0,
    ),
    P(
        ("color-temperature",),
        "Temperatura de color",
        text="2700 a 6500 K",
        spans=(span(2700, 6500, "K"),),
        default=77,
    ),
    P(("zoom",), "Zoom", text="60° a 12°", spans=(span(60, 12, "deg"),), default=0),
    MINERO_STROBE,
    p(
        "fan-mode fan",
        "Ventilador",
        "0-84 fan: Automático",
        "85-169 fan: Silencioso",
        "170-255 fan: Máximo",
        default=0,
    ),
)
MINERO_MODES = (("Modo corto", MINERO[:2], "1 2"), ("Modo largo", MINERO, "1/2 3 4 5 6"))


@chart(
    "sixth-b-minero",
    "defaults as the second column, cells that reach down, a table of menus before",
    "html",
    "es",
    "Industrias Candelar",
    "Minero 12",
)
def minero(seed: int) -> Made:
    menu = [
        ["Menú", "Opciones"],
        ["Dirección", "001 – 512"],
        ["Modo", "Corto, Largo"],
        ["Pantalla", "Sí, No"],
    ]
    parts = [
        "<h1>Minero 12</h1>",
        "<p>Foco de lente Fresnel con LED de 180 W.</p>",
        f"<h2>Menú</h2><table>{web_rows(menu)}</table>",
        "<h2>Canales DMX</h2>",
    ]
    modes: list[M] = []
    for name, params, plan in MINERO_MODES:
        modes.append(k.mode(k.seat(params, plan), name, name.removeprefix("Modo ")))
        rows: list[list[Cell]] = []
        for line in k.lines(modes[-1].params):
            default = line.p.fine_default if line.byte else line.p.default
            first: list[Cell] = [line.slot, default, line.name]
            rows += beside(first, [[f"{lo}-{hi}", text or "Ajuste fino"] for lo, hi, text in line.rows])
        head = web_rows([["Canal", "Predeterminado", "Función", "Valor", "Efecto"]], "th")
        parts.append(f"<h3>{name}</h3>\n<table>{head}\n{web_rows(rows)}\n</table>")
    parts.append("<p>Peso: 5,8 kg. Temperatura máxima de la superficie: 70 °C.</p>")
    return k.made("Industrias Candelar", "Minero 12", modes, page("es", "Minero 12", "\n".join(parts)))


LANTERN = s.row_of(
    (
        P(("dimmer",), "Dimmer", text="0 to 100 percent", spans=k.LEVEL),
        P(("color-temperature",), "Color temp.", text="1800 K to 4000 K", spans=(span(1800, 4000, "K"),)),
        p(
            "effect macro",
            "Flicker",
            k.optional(R(0, 15, "Steady light"), does=("nothing", "open")),
            "16-95 runs: Candle in a still room",
            "96-175 runs: Candle in a draft",
            "176-255 runs: Oil lamp",
        ),
        P(("dimmer-fade-time",), "Fade time", text="0 s to 4 s", spans=(span(0, 4, "s"),)),
    )
)
LANTERN_TOP = """NETTLECOMBE RADIO LIGHTS
Hand lantern, model W, receiver fitted in the base

The receiver listens to universe 1 unless the slide switch is moved to 2.
The lamp keeps its last level for 10 seconds when the signal is lost.

DMX slots:

"""


@chart(
    "sixth-b-lantern",
    "a table drawn with plus signs, minus signs and bars",
    "txt",
    "en",
    "Nettlecombe Radio Lights",
    "Lantern W",
)
def lantern(seed: int) -> Made:
    rows = [["Slot", "Function", "Value", "Action"], *s.body(LANTERN, "slot name value text")]
    texts = [[str(one) for one in row] for row in rows]
    widths = [max(len(row[x]) for row in texts) for x in range(4)]
    rule = "+" + "+".join("-" * (width + 2) for width in widths) + "+"
    out = [rule]
    for n, row in enumerate(texts):
        out.append("| " + " | ".join(one.ljust(w) for one, w in zip(row, widths, strict=True)) + " |")
        if n + 1 == len(texts) or texts[n + 1][0]:
            out.append(rule)
    text = LANTERN_TOP + "\n".join(out) + "\n\nCharge the lantern overnight before first use.\n"
    return k.made("Nettlecombe Radio Lights", "Lantern W", [k.mode(LANTERN)], text)


WASH = s.row_of(
    (
        P(("pan",), "Pan", fine=("Pan fine",), text="from 0 to 540 degree", spans=(span(0, 540, "deg"),)),
        P(("tilt",), "Tilt", fine=("Tilt fine",), text="from 0 to 180 degree", spans=(span(0, 180, "deg"),)),
        P(("movement-speed",), "XY speed", text="from fast to slow"),
        P(("dimmer",), "Dimming", text="from dark to bright"),
        p("strobe shutter", "Strobe", "0-9 out: no strobe", "10-255 flash: strobe from slow to fast"),
        *(
            P((word,), label, text="from dark to bright")
            for word, label in (("red", "Red"), ("green", "Green"), ("blue", "Blue"), ("white", "White"))
        ),
        P(("zoom",), "Zoom", text="from small to big"),
        p(
            "macro color-macro effect",
            "Auto",
            "0-9 nothing: no function",
            "10-89 perhaps: color gradient",
            "90-169 perhaps: color jump",
            R(170, 255, "sound control", may={"does": ("runs", "random")}),
        ),
        p("reset control", "Reset", "0-249 nothing: no function", "250-255 reset: reset"),
    )
)


@chart(
    "sixth-b-yaohui",
    "a line a slot, ranges parted by semicolons",
    "txt",
    "en",
    "Yaohuimei Lighting",
    "YH-W1910 Zoom Wash",
)
def yaohui(seed: int) -> Made:
    out = ["YH-W1910 Zoom Wash moving head, 19*10W RGBW 4in1", "", "DMX CHANNEL (14CH mode)", ""]
    for line in k.lines(WASH):
        values = "; ".join(f"{k.zeros(lo, hi)} {text}".strip() for lo, hi, text in line.rows)
        out.append(f"CH{line.slot} {line.name}: {values}")
    out += ["", "Packing: 1 piece in carton, N.W. 8.5KG, G.W. 9.6KG"]
    mode = k.mode(WASH, "14CH mode", "14CH", "DMX CHANNEL (14CH mode)")
    return k.made("Yaohuimei Lighting", "YH-W1910 Zoom Wash", [mode], "\r\n".join(out) + "\r\n")
