"""What to send for a range, and what to send after it: the value in its middle, the place to return to."""

from __future__ import annotations

from dataclasses import dataclass

from modebook.documents.modes import Parameter, Range


def value_for(piece: Range) -> int:
    """The value to send for a range, in the parameter's full resolution: its middle, rounded down."""
    return (piece.from_ + piece.to) // 2


def byte_values(parameter: Parameter, value: int) -> tuple[int, ...]:
    """The bytes of a value, most significant first, one for each of the parameter's slots."""
    count = len(parameter.slots)
    return tuple(value >> 8 * (count - 1 - place) & 0xFF for place in range(count))


def neighbors(parameter: Parameter, piece: Range) -> tuple[Range, ...]:
    """The ranges that begin or end right beside one, or overlap it; those of the same parameter."""
    return tuple(
        other
        for other in parameter.ranges
        if other is not piece and other.from_ <= piece.to + 1 and other.to >= piece.from_ - 1
    )


def hazards_beside(parameter: Parameter, piece: Range) -> tuple[Range, ...]:
    """The hazardous ranges right beside one: a slip of one value, or a fade, would reach them."""
    return tuple(other for other in neighbors(parameter, piece) if other.hazard)


@dataclass(frozen=True, slots=True)
class Return:
    """What to send once a range has done its work."""

    value: int | None
    """In the parameter's full resolution; None where the record does not tell."""
    why: str
    """Where the value is from, or what to find out."""
    known: bool = True


def return_after(parameter: Parameter, piece: Range) -> Return:
    """Where a slot goes after a range: the printed default, else a range that does nothing, else a question.

    A range that acts only while sent is left alone: returning from it takes its choice back.
    """
    if piece.kept == "while sent":
        return Return(value_for(piece), "keep sending it: it acts only while sent")
    inside = parameter.default is not None and piece.from_ <= parameter.default <= piece.to
    if parameter.default is not None and not inside:
        return Return(parameter.default, "the printed default")
    for does in ("nothing", "unchanged"):
        idle = [other for other in parameter.ranges if other.does == does and not other.hazard]
        if idle:
            nearest = min(idle, key=lambda other: (abs(value_for(other) - value_for(piece)), other.from_))
            return Return(value_for(nearest), f"a range that does nothing ({nearest.meaning})")
    if inside:
        return Return(value_for(piece), "the printed default lies in this range: leave it")
    return Return(None, "no default and no idle range is printed: try on the fixture", known=False)
