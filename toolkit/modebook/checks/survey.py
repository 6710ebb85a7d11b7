"""One pass over a mode's parameters that tells every rule where something may be wrong."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Set
from typing import Any

from modebook.documents.modes import Parameter, Span
from modebook.words.inherent import NOT_FOR_DMX, PARAMETER_HAZARDS

_HAZARDOUS = frozenset(word for word, hazard in PARAMETER_HAZARDS.items() if hazard in NOT_FOR_DMX)
_OF_RANGES = frozenset({"parameter", "span", "position", "sets", "needs", "hazard", "for_", "source"})
"""What a range may carry that some rule looks at, besides its ends; most ranges have none of it."""

_LISTS = (
    "conditional",
    "conditioned",
    "defaults_to_judge",
    "in_pieces",
    "naming",
    "positioned",
    "ranges_to_judge",
    "raw",
)
_SELDOM = frozenset({"key", "default", "when", "for_", "source"})

WholeSpan = tuple[float, float, str, bool, int]
"""A span over all of a parameter's values: from, to, unit, raw, and the slots that it lies on."""


class Survey:
    """What stands where in a mode; lists hold indexes into the parameters as written.

    A catalog has far more parameters than faults, so a rule begins with the list that concerns it, and in a
    sound mode finds it empty. What a list names may still turn out to be sound.
    """

    __slots__ = (
        "bytes_are_exact",
        "conditional",
        "conditioned",
        "defaults_to_judge",
        "fitted",
        "hazardous",
        "in_pieces",
        "names",
        "naming",
        "pieced",
        "positioned",
        "ranged",
        "ranges_to_judge",
        "raw",
        "sets",
        "sources",
        "spanned",
        "whole",
        "words",
    )

    def __init__(self, written: list[Parameter], footprint: int | None) -> None:
        """Survey the parameters; `footprint` is None where cells or parts ask for a full layout."""
        self.words: dict[str, list[int]] = {}
        """Indexes of the parameters by their word."""
        self.names: set[str] = set()
        """What conditions and `for` call the parameters; fewer than these where two share a name."""
        self.ranged: list[int] = []
        """Parameters with ranges."""
        self.ranges_to_judge: list[int] = []
        """Parameters whose ranges don't follow each other from 0 to full scale."""
        self.defaults_to_judge: list[int] = []
        """Parameters with a default that the survey does not find within scale and ranges."""
        self.conditional: list[int] = []
        """Parameters with `when`."""
        self.conditioned: list[int] = []
        """Parameters with conditions: `when`, or `needs` on a range."""
        self.naming: list[int] = []
        """Parameters with `for`, of their own or on a range."""
        self.positioned: list[int] = []
        """Parameters with a wheel position on a range."""
        self.sets: dict[str, list[tuple[int, int, str | Span]]] = {}
        """By setting: index of the parameter, index of its range, and what it sets: a choice, or a span."""
        self.whole: dict[str, list[WholeSpan]] = {}
        """By word: the spans of parameters that have one over all their values and none on a range."""
        self.in_pieces: list[int] = []
        """Parameters with spans on ranges, or with several."""
        self.pieced: set[str] = set()
        """Their words, and all that ranges name."""
        self.raw: list[int] = []
        """Parameters with a raw span of their own."""
        self.spanned: list[int] = []
        """Parameters with a span, of their own or on a range."""
        self.hazardous: list[int] = []
        """Parameters that are a hazard not for DMX512, or have such a range."""
        self.sources: set[str] = set()
        """The source keys that parameters, ranges and spans name."""
        self.fitted: set[tuple[str, str]] = set()
        """The words of `whole`, each with the units of its spans."""
        used: list[int] = []
        words, names, sources, ranged = self.words, self.names, self.sources, self.ranged
        # This loop runs over every parameter and range of a catalog. The models answer each attribute several
        # times slower than their own dictionaries do; those of a stand-in (documents/quick.py) lack what is
        # not written, so what is seldom there is asked for together.
        for index, parameter in enumerate(written):
            fields = parameter.__dict__
            slots, word = fields["slots"], fields["parameter"]
            used += slots
            if word in words:
                words[word].append(index)
            else:
                words[word] = [index]
            if _SELDOM.isdisjoint(fields):
                names.add(word)
                default = None
            else:
                get = fields.get
                names.add(get("key") or word)
                default = get("default")
                if get("when") is not None:
                    self.conditional.append(index)
                    self.conditioned.append(index)
                if get("for_") is not None:
                    self.naming.append(index)
                source = get("source")
                if source is not None:
                    sources.add(source)
            if word in _HAZARDOUS:
                self.hazardous.append(index)
            span = fields.get("span")
            ranges = fields.get("ranges")
            if ranges:
                ranged.append(index)
                following = 0
                pieced = False
                for at, piece in enumerate(ranges):
                    if type(piece) is dict:
                        of_piece = told = piece
                    else:
                        of_piece, told = piece.__dict__, piece.__pydantic_fields_set__
                    following = of_piece["to"] + 1 if of_piece["from_"] == following else -1
                    if not _OF_RANGES.isdisjoint(told):
                        pieced |= of_piece.get("span") is not None
                        self._range(index, at, of_piece, _OF_RANGES.intersection(told))
                if pieced:
                    self._pieced(index, parameter)
                elif span is not None:
                    self._whole(index, parameter, span)
                if following != 256 ** len(slots):
                    self.ranges_to_judge.append(index)
                    if default is not None or fields.get("coarse_default") is not None:
                        self.defaults_to_judge.append(index)
                elif default is not None and default >= following:
                    self.defaults_to_judge.append(index)
                continue
            if span is not None:
                self._whole(index, parameter, span)
            if default is not None and default >= 256 ** len(slots):
                self.defaults_to_judge.append(index)
        count = len(used)
        self.bytes_are_exact: bool = (
            count == footprint and len(set(used)) == count and (count == 0 or max(used) == count)
        )
        """Whether the bytes are exactly those from 1 to the footprint, each used once."""

    def _whole(self, index: int, parameter: Parameter, span: Span | list[Span]) -> None:
        if isinstance(span, list):
            self._pieced(index, parameter)
            return
        self.spanned.append(index)
        of_parameter, fields = parameter.__dict__, span.__dict__
        entry = (fields["from_"], fields["to"], fields["unit"], fields["raw"], len(of_parameter["slots"]))
        word = of_parameter["parameter"]
        if word in self.whole:
            self.whole[word].append(entry)
        else:
            self.whole[word] = [entry]
        self.fitted.add((word, fields["unit"]))
        if fields["raw"]:
            self.raw.append(index)
        if fields["source"] is not None:
            self.sources.add(fields["source"])

    def _pieced(self, index: int, parameter: Parameter) -> None:
        self.spanned.append(index)
        self.in_pieces.append(index)
        self.pieced.add(parameter.parameter)
        span = parameter.span
        own = span if isinstance(span, list) else [] if span is None else [span]
        if any(one.raw for one in own):
            self.raw.append(index)
        self.sources.update(one.source for one in own if one.source is not None)

    def _range(self, index: int, at: int, fields: Mapping[str, Any], told: Set[str]) -> None:
        for name in told:
            value = fields[name]
            if value is None:
                continue
            if name == "sets":
                for setting, to in value.items():
                    if setting in self.sets:
                        self.sets[setting].append((index, at, to))
                    else:
                        self.sets[setting] = [(index, at, to)]
            elif name == "span":
                spans = value if isinstance(value, list) else (value,)
                self.sources.update(one.source for one in spans if one.source is not None)
            elif name == "needs":
                _once(self.conditioned, index)
            elif name == "for_":
                _once(self.naming, index)
            elif name == "position":
                _once(self.positioned, index)
            elif name == "source":
                self.sources.add(value)
            elif name == "parameter":
                self.pieced.add(value)
                if value in _HAZARDOUS:
                    _once(self.hazardous, index)
            elif value in NOT_FOR_DMX:
                _once(self.hazardous, index)

    def facts(self) -> Iterator[str]:
        """What rules ask a whole document for before they look: its words, and what there is of lists."""
        yield from self.words
        yield from self.pieced
        for name in _LISTS:
            if getattr(self, name):
                yield name


def _once(indexes: list[int], index: int) -> None:
    """Add an index unless it was the last one: a parameter may come up once for each of its ranges."""
    if not indexes or indexes[-1] != index:
        indexes.append(index)
