"""Which way leads to which choice of a setting, in which mode: slot ways are derived, never typed twice."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from modebook.documents.fixture import Fixture
from modebook.documents.layout import all_parameters
from modebook.documents.modes import Condition, Mode, Parameter, Range, Span
from modebook.documents.settings import Setting, Way

By = Literal["slot", "rdm", "menu", "app", "page"]
SmoothingBy = Literal["slot", "rdm", "menu", "app", "page", "none", "unknown"]

REMOTE: frozenset[str] = frozenset({"slot", "rdm"})
"""The ways that need no hand on the fixture."""


@dataclass(frozen=True, slots=True)
class SlotWay:
    """A range of a mode that changes a setting."""

    setting: str
    choice: str | None
    """The choice that it leads to; None where it sets a value continuously (`span`)."""
    span: Span | None
    parameter: Parameter
    piece: Range
    pointer: str
    """JSON pointer of the range."""

    @property
    def needs(self) -> list[Condition]:
        """What must be so first: the range's own conditions and those under which its parameter exists."""
        return [*(self.parameter.when or ()), *(self.piece.needs or ())]


def slot_ways(mode: Mode, pointer: str = "") -> list[SlotWay]:
    """The ways by slot that a mode offers, in the order of its ranges. `pointer` is the mode's own."""
    found: list[SlotWay] = []
    for parameter, at in all_parameters(mode, pointer):
        for index, piece in enumerate(parameter.ranges):
            if piece.sets is None:
                continue
            where = f"{at}/ranges/{index}"
            for setting, to in piece.sets.items():
                choice = to if isinstance(to, str) else None
                span = None if isinstance(to, str) else to
                found.append(SlotWay(setting, choice, span, parameter, piece, where))
    return found


def reached_by(way: Way, setting: Setting) -> list[str]:
    """The keys of the choices that a way other than a slot reaches."""
    if way.values is not None:
        return [choice.key for choice in setting.choices if choice.key in way.values]
    if way.by == "rdm":
        return []
    if way.choices is not None:
        return [choice.key for choice in setting.choices if choice.key in way.choices]
    return [choice.key for choice in setting.choices]


def is_smoothing(setting: Setting) -> bool:
    """Whether a setting decides how much a fixture smooths.

    Settings of that kind do, and others of which a choice carries a length (a curve that bundles a lag).
    """
    return setting.setting == "smoothing" or any(choice.length is not None for choice in setting.choices)


def smoothing_settings(fixture: Fixture) -> list[Setting]:
    """The settings that decide how much a fixture smooths, those that say `none` included."""
    return [setting for setting in fixture.settings if is_smoothing(setting)]


def smoothing_by(fixture: Fixture, mode: Mode) -> list[SmoothingBy]:
    """How smoothing can be changed in a mode: slot, rdm, menu, app, page, in this order.

    ``["none"]``: a source says that there is no smoothing. ``["unknown"]``: nothing is recorded, or a
    smoothing is recorded without any way to change it. RDM counts only with its values.
    """
    settings = smoothing_settings(fixture)
    wanted = {setting.key for setting in settings if not setting.none}
    if not wanted:
        return ["none"] if settings else ["unknown"]
    found: set[str] = set()
    if any(way.setting in wanted for way in slot_ways(mode)):
        found.add("slot")
    for setting in settings:
        for way in setting.ways:
            if way.by != "rdm" or way.values:
                found.add(way.by)
    order: tuple[SmoothingBy, ...] = ("slot", "rdm", "menu", "app", "page")
    return [by for by in order if by in found] or ["unknown"]
