"""What a JSON pointer leads to in a document, for one who settles a doubt: mode, parameter, range, key."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

Json = dict[str, Any]

_RANGE = re.compile(r"(?P<parameter>.*/parameters/\d+)/ranges/(?P<number>\d+)(?P<rest>(?:/.*)?)")
_PARAMETER = re.compile(r"(?P<parameter>.*/parameters/\d+)(?P<rest>(?:/.*)?)")
_MODE = re.compile(r"(?P<mode>/modes/\d+)(?P<rest>(?:/.*)?)")


@dataclass(frozen=True, slots=True)
class Pointed:
    """Where a pointer leads: the pointers of what encloses it, and the key below, if any."""

    pointer: str
    mode: str | None = None
    parameter: str | None = None
    range: int | None = None
    """The range's place in its parameter, from 0."""
    rest: str = ""
    """What is left of the pointer below the innermost of the three, without its slash: ``span``."""

    @property
    def owner(self) -> str:
        """The pointer of the innermost of range, parameter, mode; empty for the document itself."""
        if self.range is not None:
            return f"{self.parameter}/ranges/{self.range}"
        return self.parameter or self.mode or ""


def pointed(pointer: str) -> Pointed:
    """Take a pointer apart; whether it leads to anything is not asked."""
    mode = _MODE.fullmatch(pointer)
    found = _RANGE.fullmatch(pointer)
    if found:
        return Pointed(
            pointer,
            mode and mode["mode"],
            found["parameter"],
            int(found["number"]),
            found["rest"].lstrip("/"),
        )
    found = _PARAMETER.fullmatch(pointer)
    if found:
        return Pointed(pointer, mode and mode["mode"], found["parameter"], None, found["rest"].lstrip("/"))
    if mode:
        return Pointed(pointer, mode["mode"], None, None, mode["rest"].lstrip("/"))
    return Pointed(pointer, rest=pointer.lstrip("/"))


def at(document: Any, pointer: str) -> Any:
    """What stands at a pointer. Raises LookupError where nothing does."""
    found = document
    for step in pointer.split("/")[1:]:
        key = step.replace("~1", "/").replace("~0", "~")
        if isinstance(found, list):
            if not key.isdigit():
                raise LookupError(pointer)
            found = found[int(key)]
        elif isinstance(found, dict):
            found = found[key]
        else:
            raise LookupError(pointer)
    return found


def take_out(document: Json, pointer: str) -> None:
    """Take away what stands at a pointer; pointers of doubts and acceptances follow what moved up.

    Those that led into it lead to what held it. Raises LookupError where nothing stands there.
    """
    at(document, pointer)
    holder_at, _, key = pointer.rpartition("/")
    holder = at(document, holder_at)
    if isinstance(holder, list):
        gone = int(key)
        del holder[gone]
        if not holder:
            above, _, name = holder_at.rpartition("/")
            del at(document, above)[name]
        _repoint(document, lambda told: _moved_up(told, holder_at, gone))
    else:
        del holder[key]
        _repoint(document, lambda told: holder_at if f"{told}/".startswith(f"{pointer}/") else told)


def _moved_up(told: str, list_at: str, gone: int) -> str:
    if not told.startswith(f"{list_at}/"):
        return told
    number, slash, rest = told.removeprefix(f"{list_at}/").partition("/")
    if not number.isdigit() or int(number) < gone:
        return told
    if int(number) == gone:
        return list_at.rpartition("/")[0]
    return f"{list_at}/{int(number) - 1}{slash}{rest}"


def _repoint(document: Json, moved: Callable[[str], str]) -> None:
    for key in ("doubts", "accepted"):
        for entry in document.get(key, ()):
            entry["pointer"] = moved(entry["pointer"])
