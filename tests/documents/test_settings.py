"""Settings: lengths, choices, ways, and a setting that the fixture does not have."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import settings as calm
from pydantic import ValidationError

from modebook.documents.settings import Choice, Duration, Length, Setting, Way
from support.documents import lengths, setting, settings, ways

CALM = calm(deadline=None, max_examples=60)


@pytest.mark.parametrize(
    "told",
    [
        {"packets": 2},
        {"packets": 0},
        {"seconds": 0.5},
        {"rise": {"packets": 2}, "fall": {"seconds": 1}},
        {"seconds": 0.5, "measures": "time constant"},
    ],
)
def test_ways_to_give_a_length(told: dict[str, Any]) -> None:
    """Packets, seconds, or both directions."""
    Length.model_validate(told)


@pytest.mark.parametrize(
    "told",
    [
        {},
        {"measures": "whole"},
        {"packets": 2, "seconds": 1},
        {"rise": {"packets": 2}},
        {"fall": {"packets": 2}},
        {"packets": 2, "rise": {"packets": 2}, "fall": {"packets": 2}},
        {"seconds": 2, "fall": {"packets": 2}},
        {"packets": -1},
        {"packets": "2"},
        {"packets": True},
        {"rise": {}, "fall": {"packets": 1}},
        {"rise": {"packets": 1, "seconds": 1}, "fall": {"packets": 1}},
    ],
)
def test_lengths_that_say_nothing_or_two_things(told: dict[str, Any]) -> None:
    """Neither nothing, nor two units, nor one direction alone is a length."""
    with pytest.raises(ValidationError):
        Length.model_validate(told)


def test_the_longer_direction_counts() -> None:
    """0.5 s at 30 packets a second are 15 packets, longer than 4 packets of rise."""
    length = Length(rise=Duration(packets=4), fall=Duration(seconds=0.5))
    assert length.longest_packets(30) == 15
    assert length.longest_packets(4) == 4
    assert length.durations == (Duration(packets=4), Duration(seconds=0.5))
    assert Length(packets=3).longest_packets(44) == 3


@pytest.mark.parametrize(
    ("told", "off"),
    [
        ({"packets": 0}, True),
        ({"seconds": 0}, True),
        ({"packets": 1}, False),
        ({"rise": {"packets": 0}, "fall": {"seconds": 0}}, True),
        ({"rise": {"packets": 0}, "fall": {"seconds": 0.1}}, False),
    ],
)
def test_off_means_no_filling_in_either_way(told: dict[str, Any], off: bool) -> None:
    """A choice that still smooths one direction is not off."""
    assert Length.model_validate(told).is_off is off


@CALM
@given(lengths())
def test_every_length_has_durations_that_agree_with_it(told: dict[str, Any]) -> None:
    """The longest duration is the longest of those written, whichever way they are written."""
    length = Length.model_validate(told)
    written = [told] if "rise" not in told else [told["rise"], told["fall"]]
    in_packets = [one["packets"] if "packets" in one else one["seconds"] * 25 for one in written]
    assert length.longest_packets(25) == max(in_packets)
    assert length.is_off == (max(in_packets) == 0)


def test_an_absent_length_is_unknown_and_not_zero() -> None:
    """Nothing fills a length in."""
    assert Choice(key="long").length is None


@CALM
@given(ways())
def test_a_way_has_what_belongs_to_its_kind(told: dict[str, Any]) -> None:
    """What strategies make is taken; the same keys under the other kind are refused."""
    Way.model_validate(told)
    other = {**told, "by": "menu" if told["by"] == "rdm" else "rdm"}
    if {"pid", "size", "values", "path", "choices"} & told.keys():
        with pytest.raises(ValidationError):
            Way.model_validate(other)


def test_a_way_by_slot_is_never_typed() -> None:
    """Slot ways come from the ranges; a typed one could disagree with them."""
    with pytest.raises(ValidationError):
        Way.model_validate({"by": "slot"})


@pytest.mark.parametrize("locked", [True, False, "with the service code"])
def test_a_lock_is_a_yes_a_no_or_words(locked: object) -> None:
    """All three are kept as they are."""
    assert Way.model_validate({"by": "rdm", "locked": locked}).locked == locked
    with pytest.raises(ValidationError):
        Way.model_validate({"by": "rdm", "locked": 1})


def test_none_excludes_choices_and_ways() -> None:
    """A fixture without smoothing has no choices of it; the source says so."""
    assert Setting.model_validate(setting(none=True, source="guide")).none
    for more in ({"choices": [{"key": "off"}]}, {"ways": [{"by": "menu"}]}):
        with pytest.raises(ValidationError, match="no choices or ways"):
            Setting.model_validate(setting(none=True, **more))


def test_a_choice_stands_once() -> None:
    """Two choices of one key would make every reference to it doubtful."""
    with pytest.raises(ValidationError, match="two choices have the key 'off'"):
        Setting.model_validate(setting({"key": "off"}, {"key": "off"}))


@CALM
@given(settings())
def test_the_factory_choice_is_one_that_says_so(told: dict[str, Any]) -> None:
    """None where no choice is marked, else the first that is."""
    marked = [one["key"] for one in told.get("choices", ()) if one.get("factory")]
    found = Setting.model_validate(told).factory
    assert (found.key if found else None) == (marked[0] if marked else None)


def test_points_of_a_curve_are_shares() -> None:
    """A table of a dimmer curve gives level and light from 0 to 1."""
    Choice.model_validate({"key": "s", "points": [[0, 0], [0.5, 0.2], [1, 1]]})
    for points in ([[0, 2]], [[-0.1, 0]], [[0]], [[0, 0, 0]]):
        with pytest.raises(ValidationError):
            Choice.model_validate({"key": "s", "points": points})
