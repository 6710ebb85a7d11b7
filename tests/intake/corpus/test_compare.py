"""The comparison of a reading with a truth: every kind of fault is told, and a doubt is told apart."""

from __future__ import annotations

import copy
from collections import Counter

import pytest

from intake.corpus.compare import compare
from intake.corpus.content import Json
from intake.corpus.registry import Chart, charts

BY_NAME = {c.name: c for c in [*charts("open"), *charts("aside")]}


def truth_of(name: str) -> Json:
    chart: Chart = BY_NAME[name]
    return chart.make(chart.seed).truth


CONTROL = truth_of("mixed-control")
DEFAULTS = truth_of("default-column")
GAP = truth_of("overlap-gap")
TWO = truth_of("csv-side")


def kinds(truth: Json, document: Json) -> Counter[str]:
    return Counter(o.kind for o in compare(truth, document).outcomes)


def changed(truth: Json, *path: object, to: object = None, drop: bool = False) -> Json:
    """A copy of the truth's document with one place changed or dropped."""
    document = copy.deepcopy(truth["document"])
    here = document
    for step in path[:-1]:
        here = here[step]
    if drop:
        del here[path[-1]]
    else:
        here[path[-1]] = to
    return document


@pytest.mark.parametrize(
    "name", [n for n, c in BY_NAME.items() if c.suffix in ("txt", "csv", "html", "xlsx")]
)
def test_a_truth_read_as_it_is_has_nothing_wrong_but_the_doubts_due(name: str):
    """Against itself each parameter is right, and one where a doubt must be is silently wrong without it."""
    truth = truth_of(name)
    due = {d["pointer"] for d in truth["doubt"] if d["must"]}
    result = compare(truth, truth["document"])
    assert {o.pointer for o in result.outcomes if o.kind == "silent"} == due
    assert {o.kind for o in result.outcomes} <= {"right", "silent"}
    assert result.mode_faults == []


MODE = ("modes", 0, "parameters")
FAULTS = {
    "another word": (CONTROL, (*MODE, 0, "parameter"), "red"),
    "other slots": (CONTROL, (*MODE, 2, "slots"), [4]),
    "swapped bytes": (DEFAULTS, (*MODE, 0, "slots"), [2, 1]),
    "a default nobody printed": (CONTROL, (*MODE, 0, "default"), 0),
    "another default": (DEFAULTS, (*MODE, 0, "default"), 0),
    "another span": (CONTROL, (*MODE, 0, "span"), {"from": 0.0, "to": 90.0, "unit": "%"}),
    "a range's end": (CONTROL, (*MODE, 1, "ranges", 0, "to"), 8),
    "another meaning": (CONTROL, (*MODE, 2, "ranges", 1, "meaning"), "Fans off"),
    "another hold": (CONTROL, (*MODE, 2, "ranges", 1, "hold_s"), 5.0),
    "another keeping": (CONTROL, (*MODE, 2, "ranges", 1, "kept"), "stored"),
    "another choice": (CONTROL, (*MODE, 2, "ranges", 1, "sets"), {"smoothing": "smooth"}),
    "another condition": (
        CONTROL,
        (*MODE, 2, "ranges", 4, "needs"),
        [{"parameter": "shutter", "from": 0, "to": 8}],
    ),
    "another hazard": (CONTROL, (*MODE, 2, "ranges", 4, "hazard"), "lamp on"),
    "what it does": (CONTROL, (*MODE, 1, "ranges", 0, "does"), "open"),
    "a condition on all": (CONTROL, (*MODE, 0, "when"), [{"parameter": "shutter", "from": 0, "to": 9}]),
    "a travel nobody printed": (CONTROL, (*MODE, 0, "travel"), 2.0),
}


@pytest.mark.parametrize("fault", FAULTS)
def test_one_fault_is_one_silently_wrong_parameter(fault: str):
    """Each kind of change makes its parameter silently wrong and leaves the others as they are."""
    truth, path, value = FAULTS[fault]
    before, after = kinds(truth, truth["document"]), kinds(truth, changed(truth, *path, to=value))
    assert after["silent"] + after["extra"] >= before["silent"] + 1
    assert after["right"] == before["right"] - 1


@pytest.mark.parametrize("key", ["hold_s", "kept", "sets", "needs", "hazard"])
def test_leaving_out_what_is_printed_is_silently_wrong(key: str):
    """A hold, a keeping, a setting, a condition or a hazard that is printed and not read."""
    at = 1 if key in ("hold_s", "kept", "sets") else 4
    assert kinds(CONTROL, changed(CONTROL, *MODE, 2, "ranges", at, key, drop=True))["silent"] == 1


def test_a_does_left_out_is_right_but_thin():
    """Its absence says nothing false."""
    assert kinds(CONTROL, changed(CONTROL, *MODE, 1, "ranges", 0, "does", drop=True))["thin"] == 1


def test_a_missing_parameter_and_an_extra_one_are_silently_wrong():
    """A lost row counts once, an invented one once."""
    lost = changed(CONTROL, *MODE, 0, drop=True)
    assert kinds(CONTROL, lost)["silent"] == 1
    more = copy.deepcopy(CONTROL["document"])
    more["modes"][0]["parameters"].append({"parameter": "red", "slots": [9]})
    assert kinds(CONTROL, more)["extra"] == 1


def test_a_missing_mode_is_told_with_all_its_parameters():
    """Each of its parameters is silently wrong, and the mode is named."""
    result = compare(TWO, changed(TWO, "modes", 1, drop=True))
    assert sum(o.kind == "silent" for o in result.outcomes) == len(TWO["document"]["modes"][1]["parameters"])
    assert len(result.mode_faults) == 1


def doubted(truth: Json, pointer: str, slots: list[int] | None = None, settled: bool = False) -> Counter[str]:
    document = copy.deepcopy(truth["document"])
    doubt: Json = {"pointer": pointer, "why": "hard to read", "slots": slots or []}
    if settled:
        doubt["settled"] = {"by": "A", "date": "2026", "decision": "so"}
    document["doubts"] = [doubt]
    return kinds(truth, document)


def test_doubts_cover_by_pointer_from_above_from_within_and_by_slots():
    """One parameter by its own pointer, by one within it, or by its slots; all by the mode's alone."""
    count = len(CONTROL["document"]["modes"][0]["parameters"])
    for pointer, slots, covered in (
        ("/modes/0/parameters/1", None, 1),
        ("/modes/0/parameters/1/ranges/0/to", None, 1),
        ("/modes/0", [2], 1),
        ("/modes/0", None, count),
        ("", None, count),
        ("/modes/0/parameters/1", [3], 2),
    ):
        assert doubted(CONTROL, pointer, slots)["doubt else"] == covered, (pointer, slots)


def test_a_settled_doubt_covers_nothing():
    """Only what is open is said."""
    assert doubted(CONTROL, "/modes/0", settled=True)["doubt else"] == 0


def test_a_doubt_that_is_due_is_counted_apart():
    """The gap of trap 9 is silently wrong without a doubt and due with one."""
    strobe = "/modes/0/parameters/1"
    assert kinds(GAP, GAP["document"])["silent"] == 2
    assert doubted(GAP, strobe)["doubt due"] == 1


def test_cells_are_compared_slot_by_slot():
    """Pixels written as a block of cells are as right as pixels written out."""
    truth = truth_of("groups")
    document = copy.deepcopy(truth["document"])
    mode = document["modes"][0]
    colors = [
        {"parameter": word, "slots": [n], "label": word} for n, word in enumerate(("red", "green", "blue"), 1)
    ]
    mode["parameters"] = mode["parameters"][:1]
    mode["cells"] = [{"count": 4, "first": 2, "stride": 3, "parameters": colors}]
    assert set(kinds(truth, document)) == {"right"}


def test_a_missing_mode_is_doubted_where_the_document_says_so():
    """A doubt about all modes covers one that was not read; a doubt about the other mode does not."""
    lost = len(TWO["document"]["modes"][1]["parameters"])
    for pointer, covered in (("/modes", lost), ("/modes/0", 0)):
        document = changed(TWO, "modes", 1, drop=True)
        document["doubts"] = [{"pointer": pointer, "why": "a table could not be read", "slots": []}]
        outcomes = compare(TWO, document).outcomes
        missing = [o for o in outcomes if o.pointer.startswith("/modes/1")]
        assert sum(o.kind != "silent" for o in missing) == covered
