"""The smoothing rules: unknown, unreachable, by hand only, without off, slow by default."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

import pytest

from modebook.checks.examples import complete, reading_of
from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading
from modebook.checks.rules import smoothing_unreachable
from modebook.checks.rules.slow_by_default import RULE as SLOW
from modebook.documents.policy import Override, house_policy
from modebook.documents.ways import smoothing_by

Json = dict[str, Any]
Run = Callable[[str, Mapping[str, object]], list[Fault]]
OFF = {"key": "off", "length": {"packets": 0}}
LONG = {"key": "long", "length": {"packets": 8}}
MENU = {"by": "menu", "path": ["Setup"]}
RDM = {"by": "rdm", "pid": "0x8001", "size": 1, "values": {"off": 0, "long": 1}}


def setting(*choices: Json, ways: list[Json] | None = None, **more: Any) -> Json:
    return {
        "key": "smoothing",
        "setting": "smoothing",
        "source": "guide",
        "choices": list(choices),
        "ways": [RDM] if ways is None else ways,
        **more,
    }


def control(*sets: Any) -> Json:
    pieces = [
        {"from": at * 10, "to": at * 10 + 9, "meaning": f"{to}", "sets": {"smoothing": to}}
        for at, to in enumerate(sets)
    ]
    return {"parameter": "control", "slots": [1], "ranges": pieces}


def document(one: Json, *modes: list[Json]) -> Json:
    return {"settings": [one], **({"modes": [{"parameters": mode} for mode in modes]} if modes else {})}


def test_nothing_recorded_is_unknown_and_none_is_known(run: Run) -> None:
    (fault,) = run("smoothing-unknown", {"settings": []})
    assert fault.pointer == ""
    assert run("smoothing-unknown", {}) == []


def test_a_dimmer_curve_without_lengths_says_nothing_of_smoothing(run: Run) -> None:
    curve = {"key": "curve", "setting": "dimmer-curve", "choices": [{"key": "linear"}]}
    assert run("smoothing-unknown", {"settings": [curve]})
    lagging = curve | {"choices": [{"key": "linear"}, {"key": "lamp", "length": {"seconds": 0.3}}]}
    assert run("smoothing-unknown", {"settings": [lagging]}) == []


def test_choices_without_length_are_named_and_a_measured_one_is_known(run: Run) -> None:
    measured = {"length": {"packets": 5}, "date": "2026-03", "by": "A. Recorder"}
    one = setting(OFF, {"key": "a"}, {"key": "b"}, {"key": "c", "measured": measured})
    (fault,) = run("smoothing-unknown", document(one))
    assert fault.message == "smoothing has 2 choices of unknown length: a and b"


def test_a_setting_without_choices_is_known_when_a_slot_sets_it_continuously(run: Run) -> None:
    assert run("smoothing-unknown", document(setting()))
    span = {"from": 0, "to": 2, "unit": "s"}
    assert run("smoothing-unknown", document(setting(), [control(span)])) == []


def test_a_choice_is_reached_by_a_slot_of_any_mode(run: Run) -> None:
    one = setting(OFF, LONG, ways=[])
    dimmer = {"parameter": "dimmer", "slots": [1, 2]}
    assert run("smoothing-unreachable", document(one, [control("off", "long")], [dimmer])) == []
    (fault,) = run("smoothing-unreachable", document(one, [control("off")], [control("off")]))
    assert fault.pointer == "/settings/0/choices/1"


def test_in_the_mode_in_use_other_modes_slots_do_not_count() -> None:
    one = setting(OFF, LONG, ways=[])
    reading = reading_of(document(one, [control("off", "long")], [control("off")]))
    assert not smoothing_unreachable.faults_in_mode(reading, reading.modes[0])
    assert smoothing_unreachable.faults_in_mode(reading, reading.modes[1])


def test_rdm_without_values_leads_nowhere_and_a_menu_everywhere(run: Run) -> None:
    assert run("smoothing-unreachable", document(setting(OFF, LONG, ways=[{"by": "rdm", "pid": "0x8001"}])))
    assert run("smoothing-unreachable", document(setting(OFF, LONG, ways=[MENU]))) == []
    part = setting(OFF, LONG, ways=[MENU | {"choices": ["off"]}])
    assert [fault.pointer for fault in run("smoothing-unreachable", document(part))] == [
        "/settings/0/choices/1"
    ]


def test_no_way_at_all_is_one_finding_and_built_in_smoothing_none(run: Run) -> None:
    assert [f.pointer for f in run("smoothing-unreachable", document(setting(OFF, LONG, ways=[])))] == [
        "/settings/0"
    ]
    built_in = setting(LONG | {"factory": True}, ways=[])
    assert run("smoothing-unreachable", document(built_in)) == []


@pytest.mark.parametrize(
    ("span", "reached"),
    [
        ({"from": 0, "to": 10, "unit": "packets"}, True),
        ({"from": 0, "to": 7, "unit": "packets"}, False),
        ({"from": 10, "to": 0, "unit": "packets"}, True),
        ({"from": 0, "to": 500, "unit": "ms"}, True),
    ],
)
def test_a_continuous_slot_reaches_the_lengths_of_its_span(run: Run, span: Json, reached: bool) -> None:
    """Packets and milliseconds cannot be compared without a refresh rate: then it is taken to."""
    found = run("smoothing-unreachable", document(setting(OFF, LONG, ways=[]), [control(span)]))
    assert (found == []) is reached


def test_by_hand_only_is_told_for_the_modes_without_a_slot_for_it(run: Run) -> None:
    one = setting(OFF, LONG, ways=[MENU])
    dimmer = {"parameter": "dimmer", "slots": [2, 3]}
    content = document(one, [dimmer], [control("off", "long"), dimmer])
    found = run("smoothing-by-hand-only", content)
    assert [fault.pointer for fault in found] == ["/modes/0"]
    assert found[0].help == "mode Mode 2 changes it by a slot, in 3 slots"
    assert found[0].figure["by"] == ["menu"]


def test_by_hand_only_agrees_with_how_searches_see_it(run: Run) -> None:
    """RDM without values is no way; no way at all is unknown, not by hand."""
    for ways in ([MENU], [RDM], [MENU, RDM], [MENU, {"by": "rdm", "pid": "0x8001"}], [], [{"by": "app"}]):
        content = document(setting(OFF, LONG, ways=ways))
        fixture = complete(content)
        by = set(smoothing_by(fixture, fixture.modes[0]))
        expected = not by & {"slot", "rdm", "none", "unknown"}
        assert bool(run("smoothing-by-hand-only", content)) is expected, ways


def test_without_off_wants_a_length_of_zero(run: Run) -> None:
    short = {"key": "short", "length": {"packets": 1}}
    (fault,) = run("smoothing-without-off", document(setting(short, LONG)))
    assert fault.severity is None
    assert fault.message == (
        "smoothing cannot be switched off: its choices are short (1 packet) and long (8 packets)"
    )
    assert run("smoothing-without-off", document(setting(OFF, LONG))) == []
    in_seconds = {"key": "none", "length": {"seconds": 0}}
    assert run("smoothing-without-off", document(setting(in_seconds, LONG))) == []
    both = {"key": "none", "length": {"rise": {"packets": 0}, "fall": {"packets": 0}}}
    assert run("smoothing-without-off", document(setting(both, LONG))) == []
    half = {"key": "up", "length": {"rise": {"packets": 0}, "fall": {"seconds": 0.5}}}
    (fault,) = run("smoothing-without-off", document(setting(half)))
    assert "up (0 packets up, 0.5 s down)" in fault.message


def test_an_unknown_length_may_be_off_and_is_said_and_not_guessed(run: Run) -> None:
    (fault,) = run("smoothing-without-off", document(setting({"key": "off"}, LONG)))
    assert fault.severity == "info"
    assert fault.figure["unknown"] == ["off"]


def test_a_slot_that_runs_down_to_zero_switches_it_off(run: Run) -> None:
    one = setting(LONG, ways=[])
    down = {"from": 2, "to": 0, "unit": "s"}
    assert run("smoothing-without-off", document(one, [control(down)])) == []
    assert run("smoothing-without-off", document(one, [control({"from": 1, "to": 2, "unit": "s"})]))


def factory(length: Json | None, **more: Any) -> Json:
    choice = {"key": "made", "factory": True, **more}
    return document(setting(OFF, choice | ({"length": length} if length else {})))


@pytest.mark.parametrize(
    ("length", "packets"),
    [
        ({"packets": 3}, 3),
        ({"seconds": 0.1}, 3),
        ({"rise": {"packets": 1}, "fall": {"packets": 4}}, 4),
        ({"packets": 2}, None),
        ({"seconds": 2 / 30}, None),
        (None, None),
    ],
)
def test_slow_is_longer_than_two_packets_at_thirty_a_second(
    run: Run, length: Json | None, packets: float | None
) -> None:
    found = run("slow-by-default", factory(length))
    assert [fault.figure["length_packets"] for fault in found] == ([] if packets is None else [packets])
    if length and "seconds" in length and found:
        assert found[0].figure["refresh_hz"] == 30
        assert "assumed 30 packets a second" in found[0].message


def test_a_measured_length_goes_before_the_printed_one_and_is_called_so(run: Run) -> None:
    measured = {"length": {"packets": 6}, "date": "2026-03", "by": "A. Recorder"}
    (fault,) = run("slow-by-default", factory({"packets": 1}, measured=measured))
    assert fault.figure["measured"] is True
    assert "6 packets, measured" in fault.message
    short = measured | {"length": {"packets": 1}}
    assert run("slow-by-default", factory({"packets": 6}, measured=short)) == []


def test_without_a_factory_choice_nobody_can_tell(run: Run) -> None:
    assert run("slow-by-default", document(setting(OFF, LONG))) == []


def test_help_names_the_slot_and_its_values(run: Run) -> None:
    one = setting(OFF, LONG | {"factory": True}, ways=[MENU])
    (fault,) = run("slow-by-default", document(one, [control("off", "long")]))
    assert fault.help.startswith("set it to off by control (0-9) in mode Mode 1 or at the menu; the limit is")


def test_a_measured_length_whose_interval_reaches_the_limit_shows_nothing(run: Run) -> None:
    """2.04 packets, measured to within 1.93 to 2.15, may as well be 2; to within 2.01 to 2.07 it is not."""
    measured = {
        "length": {"packets": 2.04},
        "date": "2026-01",
        "by": "someone",
        "interval_packets": [1.93, 2.15],
    }
    assert run("slow-by-default", factory({"packets": 2}, measured=measured)) == []
    closer = {**measured, "interval_packets": [2.01, 2.07]}
    assert len(run("slow-by-default", factory({"packets": 2}, measured=closer))) == 1


def test_slow_counts_at_the_policy_s_refresh() -> None:
    fixture = complete(factory({"seconds": 0.1}))
    slower = house_policy().overridden({"assumed-refresh": Override(value=10)})
    assert list(SLOW.check(FixtureReading(fixture)))
    assert not list(SLOW.check(FixtureReading(fixture, policy=slower)))
