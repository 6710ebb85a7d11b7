"""mode-number-twice: two modes have one personality number, and nothing tells them apart."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading
from modebook.checks.rule import Example, Rule
from modebook.documents.modes import Mode


def check(reading: FixtureReading) -> Sequence[Fault]:
    """The modes whose number another one has before them."""
    numbers = [mode.number for mode in reading.fixture.modes if mode.number is not None]
    if len(set(numbers)) == len(numbers):
        return ()
    found: list[Fault] = []
    seen: dict[int, list[tuple[int, Mode]]] = {}
    for index, mode in enumerate(reading.fixture.modes):
        if mode.number is None:
            continue
        for first, other in seen.get(mode.number, []):
            # One name and one number is told by duplicate-key-name.
            if mode.name != other.name and not told_apart(mode, other):
                found.append(
                    Fault(
                        f"/modes/{index}/number",
                        f"the modes {other.name} and {mode.name} both have number {mode.number}",
                        {"number": mode.number, "other": f"/modes/{first}"},
                        "correct one of them, or give both the menu state (`given`) that decides between "
                        "them",
                    )
                )
                break
        seen.setdefault(mode.number, []).append((index, mode))
    return found


def told_apart(mode: Mode, other: Mode) -> bool:
    """Whether two modes are told apart by their menu states, or by the sources that they were read from."""
    by_state = mode.given is not None and other.given is not None and mode.given != other.given
    by_source = mode.source is not None and other.source is not None and mode.source != other.source
    return by_state or by_source


def _example(number: int) -> dict[str, object]:
    return {
        "modes": [
            {"name": "Basic", "number": 1, "parameters": [{"parameter": "dimmer", "slots": [1, 2]}]},
            {"name": "Color", "number": number, "parameters": [{"parameter": "red", "slots": [1]}]},
        ]
    }


RULE: Rule[FixtureReading] = Rule(
    name="mode-number-twice",
    severity="error",
    summary="Two modes have one personality number, and nothing tells them apart.",
    checks=(
        "The personality numbers of the modes. A number may stand twice where each of the two names the menu "
        "state that decides, or where the two were read from different sources (firmware versions)."
    ),
    why="RDM sets a mode by its number alone: one that stands twice sends a unit into the wrong footprint.",
    bad=Example("Both modes are number 1.", _example(1)),
    good=Example("Each mode has its number.", _example(2)),
    references=("ANSI E1.20, DMX_PERSONALITY: one number for each personality",),
    check=check,
)
