"""What a fixture rule is shown: the document, and what every rule would otherwise work out again."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property

from modebook.documents.bits import Stretch, stretches
from modebook.documents.fixture import Fixture
from modebook.documents.layout import BlockLayout, all_parameters, blocks
from modebook.documents.modes import Mode, Parameter
from modebook.documents.policy import Policy, house_policy
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
        self.parameters: list[tuple[Parameter, str]] = (
            [(parameter, f"{pointer}/parameters/{i}") for i, parameter in enumerate(mode.parameters)]
            if not mode.cells and not mode.parts
            else list(all_parameters(mode, pointer))
        )

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
        for parameter, pointer in self.parameters:
            if parameter.span is None and not parameter.ranges:
                continue
            for stretch in stretches(parameter):
                found.setdefault(stretch.word, []).append(Continuous(parameter, pointer, stretch))
        return found

    @cached_property
    def slot_ways(self) -> list[SlotWay]:
        """The ways by slot that the mode offers."""
        return slot_ways(self.mode, self.pointer)


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
    def modes(self) -> list[ModeReading]:
        """The modes, in the document's order."""
        return [ModeReading(mode, f"/modes/{i}") for i, mode in enumerate(self.fixture.modes)]

    @cached_property
    def smoothing(self) -> list[Setting]:
        """The settings that decide how much the fixture smooths, those that say `none` included."""
        return smoothing_settings(self.fixture)
