"""The order in which a person walks: position after position, numbers in names by their size."""

from __future__ import annotations

import re

_DIGITS = re.compile(r"([0-9]+)")


def natural(words: str) -> list[tuple[int, int, str]]:
    """A key that sorts numbers in words by their size: Truss 2 before Truss 10."""
    return [
        (0, int(piece[:18]), "") if piece.isdigit() and piece.isascii() else (1, 0, piece)
        for piece in _DIGITS.split(words.casefold())
        if piece
    ]


def on_the_way(
    position: str, unit: str
) -> tuple[bool, list[tuple[int, int, str]], list[tuple[int, int, str]]]:
    """A key for walking order: by position, then unit; what has no position comes last."""
    return (not position, natural(position), natural(unit))
