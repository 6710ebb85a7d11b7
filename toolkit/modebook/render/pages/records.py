"""The documents behind the published pages, read from the catalog that the database was built from."""

from __future__ import annotations

import hashlib
import sqlite3
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from modebook.render.pages.failing import PageError, not_there
from modebook.shelf.catalog import Catalog
from modebook.shelf.errors import ShelfError
from modebook.shelf.reading import parse, read_bytes

if TYPE_CHECKING:
    from modebook.documents.fixture import Fixture

KEPT = 200
"""Documents kept in memory, those asked for last."""


@dataclass(frozen=True, slots=True)
class Record:
    """A fixture document as it lies in the catalog."""

    fixture: Fixture
    content: bytes
    changed: bool
    """Whether it has changed since the database was built: its findings and counts are then older."""


class Records:
    """Finds documents for pages."""

    def __init__(self, catalog: Catalog) -> None:
        self._catalog = catalog
        self._parsed = lru_cache(maxsize=KEPT)(_parsed)

    def record(self, connection: sqlite3.Connection, identity: str) -> Record:
        """The document of ``maker/model``.

        Raises PageError: 404 where the database has none, 503 where the file cannot be taken in any more.
        """
        row = connection.execute(
            "SELECT path, sha256 FROM fixtures JOIN documents ON path = document WHERE id = ?", (identity,)
        ).fetchone()
        if row is None:
            raise not_there(f"there is no fixture {identity!r} in the catalog; search for it by name")
        path, digest = row
        try:
            content = read_bytes(str(self._catalog.root / path))
            fixture = self._parsed(content, path)
        except ShelfError as error:
            raise PageError(
                503, f"the document of {identity} has changed and cannot be read: {error.problem}"
            ) from error
        return Record(fixture, content, hashlib.sha256(content).hexdigest() != digest)


def _parsed(content: bytes, path: str) -> Fixture:
    from modebook.documents.fixture import Fixture

    return parse(content, Fixture, path)
