"""What decides a result besides the document: the program's own text, and the libraries it reads with."""

from __future__ import annotations

import hashlib
import sys
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

CHECKS_READ_WITH = ("pydantic", "pydantic-core", "orjson", "rapidfuzz", "numpy")
"""The libraries that a check's findings, or their wording, come from."""

_CHECKS = ("words", "documents", "response", "shelf", "checks")
"""The rooms whose code decides what a check of documents finds."""


@cache
def text_of(rooms: tuple[str, ...]) -> str:
    """A hash of the code and data of some rooms, as it was when this process first asked."""
    here = Path(__file__).resolve().parents[1]
    digest = hashlib.sha256()
    for room in rooms:
        for file in sorted(file for file in (here / room).rglob("*") if file.suffix in (".py", ".json")):
            content = file.read_bytes()
            digest.update(f"{file.relative_to(here).as_posix()} {len(content)}\n".encode())
            digest.update(content)
    return digest.hexdigest()


@cache
def of_checks() -> str:
    """A hash of all that decides what a check by the house policy finds in a document."""
    versions = [f"{name} {_version(name)}" for name in CHECKS_READ_WITH]
    return hashlib.sha256("\n".join((sys.version, *versions, text_of(_CHECKS))).encode()).hexdigest()


def _version(name: str) -> str:
    try:
        return version(name)
    except PackageNotFoundError:  # a library that the system brings without telling its version
        return "unknown"
