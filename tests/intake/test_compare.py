"""What two documents mean is compared, not how they were written down."""

from __future__ import annotations

import copy
from pathlib import Path
from typing import Any

import pytest

from modebook.documents.fixture import Fixture
from modebook.intake.compare import compare, compare_modes
from modebook.intake.errors import PromotionRefusedError
from modebook.intake.promote import promote, readings_of
from modebook.shelf.canonical import canonical
from modebook.shelf.reading import read_fixture

CATALOG = sorted((Path(__file__).parents[2] / "catalog" / "fixtures").glob("*/*.json"))

BASE: dict[str, Any] = {
    "maker": "Invented",
    "model": "One",
    "category": "fixed",
    "standing": "transcribed",
    "sources": [{"key": "guide", "title": "A guide"}],
    "settings": [
        {
            "key": "smoothing",
            "setting": "smoothing",
            "choices": [{"key": "off", "label": "Fast"}, {"key": "on", "label": "Smooth"}],
        }
    ],
    "modes": [
        {
            "name": "Basic",
            "number": 1,
            "footprint": 8,
            "source": "guide",
            "parameters": [
                {
                    "parameter": "dimmer",
                    "label": "Dimmer",
                    "slots": [1, 2],
                    "span": {"from": 0, "to": 100, "unit": "%"},
                },
                {
                    "parameter": "control",
                    "slots": [3],
                    "ranges": [
                        {"from": 0, "to": 9, "meaning": "No function", "does": "nothing"},
                        {
                            "from": 10,
                            "to": 255,
                            "meaning": "Response: smooth",
                            "sets": {"smoothing": "on"},
                            "hold_s": 3,
                            "needs": [{"parameter": "dimmer", "from": 0, "to": 0}],
                        },
                    ],
                },
                {"parameter": "zoom", "slots": [4]},
            ],
            "cells": [
                {
                    "count": 2,
                    "first": 5,
                    "stride": 2,
                    "parameters": [{"parameter": "red", "slots": [1]}, {"parameter": "green", "slots": [2]}],
                }
            ],
        }
    ],
}


def made(change: Any = None) -> Fixture:
    data = copy.deepcopy(BASE)
    if change is not None:
        change(data)
    return Fixture.model_validate(data)


def test_a_document_does_not_differ_from_itself() -> None:
    for path in CATALOG:
        document = read_fixture(path)
        assert compare(document, document) == []


def _rewritten(data: dict[str, Any]) -> None:
    """The same meaning in other words: keys, order, notes, places, cells written out."""
    data["settings"][0].update(
        key="response",
        note="x",
        choices=[{"key": "slow", "label": "smooth"}, {"key": "quick", "label": "FAST"}],
    )
    mode = data["modes"][0]
    mode["parameters"].reverse()
    dimmer = mode["parameters"][2]
    dimmer.update(label="Master", key="main", place="page 3")
    control = mode["parameters"][1]
    control["ranges"].reverse()
    control["ranges"][0].update(
        sets={"response": "slow"},
        needs=[{"parameter": "main", "from": 0, "to": 0}],
        meaning="RESPONSE – smooth",
        note="y",
    )
    del mode["cells"]
    mode["parameters"] += [
        {"parameter": c, "key": f"{c}-{i}", "slots": [5 + 2 * i + (c == "green")]}
        for i in (0, 1)
        for c in ("red", "green")
    ]
    mode["name"] = "BASIC"


def test_keys_order_places_and_written_out_cells_do_not_count() -> None:
    assert compare(made(), made(_rewritten)) == []


def _set(data: dict[str, Any], path: str, value: Any) -> None:
    steps = path.strip("/").split("/")
    target: Any = data
    for step in steps[:-1]:
        target = target[int(step)] if step.isdigit() else target[step]
    if value is None:
        del target[steps[-1]]
    else:
        target[int(steps[-1]) if steps[-1].isdigit() else steps[-1]] = value


@pytest.mark.parametrize(
    ("path", "value", "pointer", "a", "b"),
    [
        ("/modes/0/footprint", 9, "/modes/0/footprint", 8, 9),
        ("/modes/0/number", None, "/modes/0/number", 1, None),
        ("/modes/0/parameters/0/slots", [2, 1], "/modes/0/parameters/0/slots", [1, 2], [2, 1]),
        (
            "/modes/0/parameters/0/span/to",
            50,
            "/modes/0/parameters/0/span",
            {"from": 0, "to": 100, "unit": "%"},
            {"from": 0, "to": 50, "unit": "%"},
        ),
        ("/modes/0/parameters/0/default", 0, "/modes/0/parameters/0/default", None, 0),
        ("/modes/0/parameters/1/ranges/0/to", 8, "/modes/0/parameters/1/ranges/0/to", 9, 8),
        (
            "/modes/0/parameters/1/ranges/0/meaning",
            "Idle",
            "/modes/0/parameters/1/ranges/0/meaning",
            "no function",
            "idle",
        ),
        ("/modes/0/parameters/1/ranges/1/hold_s", 5, "/modes/0/parameters/1/ranges/1/hold_s", 3, 5),
        (
            "/modes/0/parameters/1/ranges/1/sets",
            {"smoothing": "off"},
            "/modes/0/parameters/1/ranges/1/sets",
            {"smoothing": "smooth"},
            {"smoothing": "fast"},
        ),
        ("/modes/0/parameters/2/parameter", "focus", "/modes/0/parameters/2", [4], None),
        ("/modes/0/cells/0/stride", 3, "/modes/0/cells/0/parameters/0/slots", [7], [8]),
        (
            "/settings/0/choices/0/factory",
            True,
            "/settings/0/choices",
            {"fast": {}, "smooth": {}},
            {"fast": {"factory": True}, "smooth": {}},
        ),
    ],
)
def test_one_change_is_one_difference_at_its_place(
    path: str, value: Any, pointer: str, a: Any, b: Any
) -> None:
    differences = compare(made(), made(lambda data: _set(data, path, value)))
    assert {"pointer": pointer, "a": a, "b": b} in differences
    # The bits follow the slots; a cell of another stride moves all its parameters.
    assert all(
        d["pointer"].startswith((pointer.rsplit("/", 2)[0], "/modes/0/parameters/2")) for d in differences
    )


def test_a_border_that_moves_is_told_from_both_sides() -> None:
    """The upper range begins elsewhere: gone from the first document, there in the second, at one place."""

    def change(data: dict[str, Any]) -> None:
        _set(data, "/modes/0/parameters/1/ranges/0/to", 7)
        _set(data, "/modes/0/parameters/1/ranges/1/from", 8)

    found = compare(made(), made(change))
    at = "/modes/0/parameters/1/ranges"
    assert [(one["pointer"], one["a"] is None, one["b"] is None) for one in found] == [
        (f"{at}/0/to", False, False),
        (f"{at}/1", False, True),
        (f"{at}/1", True, False),
    ]
    assert (found[1]["a"]["from"], found[2]["b"]["from"]) == (10, 8)


def test_pointers_lead_to_ranges_as_they_stand_in_the_document() -> None:
    """Ranges are compared by value, and told by their place in the list, even where it is not in order."""

    def change(data: dict[str, Any]) -> None:
        data["modes"][0]["parameters"][1]["ranges"].reverse()

    def changed(data: dict[str, Any]) -> None:
        change(data)
        _set(data, "/modes/0/parameters/1/ranges/1/meaning", "Idle")

    assert compare(made(), made(change)) == []
    (one,) = compare(made(change), made(changed))
    assert one["pointer"] == "/modes/0/parameters/1/ranges/1/meaning"


def test_modes_of_one_document_can_be_compared() -> None:
    def change(data: dict[str, Any]) -> None:
        other = copy.deepcopy(data["modes"][0])
        other.update(name="Other", number=2)
        other["parameters"][0]["slots"] = [1]
        del other["parameters"][0]["span"]
        data["modes"].append(other)

    document = made(change)
    differences = compare_modes(document, 0, document, 1)
    assert [d["pointer"] for d in differences] == [
        "/modes/0/parameters/0/bits",
        "/modes/0/parameters/0/slots",
        "/modes/0/parameters/0/span",
        "/modes/0/parameters/1/ranges/1/needs",
    ]


def test_a_mode_that_only_one_has() -> None:
    def change(data: dict[str, Any]) -> None:
        data["modes"].append(
            {"name": "More", "footprint": 1, "parameters": [{"parameter": "dimmer", "slots": [1]}]}
        )

    assert compare(made(), made(change)) == [{"pointer": "/modes/1", "a": None, "b": "More"}]
    assert compare(made(change), made()) == [{"pointer": "/modes/1", "a": "More", "b": None}]


def _doubted(data: dict[str, Any], *, settled: bool = False) -> None:
    data["standing"] = "draft"
    doubt: dict[str, Any] = {"pointer": "/modes/0", "why": "smudged"}
    if settled:
        doubt["settled"] = {"by": "A", "date": "2026", "decision": "looked again"}
    data["doubts"] = [doubt]


def test_a_draft_rises_once_its_doubts_are_settled() -> None:
    with pytest.raises(PromotionRefusedError, match="smudged"):
        promote(made(_doubted), "transcribed", "I. Quessing", "2026-05-01")
    raised = promote(
        made(lambda data: _doubted(data, settled=True)), "transcribed", "I. Quessing", "2026-05-01"
    )
    assert raised.standing == "transcribed"
    assert [(p.to, p.by, p.date) for p in raised.promotions] == [("transcribed", "I. Quessing", "2026-05-01")]


def test_a_second_reading_must_be_there_and_agree() -> None:
    with pytest.raises(PromotionRefusedError, match="no second reading"):
        promote(made(), "second-read", "I. Quessing", "2026-05-01")
    differing = made(lambda data: _set(data, "/modes/0/footprint", 9))
    with pytest.raises(PromotionRefusedError, match="/modes/0/footprint"):
        promote(made(), "second-read", "I. Quessing", "2026-05-01", [made(_rewritten), differing])
    assert (
        promote(made(), "second-read", "I. Quessing", "2026-05-01", [made(_rewritten)]).standing
        == "second-read"
    )


def test_a_reading_with_open_doubts_does_not_vouch() -> None:
    with pytest.raises(PromotionRefusedError, match="open doubts"):
        promote(made(), "second-read", "I. Quessing", "2026-05-01", [made(_doubted)])


@pytest.mark.parametrize(
    ("to", "by", "date", "problem"),
    [
        ("draft", "A", "2026", "no rise"),
        ("transcribed", "A", "2026", "no rise"),
        ("golden", "A", "2026", "no standing"),
        ("proved", " ", "2026", "nobody"),
        ("proved", "A", "May", "date"),
    ],
)
def test_what_is_no_promotion(to: str, by: str, date: str, problem: str) -> None:
    with pytest.raises(PromotionRefusedError, match=problem):
        promote(made(), to, by, date)


def test_a_draft_is_not_proved_at_once() -> None:
    with pytest.raises(PromotionRefusedError, match="transcribed first"):
        promote(made(lambda data: data.update(standing="draft")), "proved", "A", "2026")


def test_every_reason_is_told() -> None:
    with pytest.raises(PromotionRefusedError) as caught:
        promote(made(_doubted), "second-read", "", "2026")
    assert len(caught.value.reasons) == 3


def test_readings_lie_beside_the_fixtures(tmp_path: Path) -> None:
    folder = tmp_path / "readings" / "invented" / "one"
    folder.mkdir(parents=True)
    (folder / "second.json").write_bytes(canonical(made(_rewritten)))
    (reading,) = readings_of(tmp_path, "invented/one")
    assert compare(made(), reading) == []
    assert readings_of(tmp_path, "invented/two") == []
