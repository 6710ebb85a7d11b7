"""Opens a rig for reading: by its name in the catalog, its folder, or a patch file alone."""

from __future__ import annotations

from pathlib import Path

from modebook.documents.rig import Rig
from modebook.rig.fixtures import CatalogFixtures, Fixtures
from modebook.rig.patch_reading import read_patch
from modebook.rig.reading import RigReading, policy_of
from modebook.shelf.catalog import Catalog
from modebook.shelf.errors import ShelfError
from modebook.shelf.memory import collector_at_rest
from modebook.shelf.rigs import RigFiles, find_rig, read_rig


def open_rig(
    told: Path | str, catalog: Catalog, *, sheet: str | None = None, fixtures: Fixtures | None = None
) -> RigReading:
    """The rig that a word means (see shelf.rigs.find_rig), read against a catalog.

    sheet: the sheet of a workbook. fixtures: the catalog's, where they are open already (for many rigs).
    Raises ShelfError where the rig, its rig.json or its patch cannot be read.
    """
    return open_files(find_rig(str(told), catalog), catalog, sheet=sheet, fixtures=fixtures)


def open_files(
    files: RigFiles, catalog: Catalog, *, sheet: str | None = None, fixtures: Fixtures | None = None
) -> RigReading:
    """The rig in files that were found already; else as open_rig."""
    rig = Rig(name=files.name) if files.rig is None else read_rig(files.rig)
    try:
        policy = policy_of(rig)
    except KeyError as error:
        raise ShelfError(
            files.rig,
            f"the policy has no threshold {error.args[0]!r}",
            place=f"/policy/{error.args[0]}",
            remedy=_thresholds(),
        ) from error
    with collector_at_rest():
        patch = read_patch(files.patch, sheet=sheet)
    return RigReading(files.name, rig, patch, fixtures or CatalogFixtures(catalog), policy)


def _thresholds() -> str:
    from modebook.documents.policy import house_policy

    return "it has " + ", ".join(threshold.key for threshold in house_policy().thresholds)
