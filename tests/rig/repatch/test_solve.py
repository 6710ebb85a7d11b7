"""The solver against every arrangement of small rigs, wish by wish, and on rigs whose best is plain."""

from __future__ import annotations

import builtins
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from modebook.documents.address import Address
from modebook.rig.repatch.check import faults
from modebook.rig.repatch.errors import ImpossibleError, SolverMissingError
from modebook.rig.repatch.problem import Fixed, Option, Problem, Solution, Unit, Universe
from modebook.rig.repatch.solve import Progress, solve
from rig.repatch.bruteforce import CELL, CELLS, best_values


def one(key: int, slots: int, *demands: str) -> Option:
    """A mode of one block."""
    return Option(key, (("", slots),), frozenset(demands))


def unit(name: str, universe: int, address: int, *options: Option, **more: Any) -> Unit:
    """A unit in its first mode."""
    return Unit(name, options, options[0], {"": Address(universe, address)}, **more)


def values(solution: Solution) -> dict[str, float]:
    """What each wish reached."""
    return {report.wish: report.value for report in solution.passes}


@st.composite
def _option(draw: st.DrawFn, key: int, parts: tuple[str, ...], universes: int) -> Option:
    blocks = tuple((part, CELL * draw(st.integers(1, 4))) for part in parts)
    demands = draw(st.frozensets(st.sampled_from(["fine", "remote"])))
    only = draw(st.sampled_from([None, None, None, frozenset({draw(st.integers(1, universes))})]))
    return Option(key, blocks, demands, only)


@st.composite
def problems(draw: st.DrawFn) -> Problem:
    """Rigs of at most four blocks in at most three universes of eight cells, overlaps and all."""
    count = draw(st.integers(1, 3))
    reserved = draw(st.sampled_from([0, 0, 0, 1, 2]))
    spare = CELL * draw(st.sampled_from([0, 0, 1, 2]))
    universes = tuple(Universe(n, n == reserved, spare) for n in range(1, count + 1))
    units: list[Unit] = []
    for number in range(draw(st.integers(1, 4))):
        parts = ("", "ring") if number == 0 and draw(st.booleans()) else ("",)
        options = [draw(_option(key, parts, count)) for key in range(draw(st.integers(1, 3)))]
        now = Option(options[0].key, options[0].blocks, options[0].demands)
        at = {
            part: Address(draw(st.integers(1, count)), CELL * draw(st.integers(0, CELLS - 1)) + 1)
            for part in parts
        }
        units.append(
            Unit(
                str(number),
                (now, *options[1:]),
                now,
                {} if draw(st.integers(0, 9)) == 0 else at,
                pinned=draw(st.integers(0, 5)) == 0,
                group=draw(st.sampled_from(["", "", "key"])),
                weight=draw(st.sampled_from([1, 1, 1, 2])),
                effort=draw(st.integers(0, 2)),
            )
        )
    fixed = ()
    if draw(st.booleans()):
        place = Address(draw(st.integers(1, count)), CELL * draw(st.integers(0, CELLS - 3)) + 1)
        fixed = (Fixed(place, CELL * draw(st.integers(1, 2))),)
    return Problem(tuple(units), universes, fixed, draw(st.booleans()))


@settings(max_examples=120, deadline=None, suppress_health_check=list(HealthCheck))
@given(problems())
def test_every_wish_reaches_what_trying_everything_reaches(problem: Problem) -> None:
    """Wish by wish the value is that of the exhaustive search, and proved; the impossible is said to be."""
    if any(unit.pinned and not unit.at for unit in problem.units):
        with pytest.raises(ImpossibleError):
            solve(problem)
        return
    expected = best_values(problem)
    if expected is None:
        with pytest.raises(ImpossibleError):
            solve(problem)
        return
    solution = solve(problem)
    wishes = ("demands", "moves", "universes", "footprints", "slots", "modes", "effort")
    wanted = dict(zip(wishes, expected, strict=True))
    if not problem.keep_footprints:
        del wanted["footprints"]
    assert values(solution) == wanted
    assert solution.proved
    assert solution.gap == 0
    assert list(faults(problem, solution.placings)) == []
    moved = sum(unit.weight for unit in problem.units if solution.placings[unit.id].moved(unit))
    assert moved == wanted["moves"], "what the passes count is what the addresses say"


def test_a_unit_that_grows_stays_and_its_neighbor_moves() -> None:
    """Unit 1 needs two slots more where it is: one of the two moves, and only one."""
    wide = one(1, 10, "fine")
    problem = Problem((unit("1", 1, 1, one(0, 8), wide), unit("2", 1, 9, one(0, 8))), (Universe(1),))
    solution = solve(problem)
    assert values(solution)["demands"] == 1
    assert values(solution)["moves"] == 1


def test_a_mode_that_grows_into_free_slots_moves_nobody() -> None:
    """A unit that changes mode but keeps its start address is not moved."""
    wide = one(1, 10, "fine")
    problem = Problem((unit("1", 1, 1, one(0, 8), wide), unit("2", 1, 11, one(0, 8))), (Universe(1),))
    solution = solve(problem)
    assert values(solution)["moves"] == 0
    assert solution.placings["1"].option == wide


def test_twins_weigh_as_many_as_they_are() -> None:
    """Of three twins and one other on the same slots the one other moves."""
    twins = unit("1", 1, 1, one(0, 8), weight=3)
    solution = solve(Problem((twins, unit("2", 1, 5, one(0, 8))), (Universe(1),)))
    assert values(solution)["moves"] == 1
    assert not solution.placings["1"].moved(twins)


def test_no_room_for_all_demands_grants_as_many_as_fit() -> None:
    """Three units want 256 slots each, and two such have room beside one of the old."""
    units = [unit(str(n), 1 + n // 2, 1 + 200 * (n % 2), one(0, 200), one(1, 256, "fine")) for n in range(4)]
    units.append(unit("4", 1, 401, one(0, 100)))
    solution = solve(Problem(tuple(units), (Universe(1), Universe(2))))
    assert values(solution)["demands"] == 2
    assert solution.proved


def test_moved_units_come_home_where_there_is_room() -> None:
    """A unit that must move stays in its universe rather than in one that is just as good for the wishes."""
    units = (
        unit("1", 2, 1, one(0, 8)),
        unit("2", 2, 5, one(0, 8)),
        unit("3", 1, 1, one(0, 8)),
        unit("4", 3, 1, one(0, 8)),
    )
    solution = solve(Problem(units, (Universe(1), Universe(2), Universe(3))))
    places = {name: placing.at[""].universe for name, placing in solution.placings.items()}
    assert places == {"1": 2, "2": 2, "3": 1, "4": 3}


def test_of_two_that_could_move_the_one_within_reach_does() -> None:
    """Two units on the same slots: the one that nobody can get to stays."""
    for far in ("1", "2"):
        units = (
            unit("1", 1, 1, one(0, 8), effort=4 if far == "1" else 0),
            unit("2", 1, 5, one(0, 8), effort=4 if far == "2" else 0),
        )
        solution = solve(Problem(units, (Universe(1),)))
        assert [u.id for u in units if solution.placings[u.id].moved(u)] == ["2" if far == "1" else "1"]


def test_a_group_wider_than_a_universe_is_impossible() -> None:
    """Three of 192 slots kept together are 576, whatever room there is elsewhere."""
    units = tuple(unit(str(n), n, 1, one(0, 192), group="key") for n in (1, 2, 3))
    with pytest.raises(ImpossibleError):
        solve(Problem(units, (Universe(1), Universe(2), Universe(3))))


def test_the_same_problem_gives_the_same_plan() -> None:
    """Two runs agree address by address."""
    units = [unit(str(n), 1 + n % 2, 1 + 20 * (n // 2), one(0, 20), one(1, 23, "fine")) for n in range(40)]
    problem = Problem(tuple(units), (Universe(1), Universe(2), Universe(3)))
    assert solve(problem).placings == solve(problem).placings


def test_progress_names_each_pass_and_its_figures() -> None:
    """The caller hears of every wish, in order, with a bound that no value betters."""
    heard: list[Progress] = []
    wide = one(1, 10, "fine")
    problem = Problem((unit("1", 1, 1, one(0, 8), wide), unit("2", 1, 9, one(0, 8))), (Universe(1),))
    solution = solve(problem, told=heard.append)
    order = list(dict.fromkeys(progress.wish for progress in heard))
    assert order == [report.wish for report in solution.passes]
    assert all(p.bound <= p.value for p in heard if p.wish == "moves" and p.bound is not None and p.value)


@pytest.mark.parametrize(
    ("problem", "words"),
    [
        (
            Problem(
                (unit("1", 1, 1, one(0, 8), pinned=True), unit("2", 1, 8, one(0, 8), pinned=True)),
                (Universe(1),),
            ),
            "pinned where it meets unit 1 at 1/8",
        ),
        (Problem((unit("1", 1, 510, one(0, 8), pinned=True),), (Universe(1),)), "past 512"),
        (
            Problem(
                (
                    unit("1", 1, 1, one(0, 8), pinned=True, group="key"),
                    unit("2", 2, 1, one(0, 8), pinned=True, group="key"),
                ),
                (Universe(1), Universe(2)),
            ),
            "kept together",
        ),
        (
            Problem(
                (unit("1", 1, 1, one(0, 8)),), (Universe(1, spare_slots=20),), (Fixed(Address(1, 11), 502),)
            ),
            "cannot leave 20 free slots",
        ),
        (Problem(tuple(unit(str(n), 1, 1, one(0, 200)) for n in range(3)), (Universe(1),)), "600 slots"),
        (
            Problem(
                tuple(unit(str(n), 1, 1, one(0, 300)) for n in range(2)),
                (Universe(1, True), Universe(2, True)),
            ),
            "no arrangement",
        ),
    ],
)
def test_what_cannot_be_is_said_in_one_line(problem: Problem, words: str) -> None:
    """Contradicting wishes name the unit or universe that stands in the way."""
    with pytest.raises(ImpossibleError) as error:
        solve(problem)
    assert words in str(error.value)
    assert "\n" not in str(error.value)


def test_without_the_solver_the_extra_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where HiGHS is missing the error says what to install."""
    real = builtins.__import__

    def missing(name: str, *args: Any, **more: Any) -> Any:
        if name == "highspy":
            raise ImportError(name)
        return real(name, *args, **more)

    monkeypatch.setattr(builtins, "__import__", missing)
    with pytest.raises(SolverMissingError, match=r"modebook\[repatch\]"):
        solve(Problem((unit("1", 1, 1, one(0, 8)),), (Universe(1),)))


def test_the_solver_prints_nothing(capfd: pytest.CaptureFixture[str]) -> None:
    """Standard output belongs to the answer."""
    solve(Problem((unit("1", 1, 1, one(0, 8)),), (Universe(1),)))
    assert capfd.readouterr() == ("", "")
