"""Ways: derived from the ranges for slots, listed for the rest, and what they make of smoothing."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import settings as calm

from modebook.documents.fixture import Fixture
from modebook.documents.modes import Condition, Mode, Span
from modebook.documents.settings import Setting, Way
from modebook.documents.ways import (
    REMOTE,
    is_smoothing,
    reached_by,
    slot_ways,
    smoothing_by,
    smoothing_settings,
)
from support.documents import Json, fixture, fixtures, mode, parameter, setting

CALM = calm(deadline=None, max_examples=40)

OFF = {"key": "off", "length": {"packets": 0}}
LONG = {"key": "long", "length": {"packets": 8}}
MENU = {"by": "menu", "path": ["Setup", "Response"]}
RDM = {"by": "rdm", "pid": "0x8345", "size": 1, "values": {"off": 0, "long": 1}}


def _control(**sets: Any) -> Json:
    piece = {"from": 10, "to": 19, "meaning": "Response", "sets": sets}
    return parameter("control", 2, ranges=[{"from": 0, "to": 9, "meaning": "No function"}, piece])


def _by(settings: list[Json], *parameters: Json) -> list[str]:
    found = Fixture.model_validate(fixture(settings=settings, modes=[mode(*parameters)]))
    return list(smoothing_by(found, found.modes[0]))


@pytest.mark.parametrize(
    ("told", "by"),
    [
        ([], ["unknown"]),
        ([setting(OFF, LONG)], ["unknown"]),
        ([setting(none=True, source="guide")], ["none"]),
        ([setting(OFF, LONG, ways=[MENU])], ["menu"]),
        ([setting(OFF, LONG, ways=[MENU, RDM])], ["rdm", "menu"]),
        ([setting(OFF, LONG, ways=[{"by": "page"}, {"by": "app"}, MENU])], ["menu", "app", "page"]),
        # Without the numbers to send nobody can send them.
        ([setting(OFF, LONG, ways=[{"by": "rdm", "pid": "0x8345"}])], ["unknown"]),
        ([setting(OFF, LONG, ways=[{"by": "rdm", "values": {}}, MENU])], ["menu"]),
        # A dimmer curve of which one choice lags is a smoothing too.
        ([setting({"key": "fast"}, LONG, setting="dimmer-curve", ways=[MENU])], ["menu"]),
        ([setting({"key": "fast"}, {"key": "s"}, setting="dimmer-curve", ways=[MENU])], ["unknown"]),
        # Color has none, intensity has one.
        ([setting(none=True), setting(OFF, key="level-smoothing", ways=[MENU])], ["menu"]),
        # Other settings, and that there are none of them, say nothing about smoothing.
        ([setting({"key": "quiet"}, key="fan", setting="fan", ways=[MENU])], ["unknown"]),
        ([setting(key="fan", setting="fan", none=True)], ["unknown"]),
    ],
)
def test_how_smoothing_can_be_changed(told: list[Json], by: list[str]) -> None:
    """Unknown, none, and each way, without a slot that reaches it."""
    assert _by(told) == by


def test_a_slot_of_this_mode_comes_first() -> None:
    """A range that sets the smoothing is a way; one that sets the fan is not."""
    whole = [setting(OFF, LONG, ways=[MENU, RDM])]
    assert _by(whole, parameter(), _control(smoothing="off")) == ["slot", "rdm", "menu"]
    assert _by(whole, parameter(), _control(fan="quiet")) == ["rdm", "menu"]
    span = {"from": 0, "to": 20, "unit": "packets"}
    assert _by([setting(OFF, LONG)], parameter(), _control(smoothing=span)) == ["slot"]


def test_a_slot_of_another_mode_does_not_count() -> None:
    """What the mode in use cannot reach stays with the menu."""
    told = fixture(
        settings=[setting(OFF, LONG, ways=[MENU])],
        modes=[mode(), mode(parameter(), _control(smoothing="off"), name="Extended")],
    )
    found = Fixture.model_validate(told)
    assert [smoothing_by(found, one) for one in found.modes] == [["menu"], ["slot", "menu"]]


def test_a_curve_that_lags_is_reached_by_its_own_slot() -> None:
    """The curve's key counts, whatever it is called."""
    curve = setting({"key": "linear"}, LONG, key="curve", setting="dimmer-curve")
    assert _by([curve], parameter(), _control(curve="linear")) == ["slot"]


def test_slot_ways_in_cells_and_parts_have_pointers() -> None:
    """Ways are found wherever a range stands, with what must be so first."""
    ask = {"parameter": "dimmer", "from": 0, "to": 0}
    inner = _control(smoothing="off") | {"when": [{"setting": "smoothing", "choices": ["long"]}]}
    inner["ranges"][1]["needs"] = [ask]
    told = mode(
        parameter(),
        cells=[{"count": 3, "first": 2, "stride": 1, "parameters": [inner]}],
        parts=[{"key": "head", "footprint": 2, "parameters": [_control(fan="quiet", smoothing="long")]}],
    )
    found = slot_ways(Mode.model_validate(told), "/modes/0")
    assert [(way.setting, way.choice, way.pointer) for way in found] == [
        ("smoothing", "off", "/modes/0/cells/0/parameters/0/ranges/1"),
        ("fan", "quiet", "/modes/0/parts/0/parameters/0/ranges/1"),
        ("smoothing", "long", "/modes/0/parts/0/parameters/0/ranges/1"),
    ]
    assert found[0].needs == [
        Condition(setting="smoothing", choices=["long"]),
        Condition.model_validate(ask),
    ]


def test_a_continuous_way_has_a_span_and_no_choice() -> None:
    """A range that sets a length from 0 to 20 packets leads to no single choice."""
    told = _control(smoothing={"from": 0, "to": 20, "unit": "packets"})
    [way] = slot_ways(Mode.model_validate(mode(told)))
    assert (way.choice, way.span) == (None, Span.model_validate({"from": 0, "to": 20, "unit": "packets"}))


@pytest.mark.parametrize(
    ("way", "reached"),
    [
        (MENU, ["off", "long"]),
        ({**MENU, "choices": ["long"]}, ["long"]),
        ({**MENU, "choices": []}, []),
        (RDM, ["off", "long"]),
        ({"by": "rdm", "values": {"long": 3, "longer": 4}}, ["long"]),
        ({"by": "rdm"}, []),
    ],
)
def test_what_a_way_reaches(way: Json, reached: list[str]) -> None:
    """A menu reaches all unless it says which; RDM reaches what has a number."""
    assert reached_by(Way.model_validate(way), Setting.model_validate(setting(OFF, LONG))) == reached


def test_remote_needs_no_hand() -> None:
    """An app or a page may need someone near the fixture; they are not remote."""
    assert sorted(REMOTE) == ["rdm", "slot"]


@CALM
@given(fixtures())
def test_ways_by_slot_are_the_sets_of_the_ranges(told: Json) -> None:
    """Nothing is invented and nothing lost: a search of the plain document finds as many."""

    def count(value: Any) -> int:
        if isinstance(value, list):
            return sum(count(item) for item in value)
        if isinstance(value, dict):
            return len(value.get("sets", ())) + sum(count(item) for item in value.values())
        return 0

    found = Fixture.model_validate(told)
    for plain, one in zip(told["modes"], found.modes, strict=True):
        assert len(slot_ways(one)) == count(plain)


@CALM
@given(fixtures())
def test_smoothing_has_always_an_answer(told: Json) -> None:
    """None and unknown stand alone; none needs a setting that says so; a way needs a smoothing."""
    found = Fixture.model_validate(told)
    settings = smoothing_settings(found)
    assert settings == [one for one in found.settings if is_smoothing(one)]
    for one in found.modes:
        by = smoothing_by(found, one)
        assert by
        if "none" in by or "unknown" in by:
            assert len(by) == 1
        if by == ["none"]:
            assert settings
            assert all(each.none for each in settings)
        elif by != ["unknown"]:
            assert any(not each.none for each in settings)
