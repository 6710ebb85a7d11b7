"""Spreadsheets: detail last, modes below each other, semicolons, forty slots."""

from __future__ import annotations

import csv
import datetime
import io

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

NEW = datetime.datetime(2026, 1, 2)

CABEZA = (
    P(("pan",), "Pan", (1,), text="0° - 540°", spans=(span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", (2,), text="0° - 270°", spans=(span(0, 270, "deg"),)),
    P(("movement-speed",), "Velocidad Pan/Tilt", (3,), text="De rápido a lento"),
    P(
        ("color-wheel",),
        "Rueda de color",
        (4,),
        ranges=(
            k.opened(0, 7, "Abierto"),
            *k.steps(8, 15, "Rojo", "Verde", "Azul", "Amarillo", "Rosa", "Naranja", "Celeste", "Violeta"),
            k.rainbow(128, 255, "Efecto arcoíris, de lento a rápido"),
        ),
    ),
    P(
        ("gobo-wheel",),
        "Rueda de gobos",
        (5,),
        ranges=(
            k.opened(0, 7, "Abierto"),
            *k.steps(8, 8, *(f"Gobo {n}" for n in range(1, 8))),
            *(k.shake(64 + 16 * n, 79 + 16 * n, f"Gobo {n + 1} con vibración") for n in range(4)),
            k.spin(128, 255, "Rotación continua, de lenta a rápida", "gobo-wheel"),
        ),
    ),
    P(
        ("shutter", "strobe"),
        "Obturador",
        (6,),
        ranges=(
            k.closed(0, 9, "Cerrado"),
            k.flash(10, 249, "Estroboscopio de lento a rápido"),
            k.opened(250, 255, "Abierto"),
        ),
    ),
    P(("dimmer",), "Dimmer", (7,), text="0% - 100%", spans=k.LEVEL),
    P(("prism",), "Prisma", (8,), ranges=(k.out(0, 127, "Sin prisma"), R(128, 255, "Prisma de 3 caras"))),
    P(("focus",), "Enfoque", (9,), text="De cerca a lejos"),
    P(
        ("control", "reset"),
        "Reinicio",
        (10,),
        ranges=(
            k.nothing(0, 149, "Sin función"),
            k.reset(150, 200, "Reinicio general"),
            k.nothing(201, 255, "Sin función"),
        ),
    ),
)


@chart("second-cabeza", "from, to, name, detail", "xlsx", "es", "Miravento", "Colirrojo 90")
def cabeza(seed: int) -> Made:
    from openpyxl import Workbook
    from openpyxl.styles import PatternFill

    book = Workbook()
    book.properties.created = book.properties.modified = NEW
    sheet = book.worksheets[0]
    sheet.title = "Canales DMX"
    sheet.append(["Canal", "DMX desde", "DMX hasta", "Función", "Detalle"])
    for cell in sheet[1]:
        cell.fill = PatternFill("solid", fgColor="DDDDDD")
    for line in k.lines(CABEZA):
        for n, (lo, hi, text) in enumerate(line.rows):
            sheet.append([line.slot if n == 0 else None, lo, hi, line.name if n == 0 else None, text])
    kept = io.BytesIO()
    book.save(kept)
    return k.made("Miravento", "Colirrojo 90", [k.mode(CABEZA)], k.steady(kept.getvalue()))


PARETE = (
    P(("dimmer", "intensity-master"), "Dimmer generale", text="0-100%", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Strobo",
        ranges=(k.out(0, 9, "Nessuno strobo"), k.flash(10, 255, "Da lento a veloce")),
    ),
    P(("red",), "Rosso", text="0-100%", spans=k.LEVEL),
    P(("green",), "Verde", text="0-100%", spans=k.LEVEL),
    P(("blue",), "Blu", text="0-100%", spans=k.LEVEL),
    P(("white",), "Bianco", text="0-100%", spans=k.LEVEL),
    P(("amber",), "Ambra", text="0-100%", spans=k.LEVEL),
    P(
        ("color-macro", "color-preset"),
        "Macro colori",
        ranges=(
            k.nothing(0, 9, "Nessuna funzione"),
            *(k.maybe_runs(10 + 41 * n, 50 + 41 * n, f"Colore {n + 1}") for n in range(6)),
        ),
    ),
    P(("macro-speed", "effect-speed", "color-macro-speed"), "Velocità programma", text="Da lenta a veloce"),
)
PARETE_PLANS = (("6 canali", "1 2 3 4 5 6 - - -"), ("9 canali", "1 2 3 4 5 6 7 8 9"))


@chart("second-parete", "modes below each other on a sheet", "ods", "it", "Castelbrano", "Cinciallegra W")
def parete(seed: int) -> Made:
    from odf.opendocument import OpenDocumentSpreadsheet
    from odf.table import Table, TableCell, TableRow
    from odf.text import P as Text

    book = OpenDocumentSpreadsheet()
    table = Table(name="DMX")

    def add(*cells: str | int) -> None:
        row = TableRow()
        for one in cells:
            if isinstance(one, int):
                cell = TableCell(valuetype="float", value=one)
            elif one:
                cell = TableCell(valuetype="string")
            else:
                cell = TableCell()
            if one != "":
                cell.addElement(Text(text=str(one)))
            row.addElement(cell)
        table.addElement(row)

    modes = []
    for name, plan in PARETE_PLANS:
        mode = k.mode(k.seat(PARETE, plan), f"Modalità {name}", name)
        modes.append(mode)
        add(mode.title)
        add("Canale", "Valore", "Funzione", "Descrizione")
        for line in k.lines(mode.params):
            for n, (lo, hi, text) in enumerate(line.rows):
                add(line.slot if n == 0 else "", k.hyphen(lo, hi), line.name if n == 0 else "", text)
        add("")
    book.spreadsheet.addElement(table)
    kept = io.BytesIO()
    book.write(kept)
    return k.made("Castelbrano", "Cinciallegra W", modes, kept.getvalue())


SPLIT = (
    P(("dimmer",), "Intensity", fine=("Intensity fine",), text="0-100%", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Shutter",
        ranges=(k.closed(0, 19), k.opened(20, 39), k.flash(40, 255, "Strobe slow-fast")),
    ),
    P(("red",), "Red", fine=("Red fine",), text="0-100%", spans=k.LEVEL),
    P(("green",), "Green", fine=("Green fine",), text="0-100%", spans=k.LEVEL),
    P(("blue",), "Blue", fine=("Blue fine",), text="0-100%", spans=k.LEVEL),
    P(("lime",), "Lime", fine=("Lime fine",), text="0-100%", spans=k.LEVEL),
    P(("color-temperature",), "Color temperature", text="2700K-6500K", spans=(span(2700, 6500, "K"),)),
    P(("tint", "green-correction"), "Green shift", text="Minus green-plus green"),
    P(("zoom",), "Zoom", text="12°-48°", spans=(span(12, 48, "deg"),)),
    P(("frost",), "Frost", text="Out-in"),
    P(
        ("fan-mode", "fan"),
        "Fan",
        ranges=(
            k.fan_choice(0, 84, "Auto"),
            k.fan_choice(85, 169, "Low noise"),
            k.fan_choice(170, 255, "Full speed"),
        ),
    ),
)
SPLIT_PLANS = (
    ("8-bit", "1 2 3 4 5 6 7 8 9 10 11"),
    ("16-bit", "1/2 3 4/5 6/7 8/9 10/11 12 13 14 15 16"),
)


@chart("second-split", "slot columns of two modes, semicolons", "csv", "en", "Ravensey", "Twite LP")
def split(seed: int) -> Made:
    kept = io.StringIO()
    sheet = csv.writer(kept, delimiter=";", lineterminator="\n")
    sheet.writerow(["Twite LP DMX map", "", "", "", ""])
    sheet.writerow([*(name for name, _ in SPLIT_PLANS), "Parameter", "DMX range", "Meaning"])
    for side in k.sides(SPLIT, *(plan for _, plan in SPLIT_PLANS)):
        for n, (lo, hi, text) in enumerate(side.rows):
            slots = ["" if n else ("-" if s is None else s) for s in side.slots]
            sheet.writerow([*slots, "" if n else side.name, k.zeros(lo, hi), text])
    modes = [k.mode(k.seat(SPLIT, plan), name) for name, plan in SPLIT_PLANS]
    return k.made("Ravensey", "Twite LP", modes, kept.getvalue())


PIXELS = (
    P(
        ("dimmer", "intensity-master"),
        "Master dimmer",
        (1, 2),
        ("Master dimmer fine",),
        "0 to 100 %",
        k.LEVEL,
    ),
    P(
        ("shutter", "strobe"),
        "Shutter",
        (3,),
        ranges=(k.opened(0, 15), k.flash(16, 239, "Strobe, slow to fast"), k.closed(240, 255)),
    ),
    *(
        P((hue.lower(),), f"Cell {n} {hue}", (4 * n + m,), text="0 to 100 %", spans=k.LEVEL)
        for n in range(1, 9)
        for m, hue in enumerate(("Red", "Green", "Blue", "White"))
    ),
    P(("zoom",), "Zoom", (36,), text="Narrow to wide"),
    P(("tilt",), "Tilt", (37, 38), ("Tilt fine",), "0 to 210 degrees", (span(0, 210, "deg"),)),
    P(("reserved",), "Reserved", (39,), text="No function"),
    P(
        ("control",),
        "Control",
        (40,),
        ranges=(k.nothing(0, 99), k.reset(100, 109, "Tilt and zoom reset"), k.nothing(110, 255)),
    ),
)


@chart("second-pixels", "forty slots, cells by name", "xlsx", "en", "Winterslow", "Plover Bar")
def pixels(seed: int) -> Made:
    from openpyxl import Workbook

    book = Workbook()
    book.properties.created = book.properties.modified = NEW
    sheet = book.worksheets[0]
    sheet.title = "Pixel 40"
    sheet["B2"] = "Plover Bar – 40 slot mode"
    at = 4
    for column, text in zip("BCDE", ("Slot", "Parameter", "Value", "Description"), strict=True):
        sheet[f"{column}{at}"] = text
    for line in k.lines(PIXELS):
        for n, (lo, hi, text) in enumerate(line.rows):
            at += 1
            cells = (line.slot if n == 0 else None, line.name if n == 0 else None, f"{lo}…{hi}", text or None)
            for column, cell in zip("BCDE", cells, strict=True):
                sheet[f"{column}{at}"] = cell
    kept = io.BytesIO()
    book.save(kept)
    mode = k.mode(PIXELS, "Plover Bar – 40 slot mode", "40 slot mode", "40 slot", "Pixel 40")
    return k.made("Winterslow", "Plover Bar", [mode], k.steady(kept.getvalue()))
