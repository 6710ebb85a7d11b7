"""Opens what a person gives: a clip or a table, told apart by what the file is."""

from __future__ import annotations

from pathlib import Path

from modebook.measure.clip import ENDINGS, Progress, read_clip
from modebook.measure.errors import MeasureError
from modebook.measure.setup import Setup
from modebook.measure.trace import Trace, read_trace

TABLES = (".csv", ".tsv", ".txt", ".xlsx", ".xlsm", ".ods")


def is_clip(path: Path) -> bool:
    """Whether a file is to be read as a clip. Raises MeasureError for a folder or a missing file."""
    if path.is_dir():
        raise MeasureError(path, "is a folder", remedy="give a clip or a table")
    if not path.exists():
        raise MeasureError(path, "no such file", remedy="give a clip or a table")
    if path.stat().st_size == 0:
        raise MeasureError(path, "the file is empty", remedy="give a clip or a table")
    if path.suffix.lower() in TABLES:
        return False
    if path.suffix.lower() in ENDINGS:
        return True
    with path.open("rb") as file:
        return b"\0" in file.read(4096)


def read(path: Path, setup: Setup, progress: Progress | None = None) -> Trace:
    """Give the trace in a file. Raises MeasureError or ShelfError for what is none."""
    if is_clip(path):
        return read_clip(path, setup, progress)
    if setup.box is not None or setup.reference is not None:
        raise MeasureError(path, "is a table, so it has no box", remedy="leave --box and --reference out")
    return read_trace(path, setup.open_s(None))
