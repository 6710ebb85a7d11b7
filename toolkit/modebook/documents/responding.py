"""From a record to the response engine's terms: a choice's smoothing, a curve, a parameter's bits."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from modebook.documents.bits import bits
from modebook.documents.fixture import Fixture
from modebook.documents.layout import all_parameters
from modebook.documents.modes import Mode, Parameter
from modebook.documents.settings import Choice, Duration, Setting
from modebook.documents.ways import SmoothingBy, reached_by, slot_ways
from modebook.words.parameters import PARAMETERS

if TYPE_CHECKING:
    from modebook.response.curves import Curve
    from modebook.response.smoothing import Smoothing


@dataclass(frozen=True, slots=True)
class ChoiceSmoothing:
    """What a choice makes the engine compute, and what had to be taken for granted."""

    smoothing: Smoothing
    assumed: tuple[str, ...]
    """Sentences for the answer's assumptions."""
    known: bool
    """Whether a length is recorded; where not, figures are a range over plausible lengths."""


def smoothing_of(choice: Choice) -> ChoiceSmoothing:
    """The smoothing of a choice: its measured length where there is one, else the recorded one.

    A method that nobody has recorded is taken as an average, and said so.
    """
    from modebook.response.smoothing import LN_9, OFF, Smoothing

    measured = choice.measured
    length = measured.length if measured else choice.length
    method = (measured.method if measured else None) or choice.method
    label = choice.label or choice.key
    assumed: list[str] = []
    if measured:
        assumed.append(f"the length of {label} is the one measured on {measured.date} by {measured.by}")
    if choice.method == "limit" and length is None and choice.rate_percent_per_s:
        full_s = 100.0 / choice.rate_percent_per_s
        return ChoiceSmoothing(Smoothing("limit", length_s=full_s), tuple(assumed), True)
    if length is not None and length.is_off:
        return ChoiceSmoothing(OFF, tuple(assumed), True)
    if method is None:
        method = "average"
        assumed.append(f"how {label} fills in is not recorded: taken as an average")
    if length is None:
        return ChoiceSmoothing(Smoothing(method), tuple(assumed), False)
    scale = 1.0 / LN_9 if method == "lag" and length.measures == "10-90" else 1.0
    rise, *fall = (_figures(duration, scale) for duration in length.durations)
    smoothing = Smoothing(
        method,
        packets=rise[0],
        length_s=rise[1],
        fall_packets=fall[0][0] if fall else None,
        fall_length_s=fall[0][1] if fall else None,
    )
    if method == "lag" and length.measures is None:
        assumed.append(f"the length of {label} is taken as the lag's time constant")
    return ChoiceSmoothing(smoothing, tuple(assumed), True)


def _figures(duration: Duration, scale: float) -> tuple[float | None, float | None]:
    packets, seconds = duration.packets, duration.seconds
    return (
        None if packets is None else packets * scale,
        None if seconds is None else seconds * scale,
    )


def curve_of(choice: Choice) -> Curve | None:
    """The dimmer curve that a choice records, by its name or its table; None where it records none."""
    from modebook.response.curves import Curve, table

    if choice.points:
        return table([(level, light) for level, light in choice.points])
    return Curve(choice.curve) if choice.curve else None


def factory_curve(fixture: Fixture) -> tuple[Curve | None, str]:
    """The curve of a new fixture, and a sentence that says where it is from; None where nobody says."""
    for setting in fixture.settings:
        if setting.setting == "dimmer-curve" and not setting.none:
            chosen = setting.factory
            curve = curve_of(chosen) if chosen else None
            if chosen and curve:
                return curve, f"the dimmer curve is the factory's: {chosen.label or chosen.key}"
    return None, "no dimmer curve is recorded: taken as linear"


def parameter_named(mode: Mode, name: str) -> Parameter | None:
    """The parameter of a mode by its key or its word; of several, the one with most bits."""
    found = [
        parameter for parameter, _ in all_parameters(mode) if name in (parameter.key, parameter.parameter)
    ]
    return max(found, key=bits, default=None)


def parameter_names(mode: Mode) -> list[str]:
    """What `parameter_named` takes, of the parameters that fade (selectors do not)."""
    return sorted(
        {
            parameter.name
            for parameter, _ in all_parameters(mode)
            if parameter.slots and PARAMETERS[parameter.parameter].continuous
        }
    )


def reached(setting: Setting, choice: Choice, mode: Mode) -> list[SmoothingBy]:
    """The ways that lead to a choice in a mode, in the order slot, rdm, menu, app, page."""
    found: list[SmoothingBy] = []
    if any(way.setting == setting.key and way.choice in (choice.key, None) for way in slot_ways(mode)):
        found.append("slot")
    for by in ("rdm", "menu", "app", "page"):
        if any(way.by == by and choice.key in reached_by(way, setting) for way in setting.ways):
            found.append(by)
    return found


def smoothing_for(fixture: Fixture, parameter: Parameter) -> list[Setting]:
    """The smoothing settings that act on a parameter's family, or do not say on what they act."""
    from modebook.documents.ways import is_smoothing

    family = PARAMETERS[parameter.parameter].family
    return [
        setting
        for setting in fixture.settings
        if is_smoothing(setting) and not setting.none and (not setting.acts_on or family in setting.acts_on)
    ]
