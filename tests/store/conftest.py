"""What the store's tests share: small catalogs, a cache of their own, and all rows of a database."""

from __future__ import annotations

import importlib.util
import shutil
import sqlite3
from collections.abc import Callable
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

from modebook.shelf.catalog import Catalog, data_folder


def _generator() -> ModuleType:
    path = Path(__file__).parents[1] / "bench" / "generate.py"
    spec = importlib.util.spec_from_file_location("bench_generate", path)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


generate = _generator()


@pytest.fixture(autouse=True)
def _own_cache(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))


@pytest.fixture(scope="session")
def _generated(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = tmp_path_factory.mktemp("generated") / "catalog"
    generate.write_catalog(root, fixtures=40, units=20, seed=7)
    return root


@pytest.fixture
def generated(_generated: Path, tmp_path: Path) -> Catalog:
    """A generated catalog of 40 fixtures and a rig of 20 units, to be changed at will."""
    return Catalog(Path(shutil.copytree(_generated, tmp_path / "generated")))


@pytest.fixture
def demo(tmp_path: Path) -> Catalog:
    """A copy of the demo catalog, to be changed at will."""
    return Catalog(Path(shutil.copytree(data_folder("catalog"), tmp_path / "demo")))


@pytest.fixture
def all_rows() -> Callable[[Path], dict[str, list[Any]]]:
    """A function that returns every row of every table of a database, and every word of its full text."""

    def read(path: Path) -> dict[str, list[Any]]:
        connection = sqlite3.connect(path)
        try:
            master = "SELECT name FROM sqlite_master WHERE type = 'table'"
            names = [str(row[0]) for row in connection.execute(master)]
            texts = [name for name in names if name.endswith("_fts")]
            kept = [n for n in names if not n.startswith("sqlite_") and "_fts" not in n]
            found: dict[str, list[Any]] = {}
            for name in kept:
                numbered = name in ("fixtures", "modes", "search")
                columns = "rowid, *" if numbered else "*"
                found[name] = sorted(connection.execute(f"SELECT {columns} FROM {name}"), key=repr)
            for name in texts:
                connection.execute(
                    f"CREATE VIRTUAL TABLE temp.v_{name} USING fts5vocab(main, {name}, instance)"
                )
                found[name] = sorted(connection.execute(f"SELECT term, doc, col, offset FROM v_{name}"))
            return found
        finally:
            connection.close()

    return read
