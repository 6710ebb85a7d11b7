"""Names and ranges as manuals in five languages print them: common practice, no source, kept as data."""

from __future__ import annotations

import csv
import io
import re
from pathlib import Path

import pytest

from modebook.documents.modes import Range
from modebook.intake.draft import draft_bytes
from modebook.intake.names import read_name

HERE = Path(__file__).parent


def _lines(name: str) -> list[str]:
    text = (HERE / name).read_text(encoding="utf-8")
    return [line for line in text.splitlines() if line and not line.startswith("#")]


@pytest.mark.parametrize("line", _lines("practice_names.tsv"))
def test_a_name_of_common_practice_is_read_or_doubted_where_it_says_too_little(line: str) -> None:
    word, byte, printed = line.split("\t")
    name = read_name(printed)
    if word == "?":
        assert not name.sure
    elif word == "-":
        assert name.word is None
    else:
        level = None if byte == "-" else int(byte)
        assert (name.word, name.sure, name.level) == (word, True, level)


_LABELS = {"control": "Special functions", "macro": "Macros", "strobe": "Strobe"}


def _chart(word: str, text: str) -> bytes:
    """A sheet whose last slot has the text as its first range."""
    label = _LABELS.get(word, word.replace("-", " ").capitalize())
    rows = [["Slot", "Function", "Value", "Description"]]
    rows += [[str(i), n, "000-255", ""] for i, n in enumerate(("Dimmer", "Pan", "Iris", "Tilt", "Frost"), 1)]
    rows = [[row[0], "Focus", *row[2:]] if row[1] == label else row for row in rows]
    rows += [["6", label, "000-099", text], ["", "", "100-255", "Zzyk Blorf"]]
    made = io.StringIO()
    csv.writer(made).writerows(rows)
    return made.getvalue().encode()


def _carried(entry: Range) -> dict[str, str]:
    found: dict[str, str] = {}
    if entry.does:
        found["does"] = entry.does
    if entry.hold_s is not None:
        found["hold"] = f"{entry.hold_s:g}"
    if entry.kept:
        found["kept"] = entry.kept
    if entry.hazard:
        found["hazard"] = entry.hazard
    if entry.span is not None:
        span = entry.span[0] if isinstance(entry.span, list) else entry.span
        found["span"] = f"{span.from_:g}:{span.to:g}:{span.unit}"
    if entry.sets:
        found["set"] = ",".join(entry.sets)
    if entry.needs:
        found["cond"] = "told"
    return found


@pytest.mark.parametrize("line", _lines("practice_ranges.txt"))
def test_a_range_of_common_practice_carries_what_it_says_and_no_more(line: str) -> None:
    word, text, *told = line.split(" | ")
    wanted = {m[1]: m[2] for m in re.finditer(r"(\w+)=(.*?)(?= \w+=|$)", told[0] if told else "")}
    if "cond" in wanted:
        wanted["cond"] = "told"
    document = draft_bytes(_chart(word, text), name="chart.csv").document
    carried = _carried(document.modes[0].parameters[-1].ranges[0])
    for key in {*wanted, *carried}:
        assert carried.get(key, "none") in wanted.get(key, "none").split("|"), key
    assert not document.doubts


@pytest.mark.parametrize(
    ("rows", "word"),
    [
        ("x,0 - 0.8\n5,y,0 - 0.9", "cie-x"),
        ("White,2800 - 6500 K", "color-temperature"),
        ("Pan rotation,540°", "pan"),
        ("Pan rotation,fast to slow", "pan-rotation"),
    ],
)
def test_what_is_measured_settles_a_name_that_says_too_little(rows: str, word: str) -> None:
    """Common practice, no source: x up to 1 is chromaticity, a white in kelvin a color temperature, and
    what turns without end has no degrees.
    """
    text = "Slot,Function,Description\n1,Dimmer,\n2,Zoom,\n3,Focus,\n4," + rows + "\n"
    document = draft_bytes(text.encode(), name="chart.csv").document
    assert document.modes[0].parameters[3].parameter == word


@pytest.mark.parametrize(
    ("printed", "word"),
    [
        ("Pan rotation (540°)", "pan"),
        ("Color Temperature Control (CCT)", "color-temperature"),
        ("White point 2800-6500 K", "color-temperature"),
        ("Dimmer, 0 - 100 %", "dimmer"),
        ("+/- Green", "tint"),
    ],
)
def test_what_is_printed_behind_a_name_settles_which_of_two_it_is(printed: str, word: str) -> None:
    name = read_name(printed)
    assert (name.word, name.sure) == (word, True)
