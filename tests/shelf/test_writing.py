"""Files appear whole or not at all, and what was there stays when something fails."""

from __future__ import annotations

import errno
import os
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given
from hypothesis import settings as calm
from hypothesis import strategies as st

from modebook.shelf.errors import ShelfError
from modebook.shelf.writing import write_whole

CALM = calm(deadline=None, max_examples=30, suppress_health_check=[HealthCheck.function_scoped_fixture])


def _names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


@CALM
@given(st.binary(), st.binary())
def test_the_last_content_is_there_and_nothing_else(tmp_path: Path, first: bytes, second: bytes) -> None:
    """Written and written over; no file of the work in between is left."""
    path = tmp_path / "new" / "folder" / "lumo.json"
    write_whole(path, first)
    assert path.read_bytes() == first
    write_whole(path, second)
    assert path.read_bytes() == second
    assert _names(path.parent) == ["lumo.json"]


def test_overwrite_off_keeps_a_persons_file(tmp_path: Path) -> None:
    """What exists is told and left alone; what does not is written."""
    path = tmp_path / "lumo.json"
    write_whole(path, b"mine", overwrite=False)
    with pytest.raises(ShelfError) as caught:
        write_whole(path, b"theirs", overwrite=False)
    assert str(caught.value) == (f"{path}: this file exists already; name another one, or move it away first")
    assert path.read_bytes() == b"mine"


class _FullDisk:
    """A file that takes half of what it is given."""

    def __init__(self, handle: int, _mode: str) -> None:
        self.handle = handle

    def __enter__(self) -> _FullDisk:
        return self

    def __exit__(self, *_: object) -> None:
        os.close(self.handle)

    def write(self, content: bytes) -> int:
        os.write(self.handle, content[: len(content) // 2])
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))


def test_a_write_that_fails_half_way_leaves_the_old_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A full disk: the old content stands, and the half-written file is gone."""
    path = tmp_path / "lumo.json"
    path.write_bytes(b"old")
    monkeypatch.setattr(os, "fdopen", _FullDisk)
    with pytest.raises(ShelfError) as caught:
        write_whole(path, b"new content")
    assert str(caught.value) == (
        f"{path}: cannot be written: no space left on device; choose a place that can be written to"
    )
    assert path.read_bytes() == b"old"
    assert _names(tmp_path) == ["lumo.json"]


@pytest.mark.parametrize("stop", [KeyboardInterrupt, MemoryError])
def test_a_person_who_stops_it_keeps_the_old_file(
    stop: type[BaseException], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whatever ends the work at its last step, nothing is left lying about."""
    path = tmp_path / "lumo.json"
    path.write_bytes(b"old")

    def interrupt(*_: Any) -> None:
        raise stop

    monkeypatch.setattr(Path, "replace", interrupt)
    with pytest.raises(stop):
        write_whole(path, b"new")
    assert path.read_bytes() == b"old"
    assert _names(tmp_path) == ["lumo.json"]


@pytest.mark.parametrize("number", [errno.EROFS, errno.EACCES])
def test_a_folder_that_takes_no_files(number: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A read-only disk or folder (feigned: root may write all) is one clear line."""

    def refuse(*_: object, **__: object) -> None:
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr("tempfile.mkstemp", refuse)
    with pytest.raises(ShelfError) as caught:
        write_whole(tmp_path / "lumo.json", b"new")
    assert str(caught.value) == (
        f"{tmp_path}/lumo.json: cannot be written: {os.strerror(number).lower()}; "
        "choose a place that can be written to"
    )
    assert _names(tmp_path) == []


def test_places_that_are_no_files(tmp_path: Path) -> None:
    """A folder in the file's place, or a file in its folder's place, is told and left as it is."""
    (tmp_path / "folder").mkdir()
    (tmp_path / "file").write_bytes(b"old")
    for path in (tmp_path / "folder", tmp_path / "file" / "lumo.json"):
        with pytest.raises(ShelfError, match="cannot be written"):
            write_whole(path, b"new")
    assert (tmp_path / "file").read_bytes() == b"old"
    assert _names(tmp_path) == ["file", "folder"]


def test_rights_stay_and_new_files_get_the_usual_ones(tmp_path: Path) -> None:
    """A file that others may read stays so; a new one obeys the person's mask."""
    path = tmp_path / "lumo.json"
    before = os.umask(0o027)
    try:
        write_whole(path, b"new")
    finally:
        os.umask(before)
    assert path.stat().st_mode & 0o777 == 0o640
    path.chmod(0o664)
    write_whole(path, b"newer")
    assert path.stat().st_mode & 0o777 == 0o664


def test_a_link_stays_a_link(tmp_path: Path) -> None:
    """What a link leads to is written, also where it does not exist yet."""
    target, link = tmp_path / "shared" / "lumo.json", tmp_path / "lumo.json"
    link.symlink_to(target)
    for content in (b"first", b"second"):
        write_whole(link, content)
        assert link.is_symlink()
        assert target.read_bytes() == content
    with pytest.raises(ShelfError, match="exists already"):
        write_whole(link, b"third", overwrite=False)


def test_a_link_to_itself_is_told(tmp_path: Path) -> None:
    """It leads to no place that could be written."""
    link = tmp_path / "lumo.json"
    link.symlink_to(link)
    with pytest.raises(ShelfError, match="cannot be written: too many levels of symbolic links"):
        write_whole(link, b"new")
    assert _names(tmp_path) == ["lumo.json"]


def test_the_longest_name_can_be_written(tmp_path: Path) -> None:
    """The file of the work in between needs no longer name than the file itself."""
    path = tmp_path / ("a" * 250 + ".json")
    write_whole(path, b"new")
    assert path.read_bytes() == b"new"
