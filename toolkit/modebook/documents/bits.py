"""How finely a parameter is controlled: bits, full scale, and the pieces that carry a physical span."""

from __future__ import annotations

from dataclasses import dataclass

from modebook.documents.modes import Parameter, Range, Span, spans_of


def bits(parameter: Parameter) -> int:
    """Bits of a parameter's resolution: eight for each slot; 0 without a slot of its own."""
    return 8 * len(parameter.slots)


def full_scale(parameter: Parameter) -> int:
    """The greatest value that can be sent: 256^n - 1 for n slots."""
    return int(256 ** len(parameter.slots)) - 1


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch of values over which a parameter runs continuously from one physical end to the other."""

    word: str
    """The parameter that it controls: the range's own, where it names one."""
    span: Span
    from_value: int
    to_value: int
    range_index: int | None
    """The range that it is; None for the whole parameter."""

    @property
    def steps(self) -> int:
        """How many steps lead from one end to the other."""
        return self.to_value - self.from_value

    @property
    def step(self) -> float:
        """The physical step between neighboring values, in the span's unit; the whole span if it has none."""
        if self.span.raw:
            return 1.0
        return self.span.width / self.steps if self.steps else self.span.width


def stretches(parameter: Parameter) -> list[Stretch]:
    """The spans of a parameter and of its ranges, each with the values it covers.

    A span on the whole parameter runs over all its values, and gives way to the ranges where one of them
    carries a span of its own in the same unit.
    """
    found: list[Stretch] = []
    if not parameter.slots:
        return found
    for index, piece in enumerate(parameter.ranges):
        for span in spans_of(piece.span):
            found.append(Stretch(_word(parameter, piece), span, piece.from_, piece.to, index))
    told = {stretch.span.unit for stretch in found}
    top = full_scale(parameter)
    for span in spans_of(parameter.span):
        if span.unit not in told:
            found.append(Stretch(parameter.parameter, span, 0, top, None))
    return found


def _word(parameter: Parameter, piece: Range) -> str:
    return piece.parameter or parameter.parameter
