"""measured-disagrees: a measured length is not the printed one."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading, ModeReading
from modebook.checks.rule import Example, Rule
from modebook.checks.rules._smoothing import packets_of
from modebook.checks.rules._text import number
from modebook.documents.settings import Choice, Measured


def faults_in_mode(
    reading: FixtureReading, mode: ModeReading, throw_m: float | None = None
) -> Sequence[Fault]:
    """The choices whose measured length is not the printed one: the same in every mode."""
    return check(reading)


def check(reading: FixtureReading) -> Sequence[Fault]:
    """The choices of a fixture whose measured length or method is not the printed one."""
    found: list[Fault] = []
    for setting, pointer in reading.smoothings:
        for n, choice in enumerate(setting.choices):
            measured = choice.measured
            if measured is None:
                continue
            place = f"{pointer}/choices/{n}/measured"
            fault = _length(reading, place, setting.key, choice, measured) or _method(
                place, setting.key, choice, measured
            )
            if fault is not None:
                found.append(fault)
    return found


def _length(
    reading: FixtureReading, place: str, key: str, choice: Choice, measured: Measured
) -> Fault | None:
    if choice.length is None:
        return None
    assumed = reading.limits["assumed-refresh"].value
    refresh_hz = measured.refresh_hz or assumed
    printed = packets_of(choice.length, refresh_hz)
    length = packets_of(measured.length, refresh_hz)
    if choice.length.measures == "10-90" and measured.length.measures == "time constant":
        return None  # two ways to count a lag: the figures are not of one kind
    low, high = measured.interval_packets or [length, length]
    # Between packets nothing is printed: half a packet is no contradiction.
    if low - HALF_A_PACKET <= printed <= high + HALF_A_PACKET:
        return None
    return Fault(
        place,
        f"{key} at {choice.key} was measured at {number(round(length, 2))} packets "
        f"({number(round(low, 2))} to {number(round(high, 2))}); the maker says {number(round(printed, 2))}",
        {
            "setting": key,
            "choice": choice.key,
            "measured_packets": length,
            "interval_packets": [low, high],
            "printed_packets": printed,
        },
        "planning uses the measured length; measure once more with another unit, check the firmware, and ask "
        "the maker",
    )


def _method(place: str, key: str, choice: Choice, measured: Measured) -> Fault | None:
    if choice.method is None or measured.method is None or choice.method == measured.method:
        return None
    return Fault(
        place,
        f"{key} at {choice.key} was measured as {measured.method}; the record says {choice.method}",
        {
            "setting": key,
            "choice": choice.key,
            "measured_method": measured.method,
            "printed_method": choice.method,
        },
        "planning uses the measured method; check where the record's word is from",
    )


HALF_A_PACKET = 0.5


def _example(packets: float) -> dict[str, object]:
    return {
        "settings": [
            {
                "key": "smoothing",
                "setting": "smoothing",
                "source": "guide",
                "choices": [
                    {"key": "off", "length": {"packets": 0}},
                    {
                        "key": "soft",
                        "length": {"packets": 4},
                        "measured": {
                            "length": {"packets": packets},
                            "method": "average",
                            "interval_packets": [packets - 0.1, packets + 0.1],
                            "refresh_hz": 44,
                            "date": "2026-05-31",
                            "by": "A. Tester",
                        },
                    },
                ],
                "ways": [{"by": "rdm", "pid": "0x8001", "size": 1, "values": {"off": 0, "soft": 1}}],
            }
        ]
    }


RULE: Rule[FixtureReading] = Rule(
    name="measured-disagrees",
    severity="warning",
    summary="A measured smoothing is not what the maker prints.",
    checks=(
        "Each choice that has both a printed and a measured length: the printed one must lie within the "
        "measured interval, or within half a packet of it. Seconds are counted at the measurement's packets "
        "a second. Where a method is recorded and another one measured, that is told too."
    ),
    why=(
        "One of the two is wrong, or the unit that was measured has another firmware. A cue planned on the "
        "wrong one is late."
    ),
    bad=Example("Four packets are printed, eight were measured.", _example(8.0)),
    good=Example("Four are printed, and four were measured.", _example(4.0)),
    references=("half a packet: common practice, no source",),
    check=check,
)
