"""smoothing-unreachable: a smoothing choice that no way leads to."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._smoothing import reached, reaches_all
from modebook.checks.rules._text import together
from modebook.documents.settings import Setting


def faults_in_mode(
    reading: FixtureReading, mode: ModeReading, throw_m: float | None = None
) -> Sequence[Fault]:
    """The choices that neither a slot of this mode nor any other way leads to."""
    return _faults(reading, (mode,), "in this mode no way leads there")


def check(reading: FixtureReading) -> Sequence[Fault]:
    """The choices that no way leads to, in any mode."""
    return _faults(reading, reading.modes, "no way leads there in any mode")


def _faults(reading: FixtureReading, modes: Iterable[ModeReading], so: str) -> Sequence[Fault]:
    found: list[Fault] = []
    for setting, pointer in reading.smoothings:
        if len(setting.choices) == 1 and setting.choices[0].factory and not setting.ways:
            continue  # built in, and nothing to choose
        if reaches_all(setting):
            continue
        there = reached(setting, modes)
        left = [choice.key for choice in setting.choices if choice.key not in there]
        if left and len(left) == len(setting.choices):
            found.append(_fault(pointer, f"{setting.key} has {together(left)}, but {so}", setting, left))
            continue
        for index, choice in enumerate(setting.choices):
            if choice.key in left:
                said = f"{setting.key} has {choice.key}, but {so}"
                found.append(_fault(f"{pointer}/choices/{index}", said, setting, [choice.key]))
    return found


def _fault(pointer: str, said: str, setting: Setting, left: list[str]) -> Fault:
    return Fault(pointer, said, {"setting": setting.key, "choices": left}, _HELP)


_HELP = (
    "record how it is set: a range with `sets`, the value over RDM, or the menu path; or take the choice out"
)


def _example(values: dict[str, int]) -> dict[str, object]:
    return {
        "settings": [
            {
                "key": "smoothing",
                "setting": "smoothing",
                "source": "guide",
                "choices": [
                    {"key": "off", "length": {"packets": 0}},
                    {"key": "on", "length": {"packets": 4}},
                ],
                "ways": [{"by": "rdm", "pid": "0x8001", "size": 1, "values": values}],
            }
        ]
    }


RULE: Rule[FixtureReading] = Rule(
    name="smoothing-unreachable",
    severity="warning",
    summary="A smoothing choice that no way leads to.",
    checks=(
        "Each choice of each smoothing: that a range of some mode sets it, that a way over RDM has a value "
        "for it, or that a menu, app or page reaches it. A slot that sets the length continuously leads to "
        "the choices within its span. A single factory choice without any way is smoothing that is built "
        "in."
    ),
    why=(
        "Planning would ask for a choice that nobody can set; mostly a line of the control slot or of the "
        "menu was not recorded."
    ),
    bad=Example("RDM has a value for one of the two choices.", _example({"off": 0})),
    good=Example("RDM has a value for both.", _example({"off": 0, "on": 1})),
    references=("common practice, no source",),
    check=check,
)
