"""What a database was made by: the program's version and text, the policy; a change of any builds it anew."""

from __future__ import annotations

import hashlib
import sqlite3

from modebook.checks.fingerprint import text_of
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
        "program_sha256": text_of(_MAKES_ROWS),
        "sqlite": sqlite3.sqlite_version,
    }
