"""Writes generated documents in canonical form, fast: the same pieces are formed once."""

from __future__ import annotations

import json
from typing import Any

_WIDTH = 160


def written(value: Any, indent: int, taken: int, memory: dict[tuple[str, int, int], str]) -> str:
    """The value as the program writes documents: a piece that fits stands on one line.

    `memory` holds what was written before: the same parameters come back in many documents.
    """
    line = "" if _surely_long(value) else json.dumps(value)
    if not isinstance(value, dict | list) or (line and indent and taken + len(line) <= _WIDTH):
        return line
    known = memory.get((line, indent, taken)) if line else None
    if known is not None:
        return known
    inner = indent + 2
    named = (
        [(f"{json.dumps(key)}: ", item) for key, item in value.items()] if isinstance(value, dict) else None
    )
    pieces = named or [("", item) for item in value]
    lines = [
        " " * inner + name + written(item, inner, inner + len(name) + 1, memory) for name, item in pieces
    ]
    opening, closing = "{}" if named else "[]"
    text = opening + "\n" + ",\n".join(lines) + "\n" + " " * indent + closing
    if 0 < len(line) < 2000:
        memory[line, indent, taken] = text
    return text


def _surely_long(value: Any) -> bool:
    """Whether a piece needs no trial on one line: the document, its modes, a mode and its parameters."""
    if isinstance(value, dict):
        return "modes" in value or ("parameters" in value and "footprint" in value)
    return (
        isinstance(value, list)
        and len(value) > 2
        and isinstance(value[0], dict)
        and ("parameters" in value[0] or "parameter" in value[0])
    )
