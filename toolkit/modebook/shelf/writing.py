"""Writes files whole or not at all: beside the place, then moved into it."""

from __future__ import annotations

import errno
import os
import tempfile
from pathlib import Path

from modebook.shelf.errors import ShelfError, reason_of


def write_whole(path: Path, content: bytes, *, overwrite: bool = True) -> None:
    """Put `content` at `path` in one step; folders above are made.

    Raises ShelfError where the place cannot be written, or holds a file and `overwrite` is off. After an
    error what was there before is still there.
    """
    try:
        # A link stays a link: what it leads to is written.
        target = Path(os.path.realpath(path)) if path.is_symlink() else path
        if target.is_symlink():
            raise OSError(errno.ELOOP, os.strerror(errno.ELOOP))
        target.parent.mkdir(parents=True, exist_ok=True)
        if not overwrite and target.exists():
            raise ShelfError(
                path, "this file exists already", remedy="name another one, or move it away first"
            )
        handle, beside = tempfile.mkstemp(prefix=".modebook-", dir=target.parent)
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(content)
            mode = target.stat().st_mode & 0o777 if target.exists() else 0o666 & ~_umask()
            Path(beside).chmod(mode)
            Path(beside).replace(target)
        except BaseException:
            Path(beside).unlink(missing_ok=True)
            raise
    except OSError as error:
        raise ShelfError(
            path, f"cannot be written: {reason_of(error)}", remedy="choose a place that can be written to"
        ) from error


def _umask() -> int:
    now = os.umask(0)
    os.umask(now)
    return now
