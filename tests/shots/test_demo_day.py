"""The demo rigs: every choice of every unit, and the planned day, done in order on models of the fixtures."""

from __future__ import annotations

from pathlib import Path

import pytest

from modebook.rig.open_rig import open_rig
from modebook.shelf.catalog import Catalog
from modebook.shots.change import Stage
from modebook.shots.changes import change_list
from modebook.shots.patched import patched_units
from modebook.shots.replay import models, replay
from modebook.shots.routes import routes
from support.program import CATALOG

KEEPING = ("while sent", "until power off", "stored")


def opened(name: str):
    return open_rig(name, Catalog(Path(CATALOG)))


@pytest.mark.parametrize("name", ["ossilby-pier", "ossilby-kitchen", "ossilby-jetty"])
@pytest.mark.parametrize("unsaid", KEEPING)
def test_every_choice_of_every_unit_is_reached_as_the_list_says(name, unsaid):
    """Each setting of each unit goes through all its choices, over two days; only what none reaches fails."""
    reading = opened(name)
    rows = {some[0].unit.number: some for some in patched_units(reading).rows.values()}
    roads = {number: routes(reading, some) for number, some in rows.items()}
    stages = []
    for turn in range(6):
        wanted = {
            (number, setting): list(choices)[(turn + len(number)) % len(choices)]
            for number, settings in roads.items()
            for setting, choices in settings.items()
        }
        stages.append(Stage(f"turn {turn}", str(1 + turn // 3), wanted))
    for prepared in (True, False):
        told = change_list(reading, rows, stages, {}, prepared)
        assert sum(len(one.changes) for one in told.setups) > 10
        assert replay(told, stages, models(rows, {}, unsaid)) == []
        for one in told.setups:
            for fault in one.faults:
                number, rest = fault.split(": ", 1)
                setting, _, choice = rest.split(": ")[0].partition(" cannot be set to ")
                assert roads[number][setting][choice] == () or "must stand at another value" in fault


def test_the_planned_day_ends_every_setup_as_planned():
    """The demo's own plan, whatever the records leave unsaid about keeping."""
    from modebook.shots.day import day_of
    from modebook.shots.planning import plan
    from modebook.shots.reading import read_shots

    reading = opened("ossilby-pier")
    shots = read_shots(CATALOG / "rigs" / "ossilby-pier" / "shots.csv", reading)
    made = plan(reading, shots)
    day = day_of(reading, made)
    assert day.disagreements == ()
    rows = {some[0].unit.number: some for some in patched_units(reading).rows.values()}
    for unsaid in KEEPING:
        for way in ("until power off", "stored"):
            assert replay(day.changes, day.stages, models(rows, made.start, unsaid, way)) == []
    # Every figure that can be counted by hand from the list of shots: the setups that it names.
    assert len(day.changes.setups) == len(shots.setups)
