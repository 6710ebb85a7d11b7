"""Web pages and texts: mode columns last, bands in a table, pipes, a list, a gap and an overlap."""

from __future__ import annotations

from html import escape

from intake.corpus.content import M, Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

ALDEA = (
    P(("pan",), "Giro (Pan)", fine=("Giro (Pan) fino",), text="0° a 540°", spans=(span(0, 540, "deg"),)),
    P(
        ("tilt",),
        "Inclinación (Tilt)",
        fine=("Inclinación (Tilt) fino",),
        text="0° a 190°",
        spans=(span(0, 190, "deg"),),
    ),
    P(("movement-speed",), "Velocidad Pan/Tilt", text="De rápida a lenta"),
    P(("dimmer",), "Dimmer", text="0 a 100 %", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Estrobo",
        ranges=(k.out(0, 7, "Sin estrobo"), k.flash(8, 255, "De lento a rápido")),
    ),
    P(
        ("color-wheel",),
        "Rueda de colores",
        ranges=(
            k.opened(0, 9, "Abierto"),
            *k.steps(10, 18, "Rojo", "Naranja", "Amarillo", "Verde", "Azul", "Violeta"),
            k.rainbow(118, 255, "Arcoíris, de lento a rápido"),
        ),
    ),
    P(
        ("gobo-wheel",),
        "Rueda de gobos",
        ranges=(
            k.opened(0, 9, "Abierto"),
            *k.steps(10, 30, *(f"Gobo {n}" for n in range(1, 8))),
            k.spin(220, 255, "Giro continuo, de lento a rápido", "gobo-wheel"),
        ),
    ),
    P(
        ("reset", "control"),
        "Reinicio",
        ranges=(k.nothing(0, 199, "Sin función"), k.reset(200, 255, "Reinicio")),
    ),
)
ALDEA_PLANS = (("Básico", "1 2 - 3 4 5 6 -"), ("Completo", "1/2 3/4 5 6 7 8 9 10"))


@chart(
    "third-aldea", "web page, name, value, effect, mode columns last", "html", "es", "Peñalbina", "Mirlo 60"
)
def aldea(seed: int) -> Made:
    page = ["<!doctype html><html lang='es'><head><meta charset='utf-8'><title>Mirlo 60</title></head><body>"]
    page += [
        "<h1>Mirlo 60: tabla DMX</h1><table border='1'><tr><th>Función</th><th>Valor</th><th>Efecto</th>"
    ]
    page += ["".join(f"<th>{name}</th>" for name, _ in ALDEA_PLANS), "</tr>"]
    for side in k.sides(ALDEA, *(plan for _, plan in ALDEA_PLANS)):
        tall = f"<td rowspan='{len(side.rows)}'>"
        for n, (lo, hi, text) in enumerate(side.rows):
            name = f"{tall}{side.name}</td>" if n == 0 else ""
            slots = "".join(f"{tall}{'–' if s is None else s}</td>" for s in side.slots) if n == 0 else ""
            page.append(f"<tr>{name}<td>{k.hyphen(lo, hi)}</td><td>{text}</td>{slots}</tr>")
    modes = [k.mode(k.seat(ALDEA, plan), name) for name, plan in ALDEA_PLANS]
    return k.made("Peñalbina", "Mirlo 60", modes, "\n".join([*page, "</table></body></html>"]))


BANDED = (
    P(("dimmer",), "Intensity", (1,), text="0 to 100%", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Shutter",
        (2,),
        ranges=(
            k.closed(0, 9),
            k.opened(10, 29),
            k.flash(30, 229, "Strobe, slow to fast"),
            k.opened(230, 255),
        ),
    ),
    P(
        ("iris",),
        "Iris",
        (3,),
        ranges=(
            R(0, 191, "Open to small"),
            k.optional(
                R(192, 255, "Pulse, slow to fast"), does=("runs", "bounce"), parameter=("iris-pulse",)
            ),
        ),
    ),
    P(
        ("color-wheel",),
        "Color wheel",
        (4,),
        ranges=(
            k.opened(0, 19),
            *k.steps(20, 20, "Ruby", "Sapphire", "Emerald", "Topaz"),
            k.stop(100, 119),
            k.rainbow(120, 255, "Spin, slow to fast"),
        ),
    ),
    P(
        ("gobo-wheel", "rotating-gobo-wheel"),
        "Gobo wheel",
        (5,),
        ranges=(
            k.opened(0, 19),
            *k.steps(20, 40, *(f"Gobo {n}" for n in range(1, 6))),
            k.spin(220, 255, "Spin, slow to fast", "gobo-wheel"),
        ),
    ),
    P(("focus",), "Focus", (6,), text="Near to far"),
    P(("zoom",), "Zoom", (7,), text="Narrow to wide"),
    P(("pan",), "Pan", (8, 9), ("Pan fine",), "0 to 540 degrees", (span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", (10, 11), ("Tilt fine",), "0 to 270 degrees", (span(0, 270, "deg"),)),
    P(("control", "reset"), "Control", (12,), ranges=(k.nothing(0, 249), k.reset(250, 255, "Reset"))),
)


@chart("third-banded", "web table, a band a slot", "html", "en", "Stillwater Stage", "Curlew 75")
def banded(seed: int) -> Made:
    page = ["<html><head><title>Curlew 75</title></head><body><h2>12-slot mode</h2><table border=1>"]
    page.append("<tr><th>Value</th><th>Function</th></tr>")
    for line in k.lines(BANDED):
        page.append(f"<tr><th colspan=2>Slot {line.slot} – {line.name}</th></tr>")
        page += [
            f"<tr><td>{k.hyphen(lo, hi)}</td><td>{escape(text) or line.name}</td></tr>"
            for lo, hi, text in line.rows
        ]
    page.append("</table></body></html>")
    return k.made(
        "Stillwater Stage", "Curlew 75", [k.mode(BANDED, "12-slot mode", "12-slot")], "\n".join(page)
    )


PIPED = (
    k.level("dimmer", "Dimmer", "0-100%"),
    P(("strobe", "shutter"), "Strobe", ranges=(k.out(0, 10, "Off"), k.flash(11, 255, "Slow -> fast"))),
    *(
        k.level(w, n, "0-100%")
        for w, n in (("red", "Red"), ("green", "Green"), ("blue", "Blue"), ("warm-white", "Warm white"))
    ),
    P(
        ("color-preset", "color-macro"),
        "Color presets",
        ranges=(k.nothing(0, 9), *k.steps(10, 41, "Fire", "Ocean", "Forest", "Dusk", "Candle", "Ice")),
    ),
    P(
        ("dimmer-fade-time", "dimmer-curve", "smoothing"),
        "Dimmer fade time",
        text="0 s -> 5 s",
        spans=(span(0, 5, "s"),),
    ),
)
PIPED_SEATS = k.seat(PIPED, "1 2 3 4 5 6 7 8")


@chart("third-piped", "text with pipes", "txt", "en", "Drovers End", "Linnet 5")
def piped(seed: int) -> Made:
    rule = f"+{'-' * 6}+{'-' * 20}+{'-' * 11}+{'-' * 18}+"
    text = ["8 slot mode", rule, f"| {'Slot':<5}| {'Function':<19}| {'Value':<10}| {'Meaning':<17}|", rule]
    for line in k.lines(PIPED_SEATS):
        for n, (lo, hi, said) in enumerate(line.rows):
            slot, name = (str(line.slot), line.name) if n == 0 else ("", "")
            text.append(f"| {slot:<5}| {name:<19}| {k.zeros(lo, hi):<10}| {said:<17}|")
        text.append(rule)
    return k.made(
        "Drovers End", "Linnet 5", [k.mode(PIPED_SEATS, "8 slot mode", "8 slot")], "\n".join([*text, ""])
    )


LISTA = (
    P(("dimmer",), "Dimmer", (1,), text="0-100%", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Strobo",
        (2,),
        ranges=(k.out(0, 9, "Strobo spento"), k.flash(10, 255, "Strobo da lento a veloce")),
    ),
    P(("red",), "Rosso", (3,), text="0-100%", spans=k.LEVEL),
    P(("green",), "Verde", (4,), text="0-100%", spans=k.LEVEL),
    P(("blue",), "Blu", (5,), text="0-100%", spans=k.LEVEL),
    P(("warm-white",), "Bianco caldo", (6,), text="0-100%", spans=k.LEVEL),
    P(("cool-white",), "Bianco freddo", (7,), text="0-100%", spans=k.LEVEL),
    P(
        ("macro", "effect"),
        "Programmi",
        (8,),
        ranges=(
            k.nothing(0, 49, "Nessun programma"),
            k.runs(50, 149, "Dissolvenza colori"),
            k.runs(150, 255, "Cambio colori"),
        ),
    ),
    P(("macro-speed", "effect-speed"), "Velocità programmi", (9,), text="Da lenta a veloce"),
)


@chart("third-lista", "pasted text, a heading line a slot", "txt", "it", "Roccasole", "Upupa 9")
def lista(seed: int) -> Made:
    text = ["Upupa 9 - Manuale d'uso", "", "Modalità 9 canali", ""]
    for line in k.lines(LISTA):
        text.append(f"Canale {line.slot} - {line.name}")
        text += [f"{k.zeros(lo, hi)} {said}" for lo, hi, said in line.rows]
    mode = k.mode(LISTA, "Modalità 9 canali", "9 canali")
    return k.made(
        "Roccasole", "Upupa 9", [mode], "\n".join([*text, "", "Pulire le lenti con un panno morbido.", ""])
    )


GAPPED = (
    P(("dimmer",), "Dimmer", (1,), text="0 bis 100 %", spans=k.LEVEL),
    P(("red",), "Rot", (2,), text="0 bis 100 %", spans=k.LEVEL),
    P(("green",), "Grün", (3,), text="0 bis 100 %", spans=k.LEVEL),
    P(("blue",), "Blau", (4,), text="0 bis 100 %", spans=k.LEVEL),
    P(("white",), "Weiß", (5,), text="0 bis 100 %", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Stroboskop",
        (6,),
        ranges=(k.out(0, 9, "Aus"), k.flash(20, 255, "Langsam bis schnell")),
        doubt="must",
        why="nothing is said of 10 to 19",
    ),
    P(
        ("macro", "effect"),
        "Programme",
        (7,),
        ranges=(
            k.nothing(0, 20, "Keine Funktion"),
            k.runs(20, 139, "Programm 1"),
            k.runs(140, 255, "Programm 2"),
        ),
        doubt="must",
        why="20 belongs to two ranges",
    ),
    P(("macro-speed", "effect-speed"), "Programmgeschwindigkeit", (8,), text="Langsam bis schnell"),
)


@chart(
    "third-gapped", "web page, rows merged, a gap and an overlap", "html", "de", "Querfurth", "Zeisig 5", 9
)
def gapped(seed: int) -> Made:
    page = [
        "<html lang='de'><head><meta charset='utf-8'><title>Zeisig 5</title></head><body>",
        "<h1>DMX-Kanalbelegung</h1>",
    ]
    page.append(
        "<table border='1'><tr><th>Kanal</th><th>DMX-Wert</th><th>Funktion</th><th>Beschreibung</th></tr>"
    )
    for line in k.lines(GAPPED):
        tall = f"<td rowspan='{len(line.rows)}'>"
        for n, (lo, hi, text) in enumerate(line.rows):
            slot, name = (f"{tall}{line.slot}</td>", f"{tall}{line.name}</td>") if n == 0 else ("", "")
            page.append(f"<tr>{slot}<td>{k.dash(lo, hi)}</td>{name}<td>{text}</td></tr>")
    return k.made(
        "Querfurth", "Zeisig 5", [M("", (), 8, GAPPED)], "\n".join([*page, "</table></body></html>"])
    )
