"""What a database was made by: the program's version and text, the policy; a change of any builds it anew."""

from __future__ import annotations

import hashlib
import sqlite3
from functools import cache
from pathlib import Path

from modebook.documents.policy import Policy
from modebook.store.schema import FORMAT

_MAKES_ROWS = ("words", "documents", "response", "shelf", "checks", "rig", "store")
"""The rooms whose code decides what stands in a database."""


def made_by(policy: Policy) -> dict[str, str]:
    """The rows of the table `about`: the same documents and the same values here make the same file."""
    from modebook import __version__

    return {
        "format": str(FORMAT),
        "policy": hashlib.sha256(policy.model_dump_json().encode()).hexdigest(),
        "program": f"modebook {__version__}",
        "program_sha256": _program_text(),
        "sqlite": sqlite3.sqlite_version,
    }


@cache
def _program_text() -> str:
    """A hash of the code that makes rows, as it was when this process first asked."""
    here = Path(__file__).resolve().parents[1]
    digest = hashlib.sha256()
    for room in _MAKES_ROWS:
        for file in sorted((here / room).rglob("*.py")):
            digest.update(file.relative_to(here).as_posix().encode())
            digest.update(file.read_bytes())
    return digest.hexdigest()
