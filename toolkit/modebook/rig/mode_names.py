"""Finds which mode of a fixture a patch means: by its name or its personality number, never by a guess."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence

from modebook.documents.modes import Mode

_NUMBERED = re.compile(r"(?:(?:mode|personality)\s*(?:no\.?|number|#)?|#)?\s*0*([0-9]{1,3})", re.IGNORECASE)
_DROPPED = re.compile(r"[\W_]+")


def modes_meant(told: str, modes: Sequence[Mode]) -> list[int]:
    """The places in `modes` that a patch's word may mean: one is sure, none is unknown, several are in doubt.

    A name counts before a number. Names are compared as written but for case, then without spaces and
    punctuation. A number is the personality's: ``3``, ``Mode 3``. A word that is one mode's name and
    another's number is in doubt.
    """
    wanted = " ".join(told.casefold().split())
    if not wanted:
        return []
    named = [i for i, mode in enumerate(modes) if " ".join(mode.name.casefold().split()) == wanted]
    if not named:
        bare = _bare(told)
        named = [i for i, mode in enumerate(modes) if bare and _bare(mode.name) == bare]
    match = _NUMBERED.fullmatch(wanted)
    numbered = [i for i, mode in enumerate(modes) if match and mode.number == int(match[1])]
    if named and match and wanted.isdigit():
        return sorted({*named, *numbered})
    return named or numbered


def nearest_modes(told: str, modes: Sequence[Mode], most: int = 3) -> list[str]:
    """The names of the modes most like a word that is not known, or nearest to a number; at most `most`."""
    match = _NUMBERED.fullmatch(" ".join(told.casefold().split()))
    if match and any(mode.number is not None for mode in modes):
        numbered = [mode for mode in modes if mode.number is not None]
        near = sorted(numbered, key=lambda mode: abs((mode.number or 0) - int(match[1])))[:most]
        return [mode.name for mode in near]
    from rapidfuzz import fuzz, process

    folded = [mode.name.casefold() for mode in modes]
    alike = process.extract(told.casefold(), folded, scorer=fuzz.WRatio, limit=most)
    return [modes[place].name for _, _, place in alike]


def _bare(name: str) -> str:
    flat = unicodedata.normalize("NFKD", name.casefold())
    return _DROPPED.sub("", "".join(letter for letter in flat if not unicodedata.combining(letter)))
