"""smoothing-unknown: nothing is recorded about smoothing, or a choice has no length."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._smoothing import length_of, set_continuously
from modebook.checks.rules._text import plural, together


def faults_in_mode(
    reading: FixtureReading, mode: ModeReading, throw_m: float | None = None
) -> Sequence[Fault]:
    """What is unknown of the fixture's smoothing: the same in every mode."""
    return check(reading)


def check(reading: FixtureReading) -> Sequence[Fault]:
    """What is unknown of a fixture's smoothing."""
    if not reading.smoothing:
        return [
            Fault(
                "",
                "nothing is recorded about smoothing, not even that there is none",
                {"smoothing": "unknown"},
                "look in the manual for response, fade, or smooth modes; if a source says that there is "
                "none, record a setting with `none` and its source",
            )
        ]
    found: list[Fault] = []
    for setting, pointer in reading.smoothings:
        if setting.setting != "smoothing":
            continue  # a curve that bundles a lag has it in one of its choices, and that one has its length
        if not setting.choices:
            if not set_continuously(setting, reading.modes):
                said = f"{setting.key} is recorded without any choice, so its length is unknown"
                found.append(
                    Fault(pointer, said, {"setting": setting.key}, "record its choices with their lengths")
                )
            continue
        unknown = [choice.key for choice in setting.choices if length_of(choice)[0] is None]
        if unknown:
            found.append(
                Fault(
                    pointer,
                    f"{setting.key} has {plural(len(unknown), 'choice')} of unknown length: "
                    f"{together(unknown)}",
                    {"setting": setting.key, "choices": unknown},
                    "ask the maker, or film a fade and record it as `measured`; until then the length counts "
                    "as unknown, never as zero",
                )
            )
    return found


def _example(choices: list[dict[str, object]]) -> dict[str, object]:
    return {
        "settings": [
            {
                "key": "smoothing",
                "setting": "smoothing",
                "source": "guide",
                "choices": choices,
                "ways": [{"by": "rdm", "pid": "0x8001", "size": 1, "values": {"off": 0, "on": 1}}],
            }
        ]
    }


RULE: Rule[FixtureReading] = Rule(
    name="smoothing-unknown",
    severity="warning",
    summary="Nothing is recorded about smoothing, or a choice has no length.",
    checks=(
        "That some setting tells of smoothing, be it that there is none. Then each smoothing: that it has "
        "choices or a slot that sets it continuously, and that each choice has a length, printed or "
        "measured. Zero is a length; an absent one is unknown."
    ),
    why=(
        "Smoothing decides whether a fade is smooth or a cue is late, and it cannot be told from the outside "
        "until the camera shows it. What is unknown must be tried before the day."
    ),
    bad=Example(
        "The manual calls it smooth, and says no more.",
        _example([{"key": "off", "length": {"packets": 0}}, {"key": "on"}]),
    ),
    good=Example(
        "Both lengths are printed.",
        _example([{"key": "off", "length": {"packets": 0}}, {"key": "on", "length": {"packets": 4}}]),
    ),
    references=("common practice, no source",),
    check=check,
)
