"""Only what changed is read again, and the rows are then those of a build from nothing."""

from __future__ import annotations

import json
import os
import random
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from modebook.shelf.catalog import Catalog, identity_of
from modebook.store.build import build
from modebook.store.files import places_of

Rows = Callable[[Path], dict[str, list[Any]]]


def _edit(path: Path, rng: random.Random) -> None:
    """One of the things that people do to a document."""
    document = json.loads(path.read_bytes())
    modes = document["modes"]
    kind = rng.randrange(7)
    if kind == 0:
        document["standing"] = rng.choice(["draft", "proved"])
    elif kind == 1 and len(modes) > 1:
        del modes[rng.randrange(len(modes))]
    elif kind == 2:
        modes.insert(0, {**modes[-1], "name": f"Added {rng.randrange(1000)}", "number": 9})
    elif kind == 3:
        modes[0]["parameters"].reverse()
    elif kind == 4:
        document["settings"] = []
    elif kind == 5:
        modes[0]["parameters"][0]["label"] = rng.choice(["Ärmel", "Light_level", "intensity intensity"])
    else:
        path.write_bytes(b"{ not json")
        return
    path.write_text(json.dumps(document), encoding="utf-8")


def _disturb(catalog: Catalog, rng: random.Random) -> None:
    """A few edits, additions, removals and new names, and now and then something in the rig."""
    files = catalog.fixture_files()
    for _ in range(rng.randint(1, 4)):
        path = rng.choice(files)
        if not path.exists():
            continue
        kind = rng.randrange(6)
        if kind == 0:
            path.unlink()
        elif kind == 1:
            path.rename(path.with_name(f"renamed-{rng.randrange(1000)}.json"))
        elif kind == 2:
            shutil.copy(path, path.with_name(f"copied-{rng.randrange(1000)}.json"))
        elif path.read_bytes().startswith(b"{ not"):
            path.unlink()
        else:
            _edit(path, rng)
    patch = catalog.rigs / "bench" / "patch.csv"
    kind = rng.randrange(6)
    if kind == 0 and patch.exists():
        lines = patch.read_text().splitlines()
        patch.write_text("\n".join([*lines[:-2], lines[-1].replace("Pipe", "Boom")]) + "\n")
    elif kind == 1:
        (catalog.rigs / f"more-{rng.randrange(3)}").mkdir(exist_ok=True)


@pytest.mark.parametrize("seed", range(6))
def test_an_update_has_the_rows_of_a_build_from_nothing(
    generated: Catalog, tmp_path: Path, all_rows: Rows, seed: int
) -> None:
    """After any mixture of edits, additions, removals and renames, all tables and the full text agree."""
    rng = random.Random(seed)
    path, anew = tmp_path / "db.sqlite", tmp_path / "anew.sqlite"
    build(generated, path)
    for _ in range(4):
        _disturb(generated, rng)
        done = build(generated, path)
        assert done.why == ""
        build(generated, anew, anew=True)
        updated, expected = all_rows(path), all_rows(anew)
        assert updated.keys() == expected.keys()
        for table, rows in expected.items():
            assert updated[table] == rows, table


def test_only_changed_documents_are_read(
    generated: Catalog, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """One edit, one document read; none, none, and the file is not even written."""
    path = tmp_path / "db.sqlite"
    build(generated, path)
    parsed: list[str] = []
    from modebook.store import reading

    really = reading.parse

    def noted(content: bytes, model: Any, file: Any) -> Any:
        parsed.append(str(file))
        return really(content, model, file)

    monkeypatch.setattr("modebook.store.reading.parse", noted)
    before = path.stat().st_mtime_ns
    assert not build(generated, path).changed
    assert (parsed, path.stat().st_mtime_ns) == ([], before)
    file = generated.fixture_files()[9]
    file.write_bytes(file.read_bytes().replace(b'"Control"', b'"Controls"'))
    done = build(generated, path)
    assert (done.read, done.removed, done.why) == (1, 0, "")
    assert parsed == [file.relative_to(generated.root).as_posix()]


def test_a_file_that_is_only_touched_is_not_a_change(generated: Catalog, tmp_path: Path) -> None:
    """What counts is the content: a new date alone changes nothing."""
    path = tmp_path / "db.sqlite"
    build(generated, path)
    os.utime(generated.fixture_files()[3], (1, 1))
    assert not build(generated, path).changed


def test_a_change_that_keeps_size_and_date_is_seen(generated: Catalog, tmp_path: Path) -> None:
    """An edit of the same length, dated back, is still a change."""
    path = tmp_path / "db.sqlite"
    file = generated.fixture_files()[3]
    os.utime(file, (1_000_000, 1_000_000))
    build(generated, path)
    build(generated, path)
    file.write_bytes(file.read_bytes().replace(b'"Control"', b'"Kontrol"'))
    os.utime(file, (1_000_000, 1_000_000))
    assert build(generated, path).read == 1


def test_without_stamps_everything_is_still_right(
    generated: Catalog, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, all_rows: Rows
) -> None:
    """Where the user's cache cannot be written, documents are compared by content, and nothing is lost."""
    (tmp_path / "taken").write_text("")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "taken"))
    path = tmp_path / "db.sqlite"
    build(generated, path)
    generated.fixture_files()[0].unlink()
    done = build(generated, path)
    assert (done.read, done.removed) == (0, 1)
    build(generated, tmp_path / "anew.sqlite", anew=True)
    assert all_rows(path) == all_rows(tmp_path / "anew.sqlite")


def test_a_fixture_in_use_that_is_mended_comes_back_to_its_units(
    generated: Catalog, tmp_path: Path, all_rows: Rows
) -> None:
    """A document that breaks leaves its units without a record, and gives it back once it is mended."""
    path = tmp_path / "db.sqlite"
    build(generated, path)
    units = all_rows(path)["units"]
    file = generated.fixture_file(next(row[5] for row in units if row[5]))
    good = file.read_bytes()
    file.write_bytes(b"{")
    build(generated, path)
    assert all_rows(path)["units"] != units
    file.write_bytes(good)
    assert build(generated, path).why == ""
    assert all_rows(path)["units"] == units


def test_the_documents_are_those_that_the_shelf_finds(generated: Catalog) -> None:
    """Hidden files and other kinds are passed over, deeper folders are not, as everywhere else."""
    (generated.fixtures / ".hidden").mkdir()
    (generated.fixtures / ".hidden" / "a.json").write_text("{}")
    (generated.fixtures / "maker-1" / "deeper").mkdir(parents=True)
    for name in (".b.json", "c.json", "d.txt", "deeper/e.json"):
        (generated.fixtures / "maker-1" / name).write_text("{}")
    places = places_of(generated)
    assert {place.file for place in places} == {str(path) for path in generated.fixture_files()}
    assert {place.identity for place in places} == {identity_of(path) for path in generated.fixture_files()}
    assert {generated.root / place.path for place in places} == set(generated.fixture_files())
