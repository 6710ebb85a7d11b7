"""Where the catalog lies: a folder with fixtures/ and rigs/, given, found here or above, or installed."""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from modebook.shelf.errors import ShelfError, reason_of

ENVIRONMENT = "MODEBOOK_CATALOG"


@cache
def data_folder(name: str) -> Path:
    """A folder that comes with the program: `schema`, `catalog` or `site`.

    An installed package carries it in _data; a checkout has it above, beside pyproject.toml.
    """
    here = Path(__file__).resolve()
    packed = here.parents[1] / "_data" / name
    if packed.is_dir():
        return packed
    for above in here.parents:
        if (above / "pyproject.toml").is_file() and (above / name).is_dir():
            return above / name
    raise ShelfError(packed, "this folder of the installation is missing", remedy="install modebook again")


@dataclass(frozen=True, slots=True)
class Catalog:
    """A catalog's folder and what lies where in it."""

    root: Path

    @property
    def fixtures(self) -> Path:
        """The folder of fixture documents."""
        return self.root / "fixtures"

    @property
    def rigs(self) -> Path:
        """The folder of rigs."""
        return self.root / "rigs"

    def fixture_files(self) -> list[Path]:
        """All fixture documents, ordered by path."""
        return json_files(self.fixtures) if self.fixtures.is_dir() else []

    def fixture_file(self, identity: str) -> Path:
        """Where the document of ``maker/model`` lies, whether or not it exists."""
        return self.fixtures / f"{identity}.json"

    def rig_folders(self) -> list[Path]:
        """All rigs' folders, ordered by name; hidden ones are passed over."""
        if not self.rigs.is_dir():
            return []
        try:
            return sorted(
                folder
                for folder in self.rigs.iterdir()
                if folder.is_dir() and not folder.name.startswith(".")
            )
        except OSError as error:
            raise ShelfError(
                self.rigs, reason_of(error), remedy="make it a folder that can be read"
            ) from error


def find_catalog(given: Path | str | None = None) -> Catalog:
    """The catalog to use: the given one, else MODEBOOK_CATALOG, else `catalog` here or above, else the demo.

    Raises ShelfError where the one that was named is not a catalog.
    """
    named = given or os.environ.get(ENVIRONMENT)
    try:
        return _named(Path(named)) if named else _near()
    except OSError as error:
        raise ShelfError(
            named or "the current folder", reason_of(error), remedy="name a catalog that can be read"
        ) from error


def _named(root: Path) -> Catalog:
    if not root.is_dir():
        problem = "this is a file, not a folder" if root.exists() else "no such folder"
        raise ShelfError(root, problem, remedy="a catalog is a folder with fixtures/ and rigs/ in it")
    if _is_catalog(root):
        return Catalog(root)
    if _is_catalog(root / "catalog"):
        return Catalog(root / "catalog")
    raise ShelfError(root, "neither fixtures/ nor rigs/ is in it", remedy="a catalog has both")


def _near() -> Catalog:
    if _is_catalog(Path("catalog")):
        return Catalog(Path("catalog"))  # told as people and build logs name files: from where they stand
    here = Path.cwd()
    for folder in (here, *here.parents):
        if _is_catalog(folder / "catalog"):
            return Catalog(folder / "catalog")
    return Catalog(data_folder("catalog"))


def _is_catalog(folder: Path) -> bool:
    return (folder / "fixtures").is_dir() or (folder / "rigs").is_dir()


def identity_of(path: Path) -> str | None:
    """The ``maker/model`` that a document's path says; None where it lies in no folder `fixtures`."""
    parts = path.absolute().parts
    if len(parts) >= 4 and parts[-3] == "fixtures":
        return f"{parts[-2]}/{path.stem}"
    if "fixtures" in parts[:-1]:
        below = parts[len(parts) - parts[::-1].index("fixtures") :]
        return "/".join((*below[:-1], path.stem))
    return None


def json_files(folder: Path) -> list[Path]:
    """All .json files below a folder, ordered by path; hidden ones are passed over.

    Raises ShelfError where a folder cannot be read, or a link leads back to a folder that it lies in.
    """
    return sorted(_walk(str(folder), frozenset()), key=lambda path: path.parts)


def _walk(folder: str, above: frozenset[tuple[int, int]]) -> Iterator[Path]:
    try:
        status = os.stat(folder)  # noqa: PTH116 - the walk stays with plain strings, which is twice as fast
        identity = (status.st_dev, status.st_ino)
        if identity in above:
            raise ShelfError(
                folder, "this link leads back to a folder that it lies in", remedy="take the link away"
            )
        with os.scandir(folder) as entries:
            for entry in entries:
                if entry.name.startswith("."):
                    continue
                if _is_folder(entry):
                    yield from _walk(entry.path, above | {identity})
                elif entry.name.endswith(".json"):
                    yield Path(entry.path)
    except OSError as error:
        raise ShelfError(folder, reason_of(error), remedy="name a folder that can be read") from error


def _is_folder(entry: os.DirEntry[str]) -> bool:
    try:
        return entry.is_dir()
    except OSError:
        # A link that leads nowhere or to itself: as a document it is then told of by whoever reads it.
        return False
