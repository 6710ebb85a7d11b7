"""A JSON pointer into a fixture document in a person's words: mode, slots, parameter, range."""

from __future__ import annotations

from modebook.documents.fixture import Fixture
from modebook.documents.modes import Block, Cells, Mode, Parameter

_LISTS = {"settings": "setting", "wheels": "wheel", "emitters": "emitter", "sources": "source"}
_INNER = {"choices": "choice", "ways": "way", "positions": "position"}


def in_words(fixture: Fixture, pointer: str, *, mode: bool = True) -> str:
    """``Extended, slot 12, control, 15-29`` for ``/modes/1/parameters/7/ranges/2``.

    A place that the document does not have is told as far as it has it, then as it is written. With `mode`
    off the mode's name is left out, for text that stands under it.
    """
    steps = pointer.split("/")[1:]
    if not steps:
        return "the document"
    if steps[0] == "modes" and len(steps) > 1 and steps[1].isdigit():
        return _mode(fixture, steps, mode)
    if steps[0] in _LISTS and len(steps) > 1 and steps[1].isdigit():
        return _named(fixture, steps)
    return " ".join(_plain(step) for step in steps)


def mode_number(pointer: str) -> int | None:
    """The place of the mode (from 0) that a pointer leads into; None where it leads into none."""
    steps = pointer.split("/")[1:]
    return int(steps[1]) if len(steps) > 1 and steps[0] == "modes" and steps[1].isdigit() else None


def slots_words(slots: list[int] | tuple[int, ...]) -> str:
    """``slot 5``, ``slots 3, 5``; ``no slot of its own`` for none."""
    if not slots:
        return "no slot of its own"
    return f"slot{'s' * (len(slots) != 1)} {', '.join(map(str, slots))}"


def _mode(fixture: Fixture, steps: list[str], named: bool) -> str:
    number = int(steps[1])
    if number >= len(fixture.modes):
        return f"mode {number + 1} {' '.join(steps[2:])}".strip()
    holder: Mode | Block | Cells = fixture.modes[number]
    told = [fixture.modes[number].name] if named else []
    rest = steps[2:]
    while len(rest) > 1 and rest[0] in ("cells", "parts") and rest[1].isdigit():
        inner: list[Cells] | list[Block] = (
            holder.cells if rest[0] == "cells" else getattr(holder, "parts", [])
        )
        if int(rest[1]) >= len(inner):
            break
        holder = inner[int(rest[1])]
        name = holder.label or holder.key
        kind = "cells" if rest[0] == "cells" else "part"
        told.append(f"{kind} {name}" if name else f"{kind} {int(rest[1]) + 1}")
        rest = rest[2:]
    if len(rest) > 1 and rest[0] == "parameters" and rest[1].isdigit():
        found = holder.parameters[int(rest[1]) : int(rest[1]) + 1]
        if found:
            return ", ".join([*told, *_parameter(found[0], rest[2:], holder)])
    told += [_plain(" ".join(rest))] if rest else []
    return ", ".join(told) or "the mode"


def _parameter(parameter: Parameter, rest: list[str], holder: Mode | Block | Cells) -> list[str]:
    told = [
        slots_words(parameter.slots) + (" of a cell" if isinstance(holder, Cells) and parameter.slots else "")
    ]
    told.append(parameter.name if parameter.key is None else f"{parameter.parameter} {parameter.key}")
    if len(rest) > 1 and rest[0] == "ranges" and rest[1].isdigit():
        number = int(rest[1])
        if number < len(parameter.ranges):
            found = parameter.ranges[number]
            told.append(f"{found.from_}-{found.to}" if found.from_ != found.to else f"{found.from_}")
        else:
            told.append(f"range {number + 1}")
        rest = rest[2:]
    return told + ([_plain(" ".join(rest))] if rest else [])


def _named(fixture: Fixture, steps: list[str]) -> str:
    entries = getattr(fixture, steps[0])
    number = int(steps[1])
    word = _LISTS[steps[0]]
    told = f"{word} {entries[number].key}" if number < len(entries) else f"{word} {number + 1}"
    rest = steps[2:]
    if number < len(entries) and len(rest) > 1 and rest[0] in _INNER and rest[1].isdigit():
        inner = getattr(entries[number], rest[0])
        if int(rest[1]) < len(inner):
            key = getattr(inner[int(rest[1])], "key", None) or int(rest[1]) + 1
            told += f", {_INNER[rest[0]]} {key}"
            rest = rest[2:]
    return told + (f", {_plain(' '.join(rest))}" if rest else "")


def _plain(step: str) -> str:
    return step.replace("~1", "/").replace("~0", "~").replace("_", " ")
