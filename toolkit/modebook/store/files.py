"""Which documents a catalog holds now, and which of them have changed since a database was built."""

from __future__ import annotations

import hashlib
import os
import time
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from modebook.shelf.cache import cache_folder
from modebook.shelf.catalog import Catalog
from modebook.shelf.errors import ShelfError, reason_of
from modebook.shelf.reading import read_bytes
from modebook.shelf.writing import write_whole
from modebook.store.reading import DocumentPlace

_SETTLED_NS = 2_000_000_000
"""A file that changed so recently may change again within the clock's own step: it is read next time."""

Stamp = tuple[int, int, int, int]
"""Size, time of change, time of change of its entry, number: what the system says of an unchanged file."""


def places_of(catalog: Catalog) -> list[DocumentPlace]:
    """The fixture documents of a catalog in the order of their identities.

    The same files as Catalog.fixture_files, as plain strings: this runs for every document at every command.
    Raises ShelfError where a folder cannot be read.
    """
    if not catalog.fixtures.is_dir():
        return []
    found = list(_walk(str(catalog.fixtures), ""))
    found.sort(key=_identity)
    return found


def _identity(place: DocumentPlace) -> str:
    return place.identity


def _walk(folder: str, below: str) -> Iterator[DocumentPlace]:
    try:
        with os.scandir(folder) as entries:
            for entry in entries:
                name = entry.name
                if name.startswith("."):
                    continue
                if entry.is_dir():
                    yield from _walk(entry.path, f"{below}{name}/")
                elif name.endswith(".json"):
                    yield DocumentPlace(below + name[:-5], f"fixtures/{below}{name}", entry.path)
    except OSError as error:
        raise ShelfError(folder, reason_of(error), remedy="name a catalog that can be read") from error


@dataclass(slots=True)
class Changes:
    """What is different from what a database was built from."""

    read: list[DocumentPlace] = field(default_factory=list)
    """Documents that are new or changed."""
    removed: list[str] = field(default_factory=list)
    """Paths of documents that are gone."""
    added: bool = False
    """Whether any document is new."""


def changes(
    places: Sequence[DocumentPlace],
    known: Mapping[str, str],
    before: Mapping[str, Stamp],
    now: Mapping[str, Stamp],
) -> Changes:
    """Compare the documents there are with those a database knows, by content.

    `known`: the SHA-256 of each document's content by path. `before`: what the system said of each when it
    was last known to be the same; a file of which it says the same `now` is not read.
    """
    found = Changes()
    present = set()
    for place in places:
        present.add(place.path)
        digest = known.get(place.path)
        if digest is None:
            found.added = True
            found.read.append(place)
        elif not _same(before.get(place.path), now.get(place.path)) and _digest(place.file) != digest:
            found.read.append(place)
    found.removed = [path for path in known if path not in present]
    return found


def _same(before: Stamp | None, now: Stamp | None) -> bool:
    return before is not None and before == now


def stamps_of(places: Sequence[DocumentPlace]) -> dict[str, Stamp]:
    """What the system says of each document now; those that changed a moment ago are left out."""
    latest = time.time_ns() - _SETTLED_NS
    found: dict[str, Stamp] = {}
    for place in places:
        stamp = _stamp(place.file)
        if stamp is not None and stamp[1] < latest and stamp[2] < latest:
            found[place.path] = stamp
    return found


def _stamp(file: str) -> Stamp | None:
    try:
        told = os.stat(file)  # noqa: PTH116 - runs for every document at every command
    except OSError:
        return None
    return (told.st_size, told.st_mtime_ns, told.st_ctime_ns, told.st_ino)


def _digest(file: str) -> str:
    try:
        return hashlib.sha256(read_bytes(file)).hexdigest()
    except ShelfError:
        return ""  # what the row of a document says that could not be read


def load_stamps(database: Path) -> dict[str, Stamp]:
    """The stamps kept for a database; none where they are missing or of another file."""
    import orjson

    try:
        kept = orjson.loads(_keeper(database).read_bytes())
        if tuple(kept["database"]) != _stamp(str(database)):
            return {}
        return {path: tuple(stamp) for path, stamp in kept["documents"].items()}
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return {}


def keep_stamps(database: Path, stamps: Mapping[str, Stamp]) -> None:
    """Keep stamps beside the user's other caches. Where that cannot be, the next build reads every file."""
    import orjson

    content = orjson.dumps({"database": _stamp(str(database)), "documents": stamps})
    try:
        write_whole(_keeper(database), content)
    except ShelfError:
        return


def _keeper(database: Path) -> Path:
    mark = hashlib.sha256(os.fsencode(database.resolve())).hexdigest()[:16]
    return cache_folder() / "stamps" / f"{mark}.json"
