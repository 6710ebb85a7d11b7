"""Modes side by side in running lines that lost their blank cells: which mode a lone slot number is of.

`1 1 Pan`, `2 Pan fine`, `2 3 Tilt`: slots count up in every mode, so 2 is the second mode's and no other's.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from modebook.intake.chart_rows import SlotCell, read_slot_cell
from modebook.intake.names import read_name

_MOST_STATES = 400
_ALONE = re.compile(r"\d{1,3}|[-–—*]")
_VALUES = re.compile(r"\d{1,5}[-–—~]\d{1,5}")
Columns = tuple[int, ...]
State = tuple[int, ...]
"""The last slot of each mode."""


@dataclass(frozen=True, slots=True)
class Settled:
    """The modes that a line's slot numbers are of, and whether other modes would do as well."""

    columns: Columns
    cells: tuple[SlotCell, ...]
    sure: bool

    @property
    def length(self) -> int:
        """How many words of the line its numbers are."""
        return len(self.columns)


def settle(lines: Sequence[str], most: Sequence[int]) -> dict[int, Settled]:
    """For each line that begins with fewer numbers than there are modes, and is a row of slots: by its index
    in `lines`, which modes they are of. `most`: the last slot that each mode can have.
    """
    count = len(most)
    rows = [_numbers(line.split(), count) for line in lines]
    partial = {n for n, cells in enumerate(rows) if 0 < len(cells) < count}
    full = {n for n, cells in enumerate(rows) if len(cells) == count}
    if not partial or len(full) < 2:
        return {}
    forward: list[dict[State, int]] = [{(0,) * count: 0}]
    for number, line in enumerate(lines):
        forward.append(_best(_steps(forward[-1], rows[number], line, most)))
    cost = min(forward[-1].values())
    ends = {state for state, spent in forward[-1].items() if spent == cost}
    found: dict[int, Settled] = {}
    for number in range(len(lines) - 1, -1, -1):
        steps = [
            step
            for step in _steps(forward[number], rows[number], lines[number], most)
            if step[1] in ends and step[2] == forward[number + 1][step[1]]
        ]
        ends = {state for state, _, _, _ in steps}
        ways = sorted({columns for _, _, _, columns in steps})
        if number in partial and ways and ways[-1]:
            found[number] = Settled(ways[-1], tuple(rows[number]), len(ways) == 1)
    return found


def _numbers(words: list[str], count: int) -> list[SlotCell]:
    """The cells of slots that a line begins with; none where no word follows them."""
    leading = list(itertools.takewhile(_ALONE.fullmatch, words[: count + 1]))
    if len(leading) > count or len(leading) >= len(words):
        return []
    behind = words[len(leading)]
    if not behind[0].isalpha() and not _VALUES.fullmatch(behind):
        return []
    cells = [read_slot_cell(word) for word in leading]
    return [] if len(cells) < count and any(cell.kind == "absent" for cell in cells) else cells


def _steps(
    states: dict[State, int], cells: list[SlotCell], line: str, most: Sequence[int]
) -> Iterable[tuple[State, State, int, Columns]]:
    """The ways to read a line after each state: state, the next one, its cost, the modes of the numbers."""
    count = len(most)
    named = bool(cells) and _is_named(line.split()[len(cells) :])
    for state, spent in states.items():
        if len(cells) < count:
            # No row of slots: a value, or words.
            yield state, state, spent + (len(cells) > 1 or named), ()
        if not cells:
            continue
        for columns in itertools.combinations(range(count), len(cells)):
            following = list(state)
            wrong = 0
            for column, cell in zip(columns, cells, strict=True):
                if cell.kind == "slots":
                    wrong += min(cell.slots) != state[column] + 1
                    following[column] = max(cell.slots)
            over = any(slot > end for slot, end in zip(following, most, strict=True))
            if (not wrong and not over) or len(cells) == count:
                yield state, tuple(following), spent + wrong, columns


def _is_named(words: list[str]) -> bool:
    """Whether words behind a number begin with a name that stands for a slot, or with values."""
    if _VALUES.fullmatch(words[0]):
        return True
    name = list(itertools.takewhile(lambda word: not word[0].isdigit(), words))
    return len(name) < len(words) and read_name(" ".join(name)).sure


def _best(steps: Iterable[tuple[State, State, int, Columns]]) -> dict[State, int]:
    found: dict[State, int] = {}
    for _, state, spent, _ in steps:
        found[state] = min(spent, found.get(state, spent))
    kept = sorted(found.items(), key=lambda one: (one[1], one[0]))[:_MOST_STATES]
    return dict(kept)
