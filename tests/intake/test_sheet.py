"""The chart sheet: out and in gives the same document, for the whole catalog and for any valid document."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from modebook.documents.fixture import Fixture
from modebook.intake.draft import About, draft
from modebook.intake.errors import IntakeError
from modebook.intake.readers.sheet import read_sheet
from modebook.intake.sheet_in import document_of_sheet
from modebook.intake.sheet_layout import read_span
from modebook.intake.sheet_out import blank_rows, csv_text, sheet_rows, xlsx_bytes
from modebook.shelf.canonical import as_written
from modebook.shelf.reading import read_fixture
from support.documents import fixtures

CATALOG = sorted((Path(__file__).parents[2] / "catalog" / "fixtures").glob("*/*.json"))


def back(content: bytes) -> Fixture:
    document = document_of_sheet(read_sheet(content, "the sheet"), About())
    assert document is not None
    return document


@pytest.mark.parametrize("path", CATALOG, ids=lambda p: f"{p.parent.name}/{p.stem}")
def test_every_document_of_the_catalog_comes_back(path: Path) -> None:
    document = read_fixture(path)
    rows = sheet_rows(document)
    assert as_written(back(csv_text(rows).encode())) == as_written(document)
    assert as_written(back(xlsx_bytes(rows))) == as_written(document)


def test_there_is_a_catalog_to_try() -> None:
    assert len(CATALOG) >= 4


@settings(
    max_examples=60, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large], deadline=None
)
@given(fixtures())
def test_any_document_comes_back_from_csv(data: Any) -> None:
    document = Fixture.model_validate_json(json.dumps(data), by_alias=True, by_name=False)
    assert as_written(back(csv_text(sheet_rows(document)).encode())) == as_written(document)


@settings(
    max_examples=15, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large], deadline=None
)
@given(fixtures())
def test_any_document_comes_back_from_a_workbook(data: Any) -> None:
    document = Fixture.model_validate_json(json.dumps(data), by_alias=True, by_name=False)
    assert as_written(back(xlsx_bytes(sheet_rows(document)))) == as_written(document)


HARD = [
    "=1+1",
    "@x",
    "+5",
    "'quoted",
    " edge ",
    "two\nlines",
    "tab\tin",
    "_x0041_",
    "a\u00a0b",
    "\ufeffmark",
    "0012",
    "TRUE",
    "1e5",
    "𝄞 clef",
    '"',
    ";,",
    "{}",
    "x" * 20_000,
]


@pytest.mark.parametrize("text", HARD, ids=range(len(HARD)))
def test_texts_that_spreadsheets_change_come_back(text: str) -> None:
    document = _with_meaning(text)
    for content in (csv_text(sheet_rows(document)).encode(), xlsx_bytes(sheet_rows(document))):
        assert back(content).modes[0].parameters[0].ranges[0].meaning == text


@given(st.text(min_size=1, max_size=30).filter(lambda t: not any(0xD800 <= ord(c) <= 0xDFFF for c in t)))
def test_any_text_comes_back(text: str) -> None:
    document = _with_meaning(text)
    assert back(csv_text(sheet_rows(document)).encode()).modes[0].parameters[0].ranges[0].meaning == text


def _with_meaning(text: str) -> Fixture:
    data = {
        "maker": "Invented",
        "model": "One",
        "category": "fixed",
        "standing": "draft",
        "modes": [
            {
                "name": "A",
                "footprint": 1,
                "parameters": [
                    {"parameter": "strobe", "slots": [1], "ranges": [{"from": 0, "to": 255, "meaning": text}]}
                ],
            }
        ],
    }
    return Fixture.model_validate(data)


def test_one_mode_alone_can_be_written_and_an_unknown_one_not() -> None:
    document = next(d for d in map(read_fixture, CATALOG) if len(d.modes) > 1)
    name = document.modes[1].name
    read = back(csv_text(sheet_rows(document, name)).encode())
    assert as_written(read)["modes"] == [as_written(document)["modes"][1]]
    with pytest.raises(KeyError):
        sheet_rows(document, "no such mode")


@pytest.mark.parametrize("text", ["=1+1", "+1", "-2+3", "@sum", "＝1", "－1", "\t=1", "\u200b=1", "\ufeff=1"])
def test_no_cell_could_be_run_as_a_formula(text: str) -> None:
    """What the guard of every CSV for people would change is not in the sheet to begin with."""
    from modebook.render.csv_guard import guarded

    for row in sheet_rows(_with_meaning(text)):
        assert [cell for cell in row if isinstance(cell, str) and guarded(cell) != cell] == []


@settings(
    max_examples=30, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large], deadline=None
)
@given(fixtures())
def test_no_cell_of_any_document_could_be_run_as_a_formula(data: Any) -> None:
    """Spans below zero among them, which begin with a word for that reason."""
    from modebook.render.csv_guard import guarded

    document = Fixture.model_validate_json(json.dumps(data), by_alias=True, by_name=False)
    for row in sheet_rows(document):
        assert [cell for cell in row if isinstance(cell, str) and guarded(cell) != cell] == []


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("0 to 100 %", {"from": 0, "to": 100, "unit": "%"}),
        ("-270 to 270 deg", {"from": -270, "to": 270, "unit": "deg"}),
        ("from -270 to 270 deg", {"from": -270, "to": 270, "unit": "deg"}),
        ("−270° to 270°", {"from": -270, "to": 270, "unit": "deg"}),
        ("2700K to 6500K", {"from": 2700, "to": 6500, "unit": "K"}),
        ("0 to 0.8 1", {"from": 0, "to": 0.8, "unit": "1"}),
        ("2200 to 9000 K raw", {"from": 2200, "to": 9000, "unit": "K", "raw": True}),
    ],
)
def test_a_span_may_be_typed_as_people_do(text: str, wanted: dict[str, Any]) -> None:
    """With or without a space before the unit, which may stand at both ends."""
    assert read_span(text) == wanted


@pytest.mark.parametrize("text", ["0 to 181", "0 to 5", "540", "0 K to 5 Hz", "a to b deg", "0 - 9 %"])
def test_what_is_no_span_is_refused(text: str) -> None:
    """A last digit is never taken for the unit 1."""
    with pytest.raises(ValueError, match="is no span"):
        read_span(text)


def test_the_blank_sheet_is_an_example_that_reads_without_a_doubt(tmp_path: Path) -> None:
    path = tmp_path / "blank.csv"
    path.write_text(csv_text(blank_rows()), encoding="utf-8", newline="")
    document = draft(path).document
    (mode,) = document.modes
    assert [(p.parameter, p.slots) for p in mode.parameters] == [
        ("dimmer", [1, 2]),
        ("pan", [3]),
        ("strobe", [4]),
        ("control", [5]),
    ]
    reset = mode.parameters[3].ranges[3]
    assert (reset.hold_s, reset.hazard, reset.needs and reset.needs[0].parameter) == (5, "reset", "dimmer")
    assert document.doubts == []
    assert document.standing == "draft"
    assert "worked example" in draft(path).notes[0]


def test_what_a_sheet_says_goes_before_what_the_caller_says_and_is_told(tmp_path: Path) -> None:
    """A maker given beside a sheet that names another one is not used in silence."""
    path = tmp_path / "sheet.csv"
    path.write_text(csv_text(sheet_rows(_with_meaning("Open"))), encoding="utf-8", newline="")
    read = draft(path, About(maker="Other", model="One"))
    assert read.document.maker == "Invented"
    assert read.notes == ["the sheet says maker 'Invented', so 'Other' was not used"]


TYPED = """\
mode;name;number
;Short;1
chart;slots;parameter;from;to;meaning;hold s;sets
;1;Helligkeit
;2;Strobe;0;9;Open
;;;10;255;Slow to fast
;3;Hyperflux;0;255;Something
;4;Control;0;9;No function
;;;10;19;Smoothing off;3;smoothing: off
"""


def test_a_sheet_typed_by_hand_may_leave_much_out(tmp_path: Path) -> None:
    """Printed names become words, the first range may stand beside its parameter, the footprint is
    counted.
    """
    path = tmp_path / "typed.csv"
    path.write_text(TYPED, encoding="utf-8")
    document = draft(path, About(maker="Invented", model="Typed", source_title="A leaflet")).document
    (mode,) = document.modes
    assert (document.maker, mode.name, mode.footprint) == ("Invented", "Short", 4)
    assert [(p.parameter, p.label, p.slots) for p in mode.parameters] == [
        ("dimmer", "Helligkeit", [1]),
        ("strobe", "Strobe", [2]),
        ("other", "Hyperflux", [3]),
        ("control", "Control", [4]),
    ]
    assert [(r.from_, r.to, r.meaning) for r in mode.parameters[1].ranges] == [
        (0, 9, "Open"),
        (10, 255, "Slow to fast"),
    ]
    assert [(s.key, [c.key for c in s.choices]) for s in document.settings] == [("smoothing", ["off"])]
    assert [d.pointer for d in document.doubts] == ["/modes/0/parameters/2"]


@pytest.mark.parametrize(
    ("row", "problem"),
    [
        (";x;dimmer", "whole number"),
        (";1;dimmer;;;;;smoothing: off", "from and to"),
        (";1;dimmer;0;9;Off;;smoothing off", "smoothing: off"),
        (";;;0;9;Open", "first parameter"),
        ("cells;many;dimmer", "8 x 3 from 2"),
        ("what;1;dimmer", "cells or part"),
        (";1;dimmer;a;9;Open", "whole number"),
        (";1;dimmer;0;;Open", "from and to"),
    ],
)
def test_a_cell_that_cannot_be_understood_is_named_with_its_row(
    row: str, problem: str, tmp_path: Path
) -> None:
    path = tmp_path / "typed.csv"
    path.write_text("chart;slots;parameter;from;to;meaning;hold s;sets\n" + row + "\n", encoding="utf-8")
    with pytest.raises(IntakeError) as caught:
        draft(path)
    assert caught.value.place == "row 2"
    assert problem in caught.value.problem


def test_an_unknown_title_is_named(tmp_path: Path) -> None:
    path = tmp_path / "typed.csv"
    path.write_text("chart;slots;parameter;colour\n;1;dimmer;x\n", encoding="utf-8")
    with pytest.raises(IntakeError, match="colour"):
        draft(path)
