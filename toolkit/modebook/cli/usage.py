"""What to say when a person names something that does not exist: the nearest names that do."""

from __future__ import annotations

from collections.abc import Iterable

import typer


def unknown(kind: str, name: str, names: Iterable[str]) -> typer.BadParameter:
    """The error for a name that is not among `names`: it tells the nearest ones."""
    from rapidfuzz import fuzz, process

    known = sorted(names)
    near = [word for word, _, _ in process.extract(name, known, scorer=fuzz.WRatio, limit=3, score_cutoff=50)]
    if near:
        meant = " or ".join(near)
        return typer.BadParameter(f"there is no {kind} {name!r}; is {meant} meant?")
    return typer.BadParameter(f"there is no {kind} {name!r}; there are {', '.join(known)}")
