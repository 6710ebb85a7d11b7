"""Ordinary charts with what they say: any order of columns, any way to print slots, one to three modes."""

from __future__ import annotations

import csv
import html
import io
from dataclasses import dataclass, field

from hypothesis import strategies as st

Ranges = list[tuple[int, int, str]]
WORDS = {
    "en": {
        "slot": ["Channel", "Ch.", "DMX channel", "Slot"],
        "function": ["Function", "Parameter", "Feature"],
        "value": ["Value", "DMX value", "Range"],
        "meaning": ["Description", "Details", "Comment"],
        "default": ["Default"],
        "from": ["From"],
        "to": ["To"],
        "hex": ["Hex"],
        "mode": ["Mode", "Personality"],
        "modes": ["Basic", "Standard", "Extended"],
    },
    "de": {
        "slot": ["Kanal", "DMX-Kanal"],
        "function": ["Funktion", "Bezeichnung"],
        "value": ["Wert", "DMX-Wert"],
        "meaning": ["Beschreibung", "Bedeutung"],
        "default": ["Grundwert"],
        "from": ["Von"],
        "to": ["Bis"],
        "hex": ["Hex"],
        "mode": ["Modus", "Betriebsart"],
        "modes": ["Einfach", "Normal", "Erweitert"],
    },
}
WHOLE: Ranges = [(0, 255, "")]
PARAMETERS: dict[str, tuple[str, dict[str, str], dict[str, Ranges]]] = {
    "pan": ("pan", {"en": "Pan", "de": "Pan"}, {}),
    "tilt": ("tilt", {"en": "Tilt", "de": "Tilt"}, {}),
    "dimmer": ("dimmer", {"en": "Dimmer", "de": "Dimmer"}, {}),
    "red": ("red", {"en": "Red", "de": "Rot"}, {}),
    "zoom": ("zoom", {"en": "Zoom", "de": "Zoom"}, {}),
    "shutter": (
        "shutter",
        {"en": "Shutter", "de": "Shutter"},
        {
            "en": [(0, 9, "Closed"), (10, 19, "Open"), (20, 255, "Strobe slow to fast")],
            "de": [(0, 9, "Geschlossen"), (10, 19, "Offen"), (20, 255, "Strobe langsam bis schnell")],
        },
    ),
    "gobo": (
        "gobo-wheel",
        {"en": "Gobo wheel", "de": "Goborad"},
        {
            "en": [(0, 9, "Open"), (10, 19, "Gobo 1"), (20, 255, "Rotation slow to fast")],
            "de": [(0, 9, "Offen"), (10, 19, "Gobo 1"), (20, 255, "Rotation langsam bis schnell")],
        },
    ),
}
FINE = {"en": "fine", "de": "fein"}


@dataclass(frozen=True)
class Slot:
    """One row of a chart: a parameter, and whether it is its fine byte."""

    key: str
    fine: bool = False


@dataclass
class Ordinary:
    """A chart: its bytes by file name, and slots with word and ranges of each mode."""

    name: str
    content: bytes
    modes: list[tuple[str, int, dict[tuple[int, ...], tuple[str, list[tuple[int, int]]]]]] = field(
        default_factory=list
    )


def _truth(slots: list[Slot], language: str) -> dict[tuple[int, ...], tuple[str, list[tuple[int, int]]]]:
    found: dict[str, list[int]] = {}
    for number, slot in enumerate(slots, 1):
        found.setdefault(slot.key, []).append(number)
    told = {}
    for key, numbers in found.items():
        word, _, ranges = PARAMETERS[key]
        told[tuple(numbers)] = (word, [(low, high) for low, high, _ in ranges.get(language, [])])
    return told


@st.composite
def charts(draw: st.DrawFn) -> Ordinary:
    """Any such chart."""
    language = draw(st.sampled_from(["en", "de"]))
    words = WORDS[language]
    title = {key: draw(st.sampled_from(some)) for key, some in words.items()}
    keys = draw(st.permutations(list(PARAMETERS)))[: draw(st.integers(4, len(PARAMETERS)))]
    fine = {key for key in keys if not PARAMETERS[key][2] and draw(st.booleans())}
    full = [Slot(key, byte) for key in keys for byte in ((False, True) if key in fine else (False,))]
    layout = draw(st.sampled_from(["one", "below", "beside", "column"]))
    count = 1 if layout == "one" else draw(st.integers(2, 3))
    names = draw(st.permutations(words["modes"]))[:count]
    modes = [full]
    for _ in range(count - 1):
        kept = [key for key in keys if draw(st.booleans())] or keys[:3]
        kept = kept if len(kept) > 2 else keys[:3]
        modes.append([slot for slot in full if slot.key in kept])
    style = draw(st.sampled_from(["{}", "{:02d}", "CH{}", "{}."]))
    dash = draw(st.sampled_from(["{}-{}", "{} - {}", "{}–{}", "{:03d}-{:03d}"]))
    absent = draw(st.sampled_from(["", "-", "–"]))
    order = draw(st.sampled_from(["fvm", "vfm", "vmf"]))
    extra = draw(st.sampled_from(["", "default", "hex", "ends"]))
    again = draw(st.booleans())

    def titles() -> list[str]:
        values = [title["from"], title["to"]] if extra == "ends" else [title["value"]]
        values += [title["hex"]] if extra == "hex" else []
        cells = {"f": [title["function"]], "v": values, "m": [title["meaning"]]}
        told = [cell for one in order for cell in cells[one]]
        return told + ([title["default"]] if extra == "default" else [])

    def rows(cells: list[str], slot: Slot) -> list[list[str]]:
        _, name, ranges = PARAMETERS[slot.key]
        label = f"{name[language]} {FINE[language]}" if slot.fine else name[language]
        found = []
        for n, (low, high, meaning) in enumerate(ranges.get(language, WHOLE)):
            values = [str(low), str(high)] if extra == "ends" else [dash.format(low, high)]
            values += [f"{low:02X}-{high:02X}"] if extra == "hex" else []
            parts = {"f": [label if n == 0 else ""], "v": values, "m": [meaning]}
            line = [cell for one in order for cell in parts[one]]
            line += [("0" if n == 0 else "")] if extra == "default" else []
            found.append([*(cells if n == 0 or again else [""] * len(cells)), *line])
        return found

    tables: list[tuple[str, list[list[str]]]] = []
    if layout in ("one", "below"):
        for name, slots in zip(names, modes, strict=True):
            body = [line for n, slot in enumerate(slots, 1) for line in rows([style.format(n)], slot)]
            heading = "" if layout == "one" else f"{name} {'mode' if language == 'en' else 'Modus'}"
            tables.append((heading, [[title["slot"], *titles()], *body]))
    elif layout == "beside":
        counted = [0] * count
        body = []
        for slot in full:
            cells = []
            for n, slots in enumerate(modes):
                counted[n] += slot in slots
                cells.append(style.format(counted[n]) if slot in slots else absent)
            body += rows(cells, slot)
        tables.append(("", [[f"{title['slot']} {name}" for name in names] + titles(), *body]))
    else:
        body = []
        for name, slots in zip(names, modes, strict=True):
            lines = [line for n, slot in enumerate(slots, 1) for line in rows([style.format(n)], slot)]
            body += [[name if n == 0 or again else "", *line] for n, line in enumerate(lines)]
        tables.append(("", [[title["mode"], title["slot"], *titles()], *body]))
    kind = draw(st.sampled_from([_csv, _html, _aligned]))
    made = kind(tables)
    made.modes = [(n, len(s), _truth(s, language)) for n, s in zip(names, modes, strict=True)]
    return made


def _csv(tables: list[tuple[str, list[list[str]]]]) -> Ordinary:
    text = io.StringIO()
    writer = csv.writer(text)
    for heading, rows in tables:
        writer.writerows([[heading]] if heading else [])
        writer.writerows([*rows, []])
    return Ordinary("chart.csv", text.getvalue().encode())


def _html(tables: list[tuple[str, list[list[str]]]]) -> Ordinary:
    parts = []
    for heading, rows in tables:
        parts.append(f"<h2>{html.escape(heading)}</h2>" if heading else "")
        cells = ("".join(f"<td>{html.escape(cell)}</td>" for cell in row) for row in rows)
        parts.append(f"<table>{''.join(f'<tr>{row}</tr>' for row in cells)}</table>")
    return Ordinary("chart.html", f"<html><body>{''.join(parts)}</body></html>".encode())


def _aligned(tables: list[tuple[str, list[list[str]]]]) -> Ordinary:
    lines = []
    for heading, rows in tables:
        lines += [heading] if heading else []
        widths = [max(len(row[n]) for row in rows) + 3 for n in range(len(rows[0]))]
        lines += ["".join(c.ljust(w) for c, w in zip(row, widths, strict=True)).rstrip() for row in rows]
        lines.append("")
    return Ordinary("chart.txt", "\n".join(lines).encode())
