"""Spreadsheets: hex and mode columns last, a sheet a mode with a note, MSB and LSB, tabs in French."""

from __future__ import annotations

import csv
import datetime
import io

from intake.corpus.content import M, Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

NEW = datetime.datetime(2026, 1, 2)

ARC = (
    P(("dimmer",), "Dimmer", text="0-100%", spans=k.LEVEL),
    P(("color-temperature",), "Color temperature", text="3000K-6000K", spans=(span(3000, 6000, "K"),)),
    P(
        ("strobe", "shutter"),
        "Strobe",
        ranges=(k.out(0, 10, "Strobe off"), k.flash(11, 255, "Strobe slow to fast")),
    ),
    P(("zoom",), "Zoom", text="18°-42°", spans=(span(18, 42, "deg"),)),
    P(("warm-white",), "Warm white", text="0-100%", spans=k.LEVEL),
    P(("cool-white",), "Cool white", text="0-100%", spans=k.LEVEL),
    P(("amber",), "Amber", text="0-100%", spans=k.LEVEL),
    P(
        ("fan-mode", "fan"),
        "Fan mode",
        ranges=(
            k.fan_choice(0, 63, "Auto"),
            k.fan_choice(64, 127, "Theater"),
            k.fan_choice(128, 255, "High"),
        ),
    ),
    P(
        ("control", "reset"),
        "Special functions",
        ranges=(k.nothing(0, 250, "No action"), k.reset(251, 255, "Reset")),
    ),
)
ARC_PLANS = (
    ("6-slot", "1 2 3 4 - - - 5 6"),
    ("7-slot", "- - 1 2 3 4 5 6 7"),
    ("9-slot", "1 2 3 4 5 6 7 8 9"),
)


@chart("third-arc", "hex beside decimal, mode columns last", "xlsx", "en", "Gorseland", "Chough 150")
def arc(seed: int) -> Made:
    from openpyxl import Workbook
    from openpyxl.styles import Alignment

    book = Workbook()
    book.properties.created = book.properties.modified = NEW
    sheet = book.worksheets[0]
    sheet.title = "DMX map"
    sheet.append(["Function", "Decimal", "Hex", "Description", *(name for name, _ in ARC_PLANS)])
    for side in k.sides(ARC, *(plan for _, plan in ARC_PLANS)):
        top = sheet.max_row + 1
        for n, (lo, hi, text) in enumerate(side.rows):
            slots = [None if n else s for s in side.slots]
            sheet.append([None if n else side.name, k.zeros(lo, hi), f"{lo:02X}h-{hi:02X}h", text, *slots])
        if len(side.rows) > 1:
            for column in "AEFG":
                sheet.merge_cells(f"{column}{top}:{column}{sheet.max_row}")
                sheet[f"{column}{top}"].alignment = Alignment(vertical="top")
    kept = io.BytesIO()
    book.save(kept)
    modes = [k.mode(k.seat(ARC, plan), name) for name, plan in ARC_PLANS]
    return k.made("Gorseland", "Chough 150", modes, k.steady(kept.getvalue()))


WASH = (
    P(("pan",), "Pan", fine=("Pan fein",), text="0..540°", spans=(span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", fine=("Tilt fein",), text="0..230°", spans=(span(0, 230, "deg"),)),
    P(("dimmer",), "Helligkeit", fine=("Helligkeit fein",), text="0..100 %", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Shutter",
        ranges=(k.closed(0, 9, "Zu"), k.opened(10, 19, "Auf"), k.flash(20, 255, "Strobe 1..18 Hz", (1, 18))),
    ),
    P(("red",), "Rot", text="0..100 %", spans=k.LEVEL),
    P(("green",), "Grün", text="0..100 %", spans=k.LEVEL),
    P(("blue",), "Blau", text="0..100 %", spans=k.LEVEL),
    P(("lime",), "Lime", text="0..100 %", spans=k.LEVEL),
    P(("zoom",), "Zoom", text="7..45°", spans=(span(7, 45, "deg"),)),
    P(
        ("virtual-color-wheel", "color-preset", "color-macro"),
        "Virtuelles Farbrad",
        ranges=(
            k.nothing(0, 15, "Aus"),
            *k.steps(16, 48, "Bernstein", "Smaragd", "Kobalt", "Pink", "Stahlblau"),
        ),
    ),
    P(
        ("reset", "control"),
        "Reset",
        ranges=(k.nothing(0, 249, "Keine Funktion"), k.reset(250, 255, "Reset")),
    ),
)
WASH_PLANS = (("Kompakt", "1 2 3 4 5 6 7 8 9 - 10"), ("Voll", "1/2 3/4 5/6 7 8 9 10 11 12 13 14"))


@chart("third-wash", "a sheet a mode, name before slot", "xlsx", "de", "Ebersteg", "Wiedehopf 12")
def wash(seed: int) -> Made:
    from openpyxl import Workbook

    book = Workbook()
    book.properties.created = book.properties.modified = NEW
    modes = []
    for name, plan in WASH_PLANS:
        mode = k.mode(k.seat(WASH, plan), name)
        modes.append(mode)
        sheet = book.create_sheet(name) if len(modes) > 1 else book.worksheets[0]
        sheet.title = name
        sheet.append(["Funktion", "Kanal", "Bedeutung", "DMX-Wert"])
        for line in k.lines(mode.params):
            for n, (lo, hi, text) in enumerate(line.rows):
                sheet.append(
                    [*((line.name, line.slot) if n == 0 else (None, None)), text or None, f"{lo}..{hi}"]
                )
        sheet.append([])
        sheet.append(["Stand 03/2026"])
    kept = io.BytesIO()
    book.save(kept)
    return k.made("Ebersteg", "Wiedehopf 12", modes, k.steady(kept.getvalue()))


WIDE = (
    P(("dimmer",), "Dimmer", (1, 2), text="0 to 100 %", spans=k.LEVEL, wide=True),
    P(("red",), "Red", (3, 4), text="0 to 100 %", spans=k.LEVEL, wide=True),
    P(("green",), "Green", (5, 6), text="0 to 100 %", spans=k.LEVEL, wide=True),
    P(("blue",), "Blue", (7, 8), text="0 to 100 %", spans=k.LEVEL, wide=True),
    P(("deep-red",), "Deep red", (9, 10), text="0 to 100 %", spans=k.LEVEL, wide=True),
    P(("mint",), "Mint", (11, 12), text="0 to 100 %", spans=k.LEVEL, wide=True),
    P(
        ("strobe", "shutter"),
        "Strobe",
        (13,),
        ranges=(k.out(0, 3, "Off"), k.flash(4, 255, "1 to 30 Hz", (1, 30))),
    ),
    P(
        ("dimmer-curve",),
        "Dimmer curve",
        (14,),
        ranges=(
            R(0, 127, "Linear", sets=("dimmer-curve", "linear", "Linear")),
            R(128, 255, "Square", sets=("dimmer-curve", "square", "Square")),
        ),
    ),
)


@chart("third-wide", "coarse and fine columns", "ods", "en", "Marlbrook", "Knot 6C")
def wide(seed: int) -> Made:
    from odf.opendocument import OpenDocumentSpreadsheet
    from odf.table import Table, TableCell, TableRow
    from odf.text import P as Text

    book = OpenDocumentSpreadsheet()
    table = Table(name="16 bit")

    def add(*cells: str | int | None) -> None:
        row = TableRow()
        for one in cells:
            if one is None:
                row.addElement(TableCell())
                continue
            cell = (
                TableCell(valuetype="float", value=one)
                if isinstance(one, int)
                else TableCell(valuetype="string")
            )
            cell.addElement(Text(text=str(one)))
            row.addElement(cell)
        table.addElement(row)

    add("Parameter", "Coarse", "Fine", "Values", "Meaning")
    for p in WIDE:
        rows = [(k.hyphen(r.lo, r.hi), r.text) for r in p.ranges] or [(k.hyphen(0, p.top), p.text)]
        for n, (values, text) in enumerate(rows):
            slots = (p.slots[0], p.slots[1] if len(p.slots) > 1 else None) if n == 0 else (None, None)
            add(p.label if n == 0 else None, *slots, values, text)
    book.spreadsheet.addElement(table)
    kept = io.BytesIO()
    book.write(kept)
    return k.made("Marlbrook", "Knot 6C", [M("", (), 14, WIDE)], kept.getvalue())


CYCLO = (
    P(("dimmer",), "Intensité", text="0-100 %", spans=k.LEVEL),
    P(("red",), "Rouge", text="0-100 %", spans=k.LEVEL),
    P(("green",), "Vert", text="0-100 %", spans=k.LEVEL),
    P(("blue",), "Bleu", text="0-100 %", spans=k.LEVEL),
    P(("lime",), "Citron vert", text="0-100 %", spans=k.LEVEL),
    P(("amber",), "Ambre", text="0-100 %", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Stroboscope",
        ranges=(k.out(0, 9, "Sans effet"), k.flash(10, 255, "De lent à rapide")),
    ),
    P(
        ("color-temperature",),
        "Température de couleur",
        text="2800 K - 6500 K",
        spans=(span(2800, 6500, "K"),),
    ),
)
CYCLO_SEATS = k.seat(CYCLO, "1 2 3 4 5 6 7 8")


@chart("third-cyclo", "minimum, maximum, effect, name last", "csv", "fr", "Vaubreuil", "Fauvette C")
def cyclo(seed: int) -> Made:
    kept = io.StringIO()
    sheet = csv.writer(kept, delimiter="\t", lineterminator="\r\n")
    sheet.writerow(["Canal", "Minimum", "Maximum", "Effet", "Fonction"])
    for line in k.lines(CYCLO_SEATS):
        for n, (lo, hi, text) in enumerate(line.rows):
            sheet.writerow([line.slot if n == 0 else "", lo, hi, text, line.name if n == 0 else ""])
    return k.made("Vaubreuil", "Fauvette C", [k.mode(CYCLO_SEATS)], kept.getvalue())
