"""Lines of an unruled table that are no rows of their own: words that go on above or begin below."""

from __future__ import annotations

from modebook.intake.chart_rows import ChartRow


def unwrapped(rows: list[ChartRow]) -> list[ChartRow]:
    """Rows of an unruled table: a row of words alone goes on with the row above, or begins the one below.

    Where values stand in the middle of their words, lines that fit both ways are marked.
    """
    centered = any(
        _words_only(row)
        and (row.wraps is False or index == 0)
        and index + 1 < len(rows)
        and _takes(row, rows[index + 1])
        for index, row in enumerate(rows)
    )
    topped = _values_on_top(rows)
    centered = centered and not topped
    found: list[ChartRow] = []
    pending: list[ChartRow] = []
    for index, row in enumerate(rows):
        if not _words_only(row):
            for words in pending:
                _put_before(row, words)
            pending = []
            found.append(row)
            continue
        below = rows[index + 1] if index + 1 < len(rows) else None
        above = found[-1] if found and not found[-1].whole else None
        up = above is not None and not pending and (row.wraps is not False or topped)
        chain = index + 1
        while chain < len(rows) and _words_only(rows[chain]) and rows[chain].wraps is not False:
            chain += 1
        target = rows[chain] if chain < len(rows) else None
        down = (
            target is not None
            and _takes(row, target)
            and not (below is not None and _words_only(below) and below.wraps is False)
        )
        if pending:
            pending.append(row)
        elif up and not (down and centered):
            _put_behind(above, row)  # type: ignore[arg-type]
        elif down and not up:
            pending.append(row)
        elif up and above is not None:
            above.why.append("the words below these values may belong to the next ones")
            _put_behind(above, row)
        elif above is not None:
            above.why.append("words without values stand below this row")
            _put_behind(above, row)
        else:
            found.append(row)
    found.extend(pending)
    return found


def _values_on_top(rows: list[ChartRow]) -> bool:
    """Whether values can only stand beside the first line of their words.

    Values in the middle have as many lines above as below; values beside the last line have them all above.
    """
    if not any(_words_only(row) for row in rows) or any(row.whole for row in rows):
        return False
    gaps: list[list[ChartRow]] = [[]]
    valued = [row for row in rows if not _words_only(row)]
    for row in rows:
        if _words_only(row):
            gaps[-1].append(row)
        else:
            gaps.append([])
    if gaps[0] or len(gaps) < 3:
        return False
    if any(gap and _begins_small(valued[n]) for n, gap in enumerate(gaps[:-1])):
        return False
    above, leading = 0, False
    for index, gap in enumerate(gaps[1:], start=1):
        # What a gap holds is below the row above it, as many as are above that row, and above the next one.
        above = len(gap) - above
        if above < 0:
            break
        leading = leading or (above > 0 and index < len(valued) and _begins_small(gap[-above]))
    if above == 0 and not leading:
        return False
    below = [(row, rows[n + 1]) for n, row in enumerate(rows[:-1]) if _words_only(row)]
    last = [(row, other) for row, other in below if not _words_only(other)]
    return bool(gaps[-1]) or not all(_takes(row, other) for row, other in last)


def _begins_small(row: ChartRow) -> bool:
    """Whether the words of a row begin with a small letter, as the rest of a text does."""
    return (row.meaning or row.name)[:1].islower()


def _words_only(row: ChartRow) -> bool:
    blank = all(cell.kind == "blank" for cell in row.slots.values())
    words = bool(row.name or row.meaning) and not row.why
    return words and blank and not (row.whole or row.has_value or row.matrix or row.group or row.default)


def _takes(words: ChartRow, row: ChartRow) -> bool:
    """Whether the words of a row can go on in, or stand before, a row with values."""
    if row.whole or not row.has_value:
        return False
    if not (row.meaning if words.meaning else row.name):
        return True
    return row.wraps is True


def _put_behind(above: ChartRow, row: ChartRow) -> None:
    if row.name:
        key = "name" if above.name or not above.meaning else "meaning"
        setattr(above, key, joined(getattr(above, key), row.name))
    if row.meaning:
        above.meaning = joined(above.meaning, row.meaning)
    above.raw = f"{above.raw} {row.raw}"


def _put_before(row: ChartRow, words: ChartRow) -> None:
    if words.name:
        row.name = joined(words.name, row.name) if row.name else words.name
    if words.meaning:
        row.meaning = joined(words.meaning, row.meaning) if row.meaning else words.meaning
    row.raw = f"{words.raw} {row.raw}"


def joined(before: str, text: str) -> str:
    """Two texts of one cell as one; the same text said twice is said once."""
    if not before or before == text:
        return text
    return f"{before} {text}"
