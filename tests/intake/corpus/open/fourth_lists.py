"""Lists: ODS with sections, stacked modes and two column sets; CSV long, with defaults, in two encodings."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence
from random import Random
from typing import Any

from intake.corpus.aside.fourth_sheets import varied
from intake.corpus.content import M, Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart


def _ods(title: str, rows: Iterable[Sequence[str | int | None]]) -> bytes:
    """A workbook of one sheet."""
    from odf.opendocument import OpenDocumentSpreadsheet
    from odf.table import Table, TableCell, TableRow
    from odf.text import P as Text

    book = OpenDocumentSpreadsheet()
    table = Table(name=title)
    for cells in rows:
        row = TableRow()
        for one in cells:
            kind: dict[str, Any] = {} if one is None else {"valuetype": "string"}
            if isinstance(one, int):
                kind = {"valuetype": "float", "value": one}
            cell = TableCell(**kind)
            if one is not None:
                cell.addElement(Text(text=str(one)))
            row.addElement(cell)
        table.addElement(row)
    book.spreadsheet.addElement(table)
    kept = io.BytesIO()
    book.write(kept)
    return kept.getvalue()


def _csv(rows: Iterable[Sequence[Any]], delimiter: str = ",") -> str:
    kept = io.StringIO()
    csv.writer(kept, delimiter=delimiter, lineterminator="\r\n").writerows(rows)
    return kept.getvalue()


def _wash(pan: int) -> tuple[tuple[str, tuple[P, ...]], ...]:
    return (
        (
            "Bewegung",
            (
                P(("pan",), "Pan", (1, 2), ("Pan Fein",), f"0–{pan}°", (span(0, pan, "deg"),)),
                P(("tilt",), "Tilt", (3, 4), ("Tilt Fein",), "0–220°", (span(0, 220, "deg"),)),
                P(("movement-speed",), "Pan/Tilt-Geschwindigkeit", (5,), text="schnell → langsam"),
            ),
        ),
        (
            "Intensität",
            (
                P(("dimmer",), "Dimmer", (6,), text="0–100 %", spans=k.LEVEL),
                P(
                    ("shutter", "strobe"),
                    "Shutter",
                    (7,),
                    ranges=(
                        k.closed(0, 9, "geschlossen"),
                        k.opened(10, 19, "offen"),
                        k.flash(20, 129, "Strobe, langsam → schnell"),
                        k.chance(130, 229, "Zufallsstrobe, langsam → schnell"),
                        k.opened(230, 255, "offen"),
                    ),
                ),
            ),
        ),
        (
            "Farbe",
            (
                P(("red",), "Rot", (8,), text="0–100 %", spans=k.LEVEL),
                P(("green",), "Grün", (9,), text="0–100 %", spans=k.LEVEL),
                P(("blue",), "Blau", (10,), text="0–100 %", spans=k.LEVEL),
                P(("white",), "Weiß", (11,), text="0–100 %", spans=k.LEVEL),
                P(
                    ("color-temperature",),
                    "Farbtemperatur",
                    (12,),
                    ranges=(k.nothing(0, 9, "ohne Funktion"), R(10, 255, "2700–8000 K")),
                ),
            ),
        ),
        ("Optik", (P(("zoom",), "Zoom", (13,), text="8–50°", spans=(span(8, 50, "deg"),)),)),
        (
            "System",
            (
                P(
                    ("reset", "control"),
                    "Reset",
                    (14,),
                    ranges=(
                        k.nothing(0, 199, "ohne Funktion"),
                        k.reset(200, 209, "Reset Pan/Tilt"),
                        k.reset(210, 219, "Gesamtreset"),
                        k.nothing(220, 255, "ohne Funktion"),
                    ),
                ),
            ),
        ),
    )


@chart(
    "fourth-list-wash",
    "sections, decimal, hex and percent, slot last",
    "ods",
    "de",
    "Brockenfels",
    "Dohle 19",
)
def wash(seed: int) -> Made:
    rows: list[list[str | int | None]] = [["Funktion", "dez.", "hex.", "%", "Bemerkung", "Kanal"]]
    params: list[P] = []
    for title, group in _wash(Random(seed).choice((540, 630))):
        rows.append([title])
        params += group
        for line in k.lines(group):
            for n, (lo, hi, text) in enumerate(line.rows):
                shares = f"{round(lo / 2.55)}–{round(hi / 2.55)}"
                name, slot = (line.name, line.slot) if n == 0 else (None, None)
                rows.append([name, f"{lo}–{hi}", f"{lo:02X}–{hi:02X}", shares, text or None, slot])
    cct = next(p for p in params if p.label == "Farbtemperatur")
    kelvin = R(10, 255, "2700–8000 K", span=span(2700, 8000, "K"))
    at = params.index(cct)
    params[at] = P(cct.words, cct.label, cct.slots, ranges=(cct.ranges[0], kelvin))
    return k.made("Brockenfels", "Dohle 19", [k.mode(params)], _ods("DMX", rows))


HAZE = k.level("haze-output", "Salida de niebla", "0 - 100 %", also=("fog-output",))
WIND = k.level("fan", "Ventilador", "0 - 100 %")
HAZER = (
    (
        "MODO 1: UN CANAL",
        (
            P(
                ("haze-output", "fog-output"),
                "Salida de niebla",
                (1,),
                ranges=(k.out(0, 5, "Apagado"), R(6, 255, "Niebla, de mínimo a máximo")),
            ),
        ),
    ),
    ("MODO 2: DOS CANALES", (HAZE.at(1), WIND.at(2))),
    (
        "MODO 3: CUATRO CANALES",
        (
            HAZE.at(1),
            WIND.at(2),
            P(("output-duration",), "Duración", (3,), text="1 a 120 s", spans=(span(1, 120, "s"),)),
            P(("output-interval",), "Intervalo", (4,), text="5 a 300 s", spans=(span(5, 300, "s"),)),
        ),
    ),
)


@chart(
    "fourth-list-hazer", "stacked modes with titles, value before slot", "ods", "es", "Nieblasur", "Bruma 2"
)
def hazer(seed: int) -> Made:
    rows: list[list[str | int | None]] = []
    modes = []
    for title, params in HAZER:
        modes.append(k.mode(params, title, title.split(": ")[1], title.split(":")[0]))
        rows += [[title], ["Valor DMX", "Canal", "Función", "Observaciones"]]
        for line in k.lines(params):
            for n, (lo, hi, text) in enumerate(line.rows):
                rows.append([k.hyphen(lo, hi), *((line.slot, line.name) if n == 0 else (None, None)), text])
        rows.append([])
    rows += [["Use solo líquido del fabricante. Ventile el local."], ["Líquido", "2,5 l"], ["Peso", "9,8 kg"]]
    return k.made("Nieblasur", "Bruma 2", modes, _ods("Hoja1", rows))


CYC = tuple(
    P((word,), label, (at, at + 1), (f"{label} fine",), "0-100%", k.LEVEL)
    for at, word, label in (
        (1, "dimmer", "Intensity"),
        (3, "red", "Red"),
        (5, "green", "Green"),
        (7, "blue", "Blue"),
        (9, "lime", "Lime"),
        (11, "amber", "Amber"),
    )
)
CYC += (
    P(
        ("strobe", "shutter"),
        "Strobe",
        (13,),
        ranges=(k.out(0, 7, "Off"), k.flash(8, 255, "0.5-20 Hz", (0.5, 20))),
    ),
    P(
        ("dimmer-curve",),
        "Curve",
        (14,),
        ranges=(
            R(0, 63, "Linear", sets=("dimmer-curve", "linear", "Linear")),
            R(64, 127, "Square law", sets=("dimmer-curve", "square", "Square law")),
            R(128, 255, "S-curve", sets=("dimmer-curve", "s", "S-curve")),
        ),
    ),
    P(("dimmer-fade-time",), "Fade time", (15,), text="0-10 s", spans=(span(0, 10, "s"),)),
    P(("fan", "fan-mode"), "Fan speed", (16,), text="0-100%", spans=k.LEVEL),
)


@chart("fourth-list-cyc", "two column sets across a sheet", "ods", "en", "Tarnbrook", "Fieldfare Cyc")
def cyc(seed: int) -> Made:
    head = ["Slot", "Name", "Value", "Meaning"]
    sets: list[list[list[str | int | None]]] = [[], []]
    for line in k.lines(CYC):
        for n, (lo, hi, text) in enumerate(line.rows):
            first: list[str | int | None] = [line.slot, line.name] if n == 0 else [None, None]
            sets[line.slot > 8].append([*first, k.hyphen(lo, hi), text or None])
    tall = max(map(len, sets))
    left, right = ([*one, *([[None] * 4] * (tall - len(one)))] for one in sets)
    rows: list[list[str | int | None]] = [["Fieldfare Cyc, 16 slots"], [*head, None, *head]]
    rows += [[*a, None, *b] for a, b in zip(left, right, strict=True)]
    modes = [k.mode(CYC, "Fieldfare Cyc, 16 slots", "16 slots", "Fieldfare Cyc")]
    return k.made("Tarnbrook", "Fieldfare Cyc", modes, _ods("DMX", rows))


FLASHER = (
    P(("strobe-dimmer", "dimmer"), "Intensity", text="0 to 100 %", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Flash rate",
        ranges=(k.out(0, 5, "no flash"), k.flash(6, 255, "0.3 Hz to 22 Hz", (0.3, 22))),
    ),
    P(("strobe-duration",), "Flash duration", text="0 ms to 650 ms", spans=(span(0, 650, "ms"),)),
    P(
        ("effect", "macro", "strobe-mode"),
        "Flash effects",
        ranges=(
            k.out(0, 5, "no effect"),
            *(
                k.maybe_runs(6 + 43 * n, 48 + 43 * n, text)
                for n, text in enumerate(("ramp up", "ramp down", "ramp up and down"))
            ),
            k.optional(k.maybe_runs(135, 177, "random"), does=("random", "runs")),
            k.maybe_runs(178, 220, "lightning"),
            k.maybe_runs(221, 255, "spikes"),
        ),
    ),
)
FLASH_PLANS = (("1-slot", "- 1 - -"), ("3-slot", "1 2 3 -"), ("4-slot", "1 2 3 4"))


@chart(
    "fourth-list-flash", "mode on every line, low and high", "csv", "en", "Harrowgate Optics", "Ptarmigan 3K"
)
def flasher(seed: int) -> Made:
    rows: list[list[Any]] = [["Mode", "DMX slot", "Low", "High", "Parameter", "Action"]]
    params = varied(FLASHER, seed, "Flash duration", "ms", "{} ms to {} ms", (0, 650), (0, 530))
    modes = []
    for name, plan in FLASH_PLANS:
        mode = k.mode(k.seat(params, plan), name)
        modes.append(mode)
        for line in k.lines(mode.params):
            rows += [[name, line.slot, lo, hi, line.name, text] for lo, hi, text in line.rows]
    return k.made("Harrowgate Optics", "Ptarmigan 3K", modes, _csv(rows))


BULB = (
    P(("dimmer",), "Helligkeit", (1,), text="0 bis 100 %", spans=k.LEVEL, default=0),
    P(
        ("color-temperature",),
        "Weißton",
        (2,),
        text="1800 K bis 7500 K",
        spans=(span(1800, 7500, "K"),),
        default=60,
    ),
    P(("red",), "Rot", (3,), text="0 bis 100 %", spans=k.LEVEL, default=0),
    P(("green",), "Grün", (4,), text="0 bis 100 %", spans=k.LEVEL, default=0),
    P(("blue",), "Blau", (5,), text="0 bis 100 %", spans=k.LEVEL, default=0),
    P(
        ("effect", "macro"),
        "Effekt",
        (6,),
        ranges=(
            k.out(0, 10, "Aus"),
            k.maybe_runs(11, 60, "Kerze"),
            k.maybe_runs(61, 110, "Kaminfeuer"),
            k.maybe_runs(111, 160, "Fernseher"),
            k.maybe_runs(161, 210, "Defekte Leuchtstoffröhre"),
            k.maybe_runs(211, 255, "Gewitter"),
        ),
        default=0,
    ),
    P(
        ("effect-speed", "macro-speed"),
        "Effektgeschwindigkeit",
        (7,),
        text="langsam bis schnell",
        default=128,
    ),
)


@chart("fourth-list-bulb", "default before the values, Latin-1", "csv", "de", "Glimmholz", "Birne E27")
def bulb(seed: int) -> Made:
    rows: list[list[Any]] = [["Birne E27 - DMX-Belegung (7 Kanäle)"], []]
    params = varied(BULB, seed, "Weißton", "K", "{} K bis {} K", (1800, 7500), (2200, 6500))
    rows += [["Kanal", "Bezeichnung", "Grundwert", "DMX-Werte", "Bedeutung"]]
    for line in k.lines(params):
        for n, (lo, hi, text) in enumerate(line.rows):
            first = [line.slot, line.name, line.p.default] if n == 0 else ["", "", ""]
            rows.append([*first, k.hyphen(lo, hi), text])
    title = "Birne E27 - DMX-Belegung"
    mode = k.mode(params, f"{title} (7 Kanäle)", "7 Kanäle", title, "DMX-Belegung (7 Kanäle)", "DMX-Belegung")
    return k.made("Glimmholz", "Birne E27", [mode], _csv(rows, ";").encode("cp1252"))


ZOOM_PAR = (
    P(("dimmer",), "Gradateur", fine=("Gradateur fin",), text="0 à 100 %", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "Strobe",
        ranges=(
            k.out(0, 10, "Pas de strobe"),
            k.flash(11, 199, "Strobe, lent à rapide"),
            k.chance(200, 255, "Strobe aléatoire"),
        ),
    ),
    *(
        k.level(word, label, "0 à 100 %")
        for word, label in (
            ("red", "Rouge"),
            ("green", "Vert"),
            ("blue", "Bleu"),
            ("warm-white", "Blanc chaud"),
        )
    ),
    P(("zoom",), "Zoom", text="Serré à large"),
    P(
        ("color-preset", "color-macro", "virtual-color-wheel"),
        "Couleurs prédéfinies",
        ranges=(
            k.nothing(0, 9, "Inactif"),
            *k.steps(
                10, 35, "Corail", "Menthe", "Ciel", "Lilas", "Paille", "Rose pâle", "Blanc froid", last=255
            ),
        ),
    ),
)
ZOOM_PLANS = (("Mode A (6 canaux)", "1 - 2 3 4 5 6 -"), ("Mode B (9 canaux)", "1/2 3 4 5 6 7 8 9"))


@chart(
    "fourth-list-zoom",
    "value first, modes below each other, UTF-16",
    "csv",
    "fr",
    "Brumeclaire",
    "Verdier 7Z",
)
def zoom(seed: int) -> Made:
    rows: list[list[Any]] = []
    modes: list[M] = []
    for name, plan in ZOOM_PLANS:
        mode = k.mode(k.seat(ZOOM_PAR, plan), name, name[:6], name[8:-1], name[5])
        modes.append(mode)
        rows += [[name], ["Valeur", "Canal", "Paramètre", "Détail"]]
        for line in k.lines(mode.params):
            for n, (lo, hi, text) in enumerate(line.rows):
                rows.append([f"{lo} à {hi}", *((line.slot, line.name) if n == 0 else ("", "")), text])
        rows.append([])
    data = _csv(rows, "\t").encode("utf-16-le")
    return k.made("Brumeclaire", "Verdier 7Z", modes, b"\xff\xfe" + data)
