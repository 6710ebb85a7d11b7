"""Plain text: a readme with pipes, columns of blanks, a list of channels; and a page with bands of modes."""

from __future__ import annotations

from intake.corpus.content import M, Made, P, R, span
from intake.corpus.grids import C
from intake.corpus.open import fresh_kit as k
from intake.corpus.open.fifth_b_kit import beside, p, page, web_rows
from intake.corpus.registry import chart

MOON_LEVEL = P(("dimmer",), "Dimmer", fine=("Dimmer fine",), text="0-100%", spans=k.LEVEL)
MOON_KELVIN = P(("color-temperature",), "CCT", text="2200-6500K", spans=(span(2200, 6500, "K"),))
MOON_EFFECT = p(
    "effect macro",
    "Effect",
    "0-15 nothing: Off",
    "16-63 runs: Candle",
    "64-111 runs: Breathing",
    "112-159 runs: Lightning",
    "160-207 runs: Color loop",
    "208-255 runs: Moving clouds",
)
MOON = (
    ("White", (MOON_LEVEL, MOON_KELVIN), "1/2 3"),
    (
        "Color",
        (
            MOON_LEVEL,
            P(("hue",), "Hue", text="0-360°", spans=(span(0, 360, "deg"),)),
            P(("saturation",), "Saturation", text="0-100%", spans=k.LEVEL),
            MOON_KELVIN,
            MOON_EFFECT,
            P(("effect-speed", "macro-speed"), "Effect speed", text="slow to fast"),
        ),
        "1/2 3 4 5 6 7",
    ),
)
MOON_TOP = """# Moonjar

Battery lamp with wireless DMX, 12 W, 8 hours at full output.

## Charging

1. Use the USB-C cable in the box.
2. The ring turns green after about 3 hours.

## DMX

Hold the button for 3 seconds to change the mode. The ring shows white or colored light.
"""
MOON_END = """
## Changes

- 1.1: smoother dimming below 5%
- 1.0: first release
"""


@chart(
    "fifth-b-moonjar",
    "a readme with pipes, sections for modes and lists around",
    "txt",
    "en",
    "Fernlight Labs",
    "Moonjar",
)
def moonjar(seed: int) -> Made:
    out, modes = [MOON_TOP], []
    for name, params, plan in MOON:
        m = k.mode(k.seat(params, plan), name)
        title = f"{name} mode ({m.footprint} channels)"
        modes.append(
            M(title, (name, title, f"{name} mode", f"{name} ({m.footprint} channels)"), m.footprint, m.params)
        )
        out += [f"### {title}\n", "| Channel | Function | Value | Meaning |", "| ---: | --- | --- | --- |"]
        for line in k.lines(m.params):
            for n, (lo, hi, text) in enumerate(line.rows):
                slot, label = ("", "") if n else (str(line.slot), line.name)
                out.append(f"| {slot} | {label} | {k.hyphen(lo, hi)} | {text} |")
        out.append("")
    return k.made("Fernlight Labs", "Moonjar", modes, "\n".join(out) + MOON_END)


HMI = (
    P(("dimmer",), "Ballast dimming", (1,), text="50% to 100%", spans=(span(50, 100, "%"),)),
    p(
        "douser shutter",
        "Douser",
        "0-5 closed: Closed",
        "6-249: Closed to open",
        "250-255 open: Open",
        slots=(2,),
    ),
    P(
        ("zoom", "focus"),
        "Flood/spot",
        (3,),
        text="Spot 6 deg to flood 55 deg",
        spans=(span(6, 55, "deg"), None),
    ),
    p(
        "lamp-control",
        "Lamp",
        R(0, 100, "Lamp off, hold 2 s", hazard="lamp off", hold_s=2),
        R(101, 154, "No change", "unchanged", may={"does": ("nothing",)}),
        R(155, 255, "Lamp on, hold 2 s", hazard="lamp on", hold_s=2),
        slots=(4,),
    ),
    p(
        "color-scroller",
        "Color scroller",
        "0-31 white: Clear",
        *k.steps(
            32,
            32,
            "Half CTO",
            "Full CTO",
            "Half CTB",
            "Minus green",
            "Plus green",
            "Straw",
            "Diffusion",
        ),
        slots=(5,),
    ),
)


@chart(
    "fifth-b-foundry",
    "columns of blanks under ruled heads, a title page in capitals",
    "txt",
    "en",
    "Old Foundry Lamps",
    "Daystar 12",
)
def foundry(seed: int) -> Made:
    form = "{:<6}{:<18}{:<12}{}"
    out = [
        "OLD FOUNDRY LAMPS",
        "Daystar 12 discharge Fresnel, 1200 W, with ballast and yoke",
        "",
        "DMX CHART (5 slots)",
        "",
        form.format("Slot", "Function", "DMX value", "Action"),
        form.format("----", "---------------", "---------", "-----------------------------"),
    ]
    for line in k.lines(HMI):
        for n, (lo, hi, text) in enumerate(line.rows):
            slot, label = ("", "") if n else (line.slot, line.name)
            out.append(form.format(slot, label, k.zeros(lo, hi), text))
    out += ["", "A hot lamp needs up to 15 minutes before it strikes again.", "Ignition voltage: 25 kV."]
    return k.made("Old Foundry Lamps", "Daystar 12", [k.mode(HMI)], "\n".join(out) + "\n")


FARO_COLORS = tuple(
    P((word,), label, text="da 0% a 100%", spans=k.LEVEL)
    for word, label in (("red", "Rosso"), ("green", "Verde"), ("blue", "Blu"), ("amber", "Ambra"))
)
FARO_DIM = P(("dimmer", "intensity-master"), "Dimmer generale", text="da 0% a 100%", spans=k.LEVEL)
FARO_STROBE = p("strobe shutter", "Strobo", "0-7 out: Strobo spento", "8-255 flash: Strobo da lento a veloce")
FARO_MACRO = p(
    "color-macro color-preset macro virtual-color-wheel",
    "Macro colori",
    "0-9 nothing: Nessuna macro",
    *k.steps(10, 41, "Arancio", "Giallo", "Ciano", "Magenta", "Bianco caldo", "Bianco freddo"),
)
FARO = (("4 canali", FARO_COLORS), ("7 canali", (FARO_DIM, *FARO_COLORS, FARO_STROBE, FARO_MACRO)))


@chart(
    "fifth-b-faro",
    "a list of channels, values indented beneath, modes underlined",
    "txt",
    "it",
    "Officine Lucciola",
    "Faro 12 IP",
)
def faro(seed: int) -> Made:
    out = ["Officine Lucciola - Faro 12 IP", "Scheda DMX, revisione 2", ""]
    modes = []
    for name, params in FARO:
        title = f"Modalità {name}"
        modes.append(k.mode([q.at(n) for n, q in enumerate(params, 1)], title, name))
        out += [title, "=" * len(title), ""]
        for line in k.lines(modes[-1].params):
            out.append(f"Canale {line.slot}: {line.name}")
            out += [f"    {k.zeros(lo, hi)}  {text}" for lo, hi, text in line.rows]
        out.append("")
    out += ["Per cambiare modalità tenere premuto MENU per 3 secondi.", ""]
    return k.made("Officine Lucciola", "Faro 12 IP", modes, "\n".join(out))


MANTA_KELVIN = P(
    ("color-temperature",),
    "Temperatura de color",
    fine=("Temperatura de color (fino)",),
    text="3000 K a 5600 K",
    spans=(span(3000, 5600, "K"),),
)
MANTA_LEVEL = P(("dimmer",), "Intensidad", fine=("Intensidad (fino)",), text="0 a 100 %", spans=k.LEVEL)
MANTA_FAN = p("fan-mode fan", "Ventilador", "0-127 fan: Automático", "128-255 fan: Silencioso")
MANTA = (
    ("Modo A", (MANTA_LEVEL, MANTA_KELVIN), "1 2"),
    ("Modo B", (MANTA_LEVEL, MANTA_KELVIN, MANTA_FAN), "1/2 3/4 5"),
)


@chart(
    "fifth-b-manta", "one table, a band before each mode's rows", "html", "es", "Lumbre Digital", "Manta 60"
)
def manta(seed: int) -> Made:
    rows: list[str] = [web_rows([["Canal", "Función", "Valores", "Descripción"]], "th")]
    modes = []
    for name, params, plan in MANTA:
        m = k.mode(k.seat(params, plan), name)
        title = f"{name}: {m.footprint} canales"
        modes.append(M(title, (name, title, f"{m.footprint} canales", name[-1]), m.footprint, m.params))
        rows.append(web_rows([[C(title, cols=4)]], "th"))
        for line in k.lines(m.params):
            rows.append(
                web_rows(
                    beside([line.slot, line.name], [[f"{lo} a {hi}", text] for lo, hi, text in line.rows])
                )
            )
    body = "\n".join(
        [
            "<nav><a href='#'>Inicio</a> | <a href='#'>Productos</a> | <a href='#'>Contacto</a></nav>",
            "<h1>Manta 60</h1><p>Panel de luz suave de 60 x 60 cm para plató.</p>",
            "<dl><dt>Consumo</dt><dd>180 W</dd><dt>Peso</dt><dd>6,2 kg</dd><dt>IRC</dt><dd>97</dd></dl>",
            "<h2>Tabla DMX</h2><table>",
            *rows,
            "</table>",
            "<footer><p>Garantía de 3 años.</p></footer>",
        ]
    )
    return k.made("Lumbre Digital", "Manta 60", modes, page("es", "Manta 60", body))
