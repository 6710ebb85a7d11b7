"""universe-too-slow: a universe's packet is longer than the rate of its line leaves time for."""

from __future__ import annotations

from collections.abc import Iterable

from modebook.checks.finding import Fault
from modebook.checks.rule import Example, Rule
from modebook.response.timing import RATE_ROUNDING, max_refresh_hz
from modebook.rig.reading import RigReading

_PAR = {"model": "Par", "modes": [{"name": "Wide", "number": 1, "footprint": 8, "parameters": []}]}


def check(reading: RigReading) -> Iterable[Fault]:
    """A fault for each universe that cannot be sent as often as the rig says, on its highest unit."""
    for universe in reading.universes:
        gateway_hz = reading.link(universe.number).gateway_hz
        wanted_hz = gateway_hz or reading.rig.refresh_hz
        most_hz = max_refresh_hz(universe.highest_address)
        if wanted_hz <= most_hz * (1 + RATE_ROUNDING):
            continue
        unit = universe.highest_row.unit if universe.highest_row else None
        sender = "gateway" if gateway_hz else "desk"
        yield Fault(
            "address",
            f"universe {universe.number} reaches up to address {universe.highest_address}, which a line "
            f"sends at most {most_hz:.2f} times a second, and the {sender} is said to send {wanted_hz:g}",
            {
                "universe": universe.number,
                "highest_address": universe.highest_address,
                "max_refresh_hz": round(most_hz, 3),
                "refresh_hz": wanted_hz,
                "sender": sender,
                "cost_slots": 0,
            },
            f"lower the {sender}'s rate in rig.json, or patch this universe to a lower address",
            unit=unit.number if unit else None,
            row=unit.row if unit else None,
        )


RULE = Rule(
    name="universe-too-slow",
    severity="warning",
    summary="A universe holds more slots than its rate leaves time for.",
    checks=(
        "The packet up to the highest address in use, at E1.11's shortest timing (break 92 us, mark after "
        "break 12 us, 44 us a slot), against the gateway's rate where the rig gives one, else the desk's."
    ),
    why=(
        "The line sends as often as it can, not as often as planned: smoothing that counts packets gets "
        "longer."
    ),
    bad=Example(
        "A line sends 512 slots at most 44.1 times a second.",
        {
            "fixtures": [_PAR],
            "patch": "unit,fixture,mode,address\n1,Par,Wide,1/505\n",
            "rig": {"refresh_hz": 60},
        },
    ),
    good=Example(
        "It sends 256 slots up to 87.6 times a second.",
        {
            "fixtures": [_PAR],
            "patch": "unit,fixture,mode,address\n1,Par,Wide,1/249\n",
            "rig": {"refresh_hz": 60},
        },
    ),
    references=("ANSI E1.11, timing table",),
    check=check,
)
