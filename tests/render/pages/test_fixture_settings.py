"""What to send for a setting's choices, and how much later a snap is done for each."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.documents.fixture import Fixture
from modebook.documents.settings import Choice
from modebook.render.pages.fixture_settings import SettingBlock, late_words, length_words, setting_blocks

SETTING: dict[str, Any] = {
    "key": "smoothing",
    "setting": "smoothing",
    "acts_on": ["intensity"],
    "choices": [
        {"key": "off", "label": "Fast", "length": {"packets": 0}},
        {"key": "short", "label": "Smooth", "length": {"packets": 2}, "method": "average", "factory": True},
        {"key": "long", "label": "Cine"},
    ],
    "ways": [
        {"by": "menu", "path": ["Setup", "Response"]},
        {"by": "rdm", "pid": "0x8001", "size": 2, "values": {"off": 1, "short": 258}},
    ],
}


def blocks(address: int | None = 101, slots: list[int] | None = None) -> SettingBlock:
    """The smoothing of an invented fixture whose control slot sets it."""
    scale = 256 ** (len(slots or [4]) - 1)
    ranges = [
        {"from": 0, "to": 9 * scale, "meaning": "Nothing", "does": "nothing"},
        {"from": 10 * scale, "to": 20 * scale, "meaning": "Fast", "sets": {"smoothing": "off"}, "hold_s": 3},
        {"from": 21 * scale, "to": 255 * scale, "meaning": "Reset", "hazard": "reset"},
    ]
    mode = {
        "name": "Only",
        "footprint": 9,
        "parameters": [{"parameter": "control", "slots": slots or [4], "ranges": ranges}],
    }
    told = {"maker": "Invented", "model": "One", "category": "fixed", "standing": "transcribed"}
    made = Fixture.model_validate(
        told | {"settings": [SETTING], "modes": [mode]}, by_alias=True, by_name=False
    )
    (block,) = setting_blocks(made, made.modes[0], 30.0, address)
    return block


def test_the_value_to_send_stands_at_its_address() -> None:
    """The middle of 10 to 20 is 15; slot 4 from start address 101 is 104."""
    off = blocks().choices[0]
    slot = off.roads[0]
    assert slot.by == "slot"
    assert [(b.slot, b.value, b.address) for b in slot.bytes] == [(4, 15, "104")]
    assert "hold it for 3 s" in slot.more
    assert "21-255 Reset (reset)" in slot.caution


def test_a_value_over_two_bytes_is_told_byte_by_byte() -> None:
    """Coarse at slot 7, fine at 4: 3840 is 15 times 256 and 0."""
    off = blocks(slots=[7, 4]).choices[0]
    assert [(b.slot, b.value, b.address) for b in off.roads[0].bytes] == [(7, 15, "107"), (4, 0, "104")]


def test_rdm_data_is_as_long_as_the_pid_takes() -> None:
    """258 in two bytes is 0x0102; a choice without a value is not reached over RDM."""
    short, long = blocks().choices[1:]
    assert any("0x8001, data 0x0102 (258, 2 bytes)" in road.words for road in short.roads)
    assert [road.by for road in long.roads] == ["menu"]


@given(st.floats(1.0, 44.0), st.integers(1, 30))
def test_an_average_makes_a_snap_late_by_its_length(refresh_hz: float, packets: int) -> None:
    """Closed form: the last of n packets arrives n packet times after the first that counts."""
    choice = Choice.model_validate({"key": "a", "length": {"packets": packets}, "method": "average"})
    told = late_words(choice, refresh_hz)
    assert float(told.removesuffix(" ms")) == pytest.approx(1000 * packets / refresh_hz, abs=0.6)


def test_off_adds_nothing_and_an_unknown_length_is_never_a_figure() -> None:
    """Unknown is not zero."""
    off, short, long = blocks().choices
    assert (off.late, short.late, long.late) == ("0 ms", "67 ms", "unknown")
    assert (off.length, short.length, long.length) == ("off", "2 packets", "unknown")


def test_rise_and_fall_are_told_apart() -> None:
    """In the length and in the lateness."""
    length = {"rise": {"packets": 2}, "fall": {"packets": 6}}
    choice = Choice.model_validate({"key": "a", "length": length, "method": "average"})
    assert length_words(choice.length) == "2 packets rising, 6 packets falling"
    assert late_words(choice, 20.0) == "100 ms rising, 300 ms falling"
