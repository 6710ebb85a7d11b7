"""Firmware versions: which one a unit's record was read from, and whether two writings are one version."""

from __future__ import annotations

import re

from modebook.rig.reading import PatchedRow

_LEADING = re.compile(r"^(?:firmware|version|ver|v)[\s.:]*", re.IGNORECASE)


def recorded(row: PatchedRow) -> str:
    """The firmware of the source that the unit's mode was read from; empty where none is recorded."""
    if row.fixture is None or row.mode is None:
        return ""
    sources = row.fixture.fixture.sources
    wanted = row.mode.mode.source
    return next((one.firmware or "" for one in sources if one.key == wanted), "")


def same_version(found: str, known: str, is_number: bool = False) -> bool:
    """Whether two writings mean one version: ``v2.0`` and ``2.0``, ``2.0`` and ``2.0.0``.

    is_number: the cell was a number of a sheet, which drops zeros (3.10 becomes 3.1): then what is left is
    compared.
    """
    one, two = _bare(found), _bare(known)
    if one == two:
        return True
    if is_number:
        return one == two.rstrip("0").rstrip(".") if "." in two else False
    parts = [text.split(".") for text in (one, two)]
    if not all(piece.isascii() and piece.isdigit() for part in parts for piece in part):
        return False
    numbers = [[int(piece[:18]) for piece in part] for part in parts]
    for some in numbers:
        while len(some) > 1 and some[-1] == 0:
            some.pop()
    return numbers[0] == numbers[1]


def _bare(text: str) -> str:
    return _LEADING.sub("", text.strip()).casefold()
