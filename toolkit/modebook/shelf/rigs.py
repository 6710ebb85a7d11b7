"""Where rigs lie, and what their rig.json says."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from modebook.documents.rig import Rig
from modebook.shelf.catalog import Catalog
from modebook.shelf.errors import ShelfError, reason_of

RIG_FILE = "rig.json"
PATCH_FILES = ("patch.csv", "patch.xlsx", "patch.ods", "patch.tsv", "patch.txt", "patch.xlsm")
"""What a rig's patch may be called, in the folder of its rig.json."""


@dataclass(frozen=True, slots=True)
class RigFiles:
    """The files of one rig."""

    name: str
    """What it is called on the command line: its folder's name, or the patch file's."""
    patch: Path
    rig: Path | None
    """Its rig.json; None where there is none, and the defaults hold."""


def read_rig(path: Path | str) -> Rig:
    """The rig document in a file. Raises ShelfError (or its DocumentError) with what is wrong."""
    from modebook.shelf.reading import read_document

    return read_document(path, Rig)


def find_rig(told: str, catalog: Catalog) -> RigFiles:
    """The rig that a word means: a folder or a patch file by its path, or a rig's name in the catalog.

    A file beside a rig.json belongs to that rig. Raises ShelfError where there is none.
    """
    path = Path(told)
    if path.is_dir():
        return rig_in(path)
    if path.is_file():
        if path.name == RIG_FILE:
            return rig_in(path.parent)
        beside = path.parent / RIG_FILE
        return RigFiles(path.stem, path, beside if beside.is_file() else None)
    named = catalog.rigs / told
    if told and not path.is_absolute() and len(path.parts) == 1 and named.is_dir():
        return rig_in(named)
    raise ShelfError(told, "no such rig, folder or file", remedy=_known(told, catalog))


def rig_in(folder: Path) -> RigFiles:
    """The rig in a folder. Raises ShelfError where no patch lies in it, or more than one."""
    patches = [folder / name for name in PATCH_FILES if (folder / name).is_file()]
    if not patches:
        raise ShelfError(folder, "no patch is in it", remedy=f"put {' or '.join(PATCH_FILES[:3])} there")
    if len(patches) > 1:
        names = " and ".join(path.name for path in patches)
        raise ShelfError(folder, f"{names} are both in it", remedy="keep one, or name the one that is meant")
    rig = folder / RIG_FILE
    return RigFiles(folder.resolve().name, patches[0], rig if rig.is_file() else None)


def rigs_of(catalog: Catalog) -> list[RigFiles]:
    """All rigs of a catalog, ordered by name. Raises ShelfError for a rig's folder without a patch."""
    try:
        return [rig_in(folder) for folder in catalog.rig_folders() if not folder.name.startswith(".")]
    except OSError as error:
        raise ShelfError(catalog.rigs, reason_of(error), remedy="name a catalog that can be read") from error


def _known(told: str, catalog: Catalog) -> str:
    names: Sequence[str] = [folder.name for folder in catalog.rig_folders()]
    if not names:
        return f"{catalog.rigs} holds no rigs; give a rig's folder or a patch file"
    from rapidfuzz import fuzz, process

    near = [name for name, _, _ in process.extract(told, names, scorer=fuzz.WRatio, limit=3, score_cutoff=60)]
    if near:
        return f"is {' or '.join(near)} meant?"
    return f"rigs there are {', '.join(names[:8])}; or give a rig's folder or a patch file"
