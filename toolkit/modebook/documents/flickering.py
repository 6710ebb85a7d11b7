"""A fixture's modulation frequencies as the response engine takes them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from modebook.documents.fixture import Fixture

if TYPE_CHECKING:
    from modebook.response.modulation import Modulation, Waveform


def modulations_of(
    fixture: Fixture, waveform: Waveform = "pwm", duty: float = 0.5, depth: float = 1.0
) -> list[tuple[str, Modulation]]:
    """Every choice of a modulation frequency whose figure is recorded, with its label, in the record's order.

    The duty is what the light's level makes of it, which no record tells: it is the caller's.
    """
    from modebook.response.modulation import Modulation

    return [
        (
            f"{choice.label or choice.key}{' (factory)' if choice.factory else ''}",
            Modulation(waveform, choice.frequency_hz, duty, depth),
        )
        for setting in fixture.settings
        if setting.setting == "modulation-frequency"
        for choice in setting.choices
        if choice.frequency_hz is not None
    ]
