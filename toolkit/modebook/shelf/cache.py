"""The user's cache folder: one database and one file of results for each catalog, never inside it."""

from __future__ import annotations

import hashlib
import os
import sys
from pathlib import Path

from modebook.documents.base import slug
from modebook.shelf.catalog import Catalog


def cache_folder() -> Path:
    """Where this user's programs keep what they can make again."""
    named = os.environ.get("XDG_CACHE_HOME")
    if named and Path(named).is_absolute():  # the XDG specification has others ignored
        return Path(named) / "modebook"
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Caches" / "modebook"
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA", str(Path.home()))) / "modebook"
    return Path.home() / ".cache" / "modebook"


def database_path(catalog: Catalog) -> Path:
    """The database of a catalog, named after the folder that it is in and a hash of its whole path."""
    return cache_folder() / f"{_name(catalog)}.sqlite"


def results_path(catalog: Catalog) -> Path:
    """Where the results of checking a catalog's documents are kept."""
    return cache_folder() / f"{_name(catalog)}.checked"


def _name(catalog: Catalog) -> str:
    root = catalog.root.resolve()
    mark = hashlib.sha256(os.fsencode(root)).hexdigest()[:12]
    near = slug(root.parent.name if root.name == "catalog" else root.name)[:60]
    return f"{near or 'catalog'}-{mark}"
