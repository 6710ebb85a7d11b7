"""One JSON object on standard output, whole and valid, with keys that do not change."""

from __future__ import annotations

import math
from typing import Any

import orjson


def to_json(value: Any) -> str:
    """JSON text of plain data, indented, ending in a line break; not-a-number and infinity become null."""
    return orjson.dumps(_finite(value), option=orjson.OPT_INDENT_2 | orjson.OPT_APPEND_NEWLINE).decode()


def _finite(value: Any) -> Any:
    if isinstance(value, float):
        return value if math.isfinite(value) else None
    if isinstance(value, dict):
        return {str(key): _finite(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [_finite(item) for item in value]
    return value
