"""Charts as spreadsheets: merged cells on two sheets, from and to columns, modes side by side, CSV."""

from __future__ import annotations

import csv
import datetime
import io

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

NEW = datetime.datetime(2026, 1, 2)


def blades() -> list[P]:
    found = []
    for n in range(1, 5):
        found.append(P(("blade-position",), f"Blade {n} position", text="Out to in"))
        found.append(
            P(("blade-angle",), f"Blade {n} angle", text="-25° to +25°", spans=(span(-25, 25, "deg"),))
        )
    return found


FRAMING = [
    P(("pan",), "Pan", fine=("Pan fine",), text="0° to 540°", spans=(span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", fine=("Tilt fine",), text="0° to 260°", spans=(span(0, 260, "deg"),)),
    P(("cyan",), "Cyan", text="0 to 100%", spans=k.LEVEL),
    P(("magenta",), "Magenta", text="0 to 100%", spans=k.LEVEL),
    P(("yellow",), "Yellow", text="0 to 100%", spans=k.LEVEL),
    P(("warm-correction", "color-correction"), "CTO", text="0 to 100%", spans=k.LEVEL),
    P(
        ("animation-wheel-rotation", "animation-wheel"),
        "Animation wheel",
        ranges=(
            k.out(0, 9, "Out"),
            k.spin(10, 127, "Clockwise, slow to fast", "animation-wheel"),
            k.stop(128, 137),
            k.spin(138, 255, "Counterclockwise, slow to fast", "animation-wheel"),
        ),
    ),
    P(("iris",), "Iris", text="Open to minimum"),
    *blades(),
    P(("framing-rotation",), "Framing rotation", text="-60° to +60°", spans=(span(-60, 60, "deg"),)),
    P(
        ("shutter", "strobe"),
        "Shutter",
        ranges=(k.closed(0, 15), k.opened(16, 79), k.flash(80, 255, "Strobe 0.3 to 18 Hz", (0.3, 18))),
    ),
    P(("dimmer",), "Dimmer", fine=("Dimmer fine",), text="0 to 100%", spans=k.LEVEL),
    P(
        ("control",),
        "Control",
        ranges=(
            k.nothing(0, 19),
            R(20, 29, "Fan auto", sets=("fan", "auto", "Fan auto")),
            R(30, 39, "Fan silent", sets=("fan", "silent", "Fan silent")),
            k.nothing(40, 239),
            k.reset(240, 255, "Total reset"),
        ),
    ),
]
BASIC = "1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20"
EXTENDED = "1/2 3/4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20 21/22 23"


@chart("fresh-framing", "merged cells, a sheet a mode", "xlsx", "en", "Sorrelby", "Heron F2")
def framing(seed: int) -> Made:
    from openpyxl import Workbook
    from openpyxl.styles import Font

    book = Workbook()
    book.properties.created = book.properties.modified = NEW
    modes = []
    for name, plan in (("Basic", BASIC), ("Extended", EXTENDED)):
        mode = k.mode(k.seat(FRAMING, plan), f"{name} mode", name)
        modes.append(mode)
        sheet = book.create_sheet(name) if len(modes) > 1 else book.worksheets[0]
        sheet.title = name
        sheet.append([f"{name} mode"])
        sheet.append([])
        sheet.append(["Channel", "Attribute", "DMX", "Meaning"])
        for cell in (sheet["A1"], *sheet[3]):
            cell.font = Font(bold=True)
        for line in k.lines(mode.params):
            top = sheet.max_row + 1
            for n, (lo, hi, text) in enumerate(line.rows):
                sheet.append(
                    [*([line.slot, line.name] if n == 0 else [None, None]), k.hyphen(lo, hi), text or None]
                )
            if len(line.rows) > 1:
                for column in "AB":
                    sheet.merge_cells(f"{column}{top}:{column}{sheet.max_row}")
        sheet.column_dimensions["B"].width = 24
        sheet.column_dimensions["D"].width = 34
    kept = io.BytesIO()
    book.save(kept)
    return k.made("Sorrelby", "Heron F2", modes, k.steady(kept.getvalue()))


FOLLOW = (
    P(("dimmer",), "Intensity", (1, 2), ("Intensity fine",), "0 - 100 %", k.LEVEL, default=0, fine_default=0),
    P(
        ("shutter", "strobe"),
        "Strobe",
        (3,),
        ranges=(k.opened(0, 9), k.flash(10, 245, "Strobe 1 - 15 Hz", (1, 15)), k.opened(246, 255)),
        default=0,
    ),
    P(("iris",), "Iris", (4,), text="Open - closed", default=0),
    P(
        ("zoom",),
        "Zoom",
        (5, 6),
        ("Zoom fine",),
        "6° - 14°",
        (span(6, 14, "deg"),),
        default=128,
        fine_default=0,
    ),
    P(("focus",), "Focus", (7,), text="Near - far", default=128),
    P(
        ("color-wheel", "color-semaphore", "color-scroller"),
        "Color changer",
        (8,),
        ranges=(
            k.opened(0, 31),
            *k.steps(
                32,
                32,
                "Light pink",
                "Dark pink",
                "Light amber",
                "Light blue",
                "Medium blue",
                "Light green",
                "Half CTB",
            ),
        ),
        default=0,
    ),
    P(("frost",), "Frost", (9,), ranges=(k.out(0, 127, "Out"), R(128, 255, "In")), default=0),
    P(
        ("fan-mode", "fan"),
        "Fan",
        (10,),
        ranges=(k.fan_choice(0, 127, "Normal"), k.fan_choice(128, 255, "Quiet")),
        default=0,
    ),
)


@chart("fresh-follow", "from and to columns, a default a slot", "xlsx", "en", "Tillmouth", "Lark 600")
def follow(seed: int) -> Made:
    from openpyxl import Workbook

    book = Workbook()
    book.properties.created = book.properties.modified = NEW
    sheet = book.worksheets[0]
    sheet.title = "DMX"
    sheet.append(["Lark 600 DMX channels"])
    sheet.append(["Ch", "Function", "From", "To", "Effect", "Default"])
    for line in k.lines(FOLLOW):
        for n, (lo, hi, text) in enumerate(line.rows):
            default = line.p.fine_default if line.byte else line.p.default
            sheet.append(
                [*([line.slot, line.name] if n == 0 else [None, None]), lo, hi, text, None if n else default]
            )
    kept = io.BytesIO()
    book.save(kept)
    return k.made("Tillmouth", "Lark 600", [k.mode(FOLLOW)], k.steady(kept.getvalue()))


SPANISH = (
    P(("dimmer", "intensity-master"), "Atenuador general", text="0% a 100%", spans=k.LEVEL),
    P(("red",), "Rojo", text="0% a 100%", spans=k.LEVEL),
    P(("green",), "Verde", text="0% a 100%", spans=k.LEVEL),
    P(("blue",), "Azul", text="0% a 100%", spans=k.LEVEL),
    P(("white",), "Blanco", text="0% a 100%", spans=k.LEVEL),
    P(("amber",), "Ámbar", text="0% a 100%", spans=k.LEVEL),
    P(("uv",), "UV", text="0% a 100%", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Estrobo",
        ranges=(k.out(0, 10, "Sin estrobo"), k.flash(11, 255, "Estrobo de lento a rápido")),
    ),
    P(
        ("color-macro", "color-preset"),
        "Macros de color",
        ranges=(
            k.nothing(0, 15, "Sin función"),
            *(k.maybe_runs(16 + 48 * n, 63 + 48 * n, f"Macro {n + 1}") for n in range(5)),
        ),
    ),
    P(
        ("macro", "effect"),
        "Programas automáticos",
        ranges=(
            k.nothing(0, 50, "Sin función"),
            k.runs(51, 150, "Programa de fundido"),
            k.runs(151, 240, "Programa de salto"),
            k.runs(241, 255, "Activado por sonido"),
        ),
    ),
    P(("macro-speed", "effect-speed"), "Velocidad del programa", text="De lento a rápido"),
)
SPANISH_PLANS = ("1 2 3 4 5 6 7 - - - -", "1 2 3 4 5 6 7 8 9 10 11")


@chart(
    "fresh-spanish", "slot columns of two modes before the function", "ods", "es", "Valdorena", "Grillo 18"
)
def spanish(seed: int) -> Made:
    from odf.opendocument import OpenDocumentSpreadsheet
    from odf.table import CoveredTableCell, Table, TableCell, TableRow
    from odf.text import P as Text

    book = OpenDocumentSpreadsheet()
    table = Table(name="Canales")

    def add(cells: list[tuple[str, int] | None]) -> None:
        row = TableRow()
        for one in cells:
            if one is None:
                row.addElement(CoveredTableCell())
                continue
            kind = {"valuetype": "string"} if one[0] else {}
            cell = TableCell(**kind, **({"numberrowsspanned": one[1]} if one[1] > 1 else {}))
            if one[0]:
                cell.addElement(Text(text=one[0]))
            row.addElement(cell)
        table.addElement(row)

    add([("Modo 7 canales", 1), ("Modo 11 canales", 1), ("Función", 1), ("Valor", 1), ("Descripción", 1)])
    for side in k.sides(SPANISH, *SPANISH_PLANS):
        tall = len(side.rows)
        for n, (lo, hi, text) in enumerate(side.rows):
            head = [*(str(s) if s else "" for s in side.slots), side.name]
            merged: list[tuple[str, int] | None] = [(one, tall) if n == 0 else None for one in head]
            add([*merged, (k.zeros(lo, hi), 1), (text, 1)])
    book.spreadsheet.addElement(table)
    kept = io.BytesIO()
    book.write(kept)
    modes = [
        k.mode(k.seat(SPANISH, plan), f"Modo {n} canales", f"{n} canales")
        for n, plan in zip((7, 11), SPANISH_PLANS, strict=True)
    ]
    return k.made("Valdorena", "Grillo 18", modes, kept.getvalue())


STRIP = (
    k.level("dimmer", "Dimmer", "0-100%"),
    P(("strobe", "shutter"), "Strobe", ranges=(k.out(0, 5, "Off"), k.flash(6, 255, "Slow to fast"))),
    *(k.level(hue.lower(), f"{hue} {n}", "0-100%") for n in range(1, 9) for hue in ("Red", "Green", "Blue")),
    P(
        ("pixel-effect", "effect", "pixel-macro", "macro"),
        "Effect",
        ranges=(
            k.nothing(0, 31),
            *(k.maybe_runs(32 + 32 * n, 63 + 32 * n, f"Chase {n + 1}") for n in range(7)),
        ),
    ),
    P(("effect-speed", "pixel-effect-speed", "macro-speed"), "Effect speed", text="Slow to fast"),
)
STRIP_SEATS = k.seat(STRIP, " ".join(map(str, range(1, 29))))


@chart("fresh-strip", "a row a range, commas", "csv", "en", "Gannetry", "Reed 8")
def strip(seed: int) -> Made:
    kept = io.StringIO()
    sheet = csv.writer(kept)
    sheet.writerow(["Slot", "Function", "Min", "Max", "Description"])
    for line in k.lines(STRIP_SEATS):
        for n, (lo, hi, text) in enumerate(line.rows):
            sheet.writerow([*([line.slot, line.name] if n == 0 else ["", ""]), lo, hi, text])
    return k.made("Gannetry", "Reed 8", [k.mode(STRIP_SEATS)], kept.getvalue())
