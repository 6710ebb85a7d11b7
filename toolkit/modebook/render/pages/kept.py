"""Keeps what is dear to work out and the same for every reader, as long as the database's file stays."""

from __future__ import annotations

import os
import sqlite3
from collections import OrderedDict
from collections.abc import Callable
from threading import Lock
from typing import Any, TypeVar

MOST = 128
"""Answers kept; the one that was asked for longest ago goes first."""

T = TypeVar("T")

_KEPT: OrderedDict[tuple[object, ...], Any] = OrderedDict()
_LOCK = Lock()


def kept(connection: sqlite3.Connection, name: str, make: Callable[[], T]) -> T:
    """What `make` gives, worked out once for a name and a database file; each time for one in memory."""
    mark = _mark(connection)
    if mark is None:
        return make()
    key = (*mark, name)
    with _LOCK:
        if key in _KEPT:
            _KEPT.move_to_end(key)
            found: T = _KEPT[key]
            return found
    made = make()
    with _LOCK:
        _KEPT[key] = made
        while len(_KEPT) > MOST:
            _KEPT.popitem(last=False)
    return made


def _mark(connection: sqlite3.Connection) -> tuple[object, ...] | None:
    file = connection.execute("PRAGMA database_list").fetchone()[2]
    if not file:
        return None
    told = os.stat(file)  # noqa: PTH116 - runs at every request
    return (file, told.st_ino, told.st_mtime_ns, told.st_size)
