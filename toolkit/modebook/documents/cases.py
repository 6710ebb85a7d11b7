"""Fades to be answered side by side: plain figures, or a fixture's mode with the choices that it offers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from modebook.documents.bits import bits
from modebook.documents.fixture import Fixture
from modebook.documents.modes import Mode
from modebook.documents.responding import (
    factory_curve,
    parameter_named,
    reached,
    smoothing_for,
    smoothing_of,
)
from modebook.documents.settings import Choice, Setting

if TYPE_CHECKING:
    from modebook.response.fade import Fade
    from modebook.response.smoothing import Smoothing


@dataclass(frozen=True, slots=True)
class Case:
    """One fade of several that are compared."""

    label: str
    fade: Fade
    assumed: tuple[str, ...] = ()
    """What had to be taken for granted beside what the engine says."""
    known: bool = True
    """Whether the smoothing's length is known; where not, the answer is a range."""
    choice: str | None = None
    """The key of a fixture's choice."""
    reached_by: tuple[str, ...] = ()
    """The ways that lead to that choice in the mode."""

    def answered(self) -> dict[str, Any]:
        """The answer for JSON: the engine's keys, its figures as ranges where the length is unknown."""
        from modebook.response.fade import answer, answers_over, range_over

        told = answer(self.fade).to_dict() if self.known else range_over(answers_over(self.fade))
        told["assumptions"] = [*told["assumptions"], *self.assumed]
        told["label"] = self.label
        if self.choice is not None:
            told["choice"] = self.choice
            told["reached_by"] = list(self.reached_by)
        return told


class CaseError(ValueError):
    """A mode, parameter or choice that a fixture does not have, with the names that it has."""

    def __init__(self, what: str, name: str, names: Sequence[str]) -> None:
        self.what, self.name, self.names = what, name, list(names)
        known = ", ".join(self.names) if self.names else "none"
        asked = f"there is no {what} {name!r}" if name else f"which {what}?"
        super().__init__(f"{asked}; there are {known}" if name else f"{asked} There are {known}")


def plain_cases(fade: Fade, resolutions: Sequence[int], smoothings: Sequence[Smoothing]) -> list[Case]:
    """Every resolution with every smoothing, in that order."""
    from modebook.response.fade import Fade as _Fade

    assert isinstance(fade, _Fade)
    found: list[Case] = []
    for resolution in resolutions:
        for smoothing in smoothings:
            told = [f"{resolution} bits"] if len(resolutions) > 1 or len(smoothings) < 2 else []
            told += [smoothing_told(smoothing)] if len(smoothings) > 1 or smoothing.method != "none" else []
            made = replace(fade, bits=resolution, smoothing=smoothing)
            found.append(Case(", ".join(told), made, known=not smoothing.unknown))
    return found


def smoothing_told(smoothing: Smoothing) -> str:
    """A smoothing in a few words: ``average over 2 packets``."""
    if smoothing.method == "none" or smoothing.packets == 0 or smoothing.length_s == 0:
        return "no smoothing"
    if smoothing.packets is not None:
        length = f"{smoothing.packets:g} packet{'s' * (smoothing.packets != 1)}"
    elif smoothing.length_s is not None:
        length = f"{smoothing.length_s:g} s"
    else:
        length = "an unknown length"
    return {
        "average": f"average over {length}",
        "interpolate": f"lines between packets, {length} behind",
        "lag": f"lag with a time constant of {length}",
        "limit": f"rate limited, {length} over full scale",
        "restart": f"a new ramp of {length} at each packet",
    }[smoothing.method]


def mode_named(fixture: Fixture, name: str | None) -> Mode:
    """A mode by its name or number, letter case aside; the only one where no name is given."""
    names = [mode.name for mode in fixture.modes]
    if name is None:
        if len(fixture.modes) == 1:
            return fixture.modes[0]
        raise CaseError("mode", "", names)
    wanted = name.strip().casefold()
    found = [mode for mode in fixture.modes if mode.name.casefold() == wanted]
    found = found or [mode for mode in fixture.modes if str(mode.number) == wanted]
    if len(found) != 1:
        raise CaseError("mode", name, names)
    return found[0]


def fixture_cases(
    fade: Fade,
    fixture: Fixture,
    mode: Mode,
    parameter: str = "dimmer",
    choices: Sequence[str] = (),
    keep_curve: bool = False,
) -> list[Case]:
    """A fade under the choices of a fixture's smoothing, all of them where none is named.

    Bits come from the parameter, lengths and methods from the choices, the curve from the factory's unless
    `keep_curve`. A fixture without a recorded smoothing gives one case of unknown length, one with none
    a case without smoothing. Raises CaseError for a name that it does not have.
    """
    from modebook.documents.responding import parameter_names

    found = parameter_named(mode, parameter)
    if found is None or not found.slots:
        raise CaseError("parameter", parameter, parameter_names(mode))
    assumed: list[str] = []
    fade = replace(fade, bits=bits(found))
    if not keep_curve and found.parameter == "dimmer":
        curve, said = factory_curve(fixture)
        assumed.append(said)
        if curve is not None:
            fade = replace(fade, curve=curve)
    offered = [(setting, choice) for setting in smoothing_for(fixture, found) for choice in setting.choices]
    wanted = _wanted(offered, choices)
    if not wanted:
        return [_without_choices(fade, fixture, tuple(assumed))]
    return [_case(fade, setting, choice, mode, tuple(assumed)) for setting, choice in wanted]


def _wanted(offered: list[tuple[Setting, Choice]], choices: Sequence[str]) -> list[tuple[Setting, Choice]]:
    if not choices:
        return offered
    found: list[tuple[Setting, Choice]] = []
    for name in choices:
        told = name.casefold()
        same = [pair for pair in offered if told in (pair[1].key, (pair[1].label or "").casefold())]
        if not same:
            raise CaseError("choice", name, [choice.key for _, choice in offered])
        found.extend(same)
    return found


def _without_choices(fade: Fade, fixture: Fixture, assumed: tuple[str, ...]) -> Case:
    from modebook.documents.ways import smoothing_settings
    from modebook.response.smoothing import OFF, Smoothing

    recorded = smoothing_settings(fixture)
    if recorded and all(setting.none for setting in recorded):
        return Case("no smoothing, says the source", replace(fade, smoothing=OFF), assumed)
    said = "nothing is recorded about smoothing on this parameter: taken as an average of unknown length"
    return Case(
        "smoothing unknown", replace(fade, smoothing=Smoothing("average")), (*assumed, said), known=False
    )


def _case(fade: Fade, setting: Setting, choice: Choice, mode: Mode, assumed: tuple[str, ...]) -> Case:
    made = smoothing_of(choice)
    label = choice.label or choice.key
    told = f"{label} ({smoothing_told(made.smoothing)}{', factory' if choice.factory else ''})"
    return Case(
        told,
        replace(fade, smoothing=made.smoothing),
        (*assumed, *made.assumed),
        made.known,
        choice.key,
        tuple(reached(setting, choice, mode)),
    )
