"""One pass over a mode's parameters that tells every rule where something may be wrong."""

from __future__ import annotations

from modebook.documents.modes import Parameter
from modebook.words.inherent import NOT_FOR_DMX, PARAMETER_HAZARDS

_HAZARDOUS = frozenset(word for word, hazard in PARAMETER_HAZARDS.items() if hazard in NOT_FOR_DMX)


class Survey:
    """What stands where in a mode; each list holds indexes into the parameters as written.

    A catalog has far more parameters than faults, so a rule begins with the list that concerns it, and in a
    sound mode finds it empty. What a list names may still turn out to be sound.
    """

    __slots__ = (
        "bytes_are_exact",
        "conditional",
        "conditioned",
        "defaults_to_judge",
        "hazardous",
        "ranged",
        "ranges_to_judge",
        "raw",
        "referring",
        "sources",
        "spanned",
        "words",
    )

    def __init__(self, written: list[Parameter], footprint: int | None) -> None:
        """Survey the parameters; `footprint` is None where cells or parts ask for a full layout."""
        used: list[int] = []
        self.words: dict[str, list[int]] = {}
        """Indexes of the parameters by their word."""
        self.ranged: list[int] = []
        """Parameters with ranges."""
        self.ranges_to_judge: list[int] = []
        """Parameters whose ranges don't follow each other from 0 to full scale."""
        self.defaults_to_judge: list[int] = []
        """Parameters with a default that the survey does not find within scale and ranges."""
        self.conditional: list[int] = []
        """Parameters with `when`."""
        self.referring: list[int] = []
        """Parameters that name another thing of the document: in when, for, sets, needs or position."""
        self.conditioned: list[int] = []
        """Parameters with conditions: `when`, or `needs` on a range."""
        self.raw: list[int] = []
        """Parameters with a raw span of their own."""
        self.spanned: list[int] = []
        """Parameters with a span, of their own or on a range."""
        self.hazardous: list[int] = []
        """Parameters that are a hazard not for DMX512, or have such a range."""
        self.sources: set[str] = set()
        """The source keys that parameters, ranges and spans name."""
        for index, parameter in enumerate(written):
            slots = parameter.slots
            used += slots
            word = parameter.parameter
            if word in self.words:
                self.words[word].append(index)
            else:
                self.words[word] = [index]
            refers = needs = False
            if parameter.when is not None:
                self.conditional.append(index)
                refers = needs = True
            if parameter.for_ is not None:
                refers = True
            if parameter.source is not None:
                self.sources.add(parameter.source)
            spanned = False
            span = parameter.span
            if span is not None:
                spanned = True
                if isinstance(span, list):
                    if any(one.raw for one in span):
                        self.raw.append(index)
                    self.sources.update(one.source for one in span if one.source is not None)
                else:
                    if span.raw:
                        self.raw.append(index)
                    if span.source is not None:
                        self.sources.add(span.source)
            hazardous = word in _HAZARDOUS
            ranges = parameter.ranges
            if ranges:
                self.ranged.append(index)
                following = 0
                for piece in ranges:
                    if piece.from_ == following:
                        following = piece.to + 1
                    else:
                        following = -1
                    if piece.span is not None:
                        spanned = True
                        for one in piece.span if isinstance(piece.span, list) else (piece.span,):
                            if one.source is not None:
                                self.sources.add(one.source)
                    if piece.needs is not None:
                        refers = needs = True
                    elif piece.sets is not None or piece.for_ is not None or piece.position is not None:
                        refers = True
                    if piece.hazard in NOT_FOR_DMX or piece.parameter in _HAZARDOUS:
                        hazardous = True
                    if piece.source is not None:
                        self.sources.add(piece.source)
                if following != 256 ** len(slots):
                    self.ranges_to_judge.append(index)
                    if parameter.default is not None or parameter.coarse_default is not None:
                        self.defaults_to_judge.append(index)
                elif parameter.default is not None and parameter.default >= following:
                    self.defaults_to_judge.append(index)
            elif parameter.default is not None and parameter.default >= 256 ** len(slots):
                self.defaults_to_judge.append(index)
            if needs:
                self.conditioned.append(index)
            if refers:
                self.referring.append(index)
            if spanned:
                self.spanned.append(index)
            if hazardous:
                self.hazardous.append(index)
        count = len(used)
        self.bytes_are_exact: bool = (
            count == footprint and len(set(used)) == count and (count == 0 or max(used) == count)
        )
        """Whether the bytes are exactly those from 1 to the footprint, each used once."""
