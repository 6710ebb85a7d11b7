"""Any change list, done in order on models of the fixtures, ends every setup as planned."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.rig.examples import rig_of
from modebook.shots.change import Stage
from modebook.shots.changes import change_list, power_cut
from modebook.shots.patched import patched_units
from modebook.shots.replay import apply, models, play, replay, restore, stand
from support.changing import CHOICES, fixtures, wanted


class Job(tuple[Any, ...]):
    """A rig, its units, stages and start, with a short way of showing itself."""

    def __repr__(self) -> str:
        reading, rows, stages, start = self
        fixture = next(iter(rows.values()))[0].fixture.fixture
        shown = {"exclude_none": True, "exclude_defaults": True, "by_alias": True}
        settings = [one.model_dump_json(include={"key", "ways"}, **shown) for one in fixture.settings]
        links = {key: link.rdm for key, link in reading.rig.links.items()}
        reach = [some[0].reach for some in rows.values()]
        mode = fixture.modes[0].model_dump_json(**shown)
        return f"Job({settings}, {mode}, {links}, {reach}, {stages}, {start})"


REACHES = st.sampled_from(["floor", "ladder", "lift", "not at all", ""])


@st.composite
def jobs(draw: st.DrawFn) -> Any:
    """A rig of two units of one invented fixture, what they start with, and up to five stages."""
    fixture = draw(fixtures())
    rows = ["unit,fixture,mode,address,part,position,reach,uid"]
    for unit in (1, 2):
        reach = draw(REACHES)
        rows.append(f"{unit},Changer,Whole,1/{50 * unit},,Truss {unit},{reach},7FF1:0000000{unit}")
        if fixture["modes"][0].get("parts"):
            rows.append(f"{unit},Changer,Whole,2/{50 * unit},base,Truss {unit},{reach},")
    rdm = draw(st.sampled_from([True, False, None]))
    reading = rig_of(
        {"fixtures": [fixture], "patch": "\n".join(rows), "rig": {"links": {"other": {"rdm": rdm}}}}
    )
    keys = [setting["key"] for setting in fixture["settings"]]
    start = {(unit, key): draw(st.sampled_from((*CHOICES, None))) for unit in ("1", "2") for key in keys}
    days = sorted(draw(st.lists(st.sampled_from(["1", "2"]), min_size=1, max_size=5)))
    stages = [Stage(f"setup {place}", day, draw(wanted(["1", "2"], keys))) for place, day in enumerate(days)]
    return Job((reading, {r[0].unit.number: r for r in patched_units(reading).rows.values()}, stages, start))


def started(rows, start, unsaid, unsaid_way):
    """Models that start as is known, their slots at rest: nothing sent but printed defaults."""
    return models(rows, start, unsaid, unsaid_way)


@given(
    jobs(),
    st.booleans(),
    st.sampled_from(["while sent", "until power off", "stored"]),
    st.sampled_from(["until power off", "stored"]),
)
def test_every_setup_ends_as_planned(job, prepared, unsaid, unsaid_way):
    """Whatever the record leaves unsaid about keeping turns out to be, each setup is as the plan has it."""
    reading, rows, stages, start = job
    told = change_list(reading, rows, stages, start, prepared)
    assert replay(told, stages, started(rows, start, unsaid, unsaid_way)) == []


@given(jobs(), st.booleans())
def test_a_hazard_is_sent_only_with_a_warning(job, prepared):
    """No change sends a value of a hazardous range, but where the record puts both into one range."""
    reading, rows, stages, start = job
    told = change_list(reading, rows, stages, start, prepared)
    units = models(rows, start)
    before = {number: list(unit.hazards) for number, unit in units.items()}
    for setup in told.setups:
        apply((*setup.checks, *setup.changes), units)
        stand(setup.stands, units)
    assert {number: unit.hazards for number, unit in units.items()} == before


@given(jobs(), st.booleans(), st.data(), st.sampled_from(["while sent", "until power off", "stored"]))
def test_after_a_power_cut_its_list_brings_the_setup_back(job, prepared, data, unsaid):
    """Off and on in any setup: what is sent again and what is checked restores all that was planned."""
    reading, rows, stages, start = job
    told = change_list(reading, rows, stages, start, prepared)
    after = data.draw(st.integers(0, len(stages) - 1))
    cut = power_cut(reading, rows, stages, start, prepared, after)
    for unsaid_way in ("until power off", "stored"):
        units = models(rows, start, unsaid, unsaid_way)
        part = type(told)(told.setups[: after + 1], told.prep)
        assert replay(part, stages[: after + 1], units) == []
        before = {
            (number, setting): unit.now(setting)
            for number, unit in units.items()
            for setting in unit.settings
        }
        restore(cut, units)
        play(cut.again, cut.stands, units)
        for (number, setting), choice in stages[after].wanted.items():
            if choice is not None and before[number, setting] == choice:
                assert units[number].now(setting) == choice


@given(jobs(), st.booleans())
def test_a_choice_that_some_road_reaches_is_never_given_up_for_lack_of_one(job, prepared):
    """Every fault names a choice that no road reaches, or slots that two settings want at two values."""
    from modebook.shots.routes import routes

    reading, rows, stages, start = job
    told = change_list(reading, rows, stages, start, prepared)
    for setup in told.setups:
        for fault in setup.faults:
            number, rest = fault.split(": ", 1)
            setting, _, choice = rest.split(": ")[0].partition(" cannot be set to ")
            some = routes(reading, rows[number])[setting][choice]
            known = ("must stand at another value", "rests that now rules is not known")
            assert not some or any(why in fault for why in known)


@pytest.mark.parametrize("field", ["slot", "rdm", "hand"])
def test_seconds_by_way_are_there(field):
    """Each way has its seconds, also where nothing takes it."""
    reading = rig_of(
        {"fixtures": [{"model": "Plain"}], "patch": "unit,fixture,mode,address\n1,Plain,Mode 1,1/1"}
    )
    rows = {r[0].unit.number: r for r in patched_units(reading).rows.values()}
    told = change_list(reading, rows, [Stage("1", "", {})], {}, True)
    assert told.total_seconds_by_way[field] == 0.0
