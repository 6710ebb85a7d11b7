"""An audit as one JSON object: thousands of findings, written without looking each of them over first."""

from __future__ import annotations

import orjson

from modebook.rig.audit import Audit


def audit_json(audit: Audit) -> str:
    """JSON text, indented, ending in a line break; not-a-number and infinity become null, as orjson does."""
    return orjson.dumps(audit.to_json(), option=orjson.OPT_INDENT_2 | orjson.OPT_APPEND_NEWLINE).decode()
