"""The demonstration film's list of shots: as big as it is said to be, and planned as people would."""

from __future__ import annotations

from pathlib import Path

import pytest

from modebook.documents.responding import smoothing_of
from modebook.rig.open_rig import open_rig
from modebook.shelf.catalog import Catalog
from modebook.shots.plan import Plan, Taken
from modebook.shots.planning import plan
from modebook.shots.reading import read_shots

CATALOG = Path(__file__).parents[2] / "catalog"
PIER = CATALOG / "rigs" / "ossilby-pier"


@pytest.fixture(scope="module")
def planned() -> Plan:
    reading = open_rig("ossilby-pier", Catalog(CATALOG))
    return plan(reading, read_shots(PIER / "shots.csv", reading), keep=False)


def intents(taken: Taken) -> set[str]:
    return {one.cue.intent for one in taken.taken.verdicts}


def test_it_is_a_whole_production(planned: Plan) -> None:
    """At least 12 setups, 40 cues, 80 units; the one row at fault names the unit whose mode is misspelled."""
    cues = [cue for one in planned.setups for cue in one.setup.cues]
    assert len(planned.setups) >= 12
    assert len(cues) >= 40
    assert len({unit for cue in cues for unit in cue.units}) >= 80
    assert {cue.intent for cue in cues} == {"smooth", "unseen", "snap", "pixels", "match", "any"}
    (fault,) = planned.faults
    assert "207" in fault.why


def test_snaps_and_pixels_come_out_with_smoothing_off(planned: Plan) -> None:
    """Common practice, no source: wherever off can be had and nothing but snaps, pixels or `any` is asked."""
    seen = 0
    for setup in planned.setups:
        for taken in setup.settings:
            if (
                taken.kind == "smoothing"
                and intents(taken) & {"snap", "pixels"}
                and not taken.taken.violations
            ):
                worst_ms = taken.taken.snap_added_ms
                assert worst_ms is not None
                assert worst_ms <= 1000 / 24 + 1e-6, "no snap is later than a frame for its setting"
                if intents(taken) <= {"snap", "pixels", "any"} and "would be preferred" not in taken.why:
                    least = min(
                        one.length_packets for one in taken.candidates if one.length_packets is not None
                    )
                    assert taken.taken.length_packets == least
                    seen += 1
    assert seen >= 10


def test_long_smoothing_is_for_the_unseen_fade_alone(planned: Plan) -> None:
    """Common practice, no source: more than 3 packets only where a cue is unseen, or steps with fewer."""
    long = 0
    for setup in planned.setups:
        for taken in setup.settings:
            length = taken.taken.length_packets
            if taken.kind != "smoothing" or length is None or length <= 3:
                continue
            shorter = [one for one in taken.candidates if (one.length_packets or 0.0) < length]
            assert "unseen" in intents(taken) or all(one.violations for one in shorter)
            assert not intents(taken) & {"snap", "pixels"}, "none longer where a snap is due"
            long += 1
    assert long >= 5


def test_the_kill_is_a_true_conflict_with_cures_that_were_computed(planned: Plan) -> None:
    """An unseen fade and a snap on one light: slower, a finer mode, or a change between the two cues."""
    found = [one for one in planned.conflicts if one.setup == "6 the kill" and one.at_odds]
    assert {unit for one in found for unit in one.units} >= {"109", "113"}
    cures = " ".join(cure for one in found for cure in one.cures)
    assert "slower" in cures
    assert "mode 'CCT 16'" in cures
    assert "between" in cures


def test_what_is_unknown_is_said(planned: Plan) -> None:
    """231 and 561 have no record of smoothing: their cues are told over the usual lengths, never assumed."""
    said = " ".join(line for one in planned.setups for line in one.unjudged)
    assert "231" in said
    assert "561" in said
    for setup in planned.setups:
        for taken in setup.settings:
            if taken.kind == "smoothing" and taken.taken.length_packets is None:
                pytest.fail(f"{taken.units} were given a choice of unknown length in {setup.setup.name}")


def test_lengths_are_those_of_the_record(planned: Plan) -> None:
    """Each choice's length in packets is the record's at the rate that the unit hears."""
    reading = open_rig("ossilby-pier", Catalog(CATALOG))
    for setup in planned.setups:
        for taken in setup.settings:
            row = reading.by_unit[taken.units[0].casefold()][0]
            assert row.fixture is not None
            setting = next(one for one in row.fixture.fixture.settings if one.key == taken.setting)
            choice = next(one for one in setting.choices if one.key == taken.choice)
            length = choice.length
            if taken.kind == "smoothing" and length and length.packets is not None and not choice.measured:
                assert taken.taken.length_packets == pytest.approx(length.packets)
                assert smoothing_of(choice).known
