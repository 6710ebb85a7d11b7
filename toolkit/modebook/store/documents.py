"""Documents as the database holds them: a fixture, a rig with its patch and shots, read without a catalog."""

from __future__ import annotations

import sqlite3
from functools import cached_property

from modebook.documents.fixture import Fixture
from modebook.documents.rig import Rig
from modebook.rig.reading import RigReading
from modebook.shelf.errors import ShelfError


def text_of(connection: sqlite3.Connection, path: str) -> bytes | None:
    """The content of a catalog's file by its path in the catalog; None where the database holds none."""
    row = connection.execute("SELECT content FROM texts WHERE path = ?", (path,)).fetchone()
    if row is None:
        return None
    return row[0].encode() if isinstance(row[0], str) else bytes(row[0])


def fixture_of(connection: sqlite3.Connection, identity: str) -> Fixture | None:
    """A fixture document by its ``maker/model``; None where there is none that could be taken in."""
    from modebook.shelf.reading import parse

    path = f"fixtures/{identity}.json"
    content = text_of(connection, path)
    return None if content is None else parse(content, Fixture, path)


class StoredFixtures:
    """The fixtures of a database, for reading a rig against (see rig.fixtures.Fixtures)."""

    def __init__(self, connection: sqlite3.Connection) -> None:
        self.connection = connection

    @cached_property
    def identities(self) -> frozenset[str]:
        """All ``maker/model`` there are, those that could not be taken in among them."""
        query = "SELECT path FROM documents WHERE kind = 'fixture'"
        return frozenset(path[len("fixtures/") : -len(".json")] for (path,) in self.connection.execute(query))

    def read(self, identity: str) -> Fixture:
        """A document. Raises ShelfError where it could not be taken in."""
        found = fixture_of(self.connection, identity)
        if found is None:
            raise ShelfError(self.file(identity), "it could not be taken in", remedy="run `modebook check`")
        return found

    def file(self, identity: str) -> str:
        """Its path in the catalog."""
        return f"fixtures/{identity}.json"


def rig_of(connection: sqlite3.Connection, name: str) -> RigReading | None:
    """A rig by its name, read against the database's fixtures; None where there is none.

    Raises ShelfError where its patch cannot be read (a build has told so among the findings).
    """
    from modebook.rig.patch_reading import patch_from_table
    from modebook.rig.reading import policy_of
    from modebook.rig.titles import KNOWN, SUCH_AS
    from modebook.shelf.reading import parse
    from modebook.shelf.tables import table_from_bytes

    row = connection.execute("SELECT document, patch FROM rigs WHERE id = ?", (name,)).fetchone()
    if row is None:
        return None
    document = text_of(connection, row[0]) if row[0] else None
    rig = Rig(name=name) if document is None else parse(document, Rig, row[0])
    content = text_of(connection, row[1]) or b""
    patch = patch_from_table(table_from_bytes(content, row[1], KNOWN, such_as=SUCH_AS))
    return RigReading(name, rig, patch, StoredFixtures(connection), policy_of(rig))
