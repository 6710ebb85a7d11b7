"""Traps in other formats and languages than the open ones."""

from __future__ import annotations

from dataclasses import replace

from intake.corpus import making as m
from intake.corpus.content import M, Made, P, R, span, truth
from intake.corpus.grids import C, Grid, Look, Table, cells
from intake.corpus.registry import chart
from intake.corpus.writers.sheets import csv_file, xlsx

FULL = (span(0, 100, "%"),)
RULED = Look("ruled", 9)


def grid(head: list[str], rows: list[list[str]]) -> Grid:
    return Grid(
        [[C(text) for text in head]], [cells(*row) for row in rows], [24.0, 44.0, 30.0, 80.0][: len(head)]
    )


def level(word: str, label: str, *slots: int, text: str = "0 - 100 %", more: tuple[str, ...] = ()) -> P:
    return P((word, *more), label, slots, text=text, spans=FULL if text else ())


def in_pdf(
    language: str,
    maker: str,
    model: str,
    table: Grid,
    look: Look,
    params: tuple[P, ...],
    pdf: m.Pdf = m.FPDF,
    **how: object,
) -> Made:
    modes = [M("", (), max(s for p in params for s in p.slots), params)]
    return m.as_pdf(
        m.start(language, 5, rare=True), maker, model, modes, [Table(table, look)], look, pdf, **how
    )


@chart("a-dash-lost", "slot, function, value, description", "pdf", "de", "Zwirnhart", "Falle 1", trap=1)
def dash_lost(seed: int) -> Made:
    rows = [
        ["1", "Dimmer", "0 255", "0 - 100 %"],
        ["2", "Effekt", "0 29", "Keine Funktion"],
        ["", "", "30 99", "Feuer"],
        ["", "", "100 255", "Kerze"],
    ]
    why = "the dash is lost"
    ranges = (
        R(0, 29, "Keine Funktion", does="nothing"),
        R(30, 99, "Feuer", may={"does": ("runs",)}),
        R(100, 255, "Kerze", may={"does": ("runs",)}),
    )
    effect = P(("effect",), "Effekt", (2,), ranges=ranges, doubt="must", why=why)
    dimmer = replace(level("dimmer", "Dimmer", 1), doubt="may", why=why)
    return in_pdf(
        "de",
        "Zwirnhart",
        "Falle 1",
        grid(["Kanal", "Funktion", "DMX-Wert", "Beschreibung"], rows),
        RULED,
        (dimmer, effect),
    )


@chart("a-detached", "detached columns", "txt", "de", "Zwirnhart", "Falle 2", trap=2)
def detached(seed: int) -> Made:
    text = "DMX-Protokoll\nKanal DMX-Wert\n1 0-255\n2 0-19\n20-89\n90-169\n170-255\n\n"
    text += "Funktion\nDimmer\nFarbrad\nWeiß\nRot\nBlau\n"
    why = "four ranges, three names"
    params = (
        replace(level("dimmer", "Dimmer", 1, text=""), doubt="may", why=why),
        P(("color-wheel",), "Farbrad", (2,), doubt="must", why=why),
    )
    return Made(text.encode(), truth("Zwirnhart", "Falle 2", [M("", (), 2, params)]))


@chart(
    "a-number-centered", "slot, function, value, description", "pdf", "it", "Sgrullone", "Trappola 3", trap=3
)
def number_centered(seed: int) -> Made:
    rows = [
        ["1", "Dimmer", "0-255", "0 - 100 %"],
        ["", "", "0-9", "Chiuso"],
        ["2", "Otturatore", "10-199", "Aperto"],
        ["", "", "200-255", "Strobo casuale"],
        ["", "", "0-99", "Nessun prisma"],
        ["3", "Prisma", "100-199", "Prisma inserito"],
        ["", "", "200-255", "Nessun prisma"],
    ]
    why = "the number stands in the middle of its rows, and no line parts them"
    shutter = P(
        ("shutter", "strobe"),
        "Otturatore",
        (2,),
        doubt="may",
        why=why,
        ranges=(
            R(0, 9, "Chiuso", does="closed"),
            R(10, 199, "Aperto", does="open"),
            R(200, 255, "Strobo casuale", may={"does": ("random",), "parameter": ("strobe",)}),
        ),
    )
    out = {"does": ("open", "nothing")}
    prism = P(
        ("prism",),
        "Prisma",
        (3,),
        doubt="may",
        why=why,
        ranges=(
            R(0, 99, "Nessun prisma", may=out),
            R(100, 199, "Prisma inserito"),
            R(200, 255, "Nessun prisma", may=out),
        ),
    )
    head = ["Canale", "Funzione", "Valore", "Descrizione"]
    return in_pdf(
        "it",
        "Sgrullone",
        "Trappola 3",
        grid(head, rows),
        Look("bare", 10),
        (level("dimmer", "Dimmer", 1), shutter, prism),
        m.REPORTLAB,
    )


@chart("a-fine-far", "slot, function, value, description", "pdf", "fr", "Brumaire-Loic", "Piège 5", trap=5)
def fine_far(seed: int) -> Made:
    names = ["Gradateur", "Pan", "Tilt", "Rouge", "Vert", "Bleu", "Pan fin", "Tilt fin", "Gradateur fin"]
    rows = [[str(n), name, "0-255", ""] for n, name in enumerate(names, 1)]
    made = [
        level("dimmer", "Gradateur", 1, 9, text=""),
        level("pan", "Pan", 2, 7, text=""),
        level("tilt", "Tilt", 3, 8, text=""),
    ]
    made += [
        level(word, label, n, text="")
        for word, label, n in (("red", "Rouge", 4), ("green", "Vert", 5), ("blue", "Bleu", 6))
    ]
    head = ["Canal", "Fonction", "Valeur", "Description"]
    return in_pdf(
        "fr", "Brumaire-Loic", "Piège 5", grid(head, rows), RULED, tuple(made), m.REPORTLAB, font="times"
    )


@chart("a-gap", "slot, function, value, description", "csv", "fr", "Brumaire-Loic", "Piège 9", trap=9)
def gap(seed: int) -> Made:
    rows = [
        ["1", "Gradateur", "0-255", "0 - 100 %"],
        ["2", "Obturateur", "0-20", "Fermé"],
        ["", "", "20-200", "Ouvert"],
        ["", "", "210-255", "Strobe aléatoire"],
    ]
    ranges = (
        R(0, 20, "Fermé", does="closed"),
        R(20, 200, "Ouvert", does="open"),
        R(210, 255, "Strobe aléatoire", may={"does": ("random",), "parameter": ("strobe",)}),
    )
    shutter = P(
        ("shutter", "strobe"),
        "Obturateur",
        (2,),
        ranges=ranges,
        doubt="must",
        why="20 stands twice, 201-209 nowhere",
    )
    params = (level("dimmer", "Gradateur", 1), shutter)
    data = csv_file([Table(grid(["Canal", "Fonction", "Valeur", "Description"], rows))], ";")
    return Made(data, truth("Brumaire-Loic", "Piège 9", [M("", (), 2, params)]))


@chart("a-zero-absent", "from and to columns", "xlsx", "en", "Wuthermoor", "Snag 10", trap=10)
def zero_absent(seed: int) -> Made:
    rows = [
        ["1", "Dim", "0", "255", "0 - 100 %"],
        ["2", "Color macros", "1", "127", "Program 1"],
        ["", "", "128", "255", "Program 2"],
    ]
    runs = {"does": ("runs",)}
    macro = P(
        ("color-macro", "macro"),
        "Color macros",
        (2,),
        ranges=(R(1, 127, "Program 1", may=runs), R(128, 255, "Program 2", may=runs)),
        doubt="must",
        why="0 is not printed",
    )
    table = Grid([[C(t) for t in ("Ch.", "Feature", "Min", "Max", "Remarks")]], [cells(*row) for row in rows])
    return Made(
        xlsx([("Sheet1", [Table(table)])]),
        truth("Wuthermoor", "Snag 10", [M("", (), 2, (level("dimmer", "Dim", 1), macro))]),
    )


@chart("a-conditions", "slot, function, value, description", "pdf", "de", "Zwirnhart", "Falle 12", trap=12)
def conditions(seed: int) -> Made:
    rows = [
        ["1", "Dimmer", "0-255", "0 - 100 %"],
        ["2", "Farbmodus", "0-127", "Farbe"],
        ["", "", "128-255", "Weiß"],
        ["3", "Rot (nur wenn Kanal 2 = 0-127)", "0-255", ""],
        ["3", "Farbtemperatur (nur wenn Kanal 2 = 128-255)", "0-255", "2700 - 6500 K"],
    ]
    mode = P(("color-mode", "control"), "Farbmodus", (2,), ranges=(R(0, 127, "Farbe"), R(128, 255, "Weiß")))
    red = P(
        ("red",),
        "Rot",
        (3,),
        when=({"parameter": "color-mode", "from": 0, "to": 127},),
        doubt="may",
        why="depends on slot 2",
    )
    kelvin = (span(2700, 6500, "K"),)
    when = ({"parameter": "color-mode", "from": 128, "to": 255},)
    cct = P(
        ("color-temperature",),
        "Farbtemperatur",
        (3,),
        text="2700 - 6500 K",
        spans=kelvin,
        when=when,
        doubt="may",
        why="depends on slot 2",
    )
    table = grid(["Kanal", "Funktion", "DMX-Wert", "Beschreibung"], rows)
    table.widths = [20, 74, 28, 44]
    return in_pdf("de", "Zwirnhart", "Falle 12", table, RULED, (level("dimmer", "Dimmer", 1), mode, red, cct))


@chart("a-mixed-control", "slot, function, value, description", "pdf", "de", "Zwirnhart", "Falle 15", trap=15)
def mixed_control(seed: int) -> Made:
    texts = [
        (0, 19, "Ohne Funktion"),
        (20, 29, "Glättung aus (3 s halten, bleibt gespeichert)"),
        (30, 39, "Glättung ein (3 s halten, bleibt gespeichert)"),
        (40, 49, "Reset (5 s halten, nur wenn Kanal 2 = 0-15)"),
        (50, 255, "Ohne Funktion"),
    ]
    rows = [
        ["1", "Dimmer", "0-255", "0 - 100 %"],
        ["2", "Verschluss", "0-15", "Geschlossen"],
        ["", "", "16-255", "Offen"],
    ]
    rows += [
        ["3" if n == 0 else "", "Gerätesteuerung" if n == 0 else "", f"{a}-{z}", t]
        for n, (a, z, t) in enumerate(texts)
    ]
    short = [t.split(" (")[0] for _, _, t in texts]
    held = [
        R(a, z, t, sets=("smoothing", key, short[n]), hold_s=3.0, kept="stored", also=(short[n],))
        for n, key, (a, z, t) in ((1, "off", texts[1]), (2, "on", texts[2]))
    ]
    reset = R(40, 49, texts[3][2], hold_s=5.0, hazard="reset", needs=(("shutter", 0, 15),), also=(short[3],))
    control = P(
        ("control",),
        "Gerätesteuerung",
        (3,),
        ranges=(
            R(0, 19, "Ohne Funktion", does="nothing"),
            *held,
            reset,
            R(50, 255, "Ohne Funktion", does="nothing"),
        ),
    )
    shutter = P(
        ("shutter",),
        "Verschluss",
        (2,),
        ranges=(R(0, 15, "Geschlossen", does="closed"), R(16, 255, "Offen", does="open")),
    )
    params = (level("dimmer", "Dimmer", 1), shutter, control)
    return in_pdf(
        "de",
        "Zwirnhart",
        "Falle 15",
        grid(["Kanal", "Funktion", "DMX-Wert", "Beschreibung"], rows),
        RULED,
        params,
        m.REPORTLAB,
    )


@chart("a-thousands", "5-6 with one range", "pdf", "es", "Mirtalejo", "Trampa 4", trap=4)
def thousands(seed: int) -> Made:
    rows = [
        ["1/2", "Dimmer", "0 - 65.535", "0 - 100 %"],
        ["3/4", "Temperatura de color", "0 - 65.535", "2.700 - 6.500 K"],
        ["5", "Ventilador", "0 - 255", ""],
    ]
    cct = P(
        ("color-temperature",),
        "Temperatura de color",
        (3, 4),
        text="2.700 - 6.500 K",
        spans=(span(2700, 6500, "K"),),
    )
    params = (level("dimmer", "Dimmer", 1, 2), cct, P(("fan", "fan-mode"), "Ventilador", (5,)))
    return in_pdf(
        "es",
        "Mirtalejo",
        "Trampa 4",
        grid(["Canal", "Función", "Valor", "Descripción"], rows),
        Look("rows", 9),
        params,
    )


@chart("a-degree-zero", "aligned columns", "txt", "es", "Mirtalejo", "Trampa 8", trap=8)
def degree_zero(seed: int) -> Made:
    text = "Tabla DMX\n\nCanal   Función   Valor   Descripción\n1       Pan       0-255   0-5400\n"
    text += "2       Tilt      0-255   0-270°\n3       Dimmer    0-255   0 - 100 %\n"
    pan = P(("pan",), "Pan", (1,), text="0-5400", doubt="must", why="the degree sign was read as a zero")
    tilt = P(("tilt",), "Tilt", (2,), text="0-270°", spans=(span(0, 270, "deg"),))
    return Made(
        text.encode(),
        truth("Mirtalejo", "Trampa 8", [M("", (), 3, (pan, tilt, level("dimmer", "Dimmer", 3)))]),
    )
