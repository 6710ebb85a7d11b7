"""What a fixture rule is shown: the document, and what every rule would otherwise work out again."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from modebook.checks.survey import Survey
from modebook.documents.bits import Stretch, stretches
from modebook.documents.fixture import Fixture
from modebook.documents.layout import BlockLayout, all_parameters, blocks
from modebook.documents.modes import Mode, Parameter
from modebook.documents.policy import Policy, Threshold, house_policy
from modebook.documents.settings import Setting
from modebook.documents.ways import SlotWay, slot_ways, smoothing_settings


@dataclass(slots=True)
class Continuous:
    """A stretch of a parameter that runs over a physical span, and where it stands."""

    parameter: Parameter
    pointer: str
    stretch: Stretch


class ModeReading:
    """A mode with its layout and its parameters, each worked out once and only when asked for."""

    def __init__(self, mode: Mode, pointer: str) -> None:
        self.mode = mode
        self.pointer = pointer
        self.plain = not mode.cells and not mode.parts
        """Whether all its parameters stand in the mode itself, without cells or parts."""

    @cached_property
    def written(self) -> list[Parameter]:
        """The parameters as written, once each, in the order of `parameters`."""
        if self.plain:
            return self.mode.parameters
        return [parameter for parameter, _ in self.parameters]

    @cached_property
    def survey(self) -> Survey:
        """What stands where, from one pass over the parameters."""
        return Survey(self.written, self.mode.footprint if self.plain else None)

    @cached_property
    def parameters(self) -> list[tuple[Parameter, str]]:
        """The parameters as written, once each, with their JSON pointers."""
        return list(all_parameters(self.mode, self.pointer))

    def at(self, index: int) -> tuple[Parameter, str]:
        """The parameter of an index of the survey's lists, with its JSON pointer."""
        if self.plain:
            return self.mode.parameters[index], f"{self.pointer}/parameters/{index}"
        return self.parameters[index]

    @cached_property
    def bytes_are_exact(self) -> bool:
        """Whether behind each start address every byte from 1 to the footprint is used, and used once."""
        if self.plain:
            return self.survey.bytes_are_exact
        for block in self.blocks:
            used = [slot for placed in block.placed for slot in placed.slots]
            count = len(used)
            if count != block.footprint or len(set(used)) != count or (count and max(used) != count):
                return False
        return self.mode.footprint >= sum(part.footprint for part in self.mode.parts)

    @cached_property
    def by_name(self) -> dict[str, list[Parameter]]:
        """The parameters as written, by what conditions and `for` call them."""
        found: dict[str, list[Parameter]] = {}
        for parameter in self.written:
            found.setdefault(parameter.name, []).append(parameter)
        return found

    @cached_property
    def blocks(self) -> list[BlockLayout]:
        """One layout for each start address."""
        return blocks(self.mode, self.pointer)

    @cached_property
    def by_word(self) -> dict[str, list[tuple[Parameter, str]]]:
        """The parameters as written, by the vocabulary's word."""
        found: dict[str, list[tuple[Parameter, str]]] = {}
        for parameter, pointer in self.parameters:
            found.setdefault(parameter.parameter, []).append((parameter, pointer))
        return found

    @cached_property
    def continuous(self) -> dict[str, list[Continuous]]:
        """Everything that runs over a physical span, by the word of the parameter that it controls."""
        found: dict[str, list[Continuous]] = {}
        for index in self.survey.spanned:
            parameter, pointer = self.at(index)
            for stretch in stretches(parameter):
                found.setdefault(stretch.word, []).append(Continuous(parameter, pointer, stretch))
        return found

    @cached_property
    def slot_ways(self) -> list[SlotWay]:
        """The ways by slot that the mode offers."""
        return slot_ways(self.mode, self.pointer) if self.survey.referring else []


@dataclass
class FixtureReading:
    """A fixture document as rules see it."""

    fixture: Fixture
    file: str = ""
    """Its path, as told to the person."""
    identity: str | None = None
    """Its path below fixtures/ without the ending; None where it lies outside any catalog."""
    policy: Policy = field(default_factory=house_policy)

    @cached_property
    def limits(self) -> Mapping[str, Threshold]:
        """The policy's thresholds by key."""
        return _thresholds(self.policy)

    @cached_property
    def modes(self) -> list[ModeReading]:
        """The modes, in the document's order."""
        return [ModeReading(mode, f"/modes/{i}") for i, mode in enumerate(self.fixture.modes)]

    @cached_property
    def smoothing(self) -> list[Setting]:
        """The settings that decide how much the fixture smooths, those that say `none` included."""
        return smoothing_settings(self.fixture)


def _thresholds(policy: Policy) -> Mapping[str, Threshold]:
    """A policy's thresholds by key; the last policy's are kept, since a run reads thousands under one."""
    global _last
    if _last is None or _last[0] is not policy:
        _last = (policy, {threshold.key: threshold for threshold in policy.thresholds})
    return _last[1]


_last: tuple[Policy, dict[str, Threshold]] | None = None
