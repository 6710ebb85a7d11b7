"""What a fixture rule is shown: the document, and what every rule would otherwise work out again."""

from __future__ import annotations

from collections.abc import Mapping, Set
from dataclasses import dataclass, field
from functools import cached_property

from modebook.checks.survey import Survey
from modebook.documents.address import SLOTS_PER_UNIVERSE
from modebook.documents.bits import Stretch, stretches
from modebook.documents.fixture import Fixture
from modebook.documents.layout import BlockLayout, Holder, all_parameters, blocks
from modebook.documents.modes import Mode, Parameter
from modebook.documents.policy import Policy, Threshold, house_policy
from modebook.documents.settings import Setting
from modebook.documents.ways import SlotWay, is_smoothing, slot_ways, smoothing_settings

INEXACT = "inexact"
"""The fact that the bytes of a mode are not exactly those of its footprint; see `bytes_are_exact`."""


LONG = "long"
"""The fact that a mode runs past a universe, or is said to."""


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
        self.written = mode.parameters if self.plain else [parameter for parameter, _ in self.parameters]
        """The parameters as written, once each, in the order of `parameters`."""
        self.survey = Survey(self.written, mode.footprint if self.plain else None)
        """What stands where, from one pass over the parameters."""

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
        mode = self.mode
        own = mode.footprint - sum(part.footprint for part in mode.parts)
        holders: list[tuple[Holder, int]] = [(mode, own), *((part, part.footprint) for part in mode.parts)]
        for holder, footprint in holders:
            used = _bytes(holder)
            count = len(used)
            if count != footprint or len(set(used)) != count or (count and max(used) != count):
                return False
        return True

    @cached_property
    def by_name(self) -> dict[str, list[Parameter]]:
        """The parameters as written, by what conditions and `for` call them: a key, or a word.

        A word that no parameter has for a name stands for those of that word, whatever their keys.
        """
        found: dict[str, list[Parameter]] = {}
        for parameter in self.written:
            found.setdefault(parameter.name, []).append(parameter)
        for word, indexes in self.survey.words.items():
            if word not in found:
                found[word] = [self.written[index] for index in indexes]
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
        return slot_ways(self.mode, self.pointer) if self.survey.sets else []


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
        return _thresholds(self.policy)[0]

    @cached_property
    def figures(self) -> Mapping[str, float]:
        """The values of the policy's thresholds by key, each in its unit."""
        return _thresholds(self.policy)[1]

    @cached_property
    def choices(self) -> Mapping[str, frozenset[str]]:
        """The keys of the choices of each setting, by the setting's key."""
        return {s.key: frozenset([choice.key for choice in s.choices]) for s in self.fixture.settings}

    @cached_property
    def modes(self) -> list[ModeReading]:
        """The modes, in the document's order."""
        return [ModeReading(mode, f"/modes/{i}") for i, mode in enumerate(self.fixture.modes)]

    @cached_property
    def facts(self) -> Set[str]:
        """What its modes have at all: words, and the names of the survey's lists.

        A rule that looks for none of it has nothing to find in the whole document.
        """
        found: set[str] = set()
        for mode in self.modes:
            found.update(mode.survey.facts())
            if not mode.bytes_are_exact:
                found.add(INEXACT)
            if mode.mode.footprint > SLOTS_PER_UNIVERSE or mode.mode.continues:
                found.add(LONG)
        return found

    @cached_property
    def smoothings(self) -> list[tuple[Setting, str]]:
        """The settings that decide how much it smooths, with their pointers; not those that say none."""
        return [
            (setting, f"/settings/{index}")
            for index, setting in enumerate(self.fixture.settings)
            if not setting.none and is_smoothing(setting)
        ]

    @cached_property
    def smoothing(self) -> list[Setting]:
        """The settings that decide how much the fixture smooths, those that say `none` included."""
        return smoothing_settings(self.fixture)


_Limits = tuple[Mapping[str, Threshold], Mapping[str, float]]


def _thresholds(policy: Policy) -> _Limits:
    """A policy's thresholds and their values by key; the last policy's are kept for the next document."""
    global _last
    if _last is None or _last[0] is not policy:
        by_key = {threshold.key: threshold for threshold in policy.thresholds}
        _last = (policy, (by_key, {key: threshold.value for key, threshold in by_key.items()}))
    return _last[1]


_last: tuple[Policy, _Limits] | None = None


def _bytes(holder: Holder) -> list[int]:
    """Every byte that a mode, part or cell block uses, cells repeated: the layout without its labels."""
    used: list[int] = []
    for parameter in holder.parameters:
        used += parameter.slots
    for block in holder.cells:
        inner = _bytes(block)
        for number in range(block.count):
            before = block.first - 1 + number * block.stride
            used += [slot + before for slot in inner]
    return used
