"""Opens a database for asking, read only, and turns what SQLite says of a bad file into one line."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from modebook.shelf.errors import reason_of
from modebook.store.errors import StoreError
from modebook.store.schema import APPLICATION_ID, FORMAT

_REBUILD = "run `modebook build` to make it again"
_HEADER_BYTES = 100


def open_database(path: Path) -> sqlite3.Connection:
    """A connection that can only read. Raises StoreError where there is no database of ours in order."""
    told = whose(path)
    if told == "nothing":
        raise StoreError(path, "there is no database here", remedy="run `modebook build` first")
    if told == "other":
        raise StoreError(path, "this is not a Modebook database", remedy="name another file with --db")
    with clear_errors(path):
        connection = sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", uri=True, timeout=2.0)
        try:
            (format_found,) = connection.execute("PRAGMA user_version").fetchone()
            connection.execute("SELECT count(*) FROM about").fetchone()
        except BaseException:
            connection.close()
            raise
    if format_found != FORMAT:
        connection.close()
        raise StoreError(path, f"its format is {format_found}, not {FORMAT}", remedy=_REBUILD)
    return connection


def whose(path: Path) -> str:
    """What lies at a path: `nothing`, `ours`, or `other`. Raises StoreError where it cannot be read."""
    try:
        with path.open("rb") as file:
            header = file.read(_HEADER_BYTES)
    except FileNotFoundError:
        return "nothing"
    except OSError as error:
        raise StoreError(path, reason_of(error), remedy="name another file with --db") from error
    if not header:
        return "nothing"
    ours = header.startswith(b"SQLite format 3\0") and header[68:72] == APPLICATION_ID.to_bytes(4, "big")
    return "ours" if ours else "other"


@contextmanager
def clear_errors(path: Path) -> Iterator[None]:
    """Turn SQLite's errors about a file into a StoreError."""
    try:
        yield
    except (sqlite3.IntegrityError, sqlite3.ProgrammingError, sqlite3.InternalError):
        raise  # a fault of the program, not of the file
    except sqlite3.DatabaseError as error:
        told = str(error)
        if "locked" in told or "busy" in told:
            raise StoreError(
                path, "another program has locked it", remedy="close that program, or name another --db"
            ) from error
        if "interrupted" in told:
            raise StoreError(path, "the question took too long", remedy="ask for less") from error
        raise StoreError(path, f"the database is damaged ({told})", remedy=_REBUILD) from error
