"""Which smoothing a unit has: as rig.json says it is set, as its mode's slot gives it, else the factory's."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from modebook.checks.reading import ModeReading
from modebook.documents.responding import smoothing_of
from modebook.documents.settings import Choice, Setting
from modebook.response.errors import ResponseError
from modebook.rig.delays import half_way_delays_s
from modebook.rig.reading import PatchedRow, RigReading
from modebook.words.parameters import PARAMETERS

Because = Literal["rig.json", "slot", "factory", "unknown"]

FAMILIES = ("intensity", "color", "movement", "beam", "image")
"""The families of parameters that smoothing acts on, in the order in which they are compared."""


@dataclass(frozen=True, slots=True)
class InEffect:
    """A smoothing setting of a unit, and the choice that it has."""

    setting: Setting
    choice: Choice | None
    """None where nobody says which of its choices it has."""
    because: Because


@dataclass(frozen=True, slots=True)
class Delay:
    """How far one family of a unit's parameters runs behind its packets."""

    rise_s: float
    fall_s: float


def in_effect(row: PatchedRow) -> list[InEffect]:
    """The smoothings that a row's unit has, those aside of which a source says that there are none.

    What rig.json says of the unit goes first, then a slot of the mode at its printed default, then the
    factory's choice. The order is that of certainty: rig.json tells of the unit itself.
    """
    if row.fixture is None or row.mode is None:
        return []
    known = row.known.settings if row.known else {}
    found: list[InEffect] = []
    for setting, _ in row.fixture.smoothings:
        choices = {choice.key: choice for choice in setting.choices}
        told = choices.get(known.get(setting.key, ""))
        if told is not None:
            found.append(InEffect(setting, told, "rig.json"))
            continue
        by_slot = choices.get(_at_default(row.mode, setting) or "")
        if by_slot is not None:
            found.append(InEffect(setting, by_slot, "slot"))
        else:
            found.append(InEffect(setting, setting.factory, "factory" if setting.factory else "unknown"))
    return found


def delays(reading: RigReading, row: PatchedRow) -> Mapping[str, Delay | None]:
    """The delay of each family of parameters that the unit's mode has; None where it is not known.

    A fixture that a source calls free of smoothing has none. Where smoothing is recorded and its source
    says what it acts on, another family is unknown, not free.
    """
    if row.fixture is None or row.mode is None:
        return {}
    line_hz = line_rate_hz(reading, row)
    present = _families(row.mode)
    settings = in_effect(row)
    if not settings:
        free = bool(row.fixture.smoothing)
        return {family: Delay(0.0, 0.0) if free else None for family in present}
    return {
        family: _sum(
            [one for one in settings if not one.setting.acts_on or family in one.setting.acts_on], line_hz
        )
        for family in present
    }


def line_rate_hz(reading: RigReading, row: PatchedRow) -> float:
    """How many packets a second the unit hears: the gateway's rate where there is one, else the desk's."""
    address = row.unit.address
    gateway_hz = reading.link(address.universe).gateway_hz if address else None
    return gateway_hz or reading.rig.refresh_hz


def delay_of(choice: Choice, line_hz: float) -> Delay | None:
    """The delay of one choice; None where its length is not known, or beyond what the engine takes."""
    try:
        told = smoothing_of(choice)
        if not told.known:
            return None
        return Delay(*half_way_delays_s(told.smoothing, line_hz))
    except ResponseError:
        return None


def _sum(settings: list[InEffect], line_hz: float) -> Delay | None:
    if not settings:
        return None
    rise_s = fall_s = 0.0
    for one in settings:
        delay = delay_of(one.choice, line_hz) if one.choice else None
        if delay is None:
            return None
        rise_s, fall_s = rise_s + delay.rise_s, fall_s + delay.fall_s
    return Delay(rise_s, fall_s)


def _families(mode: ModeReading) -> list[str]:
    present = {PARAMETERS[word].family for word in mode.survey.words}
    return [family for family in FAMILIES if family in present]


def _at_default(mode: ModeReading, setting: Setting) -> str | None:
    """The choice that a slot of the mode gives at its printed default; None where it gives none."""
    for index, at, to in mode.survey.sets.get(setting.key, ()):
        parameter = mode.written[index]
        piece = parameter.ranges[at]
        default = parameter.default
        if isinstance(to, str) and default is not None and piece.from_ <= default <= piece.to:
            return to
    return None
