"""Lines of a page or text as pieces that wide gaps part."""

from __future__ import annotations

from dataclasses import dataclass

from modebook.intake.grid import Place

Word = tuple[str, float, float]
"""A word and where it begins and ends across the page."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of a line: text without wide gaps, and where it begins and ends across the page."""

    text: str
    x0: float
    x1: float
    words: tuple[Word, ...] = ()
    """Its words, where the reader knows them."""


def piece_of(words: tuple[Word, ...]) -> Piece:
    """Words as one piece."""
    return Piece(" ".join(word for word, _, _ in words), words[0][1], words[-1][2], words)


@dataclass(slots=True)
class AlignedLine:
    """A line as its pieces, from left to right."""

    pieces: list[Piece]
    place: Place
    height: float = 1.0
    middle: float = 0.0
    """The height of its middle on the page."""
    band: int | None = None
    """Lines with one number stand between the same two rules or on one stripe."""

    @property
    def text(self) -> str:
        """All of it, pieces two spaces apart."""
        return "  ".join(piece.text for piece in self.pieces)
