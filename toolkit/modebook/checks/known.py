"""What former checks found: results kept in the user's cache folder, by a document's place and content.

A result holds as long as the document's bytes, its place in the catalog and all that decides findings (see
fingerprint.py) are the same. Nothing here is needed: a file that is missing, torn, of another program or in
a folder that cannot be written costs time, and nothing else.
"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import orjson

from modebook.checks.finding import Finding
from modebook.checks.fingerprint import of_checks
from modebook.checks.runner import CRASHED
from modebook.shelf.cache import results_path
from modebook.shelf.catalog import Catalog
from modebook.shelf.errors import ShelfError
from modebook.shelf.writing import write_whole

_BELOW = f"{os.sep}fixtures{os.sep}"
MOST_FINDINGS = 200
"""Findings of one document that are kept; with more the document is rather checked anew each time."""

Entry = tuple[str, list[list[Any]]]
"""The digest of a document's content and place, and its findings as they are written."""


@dataclass
class Known:
    """The results of one catalog's documents; see `recall`."""

    file: Path
    """Where they are kept."""
    above: str
    """The catalog's folder of fixtures, with a separator behind it."""
    entries: dict[str, Entry] = field(default_factory=dict)
    """By the document's path below that folder."""

    def result(self, file: str, digest: str) -> list[Finding] | None:
        """The findings of a document whose content and place have this digest; None where none are known."""
        entry = self.entries.get(self._place(file))
        return None if entry is None or entry[0] != digest else unpacked(entry[1], file)

    def keep(self, files: Sequence[str], fresh: Iterable[tuple[str, str, list[Finding]]]) -> None:
        """Add results (file, digest, findings) and write all; those of files that are gone are dropped."""
        added: dict[str, Entry] = {}
        for file, digest, findings in fresh:
            packed = packed_surely(findings, file)
            if packed is not None:
                added[self._place(file)] = (digest, packed)
        if not added:
            return
        seen = {self._place(file) for file in files}
        kept = {
            place: entry
            for place, entry in self.entries.items()
            if place in seen or os.path.exists(self.above + place)  # noqa: PTH110 - many, and plain strings
        }
        try:
            body = orjson.dumps(kept | added)
            write_whole(self.file, b"\n".join((_head(body), body)))
        except (ShelfError, orjson.JSONEncodeError):
            # A disk that takes nothing, or a file's name that is no text: the next check is as slow as this.
            return

    def _place(self, file: str) -> str:
        return _absolute(file)[len(self.above) :]


def recall(files: Sequence[str]) -> Known | None:
    """What is known about the documents of a catalog; None where they are not all of one catalog."""
    if not files:
        return None
    first = _absolute(files[0])
    root, below, _ = first.rpartition(_BELOW)
    above = root + below
    if not below or not all(_absolute(file).startswith(above) for file in files):
        return None
    try:
        file = results_path(Catalog(Path(root or os.sep)))
    except (OSError, RuntimeError):  # no home folder, or a folder that cannot be followed
        return None
    return None if file.is_relative_to(root) else Known(file, above, _read(file))


def digest_of(content: bytes, identity: str | None) -> str:
    """The mark of a document: its bytes, and its ``maker/model`` by its place."""
    mark = hashlib.sha256(content)
    mark.update(b"\0" + os.fsencode(identity or ""))
    return mark.hexdigest()


def packed_surely(findings: list[Finding], file: str) -> list[list[Any]] | None:
    """Findings as they are written, without their file; None where they would not come back the same.

    A rule's own failure is not kept: it may come from a machine that was short of memory.
    """
    if len(findings) > MOST_FINDINGS or any(finding.rule == CRASHED for finding in findings):
        return None
    packed = [[f.rule, f.severity, f.pointer, f.message, f.figure, f.help] for f in findings]
    try:
        again = unpacked(orjson.loads(orjson.dumps(packed)), file) if packed else []
    except orjson.JSONEncodeError:
        return None
    # In words, since 1 and 1.0, or a tuple and a list, are the same or not the same for other reasons.
    return packed if repr(again) == repr(findings) else None


def unpacked(packed: list[list[Any]], file: str) -> list[Finding]:
    """The findings of a file out of what was written."""
    return [
        Finding(rule, severity, file, pointer, message, figure, help_)
        for rule, severity, pointer, message, figure, help_ in packed
    ]


def _read(file: Path) -> dict[str, Entry]:
    try:
        head, _, body = file.read_bytes().partition(b"\n")
    except OSError:
        return {}
    if head != _head(body):
        return {}
    entries: dict[str, Entry] = orjson.loads(body)
    return entries


def _head(body: bytes) -> bytes:
    """The first line: what the results depend on, and a hash that no torn or foreign file has."""
    return f"{of_checks()} {hashlib.sha256(body).hexdigest()}".encode()


def _absolute(file: str) -> str:
    # Asked for every document of a catalog: plain strings, and the current folder only where it is needed.
    return file if os.path.isabs(file) else os.path.join(os.getcwd(), file)  # noqa: PTH109, PTH117, PTH118
