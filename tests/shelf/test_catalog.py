"""Where the catalog lies, what is in it, and folders that lead astray."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest

from modebook.shelf.catalog import ENVIRONMENT, Catalog, data_folder, find_catalog, identity_of, json_files
from modebook.shelf.errors import ShelfError
from modebook.shelf.reading import read_fixture


def _made(root: Path, *files: str) -> Path:
    for file in files:
        path = root / file
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text("{}")
    return root


@pytest.fixture
def elsewhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A current folder with no catalog here or above, and none named in the environment."""
    monkeypatch.delenv(ENVIRONMENT, raising=False)
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_files_come_in_the_order_of_their_paths(tmp_path: Path) -> None:
    """By folder and name, not as strings: `a/z` comes before `a-b/a`. Hidden ones and others stay out."""
    root = _made(
        tmp_path,
        "fixtures/a-b/a.json",
        "fixtures/a/z.json",
        "fixtures/a/b.json",
        "fixtures/a/.hidden.json",
        "fixtures/.git/c.json",
        "fixtures/a/notes.txt",
        "rigs/pier/rig.json",
        "rigs/kitchen/patch.csv",
        "rigs/.old/rig.json",
        "rigs/readme.md",
    )
    catalog = Catalog(root)
    assert [path.relative_to(root).as_posix() for path in catalog.fixture_files()] == [
        "fixtures/a/b.json",
        "fixtures/a/z.json",
        "fixtures/a-b/a.json",
    ]
    assert [folder.name for folder in catalog.rig_folders()] == ["kitchen", "pier"]
    assert catalog.fixture_file("a/b") == root / "fixtures" / "a" / "b.json"


def test_half_a_catalog_has_nothing_in_the_other_half(tmp_path: Path) -> None:
    """A catalog of rigs alone has no fixtures, and the other way round."""
    rigs = Catalog(_made(tmp_path / "one", "rigs/pier/rig.json"))
    fixtures = Catalog(_made(tmp_path / "two", "fixtures/a/b.json"))
    assert rigs.fixture_files() == []
    assert fixtures.rig_folders() == []


def test_the_named_catalog_comes_first(elsewhere: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The one given, else the environment's, else the folder here or above, else the installed one."""
    for name in ("given", "environment", "here/catalog"):
        _made(elsewhere / name, "fixtures/a/b.json")
    assert find_catalog().root == data_folder("catalog")
    (elsewhere / "here" / "deep" / "er").mkdir(parents=True)
    monkeypatch.chdir(elsewhere / "here" / "deep" / "er")
    assert find_catalog().root == elsewhere / "here" / "catalog"
    monkeypatch.setenv(ENVIRONMENT, str(elsewhere / "environment"))
    assert find_catalog().root == elsewhere / "environment"
    assert find_catalog(elsewhere / "given").root == elsewhere / "given"
    assert find_catalog(elsewhere / "here").root == elsewhere / "here" / "catalog"


@pytest.mark.parametrize(
    ("name", "message"),
    [
        ("missing", "no such folder; a catalog is a folder with fixtures/ and rigs/ in it"),
        ("file.json", "this is a file, not a folder; a catalog is a folder with fixtures/ and rigs/ in it"),
        ("empty", "neither fixtures/ nor rigs/ is in it; a catalog has both"),
    ],
)
def test_a_name_that_is_no_catalog(
    name: str, message: str, elsewhere: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Told in one line, whether it was given or stands in the environment; never another one instead."""
    _made(elsewhere, "file.json", "catalog/fixtures/a/b.json")
    (elsewhere / "empty").mkdir()
    path = elsewhere / name
    for given in (path, str(path), None):
        if given is None:
            monkeypatch.setenv(ENVIRONMENT, str(path))
        with pytest.raises(ShelfError) as caught:
            find_catalog(given)
        assert str(caught.value) == f"{path}: {message}"


def test_a_current_folder_that_is_gone(elsewhere: Path) -> None:
    """Someone took away the folder one stands in."""
    gone = elsewhere / "gone"
    gone.mkdir()
    os.chdir(gone)
    gone.rmdir()
    with pytest.raises(ShelfError, match="the current folder: no such file or directory"):
        find_catalog()


def test_a_catalog_that_may_not_be_looked_into(elsewhere: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The system's refusal is told (feigned: root may look everywhere)."""

    def refuse(*_: object) -> bool:
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))

    monkeypatch.setattr(Path, "is_dir", refuse)
    with pytest.raises(ShelfError) as caught:
        find_catalog("/some/where")
    monkeypatch.undo()
    assert str(caught.value) == "/some/where: permission denied; name a catalog that can be read"


@pytest.mark.parametrize("what", ["scandir", "iterdir"])
def test_folders_that_cannot_be_read(what: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Fixtures and rigs alike: one line, naming the folder."""

    def refuse(*_: object) -> None:
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))

    catalog = Catalog(_made(tmp_path, "fixtures/a/b.json", "rigs/pier/rig.json"))
    monkeypatch.setattr(os if what == "scandir" else Path, what, refuse)
    with pytest.raises(ShelfError) as caught:
        _ = catalog.fixture_files() if what == "scandir" else catalog.rig_folders()
    monkeypatch.undo()
    assert "permission denied; " in str(caught.value)
    assert str(tmp_path) in str(caught.value)


def test_a_folder_that_is_none(tmp_path: Path) -> None:
    """A missing folder and a file in its place."""
    _made(tmp_path, "a.json")
    for path, problem in (
        (tmp_path / "b", "no such file or directory"),
        (tmp_path / "a.json", "not a directory"),
    ):
        with pytest.raises(ShelfError) as caught:
            json_files(path)
        assert str(caught.value) == f"{path}: {problem}; name a folder that can be read"


def test_a_link_that_leads_back_is_told(tmp_path: Path) -> None:
    """A loop has no end; which link it is, and what to do."""
    root = _made(tmp_path, "fixtures/a/b.json")
    loop = root / "fixtures" / "a" / "again"
    loop.symlink_to(root / "fixtures")
    with pytest.raises(ShelfError) as caught:
        Catalog(root).fixture_files()
    assert (
        str(caught.value) == f"{loop}: this link leads back to a folder that it lies in; take the link away"
    )


def test_two_links_that_lead_to_each_other_are_told(tmp_path: Path) -> None:
    """A loop over two folders, neither of which lies in the other."""
    root = _made(tmp_path, "fixtures/a/b.json", "fixtures/c/d.json")
    (root / "fixtures" / "a" / "to-c").symlink_to(root / "fixtures" / "c")
    (root / "fixtures" / "c" / "to-a").symlink_to(root / "fixtures" / "a")
    with pytest.raises(ShelfError, match="leads back"):
        Catalog(root).fixture_files()


def test_links_that_lead_elsewhere_are_followed(tmp_path: Path) -> None:
    """A maker's folder may lie on another disk, and even be linked twice."""
    shared = _made(tmp_path / "shared", "b.json")
    root = _made(tmp_path / "catalog", "fixtures/a/c.json")
    for name in ("maker", "other"):
        (root / "fixtures" / name).symlink_to(shared)
    files = Catalog(root).fixture_files()
    assert [path.relative_to(root).as_posix() for path in files] == [
        "fixtures/a/c.json",
        "fixtures/maker/b.json",
        "fixtures/other/b.json",
    ]


def test_a_file_that_links_nowhere_is_told_by_who_reads_it(tmp_path: Path) -> None:
    """It stays in the list, so that it is not passed over, and the others can be read."""
    root = _made(tmp_path, "fixtures/a/b.json")
    (root / "fixtures" / "a" / "c.json").symlink_to(root / "nowhere")
    (root / "fixtures" / "a" / "d.json").symlink_to(root / "fixtures" / "a" / "d.json")
    _, nowhere, loop = Catalog(root).fixture_files()
    for path, problem in (
        (nowhere, "no such file or directory"),
        (loop, "too many levels of symbolic links"),
    ):
        with pytest.raises(ShelfError, match=problem):
            read_fixture(path)


@pytest.mark.parametrize(
    ("path", "identity"),
    [
        ("/x/catalog/fixtures/arden/lumo-40.json", "arden/lumo-40"),
        ("/fixtures/x/fixtures/arden/lumo-40.json", "arden/lumo-40"),
        ("/x/fixtures/fixtures/lumo-40.json", "fixtures/lumo-40"),
        ("/x/fixtures/lumo-40.json", "lumo-40"),
        ("/x/fixtures/arden/old/lumo-40.json", "arden/old/lumo-40"),
        ("/x/arden/lumo-40.json", None),
        ("/x/fixtures.json", None),
    ],
)
def test_the_path_is_the_identity(path: str, identity: str | None) -> None:
    """What lies below `fixtures`, without the ending; nothing outside of it."""
    assert identity_of(Path(path)) == identity


def test_a_relative_path_has_the_same_identity(elsewhere: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Also from within the maker's own folder."""
    _made(elsewhere, "fixtures/arden/lumo-40.json")
    monkeypatch.chdir(elsewhere / "fixtures" / "arden")
    assert identity_of(Path("lumo-40.json")) == "arden/lumo-40"


def test_what_comes_with_the_program_is_there() -> None:
    """Schemas and the demo catalog are found beside the program, wherever it runs."""
    assert (data_folder("schema") / "fixture.schema.json").is_file()
    assert (data_folder("catalog") / "fixtures").is_dir()
    with pytest.raises(ShelfError, match="install modebook again"):
        data_folder("nothing-of-the-kind")
