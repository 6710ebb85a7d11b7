"""A database: whole, the same bytes each time, refused where it is not ours, and never half."""

from __future__ import annotations

import shutil
import sqlite3
from pathlib import Path

import pytest

from modebook.documents.policy import Override, house_policy
from modebook.shelf.catalog import Catalog
from modebook.store.build import build
from modebook.store.errors import StoreError
from modebook.store.opening import open_database


def test_two_builds_from_nothing_are_the_same_bytes(demo: Catalog, tmp_path: Path) -> None:
    """Nothing in a database comes from the clock, the order of a folder or an address in memory."""
    first, second = tmp_path / "one.sqlite", tmp_path / "two.sqlite"
    build(demo, first)
    moved = Catalog(Path(shutil.copytree(demo.root, tmp_path / "elsewhere")))
    build(moved, second)
    assert first.read_bytes() == second.read_bytes()


def test_processes_do_not_change_a_byte(
    generated: Catalog, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Rows that two other processes made go in as those that this one makes."""
    monkeypatch.setattr("modebook.store.reading.WORTH_A_PROCESS", 1)
    monkeypatch.setattr("modebook.store.reading.CHUNK", 7)
    build(generated, tmp_path / "one.sqlite", processes=1)
    build(generated, tmp_path / "two.sqlite", processes=2)
    assert (tmp_path / "one.sqlite").read_bytes() == (tmp_path / "two.sqlite").read_bytes()


@pytest.mark.parametrize("which", ["demo", "generated"])
def test_keys_and_pages_are_in_order(which: str, request: pytest.FixtureRequest, tmp_path: Path) -> None:
    """Every foreign key leads to a row, and SQLite finds no fault in the file or its full text."""
    catalog: Catalog = request.getfixturevalue(which)
    build(catalog, tmp_path / "db.sqlite")
    connection = sqlite3.connect(tmp_path / "db.sqlite")
    assert connection.execute("PRAGMA foreign_key_check").fetchall() == []
    assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
    for name in ("search_fts", "fixtures_fts"):
        connection.execute(f"INSERT INTO {name} ({name}, rank) VALUES ('integrity-check', 1)")
    connection.close()


def test_every_view_can_be_read(demo: Catalog, tmp_path: Path) -> None:
    """No view asks for a column that is not there, and the demo fills all of them."""
    build(demo, tmp_path / "db.sqlite")
    connection = open_database(tmp_path / "db.sqlite")
    views = [row[0] for row in connection.execute("SELECT name FROM sqlite_master WHERE type = 'view'")]
    assert {"mode_chart", "remote_smoothing", "low_resolution"} <= set(views)
    for view in views:
        assert connection.execute(f"SELECT * FROM {view} LIMIT 1").fetchone(), view
    connection.close()


def test_a_document_that_cannot_be_read_is_a_finding(generated: Catalog, tmp_path: Path) -> None:
    """Broken documents cost nobody else's rows, and each says what is wrong with it."""
    files = generated.fixture_files()
    files[0].write_bytes(b'{"maker": ')
    files[1].write_bytes(files[1].read_bytes().replace(b'"maker"', b'"mkaer"', 1))
    files[2].write_bytes(b"\xff\xfe")
    build(generated, tmp_path / "db.sqlite")
    connection = open_database(tmp_path / "db.sqlite")
    told = {row[0] for row in connection.execute("SELECT file FROM findings WHERE rule = 'document-invalid'")}
    assert told == {path.relative_to(generated.root).as_posix() for path in files[:3]}
    assert connection.execute("SELECT count(*) FROM fixtures").fetchone() == (37,)
    connection.close()


def test_a_rig_that_cannot_be_read_is_a_finding(generated: Catalog, tmp_path: Path) -> None:
    """A rig without a patch is told of, and the other rig is there."""
    (generated.rigs / "empty").mkdir()
    build(generated, tmp_path / "db.sqlite")
    connection = open_database(tmp_path / "db.sqlite")
    told = connection.execute("SELECT file FROM findings WHERE rule = 'document-invalid'").fetchall()
    assert told == [("rigs/empty",)]
    assert connection.execute("SELECT id FROM rigs").fetchall() == [("bench",)]
    connection.close()


def test_another_policy_builds_anew(generated: Catalog, tmp_path: Path) -> None:
    """Findings rest on the policy: a database of another one is not brought up to date but made again."""
    path = tmp_path / "db.sqlite"
    build(generated, path)
    assert not build(generated, path).changed
    other = house_policy().overridden({"pan-tilt-step": Override(value=0.0000001)})
    done = build(generated, path, policy=other)
    assert done.why == "the policy has changed"
    connection = open_database(path)
    assert connection.execute("SELECT 1 FROM findings WHERE rule = 'coarse-angle'").fetchone()
    connection.close()


def test_another_program_builds_anew(
    generated: Catalog, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """So does another version of the program."""
    build(generated, tmp_path / "db.sqlite")
    monkeypatch.setattr("modebook.__version__", "999")
    assert "another version" in build(generated, tmp_path / "db.sqlite").why


@pytest.mark.parametrize("kept_bytes", [200, 5000, 20_000])
def test_a_torn_database_is_built_anew(generated: Catalog, tmp_path: Path, kept_bytes: int) -> None:
    """A file cut short is said to be damaged when it is asked, and whole again after a build."""
    path = tmp_path / "db.sqlite"
    build(generated, path)
    whole = path.read_bytes()
    path.write_bytes(whole[:kept_bytes])
    with pytest.raises(StoreError, match=r"damaged.*modebook build"):
        open_database(path)
    assert "damaged" in build(generated, path).why
    assert path.read_bytes() == whole


def test_a_file_of_another_program_is_never_overwritten(generated: Catalog, tmp_path: Path) -> None:
    """Someone's own database or letter stays as it is, and the line says what to do."""
    letter = tmp_path / "letter.txt"
    letter.write_text("do not lose me")
    other = tmp_path / "other.sqlite"
    connection = sqlite3.connect(other)
    connection.execute("CREATE TABLE mine (a)")
    connection.commit()
    connection.close()
    for path in (letter, other):
        before = path.read_bytes()
        with pytest.raises(StoreError, match=r"not a Modebook database.*--db"):
            build(generated, path)
        with pytest.raises(StoreError, match="not a Modebook database"):
            open_database(path)
        assert path.read_bytes() == before


def test_a_locked_database_is_told_in_one_line(generated: Catalog, tmp_path: Path) -> None:
    """While another program writes, both asking and building say so, and nothing is lost."""
    path = tmp_path / "db.sqlite"
    build(generated, path)
    other = sqlite3.connect(path, isolation_level=None)
    other.execute("BEGIN EXCLUSIVE")
    other.execute("DELETE FROM doubts")
    try:
        with pytest.raises(StoreError, match=r"locked|writing to it") as caught:
            build(generated, path)
        assert "\n" not in str(caught.value)
        with pytest.raises(StoreError, match="locked"):
            open_database(path)
    finally:
        other.execute("ROLLBACK")
        other.close()
    assert not build(generated, path).changed


def test_a_place_that_cannot_be_written_is_told_in_one_line(generated: Catalog, tmp_path: Path) -> None:
    """A folder that is a file: the reason and the remedy, and no leftover."""
    (tmp_path / "taken").write_text("")
    with pytest.raises(StoreError, match="--db"):
        build(generated, tmp_path / "taken" / "db.sqlite")


def test_nothing_is_left_beside_after_an_error(
    generated: Catalog, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A build that fails on the way leaves the old file and no half of a new one."""
    path = tmp_path / "out" / "db.sqlite"
    build(generated, path)
    before = path.read_bytes()

    def full(*_: object) -> None:
        raise sqlite3.OperationalError("database or disk is full")

    monkeypatch.setattr("modebook.store.build.finish", full)
    with pytest.raises(StoreError, match="disk is full"):
        build(generated, path, anew=True)
    assert path.read_bytes() == before
    assert [file.name for file in path.parent.iterdir()] == ["db.sqlite"]


def test_there_is_no_database_before_a_build(tmp_path: Path) -> None:
    """Asking before building says what to run."""
    with pytest.raises(StoreError, match="modebook build"):
        open_database(tmp_path / "none.sqlite")
