"""The drafted document: what the caller knows, what the chart prints, and nothing else; the review's data."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.documents.fixture import Fixture
from modebook.intake.draft import About, draft_text
from modebook.intake.errors import IntakeError
from modebook.shelf.canonical import canonical
from modebook.shelf.reading import parse

CHART = (
    "Mode 1: Basic (3 channels)\nSlot  Function  Value   Description\n"
    "1     Dimmer    0-255   0-100 %\n2     Strobe    0-14    Off\n"
    "                10-255  Pulse\n3     Red       0-255\n"
)


def test_the_document_says_what_the_caller_said_and_stands_as_a_draft() -> None:
    about = About("Invented Maker", "Invented 200", "moving yoke", "A guide", "C", "2.4", "2026-03", "en")
    document = draft_text(CHART, about).document
    assert (document.maker, document.model, document.category, document.standing) == (
        "Invented Maker",
        "Invented 200",
        "moving yoke",
        "draft",
    )
    (source,) = document.sources
    assert (source.title, source.revision, source.firmware, source.date, source.language) == (
        "A guide",
        "C",
        "2.4",
        "2026-03",
        "en",
    )
    assert document.modes[0].source == source.key


def test_nothing_is_invented() -> None:
    document = draft_text(CHART).document
    assert document.category == "not declared"
    assert document.settings == []
    assert document.rdm is None
    assert all(
        p.default is None and p.coarse_default is None and p.travel is None
        for p in document.modes[0].parameters
    )


def test_the_draft_is_a_document_in_canonical_form() -> None:
    content = canonical(draft_text(CHART).document)
    assert canonical(parse(content, Fixture, "x")) == content


def test_every_parameter_keeps_its_place_and_every_doubt_points_into_the_document() -> None:
    document = draft_text(CHART).document
    assert [p.place for p in document.modes[0].parameters] == ["row 3", "row 4", "row 6"]
    (doubt,) = document.doubts
    assert (doubt.pointer, doubt.slots, doubt.place, doubt.printed) == (
        "/modes/0/parameters/1/ranges/1",
        [2],
        "row 4",
        "0-14 Off; 10-255 Pulse",
    )


def test_a_wrong_category_is_one_line() -> None:
    with pytest.raises(IntakeError, match="category"):
        draft_text(CHART, About(category="spaceship"))


def test_a_slot_that_no_row_prints_is_said() -> None:
    document = draft_text("Slot  Function\n1     Dimmer\n2     Red\n4     Blue\n").document
    assert [(d.pointer, d.slots) for d in document.doubts] == [("/modes/0", [3])]


def test_a_heading_that_contradicts_the_rows_is_said() -> None:
    document = draft_text(
        "Mode 1: Basic (2 channels)\nSlot  Function\n1     Dimmer\n2     Red\n3     Blue\n"
    ).document
    assert [(d.pointer, d.printed, d.read) for d in document.doubts] == [("/modes/0/footprint", "2", "3")]


def test_a_row_that_is_not_understood_is_said() -> None:
    document = draft_text("Slot  Function  Value\n1     Dimmer    0-255\n2     Strobe    9-0\n").document
    assert any("not understood" in d.why for d in document.doubts)


def test_a_hex_column_that_contradicts_is_said() -> None:
    document = draft_text(
        "Slot | Function | Decimal | Hex\n1 | Strobe | |\n | Off | 0-9 | 00-09\n | On | 10-255 | 0B-FF\n"
    ).document
    assert ["hex" in d.why for d in document.doubts] == [True]


@given(
    st.lists(
        st.sampled_from(
            [
                "1 Dimmer 0-255",
                "2",
                "0-9 Open",
                "Mode 3: X (4 channels)",
                "| 1 | Red |",
                "Slot  Function  Value",
                "* absent",
                "5-6  Pan   0-65535",
                "\t7\tZoom",
                "",
                "10 255 Pulse",
                ":",
                "Channel 4: Iris",
                "a;b;c",
                "000 011 Idle",
                "3 Red fine",
            ]
        ),
        max_size=14,
    )
)
def test_any_heap_of_rows_gives_a_document_or_one_clear_line(lines: list[str]) -> None:
    try:
        document = draft_text("\n".join(lines)).document
    except IntakeError as error:
        told = str(error)
    else:
        told = ""
        assert canonical(parse(canonical(document), Fixture, "x")) == canonical(document)
    assert "\n" not in told


@given(st.text(max_size=300))
def test_any_text_gives_a_document_or_one_clear_line(text: str) -> None:
    told = ""
    try:
        draft_text(text)
    except IntakeError as error:
        told = str(error)
    assert "\n" not in told
