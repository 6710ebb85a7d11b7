"""Writes a new mode or address the way a person wrote the old one."""

from __future__ import annotations

import re
from collections.abc import Sequence

from modebook.documents.address import Address
from modebook.documents.modes import Mode
from modebook.rig.mode_names import modes_meant
from modebook.rig.repatch.errors import RewriteError

_NUMBERS = re.compile(r"[0-9]+")


def mode_as_written(written: str, modes: Sequence[Mode], old: int, new: int) -> str:
    """The new mode by number if the old one was written by number, else by name; whichever is sure.

    old, new: places in `modes`. Raises RewriteError where neither name nor number is sure.
    """
    by_name, number = modes[new].name, modes[new].number
    candidates = [by_name]
    if number is not None:
        numbers = _NUMBERS.findall(written)
        called = " ".join(written.casefold().split()) == " ".join(modes[old].name.casefold().split())
        if len(numbers) == 1 and int(numbers[0]) == modes[old].number and not called:
            candidates.insert(0, _NUMBERS.sub(str(number).zfill(len(numbers[0])), written))
        candidates.append(str(number))
    for candidate in candidates:
        if modes_meant(candidate, modes) == [new]:
            return candidate
    raise RewriteError(
        f"mode {by_name!r} cannot be told by name or number from the fixture's other modes: write it by hand"
    )


def address_as_written(universe: str, address: str, old: Address, new: Address) -> tuple[str, str]:
    """What the universe's and the address's cells say now; either may have been empty.

    Signs, letters and leading zeros around the numbers stay as they were.
    """
    if _NUMBERS.findall(universe) and universe.strip():
        universe = _NUMBERS.sub(lambda match: _like(match[0], new.universe), universe, count=1)
    numbers = _NUMBERS.findall(address)
    if len(numbers) >= 2:
        values = iter((new.universe, new.address))
        address = _NUMBERS.sub(lambda match: _like(match[0], next(values)), address, count=2)
    elif universe.strip():
        address = _NUMBERS.sub(lambda match: _like(match[0], new.address), address, count=1)
    else:
        value = new.absolute if numbers and int(numbers[0]) == old.absolute else 0
        address = _NUMBERS.sub(lambda match: _like(match[0], value), address, count=1)
    return universe, address


def _like(before: str, value: int) -> str:
    """A number with as many digits as the one before it, where that one was filled up with zeros."""
    return str(value).zfill(len(before)) if before.startswith("0") else str(value)
