"""From a JSON pointer to the line of the file: worked out only for findings that are shown."""

from __future__ import annotations

import json
import re
from bisect import bisect_right
from collections.abc import Iterable

_TOKEN = re.compile(r'"(?:[^"\\]|\\.)*"|[{}\[\],:]|[^\s{}\[\],:"]+')


def lines_of(content: bytes, pointers: Iterable[str]) -> dict[str, int]:
    """The line (from 1) at which each pointer's value begins, or where its key does.

    A pointer that leads to nothing gets the line of the deepest place on its way that exists, the first
    line at worst. The text must be JSON; where it is not, every pointer gets line 1.
    """
    wanted = set(pointers)
    text = content.decode(errors="replace")
    places = _places(text)
    breaks = [match.start() for match in re.finditer("\n", text)]
    found: dict[str, int] = {}
    for pointer in wanted:
        at = pointer
        while at and at not in places:
            at = at.rpartition("/")[0]
        found[pointer] = bisect_right(breaks, places.get(at, 0)) + 1
    return found


def _places(text: str) -> dict[str, int]:
    """Every pointer of a JSON text with the offset at which its key or value begins."""
    places: dict[str, int] = {}
    path: list[str] = []
    counts: list[int | None] = []  # an array's next index; None for an object
    key: tuple[str, int] | None = None
    expects_key = False
    for match in _TOKEN.finditer(text):
        token, start = match.group(), match.start()
        if token == ",":
            expects_key = bool(counts) and counts[-1] is None
        elif token == ":":
            expects_key = False
        elif token in "}]":
            if counts:
                counts.pop()
                if path:
                    path.pop()
            expects_key = False
        elif expects_key and token[0] == '"':
            key = (_escaped(token), start)
        else:
            step, begins = _step(counts, key, start)
            pointer = "".join("/" + piece for piece in (*path, step)) if step is not None else ""
            places.setdefault(pointer, begins)
            key = None
            if token in "{[":
                if step is not None:
                    path.append(step)
                counts.append(None if token == "{" else 0)
                expects_key = token == "{"
    return places


def _step(counts: list[int | None], key: tuple[str, int] | None, start: int) -> tuple[str | None, int]:
    if not counts:
        return None, start
    index = counts[-1]
    if index is None:
        return key or ("", start)
    counts[-1] = index + 1
    return str(index), start


def _escaped(token: str) -> str:
    try:
        name = str(json.loads(token))
    except ValueError:
        name = token.strip('"')
    return name.replace("~", "~0").replace("/", "~1")
