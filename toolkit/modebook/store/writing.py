"""Writes rows into a database: tables first, and only then indexes, full text and views."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path

from modebook.store.full_text import FULL_TEXT
from modebook.store.schema import APPLICATION_ID, BY_NAME, FILL_ORDER, FORMAT, TABLES
from modebook.store.values import Row, Rows
from modebook.store.views import VIEWS

_LATER = ("fixtures", "modes", "search")
"""Tables whose rows are numbered by their names: kept until all are known, so that they go in in order."""


@contextmanager
def writer(path: Path, *, new: bool) -> Iterator[sqlite3.Connection]:
    """A connection for one writer on a file that nobody else knows of: no journal, no wait for the disk."""
    connection = sqlite3.connect(path, isolation_level=None)
    try:
        if new:
            connection.execute("PRAGMA page_size = 4096")
        connection.execute("PRAGMA journal_mode = OFF")
        connection.execute("PRAGMA synchronous = OFF")
        connection.execute("PRAGMA locking_mode = EXCLUSIVE")
        connection.execute("PRAGMA cache_size = -300000")
        connection.execute("PRAGMA temp_store = MEMORY")
        connection.execute("PRAGMA foreign_keys = OFF")
        if new:
            connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
            connection.execute(f"PRAGMA user_version = {FORMAT}")
        connection.execute("BEGIN")
        yield connection
        connection.execute("COMMIT")
    finally:
        connection.close()


def create_tables(connection: sqlite3.Connection) -> None:
    """The empty tables."""
    for table in TABLES:
        connection.execute(table.sql)


def insert(connection: sqlite3.Connection, rows: Rows) -> None:
    """Put rows into their tables."""
    for table, many in rows.items():
        if many:
            connection.executemany(BY_NAME[table].insert, many)


def insert_all(connection: sqlite3.Connection, chunks: Iterable[Rows]) -> None:
    """Put all rows of a catalog's documents into empty tables; chunks come in the order of their keys."""
    later: dict[str, list[Row]] = {table: [] for table in _LATER}
    for rows in chunks:
        for table, waiting in later.items():
            waiting.extend(rows.pop(table, ()))
        insert(connection, rows)
    for waiting in later.values():
        waiting.sort()
    insert(connection, later)


def finish(connection: sqlite3.Connection) -> None:
    """The order of modes, indexes, full text and views over tables that are filled."""
    connection.execute(FILL_ORDER)
    for table in TABLES:
        for columns in table.indexes:
            name = f"{table.name}_{columns.replace(', ', '_')}"
            connection.execute(f"CREATE INDEX {name} ON {table.name} ({columns})")
    for index in FULL_TEXT:
        connection.execute(index.sql)
        connection.execute(index.fill)
    for name, query in VIEWS.items():
        connection.execute(f"CREATE VIEW {name} AS {query.strip()}")
    connection.execute("ANALYZE")
