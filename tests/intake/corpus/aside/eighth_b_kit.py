"""Short forms of the eighth charts by second hands: ranges as printed, and modes with their titles."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from intake.corpus.content import M, P
from intake.corpus.open import fresh_kit as k


def between(mark: str, digits: int = 1) -> Callable[[int, int], str]:
    """Ranges with a mark between their ends, and zeros before them where `digits` is 3."""

    def printed(lo: int, hi: int) -> str:
        low, high = f"{lo:0{digits}}", f"{hi:0{digits}}"
        return low if lo == hi else f"{low}{mark}{high}"

    return printed


def stacked(
    params: Sequence[P],
    plans: Sequence[tuple[str, str]],
    head: Sequence[Any],
    body: Callable[[Sequence[P]], list[list[Any]]],
    names: Callable[[str], tuple[str, ...]] = lambda title: (),
) -> tuple[list[M], list[list[Any]]]:
    """Modes under each other: a row with the title, the head, the body, and a blank row."""
    modes: list[M] = []
    rows: list[list[Any]] = []
    for title, plan in plans:
        modes.append(k.mode(k.seat(params, plan), title, *names(title)))
        rows += [[title], list(head), *body(modes[-1].params), []]
    return modes, rows[:-1]


def abreast(
    params: Sequence[P],
    plans: Sequence[str],
    form: Callable[[list[Any], str, str, str], list[Any]],
    value: Callable[[int, int], str],
    absent: str = "",
    fine: str = "",
) -> list[list[Any]]:
    """Rows of modes beside each other; `form` puts slots, name, value and text into the maker's order."""
    rows: list[list[Any]] = []
    for side in k.sides(params, *plans):
        for n, (lo, hi, text) in enumerate(side.rows):
            slots = ["" if n else (absent if at is None else at) for at in side.slots]
            rows.append(form(slots, "" if n else side.name, value(lo, hi), text or fine))
    return rows
