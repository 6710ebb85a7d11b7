"""Names and numbers of rows: made from what a thing is called and where its document lies.

A fixture is ``maker/model``, a mode ``maker/model#mode``, a setting ``maker/model:setting``. None comes from
a place in a list, so that a mode put in before others leaves theirs alone.
"""

from __future__ import annotations

import hashlib
from collections import Counter
from collections.abc import Iterator, Sequence
from functools import lru_cache

from modebook.documents.base import slug
from modebook.documents.modes import Block, Cells, Mode, Parameter

known_slug = lru_cache(maxsize=10_000)(slug)
"""`slug`, remembered: the same few mode names come back in every document."""


def row_number(text: str) -> int:
    """A row number out of a name: 52 bits of its hash, so that JavaScript reads it exactly."""
    return int.from_bytes(hashlib.blake2b(text.encode(), digest_size=8).digest(), "big") >> 12


def mode_names(modes: Sequence[Mode]) -> list[str]:
    """What each mode of a fixture is called in its id, in the order given.

    The slug of its name; where that stands twice, with the menu state or the personality number added. Two
    modes that agree in all three are told apart by their order, which is all that is left.
    """
    names = [known_slug(mode.name) or f"mode-{mode.number or row_number(mode.name)}" for mode in modes]
    if len(set(names)) < len(names):
        count = Counter(names)
        for index, mode in enumerate(modes):
            more = known_slug(mode.given) if mode.given else str(mode.number) if mode.number else ""
            if count[names[index]] > 1 and more:
                names[index] = f"{names[index]}-{more}"
    return told_apart(names)


def told_apart(names: list[str]) -> list[str]:
    """The names, the second of a kind with ``-2`` added, and so on."""
    if len(set(names)) == len(names):
        return names
    taken = set(names)
    seen: Counter[str] = Counter()
    result: list[str] = []
    for name in names:
        seen[name] += 1
        number, own = seen[name], name
        while own in taken and number > 1:
            own = f"{name}-{number}"
            number += 1
        taken.add(own)
        result.append(own)
    return result


def parameter_names(mode: Mode, pointer: str) -> dict[str, str]:
    """What each parameter of a mode is called, by JSON pointer: its key or word, after its cells and part."""
    pairs = list(_named(mode, pointer, ""))
    for index, part in enumerate(mode.parts):
        pairs.extend(_named(part, f"{pointer}/parts/{index}", f"{part.key}/"))
    names = told_apart([name for _, name in pairs])
    return {where: name for (where, _), name in zip(pairs, names, strict=True)}


def plain_names(parameters: Sequence[Parameter]) -> list[str]:
    """The same for a mode that has neither cells nor parts, in the order given."""
    return told_apart([parameter.key or parameter.parameter for parameter in parameters])


def _named(holder: Mode | Block | Cells, pointer: str, before: str) -> Iterator[tuple[str, str]]:
    for index, parameter in enumerate(holder.parameters):
        yield f"{pointer}/parameters/{index}", before + (parameter.key or parameter.parameter)
    for index, block in enumerate(holder.cells):
        yield from _named(block, f"{pointer}/cells/{index}", f"{before}{block.key or 'cells'}/")
