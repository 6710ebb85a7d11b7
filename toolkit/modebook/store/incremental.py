"""Brings a database up to date: the rows of changed documents go, and come again as from nothing."""

from __future__ import annotations

import sqlite3

from modebook.shelf.catalog import Catalog
from modebook.store.files import Changes
from modebook.store.full_text import FULL_TEXT
from modebook.store.reading import Against, rows_of_chunk
from modebook.store.rig_rows import rig_documents, rig_rows
from modebook.store.schema import FILL_ORDER, FIXTURE_TABLES
from modebook.store.table import Table
from modebook.store.writing import insert

_STANDS_AT = (
    """SELECT rowid, maker, model, number, mode, footprint FROM modes WHERE fixture = ? ORDER BY rowid"""
)
"""What decides a fixture's rows in the table `mode_order`."""
_RIG_KINDS = "('rig', 'patch', 'shots', 'rig folder')"


def update(connection: sqlite3.Connection, catalog: Catalog, found: Changes, against: Against) -> None:
    """Put changed documents' rows in place of their old ones, and the rigs' if what they rest on changed."""
    gone = [(identity_in(path), path) for path in found.removed]
    gone += [(place.identity, place.path) for place in found.read]
    rigs = bool(found.added or found.removed) or rigs_changed(connection, catalog)
    rigs = rigs or any(_matters_to_rigs(connection, identity) for identity, _ in gone)
    before = [row for identity, _ in gone for row in connection.execute(_STANDS_AT, (identity,))]
    for identity, path in gone:
        _forget(connection, identity, path)
    rows = rows_of_chunk(found.read, against)
    insert(connection, rows)
    after = [row for identity, _ in gone for row in connection.execute(_STANDS_AT, (identity,))]
    if before != after:
        connection.execute("DELETE FROM mode_order")
        connection.execute(FILL_ORDER)
    for index in FULL_TEXT:
        for number in sorted(int(str(row[0])) for row in rows.get(index.content, ())):
            connection.execute(index.add("rowid = ?"), (number,))
    if rigs:
        redo_rigs(connection, catalog)


def identity_in(path: str) -> str:
    """The ``maker/model`` of a document's path in the catalog."""
    return path.partition("/")[2].removesuffix(".json")


def rigs_changed(connection: sqlite3.Connection, catalog: Catalog) -> bool:
    """Whether any file of a rig differs from what the database was built from."""
    query = f"SELECT path, kind, bytes, sha256 FROM documents WHERE kind IN {_RIG_KINDS} ORDER BY path"
    return connection.execute(query).fetchall() != rig_documents(catalog)


def redo_rigs(connection: sqlite3.Connection, catalog: Catalog) -> None:
    """Make all rigs' rows again."""
    for table in ("units", "links", "rigs"):
        connection.execute(f"DELETE FROM {table}")
    connection.execute("DELETE FROM findings WHERE file LIKE 'rigs/%'")
    connection.execute("DELETE FROM texts WHERE path LIKE 'rigs/%'")
    connection.execute(f"DELETE FROM documents WHERE kind IN {_RIG_KINDS}")
    insert(connection, rig_rows(catalog))


def _matters_to_rigs(connection: sqlite3.Connection, identity: str) -> bool:
    """Whether a unit uses a fixture, or may now do so since its document could not be taken in before."""
    used = connection.execute("SELECT 1 FROM units WHERE fixture = ? LIMIT 1", (identity,)).fetchone()
    known = connection.execute("SELECT 1 FROM fixtures WHERE id = ?", (identity,)).fetchone()
    return bool(used) or not known


def _forget(connection: sqlite3.Connection, identity: str, path: str) -> None:
    """Take out every row of a document, the full text first: it is taken out by the rows' own words."""
    tables = {table.name: table for table in FIXTURE_TABLES}
    for index in FULL_TEXT:
        where, values = _of(tables[index.content], identity)
        connection.execute(index.forget(where), values)
    for table in reversed(FIXTURE_TABLES):
        where, values = _of(table, identity)
        connection.execute(f"DELETE FROM {table.name} WHERE {where}", values)
    connection.execute("DELETE FROM findings WHERE file = ?", (path,))
    connection.execute("DELETE FROM texts WHERE path = ?", (path,))
    connection.execute("DELETE FROM documents WHERE path = ?", (path,))


def _of(table: Table, identity: str) -> tuple[str, tuple[str, ...]]:
    """The condition that holds for a fixture's rows; ids of modes begin ``maker/model#``, settings' ``:``."""
    if table.of_fixture in ("id", "fixture"):
        return f"{table.of_fixture} = ?", (identity,)
    mark, after = ("#", "$") if table.of_fixture == "mode" else (":", ";")
    return f"{table.of_fixture} >= ? AND {table.of_fixture} < ?", (identity + mark, identity + after)
