"""What differs between two documents or modes, for people: where, what one says, what the other says."""

from __future__ import annotations

import json
import textwrap
from collections.abc import Mapping, Sequence
from typing import Any

from modebook.documents.fixture import Fixture
from modebook.intake.compare import Difference, only_in_b
from modebook.intake.folding import fold
from modebook.render.pointer_words import in_words, mode_number
from modebook.render.terminal import counted, paint, printed, table, width
from modebook.shelf.errors import printable


def compare_text(
    a: Fixture,
    name_a: str,
    b: Fixture,
    name_b: str,
    differences: Sequence[Difference],
    pairs: Mapping[int, int],
) -> str:
    """The differences under the modes that they are in; A and B are named on top.

    pairs: which mode of B each mode of A was compared with, by their places from 0.
    """
    out = [_named("A", name_a), _named("B", name_b), ""]
    if not differences:
        return "\n".join([*out, "They say the same, but for words, places and notes."]) + "\n"
    groups: dict[str, list[tuple[str, str, str]]] = {}
    for one in differences:
        rows = groups.setdefault(heading_of(a, b, one, pairs), [])
        row = difference_row(a, b, one, differences)
        if row is not None:
            rows.append(row)
    for heading, rows in groups.items():
        out.append(paint(printable(heading), "bold"))
        out.append(printed(table([("where", "left"), ("A", "left"), ("B", "left")], rows)))
    out.append(f"{counted(sum(map(len, groups.values())), 'difference')}.")
    return "\n".join(out) + "\n"


def difference_row(
    a: Fixture, b: Fixture, one: Difference, differences: Sequence[Difference]
) -> tuple[str, str, str] | None:
    """One difference; bits are told beside the slots that they come from."""
    pointer = one["pointer"]
    holder, _, key = pointer.rpartition("/")
    if holder == "/modes":
        in_a = one["b"] is None
        return (printable(one["a"] if in_a else one["b"]), "there" if in_a else "-", "-" if in_a else "there")
    if key == "bits" and any(other["pointer"] == f"{holder}/slots" for other in differences):
        return None
    told = [value_words(one["a"]), value_words(one["b"])]
    if key == "slots" and any(other["pointer"] == f"{holder}/bits" for other in differences):
        bits = (8 * len(one[side] or ()) for side in ("a", "b"))
        told = [f"{words} ({count} bits)" for words, count in zip(told, bits, strict=True)]
    return (printable(in_words(b if only_in_b(one) else a, pointer, mode=False)), told[0], told[1])


def _named(letter: str, name: str) -> str:
    return textwrap.fill(
        printable(name), width=width(), initial_indent=f"{letter}  ", subsequent_indent="   "
    )


def heading_of(a: Fixture, b: Fixture, one: Difference, pairs: Mapping[int, int]) -> str:
    number = mode_number(one["pointer"])
    if number is None:
        return "The fixture"
    if one["pointer"] == f"/modes/{number}":
        return "Modes that one of the two has alone"
    if only_in_b(one):
        number = next(mine for mine, other in pairs.items() if other == number)
    mine, other = a.modes[number].name, b.modes[pairs[number]].name
    return f"Mode {mine}" if fold(mine) == fold(other) else f"Mode {mine} (A), {other} (B)"


def value_words(value: Any) -> str:
    """A value of a difference in few words; ``-`` where there is none."""
    if value is None:
        return "-"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    if isinstance(value, list) and value and all(isinstance(one, dict) for one in value):
        return " ".join(f"({value_words(one)})" for one in value)
    if isinstance(value, list):
        return ", ".join(value_words(one) for one in value) or "none"
    if isinstance(value, dict):
        return printable(_object(value))
    return printable(str(value))


def _object(value: dict[str, Any]) -> str:
    rest = dict(value)
    told = ""
    if {"from", "to", "unit"} <= set(value):
        first, last = (value_words(rest.pop(key)) for key in ("from", "to"))
        told = f"{first} to {last} {rest.pop('unit')}"
    elif {"from", "to"} <= set(value):
        first, last = (value_words(rest.pop(key)) for key in ("from", "to"))
        told = f"{rest.pop('parameter')} " if isinstance(rest.get("parameter"), str) else ""
        told += first if first == last else f"{first}-{last}"
        told += f" {rest.pop('meaning')}" if "meaning" in rest else ""
    told = "; ".join([told] * bool(told) + [_pair(key, one) for key, one in rest.items()])
    return told or "nothing further"


def _pair(key: str, value: Any) -> str:
    name = key.replace("_", " ")
    if isinstance(value, dict) and not value:
        return name
    if isinstance(value, dict) and not {"from", "to"} <= set(value):
        return f"{name} ({_object(value)})"
    if isinstance(value, dict | list | bool | int | float | str) or value is None:
        return f"{name}: {value_words(value)}"
    return f"{name}: {json.dumps(value)}"
