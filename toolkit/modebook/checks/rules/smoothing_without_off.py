"""smoothing-without-off: smoothing has choices, and none of them switches it off."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._smoothing import is_off, length_of, set_continuously
from modebook.checks.rules._text import number, together
from modebook.documents.settings import Choice


def faults_in_mode(
    reading: FixtureReading, mode: ModeReading, throw_m: float | None = None
) -> Sequence[Fault]:
    """The smoothings of the fixture without a choice that is off: the same in every mode."""
    return check(reading)


def check(reading: FixtureReading) -> Sequence[Fault]:
    """The smoothings of a fixture without a choice that is off."""
    found: list[Fault] = []
    for setting, pointer in reading.smoothings:
        if setting.setting != "smoothing" or not setting.choices:
            continue
        if any(is_off(choice) for choice in setting.choices):
            continue
        if any(min(span.from_, span.to) <= 0 for span in set_continuously(setting, reading.modes)):
            continue
        lengths = {choice.key: length_of(choice)[0] for choice in setting.choices}
        unknown = [key for key, length in lengths.items() if length is None]
        figure: dict[str, object] = {"setting": setting.key, "choices": list(lengths), "unknown": unknown}
        if unknown:
            said = (
                f"no choice of {setting.key} is known to be off: {together(unknown)} has no recorded length"
            )
            if len(unknown) > 1:
                said = said.replace(" has no", " have no")
            help_ = "if the source says that one is off, give it a length of 0 packets"
            found.append(Fault(f"{pointer}/choices", said, figure, help_, "info"))
        else:
            said = f"{setting.key} cannot be switched off: its choices are {_told(setting.choices)}"
            help_ = "use the shortest, and let cues that must snap lead by its length"
            found.append(Fault(f"{pointer}/choices", said, figure, help_))
    return found


def _told(choices: Sequence[Choice]) -> str:
    return together([f"{choice.key} ({_length(choice)})" for choice in choices])


def _length(choice: Choice) -> str:
    length = length_of(choice)[0]
    parts = [] if length is None else length.durations
    return " up, ".join(
        f"{number(one.packets)} packet{'' if one.packets == 1 else 's'}"
        if one.packets is not None
        else f"{number(one.seconds or 0)} s"
        for one in parts
    ) + (" down" if len(parts) > 1 else "")


def _example(shortest: int) -> dict[str, object]:
    return {
        "settings": [
            {
                "key": "smoothing",
                "setting": "smoothing",
                "source": "guide",
                "choices": [
                    {"key": "short", "length": {"packets": shortest}},
                    {"key": "long", "length": {"packets": 8}},
                ],
                "ways": [{"by": "rdm", "pid": "0x8001", "size": 1, "values": {"short": 0, "long": 1}}],
            }
        ]
    }


RULE: Rule[FixtureReading] = Rule(
    name="smoothing-without-off",
    severity="warning",
    summary="Smoothing has choices, and none of them switches it off.",
    checks=(
        "Each smoothing with choices: that one of them has a length of zero, measured or printed, or that "
        "a slot sets the length continuously down to zero. Where a length is unknown, that choice may be "
        "off: this is said for information, and not guessed."
    ),
    why=(
        "A flash, a lightning or a cue on a cut wants the light at once. A fixture that always smooths is "
        "late for it, and its pixels smear."
    ),
    bad=Example("The shortest choice still looks at two packets.", _example(2)),
    good=Example("The shortest choice is off.", _example(0)),
    references=("common practice, no source",),
    check=check,
)
