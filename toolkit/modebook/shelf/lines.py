"""From a JSON pointer to the line of the file: worked out only for findings that are shown."""

from __future__ import annotations

import json
import re
from bisect import bisect_right
from collections.abc import Callable, Iterable, Iterator

MOST_NESTED = 500
"""Steps of the longest pointer that is followed; a text nested deeper than 200 is refused by the reader."""

_TOKEN = re.compile(r'"(?:[^"\\]|\\.)*"|[{}\[\],:]|[^\s{}\[\],:"]+')


def lines_of(content: bytes, pointers: Iterable[str]) -> dict[str, int]:
    """The line (from 1) at which each pointer's value begins, or where its key does.

    A pointer that leads to nothing gets the line of the deepest place on its way that exists, the first
    line at worst; so does every pointer past the spot where a text ceases to be JSON.
    """
    wanted = set(pointers)
    deepest = max((pointer.count("/") for pointer in wanted), default=0)
    text = content.decode(errors="replace")
    places: dict[str, int] = {}
    for pointer, start, _ in _places(text, deepest):
        places.setdefault(pointer, start)
    line = _line_finder(text)
    found: dict[str, int] = {}
    for pointer in wanted:
        at = pointer
        while at and at not in places:
            at = at.rpartition("/")[0]
        found[pointer] = line(places.get(at, 0))
    return found


def repeated_keys(content: bytes) -> list[tuple[str, str, int, int]]:
    """The keys that stand again in the object they are in: pointer, key, the first line and the later one."""
    text = content.decode(errors="replace")
    line = _line_finder(text)
    begun: dict[str, int] = {}
    found: list[tuple[str, str, int, int]] = []
    for pointer, start, key in _places(text, MOST_NESTED):
        holder = pointer.rpartition("/")[0]
        # What began before its holder did belongs to an earlier holder, whose own key stands twice.
        if key is not None and begun.get(pointer, -1) > begun.get(holder, 0):
            found.append((pointer, key, line(begun[pointer]), line(start)))
        begun[pointer] = start
    return found


def _line_finder(text: str) -> Callable[[int], int]:
    breaks = [match.start() for match in re.finditer("\n", text)]
    return lambda offset: bisect_right(breaks, offset) + 1


def _places(text: str, deepest: int) -> Iterator[tuple[str, int, str | None]]:
    """Every pointer of a JSON text down to `deepest` steps, with the offset at which its key or value begins.

    The third is the key itself, None for what has none. Deeper ones are left out, since the pointers of
    brackets without end would fill the memory.
    """
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
            key = (_plain(token), start)
        else:
            step, begins = _step(counts, key, start)
            if len(counts) <= deepest:
                pointer = "".join("/" + piece for piece in (*path, step)) if step is not None else ""
                yield pointer, begins, key[0] if key is not None else None
            key = None
            if token in "{[":
                if step is not None:
                    path.append(step)
                counts.append(None if token == "{" else 0)
                expects_key = token == "{"


def _step(counts: list[int | None], key: tuple[str, int] | None, start: int) -> tuple[str | None, int]:
    if not counts:
        return None, start
    index = counts[-1]
    if index is None:
        return (_escaped(key[0]), key[1]) if key is not None else ("", start)
    counts[-1] = index + 1
    return str(index), start


def _plain(token: str) -> str:
    try:
        return str(json.loads(token))
    except ValueError:
        return token.strip('"')


def _escaped(name: str) -> str:
    return name.replace("~", "~0").replace("/", "~1")
