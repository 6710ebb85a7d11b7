"""Labels of groups that stand in the middle of their rows, as in merged cells: which rows they are of."""

from __future__ import annotations

from modebook.intake.chart_rows import ChartRow
from modebook.intake.loose_rows import values_of

_NEAR = 1  # rows that a border may be off, where rows are of different heights


def with_centered_groups(rows: list[ChartRow]) -> list[ChartRow]:
    """The rows with each label beside all rows of its group; unchanged where labels stand at the top.

    Every group goes as far below its label as it goes above, the first from the first row on; the last one
    must end with the last row, and each must begin where a slot does.
    """
    rows = [row for row in rows if not _is_number(row)]
    body = [row for row in rows if not _is_label(row)]
    labels: list[tuple[float, str]] = []
    count = 0
    for row in rows:
        if row.whole and not _is_label(row):
            return rows
        if _is_label(row):
            labels.append((count, row.group or row.whole))
            continue
        if row.group and (not labels or row.group != labels[-1][1]):
            labels.append((count + 0.5, row.group))
        count += 1
    if len(labels) < 2 or not body or labels[0][0] <= 0.5 or any(row.heads for row in rows):
        return rows
    borders = [0]
    for at, _ in labels:
        border = _begun(body, round(2 * at - borders[-1]))
        if border is None or border <= at:
            return rows
        borders.append(border)
    if borders[-1] != len(body):
        return rows
    for number, (_, label) in enumerate(labels):
        for row in body[borders[number] : borders[number + 1]]:
            row.group = label
    return body


def _is_label(row: ChartRow) -> bool:
    bare = not (row.has_slot or row.has_value or row.name or row.meaning)
    return bare and any(letter.isalpha() for letter in row.group or row.whole) and not row.heads


def _is_number(row: ChartRow) -> bool:
    """Whether a row is but a number in the column of groups: the page's."""
    bare = not (row.has_slot or row.has_value or row.name or row.meaning or row.whole)
    return bare and row.group.isdecimal()


def _begun(body: list[ChartRow], border: int) -> int | None:
    """The row nearest to a border with which a slot begins, or the end of all rows."""
    for off in (0, -_NEAR, _NEAR):
        at = border + off
        if at == len(body):
            return at
        if 0 < at < len(body):
            values = values_of(body[at])
            if values[0].start == 0 if values else body[at].has_slot:
                return at
    return None
