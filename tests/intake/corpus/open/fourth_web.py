"""Web pages: lines in parallel cells, captions as modes' names, pairs in one cell, folded sections."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape
from random import Random

from intake.corpus.aside.fourth_kit import vary
from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart


def page(title: str, language: str, *parts: str) -> str:
    return (
        f'<!doctype html>\n<html lang="{language}">\n<head><meta charset="utf-8">'
        f"<title>{escape(title)}</title>"
        "<style>body{font:14px sans-serif}td,th{border:1px solid #999;padding:3px}</style></head>\n<body>\n"
        + "\n".join(parts)
        + "\n</body>\n</html>\n"
    )


def rows(body: Sequence[Sequence[object]], tag: str = "td") -> str:
    return "\n".join(
        "<tr>" + "".join(f"<{tag}>{escape(str(c)).replace(chr(10), '<br>')}</{tag}>" for c in row) + "</tr>"
        for row in body
    )


def strobe_params(seed: int) -> tuple[P, ...]:
    first = Random(seed).choice((5, 6, 8))
    return (
        P(("dimmer", "intensity-master"), "Intensity", (1,), text="0 to 100%", spans=k.LEVEL),
        P(
            ("strobe-duration",),
            "Flash duration",
            (2,),
            text="0 to 650 ms",
            spans=(span(0, 650, "ms"), span(0, 0.65, "s")),
        ),
        P(
            ("strobe", "shutter"),
            "Flash rate",
            (3,),
            ranges=(
                k.out(0, first, "No flash"),
                k.flash(first + 1, 250, "Slow to fast"),
                k.opened(251, 255, "Continuous light"),
            ),
        ),
        P(
            ("strobe-mode", "effect", "macro"),
            "Flash effect",
            (4,),
            ranges=(
                k.nothing(0, 5, "No effect"),
                k.maybe_runs(6, 42, "Ramp up"),
                k.maybe_runs(43, 85, "Ramp down"),
                k.maybe_runs(86, 128, "Ramp up and down"),
                k.chance(129, 171, "Random"),
                k.maybe_runs(172, 214, "Lightning"),
                k.maybe_runs(215, 255, "Spikes"),
            ),
        ),
        *(
            P((w,), n, (at,), text="0 to 100%", spans=k.LEVEL)
            for at, (w, n) in enumerate((("red", "Red"), ("green", "Green"), ("blue", "Blue")), 5)
        ),
    )


@chart(
    "fourth-strobe",
    "web page, values and effects as lines of two cells",
    "html",
    "en",
    "Saxelby",
    "Stonechat X",
)
def strobe(seed: int) -> Made:
    params = strobe_params(seed)
    body = [
        (
            line.slot,
            line.name,
            "\n".join(k.dash(lo, hi) for lo, hi, _ in line.rows),
            "\n".join(text for *_, text in line.rows),
        )
        for line in k.lines(params)
    ]
    text = page(
        "Stonechat X support",
        "en",
        "<h1>Stonechat X</h1>",
        "<p>Warning: flashing light can trigger seizures. Post a notice at each entrance.</p>",
        "<h2>Pin-out</h2>",
        f"<table>{rows([['Pin', 'Signal'], [1, 'Shield'], [2, 'Data -'], [3, 'Data +']])}</table>",
        "<h2>DMX map, 7-slot mode</h2>",
        f"<table><thead>{rows([['DMX', 'Function', 'Value', 'Effect']], 'th')}</thead>",
        f"<tbody>{rows(body)}</tbody></table>",
    )
    modes = [k.mode(params, "7-slot mode", "7-slot", "DMX map, 7-slot mode", "7 slot")]
    return k.made("Saxelby", "Stonechat X", modes, text)


NEBEL = (
    P(("haze-output", "fog-output"), "Dunstmenge", text="0 – 100 %", spans=k.LEVEL),
    P(("fan",), "Lüfter", text="langsam – schnell"),
    P(
        ("fluid-pump",),
        "Pumpe",
        ranges=(R(0, 127, "Pumpe aus"), R(128, 255, "Pumpe ein")),
    ),
    P(
        ("heater", "control", "power"),
        "Heizung",
        ranges=(R(0, 49, "Heizung aus"), R(50, 255, "Heizung ein")),
    ),
)
NEBEL_PLANS = (("Einfach", "1 2 - -"), ("Erweitert", "1 2 3 4"))


@chart("fourth-nebel", "web page, modes named in captions", "html", "de", "Torfmoorwerk", "Rohrdommel H2")
def nebel(seed: int) -> Made:
    params = vary(NEBEL, seed)
    modes = [k.mode(k.seat(params, plan), name) for name, plan in NEBEL_PLANS]
    parts = ["<h1>Rohrdommel H2</h1>", "<p>Nur mit geprüftem Fluid betreiben. Raum lüften.</p>"]
    for mode in modes:
        body = [
            ("" if n else line.slot, "" if n else line.name, k.dash(lo, hi), text)
            for line in k.lines(mode.params)
            for n, (lo, hi, text) in enumerate(line.rows)
        ]
        head = rows([["Slot", "Bezeichnung", "DMX", "Wirkung"]], "th")
        parts.append(f"<table><caption>{mode.title}</caption>{head}\n{rows(body)}</table>")
    return k.made("Torfmoorwerk", "Rohrdommel H2", modes, page("Rohrdommel H2", "de", *parts))


TUBE = (
    P(("dimmer",), "Dimmer", (1, 2), ("",), "0–100%", k.LEVEL),
    P(("color-temperature",), "CCT", (3, 4), ("",), "2000–10000 K", (span(2000, 10000, "K"),)),
    P(
        ("tint", "green-correction"),
        "Green/magenta",
        (5,),
        ranges=(
            k.nothing(0, 10, "No effect"),
            R(11, 20, "Full magenta"),
            R(21, 119, "Magenta to neutral"),
            R(120, 145, "Neutral", may={"does": ("nothing",)}),
            R(146, 244, "Neutral to green"),
            R(245, 255, "Full green"),
        ),
    ),
    P(("white-color-crossfade",), "Crossfade to color", (6, 7), ("",), "White to color"),
    P(("hue",), "Hue", (8, 9), ("",), "0–360°", (span(0, 360, "deg"),)),
    P(("saturation",), "Saturation", (10, 11), ("",), "0–100%", k.LEVEL),
)


@chart(
    "fourth-tube", "web page, pairs with a plus and no ranges", "html", "en", "Lanternhope", "Treecreeper T4"
)
def tube(seed: int) -> Made:
    params = vary(TUBE, seed)
    body: list[list[object]] = []
    for p in params:
        for n, r in enumerate(p.ranges or (R(0, p.top, p.text),)):
            slot = "+".join(map(str, p.slots))
            body.append(["" if n else slot, "" if n else p.label, k.hyphen(r.lo, r.hi), r.text])
    head = rows([["Slot(s)", "Parameter", "Value", "Range"]], "th")
    parts = [
        "<nav><a href='#'>Home</a> <a href='#'>Products</a> <a href='#'>Downloads</a></nav>",
        "<h1>Treecreeper T4 DMX profile</h1>",
        "<ul><li>16-bit slots: coarse byte first.</li><li>Signal loss: holds the last look.</li></ul>",
        f"<table>{head}\n{rows(body)}</table>",
        "<footer>Lanternhope, document 40-118</footer>",
    ]
    return k.made("Lanternhope", "Treecreeper T4", [k.mode(params)], page("T4 profile", "en", *parts))


BARRA = tuple(
    P((word,), f"{name} {cell}", text="0–100%", spans=k.LEVEL)
    for cell in (1, 2, 3, 4)
    for word, name in (("red", "Rosso"), ("green", "Verde"), ("blue", "Blu"))
)
BARRA_HEAD = (
    P(("dimmer", "intensity-master"), "Dimmer generale", text="0–100%", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Strobo",
        ranges=(k.out(0, 10, "Spento"), k.flash(11, 255, "Da lento a veloce")),
    ),
)
BARRA_WHOLE = tuple(
    P((word,), name, text="0–100%", spans=k.LEVEL)
    for word, name in (("red", "Rosso"), ("green", "Verde"), ("blue", "Blu"))
)


@chart(
    "fourth-barra", "web page, folded sections, value before name", "html", "it", "Lumedoro", "Cutrettola 4B"
)
def barra(seed: int) -> Made:
    first = vary(BARRA_HEAD, seed)
    plans = (
        ("3 canali", BARRA_WHOLE),
        ("5 canali", (*BARRA_WHOLE, *first)),
        ("14 canali", (*BARRA, *first)),
    )
    modes = [
        k.mode(k.seat(params, " ".join(str(n + 1) for n in range(len(params)))), name)
        for name, params in plans
    ]
    parts = ["<h1>Cutrettola 4B</h1>"]
    for mode in modes:
        body = [
            ("" if n else line.slot, k.hyphen(lo, hi), "" if n else line.name, text)
            for line in k.lines(mode.params)
            for n, (lo, hi, text) in enumerate(line.rows)
        ]
        head = rows([["Canale", "Valore", "Funzione", "Descrizione"]], "th")
        parts.append(
            f"<details open><summary>Modalità {mode.title}</summary>"
            f"<table>{head}{rows(body)}</table></details>"
        )
    modes = [k.mode(m.params, m.title, m.title, f"Modalità {m.title}") for m in modes]
    return k.made("Lumedoro", "Cutrettola 4B", modes, page("Cutrettola 4B", "it", *parts))


FRESNEL = (
    P(("dimmer",), "Intensity", (1, 2), ("Intensity fine",), "0-100%", k.LEVEL),
    P(("color-temperature",), "White", (3,), text="2800-10000 K", spans=(span(2800, 10000, "K"),)),
    P(
        ("tint", "green-correction"),
        "Plus/minus green",
        (4,),
        text="-100% to +100%",
        spans=(span(-100, 100, "%"),),
    ),
    P(("zoom",), "Spot/flood", (5,), text="15° to 60°", spans=(span(15, 60, "deg"),)),
    P(
        ("strobe", "shutter"),
        "Strobe",
        (6,),
        ranges=(k.out(0, 10, "Off"), k.flash(11, 255, "1 Hz to 25 Hz", (1, 25))),
    ),
    P(
        ("fan-mode", "fan"),
        "Fan",
        (7,),
        ranges=(
            k.optional(R(0, 63, "Menu setting", "as-menu"), sets=("fan",)),
            k.fan_choice(64, 127, "Silent"),
            k.fan_choice(128, 191, "Auto"),
            k.fan_choice(192, 255, "Full"),
        ),
    ),
)


@chart(
    "fourth-studio",
    "web page, a list of definitions, values in inner lists",
    "html",
    "en",
    "Marchmont",
    "Fieldfare 8",
)
def studio(seed: int) -> Made:
    params = vary(FRESNEL, seed)
    items = []
    for line in k.lines(params):
        values = "".join(f"<li>{k.hyphen(lo, hi)}: {escape(text)}</li>" for lo, hi, text in line.rows)
        items.append(f"<dt>Slot {line.slot}: {escape(line.name)}</dt>\n<dd><ul>{values}</ul></dd>")
    parts = [
        "<h1>Fieldfare 8: control by DMX</h1>",
        "<p>Firmware 3.1 or later.</p>",
        f"<dl>{''.join(items)}</dl>",
    ]
    return k.made("Marchmont", "Fieldfare 8", [k.mode(params)], page("Fieldfare 8", "en", *parts))


WASCHER = (
    P(("dimmer",), "Dimmer", (1,), text="0–100 %", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Shutter",
        (2,),
        ranges=(
            k.closed(0, 9, "Zu"),
            k.opened(10, 19, "Auf"),
            k.flash(20, 255, "Strobe, langsam bis schnell"),
        ),
    ),
    *(
        P((w,), n, (at,), text="0–100 %", spans=k.LEVEL)
        for at, (w, n) in enumerate(
            (("red", "Rot"), ("green", "Grün"), ("blue", "Blau"), ("amber", "Amber")), 3
        )
    ),
    P(
        ("macro", "effect", "color-macro"),
        "Automatik",
        (7,),
        ranges=(k.nothing(0, 29, "Aus"), k.runs(30, 142, "Farbwechsel"), k.runs(143, 255, "Überblendung")),
    ),
    P(
        ("macro-speed", "effect-speed", "color-macro-speed"),
        "Tempo der Automatik",
        (8,),
        text="Langsam bis schnell",
    ),
)


@chart("fourth-wascher", "web page, an inner table a slot", "html", "de", "Brackwede Ton", "Sumpfmeise 18")
def wascher(seed: int) -> Made:
    params = vary(WASCHER, seed)
    body = "".join(
        f"<tr><td>{line.slot}</td><td>{line.name}</td><td><table>"
        + rows([(k.dash(lo, hi), text) for lo, hi, text in line.rows])
        + "</table></td></tr>\n"
        for line in k.lines(params)
    )
    parts = [
        "<h1>Sumpfmeise 18</h1>",
        f"<h2>Technische Daten</h2><table>{rows([['Leistung', '210 W'], ['Gewicht', '4,2 kg']])}</table>",
        f"<h2>DMX-Kanäle</h2><table><tr><th>Kanal</th><th>Funktion</th><th>Werte</th></tr>\n{body}</table>",
    ]
    return k.made("Brackwede Ton", "Sumpfmeise 18", [k.mode(params)], page("Sumpfmeise 18", "de", *parts))
