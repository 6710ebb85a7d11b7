"""What a page's maker gives back to the site: a template with its context, or a body; and its refusals."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

Query = Mapping[str, Sequence[str]]
"""An address's parameters, each with its values in order."""
Place = Mapping[str, str]
"""The named pieces of an address's path."""


MOST_NAMED = 12
"""Words that a message lists."""


@dataclass(frozen=True, slots=True)
class Drawn:
    """A page to be drawn by a template, which sees `page`."""

    template: str
    page: object


@dataclass(frozen=True, slots=True)
class Raw:
    """A body that is sent as it is."""

    body: str | bytes
    content_type: str
    headers: Mapping[str, str] = field(default_factory=dict)


class PageError(Exception):
    """An address that leads nowhere (404) or a parameter that cannot be answered (400), in one sentence."""

    def __init__(self, status: int, message: str) -> None:
        self.status, self.message = status, message
        super().__init__(message)


Maker = Callable[[sqlite3.Connection, Place, Query], Drawn | Raw]
"""Makes the answer to one kind of address, with a connection that can only read."""


def nothing_there(message: str) -> PageError:
    """The address leads nowhere."""
    return PageError(404, message)


def refused(message: str) -> PageError:
    """A parameter of the address cannot be answered."""
    return PageError(400, message)


def known_only(query: Query, *names: str) -> None:
    """Refuse parameters that a page does not know: a slip of the pen would else be answered all the same."""
    for name in query:
        if name not in names:
            told = ", ".join(names) if names else "none"
            raise refused(f"There is no parameter {short(name)!r} here; there are: {told}.")


def one(query: Query, name: str, default: str = "") -> str:
    """The last value of a parameter, without spaces around it."""
    values = query.get(name, ())
    return values[-1].strip() if values else default


def number(query: Query, name: str, least: int, most: int, default: int | None = None) -> int | None:
    """A whole number of the address within bounds; the default where it is empty or missing."""
    told = one(query, name)
    if not told:
        return default
    if not (told.isascii() and told.isdecimal() and len(told) < 10 and least <= int(told) <= most):
        raise refused(f"{name} is {short(told)!r}; it may be a whole number from {least} to {most}.")
    return int(told)


def choice(query: Query, name: str, among: Sequence[str]) -> str:
    """A word of the address that must be one of several; empty where it is empty or missing."""
    told = one(query, name)
    if told and told not in among:
        words = ", ".join(among[:MOST_NAMED]) + (", and more" if len(among) > MOST_NAMED else "")
        raise refused(f"{name} is {short(told)!r}; it may be {words}.")
    return told


def short(value: str) -> str:
    """A value as a message shows it."""
    return value if len(value) <= 40 else f"{value[:40]}..."


def json_reply(value: object) -> Raw:
    """A JSON answer."""
    import json

    return Raw(json.dumps(value, ensure_ascii=False), "application/json; charset=utf-8")
