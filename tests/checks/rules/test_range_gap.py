"""range-gap and range-overlap against a brute force over values, and the edges of range-gap."""

from __future__ import annotations

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.checks.examples import reading_of
from modebook.checks.rules.range_gap import RULE as GAP
from modebook.checks.rules.range_overlap import RULE as OVERLAP

Json = dict[str, Any]


@st.composite
def ranges(draw: st.DrawFn) -> list[Json]:
    """Ranges of one byte in any order, some sharing values, some with needs."""
    edges = st.integers(0, 255)
    found: list[Json] = []
    if draw(st.booleans()):
        cuts = sorted(draw(st.sets(st.integers(1, 255), max_size=4)))
        for low, high in zip([0, *cuts], [*cuts, 256], strict=True):
            found.append({"from": low, "to": high - 1, "meaning": f"{low}"})
    for low, other in draw(st.lists(st.tuples(edges, edges), max_size=4)):
        found.append({"from": min(low, other), "to": max(low, other), "meaning": "more"})
    for one in found:
        state = draw(st.sampled_from((None, None, "A", "B")))
        if state:
            one["needs"] = [{"given": state}]
    return draw(st.permutations(found))


def content(pieces: list[Json]) -> Json:
    return {"modes": [{"parameters": [{"parameter": "strobe", "slots": [1], "ranges": pieces}]}]}


def meet(a: Json, b: Json) -> bool:
    shared = any(a["from"] <= value <= a["to"] and b["from"] <= value <= b["to"] for value in range(256))
    return shared and not ("needs" in a and "needs" in b and a["needs"] != b["needs"])


@settings(max_examples=300, deadline=None)
@given(ranges())
def test_a_gap_is_every_value_in_no_range(pieces: list[Json]) -> None:
    expected = [value for value in range(256) if not any(one["from"] <= value <= one["to"] for one in pieces)]
    faults = list(GAP.check(reading_of(content(pieces))))
    told = [
        value
        for fault in faults
        for low, high in fault.figure["gaps"]  # type: ignore[attr-defined]
        for value in range(low, high + 1)
    ]
    assert told == (expected if pieces else [])
    assert len(faults) <= 1


@settings(max_examples=300, deadline=None)
@given(ranges())
def test_an_overlap_is_told_for_each_range_that_shares_a_value_with_one_below(pieces: list[Json]) -> None:
    order = sorted(range(len(pieces)), key=lambda i: (pieces[i]["from"], pieces[i]["to"], i))
    expected = {i for at, i in enumerate(order) if any(meet(pieces[i], pieces[j]) for j in order[:at])}
    faults = list(OVERLAP.check(reading_of(content(pieces))))
    assert {int(fault.pointer.rpartition("/")[2]) for fault in faults} == expected
    assert len(faults) == len(expected)
    for fault in faults:
        here = pieces[int(fault.pointer.rpartition("/")[2])]
        there = pieces[int(str(fault.figure["other"]).rpartition("/")[2])]
        assert meet(here, there)
        values = [v for v in range(256) if all(one["from"] <= v <= one["to"] for one in (here, there))]
        assert [fault.figure["from"], fault.figure["to"]] == [values[0], values[-1]]


def test_the_values_are_told_exactly() -> None:
    pieces = [{"from": 1, "to": 9, "meaning": "a"}, {"from": 11, "to": 250, "meaning": "b"}]
    (fault,) = GAP.check(reading_of(content(pieces)))
    assert fault.message == "values 0, 10, 251-255 of strobe are in none of its ranges"
    assert fault.figure == {"gaps": [[0, 0], [10, 10], [251, 255]], "values": 7, "full_scale": 255}


def test_ranges_of_the_coarse_byte_on_two_slots_are_told_so() -> None:
    parameter = {
        "parameter": "gobo-index",
        "slots": [1, 2],
        "ranges": [{"from": 0, "to": 255, "meaning": "Turn"}],
    }
    (fault,) = GAP.check(reading_of({"modes": [{"parameters": [parameter]}]}))
    assert fault.figure["gaps"] == [[256, 65535]]
    assert "value n there is 256 n to 256 n + 255 here" in fault.help


def test_a_parameter_without_a_slot_has_no_values_to_cover() -> None:
    parameter = {"parameter": "dimmer", "slots": [], "ranges": [{"from": 3, "to": 9, "meaning": "a"}]}
    assert not list(GAP.check(reading_of({"modes": [{"parameters": [parameter]}]})))
