"""Values as they stand in a row: lists as JSON, conditions in words, spans in columns."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from typing import Any

from modebook.documents.modes import Condition, Span

Row = tuple[object, ...]
Rows = dict[str, list[Row]]
"""Rows by table, in the order of the table's columns."""

NO_SPAN: tuple[None, None, None] = (None, None, None)


def as_json(value: Any) -> str:
    """The value as compact JSON text."""
    return json.dumps(value, ensure_ascii=False, default=str)


def span_as_written(span: Span) -> dict[str, object]:
    """A span as its document writes it."""
    return span.model_dump(mode="json", by_alias=True, exclude_unset=True)


def more_spans(spans: Span | Sequence[Span] | None) -> str | None:
    """Where a menu state chooses between several spans: all of them, as JSON."""
    if spans is None or isinstance(spans, Span):
        return None
    return as_json([span_as_written(span) for span in spans])


def in_words(conditions: Iterable[Condition]) -> str:
    """Conditions as a person would say them: ``dimmer 0 to 0; smoothing is off or short``."""
    return "; ".join(_in_words(condition) for condition in conditions)


def _in_words(condition: Condition) -> str:
    if condition.parameter is not None:
        pieces = " or ".join(f"{low} to {high}" for low, high in condition.intervals)
        said = f"{condition.parameter} {pieces}"
    elif condition.setting is not None:
        said = f"{condition.setting} is {' or '.join(condition.choices or ())}"
    else:
        return condition.given or ""
    return f"{said} ({condition.given})" if condition.given else said


def for_binding(rows: list[Row]) -> list[Row]:
    """The rows with '' for None: sqlite3 looks for an adapter at every None, which costs more than the rest.

    The insert turns '' back into NULL; no text of these rows is ever empty.
    """
    return [tuple(["" if value is None else value for value in row]) for row in rows]
