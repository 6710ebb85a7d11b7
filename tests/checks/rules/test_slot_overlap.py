"""slot-overlap against a brute force over bytes, and its edges."""

from __future__ import annotations

from collections import defaultdict
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.checks.examples import reading_of
from modebook.checks.rules.slot_gap import RULE as GAP
from modebook.checks.rules.slot_overlap import RULE as OVERLAP

Json = dict[str, Any]
SLOTS = st.lists(st.integers(1, 14), min_size=0, max_size=3, unique=True)


@st.composite
def charts(draw: st.DrawFn) -> Json:
    """A mode with plain, conditional and repeated parameters, as right or wrong as chance makes it."""
    parameters: list[Json] = [{"parameter": "color-mode", "slots": [1]}]
    for slots in draw(st.lists(SLOTS, max_size=5)):
        one: Json = {"parameter": "red", "slots": slots}
        if draw(st.booleans()):
            low = draw(st.integers(0, 255))
            one["when"] = [{"parameter": "color-mode", "from": low, "to": draw(st.integers(low, 255))}]
        parameters.append(one)
    cells = [
        {
            "count": draw(st.integers(1, 3)),
            "first": draw(st.integers(1, 8)),
            "stride": draw(st.integers(0, 3)),
            "parameters": [
                {"parameter": "blue", "slots": draw(st.lists(st.integers(1, 3), max_size=2, unique=True))}
            ],
        }
        for _ in range(draw(st.integers(0, 2)))
    ]
    return {"footprint": draw(st.integers(0, 16)), "parameters": parameters, "cells": cells}


def users_of_bytes(mode: Json) -> dict[int, list[tuple[str, range]]]:
    """Byte by byte, who uses it, and at which values of the color mode."""
    at: dict[int, list[tuple[str, range]]] = defaultdict(list)
    for index, one in enumerate(mode["parameters"]):
        when = one.get("when")
        values = range(when[0]["from"], when[0]["to"] + 1) if when else range(256)
        for slot in one["slots"]:
            at[slot].append((f"/modes/0/parameters/{index}", values))
    for index, block in enumerate(mode["cells"]):
        for number in range(block["count"]):
            for slot in block["parameters"][0]["slots"]:
                byte = block["first"] - 1 + number * block["stride"] + slot
                at[byte].append((f"/modes/0/cells/{index}/parameters/0", range(256)))
    return at


@settings(max_examples=300, deadline=None)
@given(charts())
def test_a_byte_is_told_exactly_when_two_use_it_at_one_value(mode: Json) -> None:
    expected = set()
    for byte, users in users_of_bytes(mode).items():
        for value in range(256):
            if sum(value in values for _, values in users) > 1:
                expected.add(byte)
                break
    faults = list(OVERLAP.check(reading_of({"modes": [mode]})))
    assert {slot for fault in faults for slot in fault.figure["slots"]} == expected  # type: ignore[attr-defined]
    at = users_of_bytes(mode)
    for fault in faults:
        for slot in fault.figure["slots"]:  # type: ignore[attr-defined]
            places = [place for place, _ in at[slot]]
            assert fault.figure["first"] in places
            assert fault.figure["second"] in places


@settings(max_examples=300, deadline=None)
@given(charts())
def test_slot_gap_tells_exactly_the_bytes_of_the_footprint_that_nobody_uses(mode: Json) -> None:
    used = users_of_bytes(mode)
    expected = [byte for byte in range(1, mode["footprint"] + 1) if byte not in used]
    faults = list(GAP.check(reading_of({"modes": [mode]})))
    told = [
        slot
        for fault in faults
        for low, high in fault.figure["slots"]  # type: ignore[attr-defined]
        for slot in range(low, high + 1)
    ]
    assert told == expected


def test_interleaved_cells_pass() -> None:
    """Eight reds, then eight greens: two blocks whose strides are one."""
    cells = [
        {"count": 8, "first": first, "stride": 1, "parameters": [{"parameter": word, "slots": [1]}]}
        for first, word in ((1, "red"), (9, "green"))
    ]
    assert not list(OVERLAP.check(reading_of({"modes": [{"cells": cells}]})))
    by_turns = [
        {"count": 8, "first": first, "stride": 2, "parameters": [{"parameter": word, "slots": [1]}]}
        for first, word in ((1, "red"), (2, "green"))
    ]
    assert not list(OVERLAP.check(reading_of({"modes": [{"cells": by_turns}]})))
    assert not list(GAP.check(reading_of({"modes": [{"cells": by_turns}]})))


def test_coarse_and_fine_apart_pass() -> None:
    parameters = [
        {"parameter": "pan", "slots": [1, 3]},
        {"parameter": "tilt", "slots": [2, 4]},
    ]
    assert not list(OVERLAP.check(reading_of({"modes": [{"parameters": parameters}]})))


def test_parts_count_their_slots_for_themselves() -> None:
    parts = [
        {"key": key, "footprint": 1, "parameters": [{"parameter": "dimmer", "slots": [1]}]} for key in "ab"
    ]
    assert not list(OVERLAP.check(reading_of({"modes": [{"parts": parts}]})))


def test_many_cells_on_one_byte_are_one_finding() -> None:
    block = {"count": 60000, "first": 1, "stride": 0, "parameters": [{"parameter": "red", "slots": [1]}]}
    faults = list(OVERLAP.check(reading_of({"modes": [{"cells": [block]}]})))
    assert [fault.message for fault in faults] == ["slot 1 is used by red of more than one cell"]


def two(first: list[Json], second: list[Json], *more: Json) -> Json:
    return {
        "settings": [
            {
                "key": "output",
                "setting": "output-mode",
                "choices": [{"key": "a"}, {"key": "b"}],
            }
        ],
        "modes": [
            {
                "parameters": [
                    *more,
                    {"parameter": "red", "slots": [9], "when": first},
                    {"parameter": "cyan", "slots": [9], "when": second},
                ]
            }
        ],
    }


def overlaps(content: Json) -> bool:
    return any(fault.figure["slots"] == [9] for fault in OVERLAP.check(reading_of(content)))


def test_conditions_on_a_setting_are_told_apart_by_choices() -> None:
    a = [{"setting": "output", "choices": ["a"]}]
    b = [{"setting": "output", "choices": ["b"]}]
    both = [{"setting": "output", "choices": ["a", "b"]}]
    assert not overlaps(two(a, b))
    assert overlaps(two(a, both))


def test_conditions_on_different_things_can_hold_at_once() -> None:
    by_setting = [{"setting": "output", "choices": ["a"]}]
    by_value = [{"parameter": "macro", "from": 0, "to": 9}]
    assert overlaps(two(by_setting, by_value))


def test_two_states_in_words_are_taken_to_exclude_each_other() -> None:
    assert not overlaps(two([{"given": "Menu: RGB"}], [{"given": "Menu: CMY"}]))
    assert overlaps(two([{"given": "Menu: RGB"}], [{"parameter": "macro", "from": 0, "to": 9}]))


def test_a_deciding_parameter_brings_its_own_conditions() -> None:
    """Macro exists in state A and strobe in state B, so what hangs on them never meets."""
    more = (
        {"parameter": "macro", "slots": [1], "when": [{"given": "A"}]},
        {"parameter": "strobe", "slots": [1], "when": [{"given": "B"}]},
    )
    on_macro = [{"parameter": "macro", "from": 0, "to": 9}]
    on_strobe = [{"parameter": "strobe", "from": 0, "to": 9}]
    assert not overlaps(two(on_macro, on_strobe, *more))
    assert overlaps(two(on_macro, on_macro, *more))


def test_any_of_several_ranges_may_meet() -> None:
    low = [{"parameter": "macro", "any_of": [{"from": 0, "to": 9}, {"from": 50, "to": 59}]}]
    assert overlaps(two(low, [{"parameter": "macro", "from": 59, "to": 70}]))
    assert not overlaps(two(low, [{"parameter": "macro", "from": 10, "to": 49}]))


def test_conditions_that_contradict_each_other_never_hold() -> None:
    never = [{"parameter": "macro", "from": 0, "to": 9}, {"parameter": "macro", "from": 20, "to": 29}]
    assert not overlaps(two(never, [{"given": "A"}]))
