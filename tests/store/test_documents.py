"""The database holds every document whole: fixtures and rigs are read from it as from the catalog."""

from __future__ import annotations

import sqlite3

import pytest

from modebook.rig.audit import audit
from modebook.rig.open_rig import open_rig
from modebook.shelf.catalog import Catalog
from modebook.shelf.errors import ShelfError
from modebook.shelf.reading import read_fixture
from modebook.store.build import build
from modebook.store.documents import StoredFixtures, fixture_of, rig_of, text_of


def test_every_file_is_kept_as_it_is(demo: Catalog) -> None:
    """Fixtures, rig.json, patches and shots, byte for byte."""
    connection = sqlite3.connect(build(demo, demo.root / "db.sqlite").path)
    files = [*(demo.root / "fixtures").glob("*/*.json"), *(demo.root / "rigs").glob("*/rig.json")]
    files += [*(demo.root / "rigs").glob("*/patch.csv"), *(demo.root / "rigs").glob("*/shots.csv")]
    paths = {file.relative_to(demo.root).as_posix(): file.read_bytes() for file in files}
    kept = {path for (path,) in connection.execute("SELECT path FROM texts")}
    assert kept == set(paths)
    for path, content in paths.items():
        assert text_of(connection, path) == content
    connection.close()


def test_fixtures_and_rigs_read_the_same_as_from_the_catalog(demo: Catalog) -> None:
    """The document, and all that an audit finds."""
    connection = sqlite3.connect(build(demo, demo.root / "db.sqlite").path)
    file = demo.root / "fixtures" / "zandroveil" / "glawm-200.json"
    assert fixture_of(connection, "zandroveil/glawm-200") == read_fixture(file)
    assert fixture_of(connection, "nobody/nothing") is None
    for name in ("ossilby-pier", "ossilby-jetty", "ossilby-kitchen"):
        stored, opened = rig_of(connection, name), open_rig(name, demo)
        assert stored is not None
        assert [(one.rule, one.row, one.message) for one in audit(stored).findings] == [
            (one.rule, one.row, one.message) for one in audit(opened).findings
        ]
    assert rig_of(connection, "nowhere") is None
    connection.close()


def test_a_changed_document_and_a_removed_one_change_what_is_kept(demo: Catalog) -> None:
    """An update keeps the new content, and forgets what is gone."""
    path = demo.root / "db.sqlite"
    build(demo, path)
    changed = demo.root / "fixtures" / "zandroveil" / "glawm-200.json"
    changed.write_bytes(changed.read_bytes().replace(b'"Everything"', b'"All of it"'))
    (demo.root / "fixtures" / "generic" / "switch.json").unlink()
    shots = demo.root / "rigs" / "ossilby-pier" / "shots.csv"
    shots.write_bytes(shots.read_bytes() + b"\n")
    build(demo, path)
    connection = sqlite3.connect(path)
    assert text_of(connection, "fixtures/zandroveil/glawm-200.json") == changed.read_bytes()
    assert text_of(connection, "fixtures/generic/switch.json") is None
    assert text_of(connection, "rigs/ossilby-pier/shots.csv") == shots.read_bytes()
    connection.close()


def test_a_fixture_that_could_not_be_taken_in_says_so(demo: Catalog) -> None:
    """It is known by name, and its reading is refused in one line."""
    broken = demo.root / "fixtures" / "generic" / "switch.json"
    broken.write_text("{")
    connection = sqlite3.connect(build(demo, demo.root / "db.sqlite").path)
    fixtures = StoredFixtures(connection)
    assert "generic/switch" in fixtures.identities
    with pytest.raises(ShelfError, match="could not be taken in"):
        fixtures.read("generic/switch")
    connection.close()
