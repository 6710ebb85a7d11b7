"""Builds a catalog's database: beside its place, then moved into it; only what changed is read again."""

from __future__ import annotations

import os
import shutil
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path

from modebook.checks.registry import FIXTURE_RULES, all_rules, rules_of
from modebook.documents.policy import Policy, house_policy
from modebook.rig.rules import PACKAGE as PATCH_RULES
from modebook.shelf.cache import database_path
from modebook.shelf.catalog import Catalog
from modebook.shelf.errors import reason_of
from modebook.shelf.memory import collector_at_rest
from modebook.store.errors import StoreError
from modebook.store.files import Stamp, changes, keep_stamps, load_stamps, places_of, stamps_of
from modebook.store.incremental import rigs_changed, update
from modebook.store.opening import open_database, whose
from modebook.store.program import made_by
from modebook.store.reading import Against, DocumentPlace, all_rows
from modebook.store.rig_rows import rig_rows
from modebook.store.vocabulary_rows import vocabulary_rows
from modebook.store.writing import create_tables, finish, insert, insert_all, writer

_ELSEWHERE = "make room, or name a file that can be written with --db"

_LARGE_SHARE = 4
"""Past one changed document in so many, a build from nothing is as fast and leaves a tidier file."""


@dataclass(frozen=True, slots=True)
class Built:
    """What a build did."""

    path: Path
    documents: int
    """Fixture documents in the catalog."""
    read: int
    """How many of them were read."""
    removed: int
    why: str
    """Why it was built from nothing; empty where what stood there was brought up to date."""
    changed: bool
    """Whether the file was written at all."""


def build(
    catalog: Catalog,
    database: Path | None = None,
    *,
    anew: bool = False,
    policy: Policy | None = None,
    processes: int | None = None,
) -> Built:
    """Bring a catalog's database up to date, or make it.

    `database`: the file; by default one for each catalog in the user's cache folder. `anew`: from nothing,
    whatever stands there. `processes`: how many others read documents while this one writes.

    Raises StoreError where the file cannot be written, is locked, or is not a Modebook database: a file that
    this program did not make is never overwritten. After an error what was there before is still there.
    """
    path = database or database_path(catalog)
    _refuse_other(path, catalog)
    places = places_of(catalog)
    against = Against(rules_of(FIXTURE_RULES), policy or house_policy())
    about = made_by(against.policy)
    stamps = stamps_of(places)
    why = "as asked" if anew else _cannot_update(path, about)
    if not why:
        try:
            done = _bring_up_to_date(catalog, path, places, against, stamps)
            if done is not None:
                return done
            why = "much has changed"
        except sqlite3.DatabaseError as error:
            why = f"the old one is damaged ({error})"
    with _beside(path) as new, collector_at_rest(), writer(new, new=True) as connection:
        create_tables(connection)
        insert(connection, vocabulary_rows(all_rules(FIXTURE_RULES, PATCH_RULES), against.policy, about))
        insert_all(connection, all_rows(places, against, processes))
        insert(connection, rig_rows(catalog))
        finish(connection)
    keep_stamps(path, stamps)
    return Built(path, len(places), len(places), 0, why, True)


def _bring_up_to_date(
    catalog: Catalog,
    path: Path,
    places: list[DocumentPlace],
    against: Against,
    stamps: dict[str, Stamp],
) -> Built | None:
    """What an update did; None where so much has changed that a build from nothing is as fast."""
    connection = open_database(path)
    try:
        query = "SELECT path, sha256 FROM documents WHERE kind = 'fixture'"
        known = dict(connection.execute(query).fetchall())
        found = changes(places, known, load_stamps(path), stamps)
        rigs = rigs_changed(connection, catalog)
    finally:
        connection.close()
    count = len(found.read) + len(found.removed)
    if count > 100 and count * _LARGE_SHARE > len(known):
        return None
    if count or rigs:
        with _beside(path, start_from=path) as new, writer(new, new=False) as connection:
            update(connection, catalog, found, against)
    keep_stamps(path, stamps)
    return Built(path, len(places), len(found.read), len(found.removed), "", bool(count or rigs))


def _cannot_update(path: Path, about: dict[str, str]) -> str:
    """Why a database cannot be brought up to date; empty where it can."""
    if whose(path) == "nothing":
        return "there was none"
    try:
        connection = open_database(path)
        try:
            found = dict(connection.execute("SELECT key, value FROM about").fetchall())
        finally:
            connection.close()
    except (StoreError, sqlite3.DatabaseError) as error:
        if "locked" in str(error):
            raise
        return "the old one is damaged"
    different = sorted(key for key in about if found.get(key) != about[key])
    if not different:
        return ""
    return "the policy has changed" if different == ["policy"] else "another version of the program made it"


def _refuse_other(path: Path, catalog: Catalog) -> None:
    """Refuse to write over a file that this program did not make, or while another program writes to it."""
    if whose(path) == "other" and path != database_path(catalog):
        raise StoreError(
            path,
            "this is not a Modebook database, and it is not overwritten",
            remedy="move it away, or name another file with --db",
        )
    for ending in ("-journal", "-wal"):
        beside = path.with_name(path.name + ending)
        if beside.exists() and beside.stat().st_size:
            raise StoreError(
                path,
                f"another program is writing to it ({beside.name} lies beside it)",
                remedy="close that program, or name another --db",
            )


@contextmanager
def _beside(path: Path, start_from: Path | None = None) -> Iterator[Path]:
    """A new file in the folder of `path` that takes its place at the end, or is gone after an error.

    `start_from`: the file that it begins as a copy of.
    """
    new: Path | None = None
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(prefix=f".{path.name}.", suffix=".building", dir=path.parent)
        os.close(handle)
        new = Path(name)
        if start_from is not None:
            _copy(start_from, new)
        yield new
        new.chmod(path.stat().st_mode & 0o777 if path.exists() else 0o644)
        new.replace(path)
    except OSError as error:
        raise StoreError(path, f"cannot be written: {reason_of(error)}", remedy=_ELSEWHERE) from error
    except sqlite3.OperationalError as error:
        if "full" not in str(error) and "readonly" not in str(error) and "I/O" not in str(error):
            raise
        raise StoreError(path, f"cannot be written: {error}", remedy=_ELSEWHERE) from error
    finally:
        if new is not None:
            new.unlink(missing_ok=True)


def _copy(source: Path, target: Path) -> None:
    """Copy a file. Its room is taken beforehand: file systems that put off that work do it at the rename."""
    if hasattr(os, "posix_fallocate"):
        with source.open("rb") as file, target.open("wb") as copy:
            size_bytes = os.fstat(file.fileno()).st_size
            with suppress(OSError):  # a file system that cannot: the copy takes its room as it goes
                os.posix_fallocate(copy.fileno(), 0, size_bytes)
            shutil.copyfileobj(file, copy, 1 << 22)
    else:
        shutil.copyfile(source, target)
