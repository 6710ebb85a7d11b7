"""Smoothing that a unit is known to be set to, against the policy: its factory choice no longer counts."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from modebook.checks.finding import Fault
from modebook.checks.reading import FixtureReading
from modebook.checks.rules._smoothing import length_of, packets_of
from modebook.checks.rules._text import number, wanted

SLOW = "slow-by-default"


def with_known(reading: FixtureReading, known: Mapping[str, str], faults: Sequence[Fault]) -> list[Fault]:
    """The faults of slow-by-default for a unit of which rig.json knows some settings (choices by setting).

    A factory choice that was changed is no fault; a known choice that is itself too long is one, and says
    so. A choice that the record lacks changes nothing.
    """
    kept: list[Fault] = []
    of_factory = {str(fault.figure.get("setting")): fault for fault in faults}
    for setting, pointer in reading.smoothings:
        choice = next((one for one in setting.choices if one.key == known.get(setting.key)), None)
        fault = of_factory.pop(setting.key, None)
        if choice is None:
            kept += [fault] if fault else []
            continue
        length, measured = length_of(choice)
        limit, refresh = reading.limits["factory-smoothing"], reading.limits["assumed-refresh"]
        packets = 0.0 if length is None else packets_of(length, refresh.value)
        if packets <= limit.value * (1 + 1e-9):
            continue
        figure: dict[str, object] = {
            "setting": setting.key,
            "choice": choice.key,
            "length_packets": packets,
            "limit_packets": limit.value,
            "measured": measured,
            "set_by": "rig.json",
        }
        said = (
            f"rig.json says that its {setting.key} is set to {choice.key}: {number(packets)} packets; "
            f"{wanted(limit.value, 'packet')}"
        )
        place = f"{pointer}/choices/{setting.choices.index(choice)}"
        help_ = (
            "nothing, if it is set so on purpose; else set a shorter one, and let cues that must snap lead"
        )
        kept.append(Fault(place, said, figure, help_, limit.severity))
    return kept + list(of_factory.values())
