"""slow-by-default: a new fixture smooths longer than the policy allows."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._coarse import limit_told
from modebook.checks.rules._smoothing import length_of, packets_of, slot_ways_to
from modebook.checks.rules._text import mode_told, number, together, wanted
from modebook.documents.settings import Choice, Length, Setting
from modebook.documents.ways import reached_by

_TOLD = {"rdm": "over RDM", "menu": "at the menu", "app": "with the app", "page": "on its network page"}


def faults_in_mode(
    reading: FixtureReading, mode: ModeReading, throw_m: float | None = None
) -> Sequence[Fault]:
    """The factory choices of the fixture that are too long; help tells the ways of this mode."""
    return _faults(reading, (mode,))


def check(reading: FixtureReading) -> Sequence[Fault]:
    """The factory choices of a fixture that are too long."""
    return _faults(reading, reading.modes)


def _faults(reading: FixtureReading, modes: Sequence[ModeReading]) -> Sequence[Fault]:
    found: list[Fault] = []
    for setting, pointer in reading.smoothings:
        factory = setting.factory
        if factory is None:
            continue
        length, measured = length_of(factory)
        if length is None:
            continue
        limit, refresh = reading.limits["factory-smoothing"], reading.limits["assumed-refresh"]
        packets = packets_of(length, refresh.value)
        if packets <= limit.value * (1 + 1e-9) or _may_be_within(factory, limit.value):
            continue
        figure: dict[str, object] = {
            "setting": setting.key,
            "choice": factory.key,
            "length_packets": packets,
            "limit_packets": limit.value,
            "measured": measured,
        }
        by = "measured" if measured else "recorded"
        said = (
            f"a new fixture has {setting.key} at {factory.key}: {number(packets)} packets, {by}; "
            f"{wanted(limit.value, 'packet')}"
        )
        if any(one.packets is None for one in length.durations):
            figure["refresh_hz"] = refresh.value
            figure["length_s"] = max(one.seconds or 0.0 for one in length.durations)
            said += f" (counted at an assumed {number(refresh.value)} packets a second)"
        shorter = _shorter(setting, limit.value, refresh.value)
        help_ = f"{_help(setting, shorter, modes)}; {limit_told(limit)}"
        place = f"{pointer}/choices/{setting.choices.index(factory)}"
        found.append(Fault(place, said, figure, help_, limit.severity))
    return found


def _may_be_within(choice: Choice, limit_packets: float) -> bool:
    """Whether the interval of a measured length reaches down to the limit: then nothing is shown."""
    measured = choice.measured
    return (
        measured is not None
        and measured.interval_packets is not None
        and min(measured.interval_packets) <= limit_packets
    )


def _shorter(setting: Setting, limit_packets: float, refresh_hz: float) -> Choice | None:
    """The longest choice within the limit: it helps where it can without being late."""
    within: list[tuple[float, Choice]] = []
    for choice in setting.choices:
        length: Length | None = length_of(choice)[0]
        if length is not None and packets_of(length, refresh_hz) <= limit_packets:
            within.append((packets_of(length, refresh_hz), choice))
    return max(within, key=lambda entry: entry[0], default=(0.0, None))[1]


def _help(setting: Setting, choice: Choice | None, modes: Sequence[ModeReading]) -> str:
    if choice is None:
        return "no other choice is known to be short enough; let cues lead by its length"
    ways = [_TOLD[way.by] for way in setting.ways if choice.key in reached_by(way, setting)]
    for mode in modes:
        way = next((one for one in slot_ways_to(setting, (mode,)) if one.choice == choice.key), None)
        if way is not None:
            ways.insert(
                0,
                f"by {way.parameter.name} ({way.piece.from_}-{way.piece.to}) in mode {mode_told(mode.mode)}",
            )
            break
    if not ways:
        return f"{choice.key} is short enough, but no way to it is recorded"
    return f"set it to {choice.key} {together(list(dict.fromkeys(ways)))}".replace(" and ", " or ")


def _example(factory: str) -> dict[str, object]:
    choices: list[dict[str, object]] = [
        {"key": "off", "length": {"packets": 0}},
        {"key": "long", "length": {"packets": 8}},
    ]
    return {
        "settings": [
            {
                "key": "smoothing",
                "setting": "smoothing",
                "source": "guide",
                "choices": [c | {"factory": True} if c["key"] == factory else c for c in choices],
                "ways": [{"by": "rdm", "pid": "0x8001", "size": 1, "values": {"off": 0, "long": 1}}],
            }
        ]
    }


RULE: Rule[FixtureReading] = Rule(
    name="slow-by-default",
    severity="warning",
    summary="A new fixture smooths longer than the policy allows.",
    checks=(
        "The factory choice of each smoothing against the policy's length (2 packets), the longer of rise "
        "and fall. A measured length goes before a printed one, and the message says which it is; one whose "
        "interval reaches down to the limit shows nothing. Seconds are counted at the policy's packets a "
        "second. A choice of unknown length cannot be judged, and a fixture whose factory choice nobody "
        "prints neither."
    ),
    why=(
        "Rental units come reset. Nobody set the smoothing on the day, and yet every cue is late and every "
        "pixel pattern smears."
    ),
    bad=Example("Eight packets out of the box.", _example("long")),
    good=Example("Off out of the box.", _example("off")),
    references=("2 packets: common practice, no source",),
    check=check,
)
