"""Takes apart cells and lines that hold several ranges with their words: `0-9: Open, 10-255: Strobe`."""

from __future__ import annotations

import itertools
import re
from dataclasses import replace

from modebook.intake.chart_rows import BLANK, ChartRow, read_slot_cell
from modebook.intake.values import Values, read_values

_INSIDE = re.compile(
    r"(?<![\d.,°%])(?P<values>\d{1,5}(?:\s*(?:[-–—…]|\.\.+|\b(?:to|bis|à|a|hasta)\b)\s*\d{1,5})?)"
    r"(?:\s*[:=]\s*(?=[^\W\d_]{2,}|\d)|\s+(?=[^\W\d_]{2,}))"
    r"(?!(?:to|bis|hasta|k?hz|deg|degrees?|grad|degr[eé]s|sec|ms|rpm|bpm)\b)",
    re.IGNORECASE,
)
# The whole of a byte says nothing that the slot does not.
_RANGED = re.compile(
    r"(?<![\d.,°%-])(?!0+\s*[-–—]\s*255\b)\d{1,3}\s*(?:[-–—…]|\.\.+)\s*\d{1,3}"
    r"(?![\d.,]*\s*(?:°|%|K\b|Hz|deg|bit))"
)


_LINE = re.compile(
    r"^(?P<values>\d{1,5}(?:\s*(?:[-–—…→]|\.\.+|to|bis|à|a|al)\s*\d{1,5})?)\s*(?:[:=)]\s*|\s[-–—]\s+|\s+)(?P<words>\S.*)$"
)


def _lines_inside(row: ChartRow, key: str) -> list[ChartRow]:
    """The rows in a cell whose lines each begin with values, the first with 0: `0-9 Off`, `10-255 1-20 Hz`.

    A line of words goes on with the one above.
    """
    pairs: list[tuple[str, str]] = []
    for line in (piece.strip() for piece in getattr(row, key).split("\n")):
        found = _LINE.match(line)
        values = read_values(found["values"]) if found else ()
        if found and values and (not pairs or values[0].start == read_values(pairs[-1][0])[0].end + 1):
            pairs.append((found["values"], found["words"]))
        elif line and pairs:
            pairs[-1] = (pairs[-1][0], f"{pairs[-1][1]} {line}")
        elif line:
            return []
    if len(pairs) < 2 or read_values(pairs[0][0])[0].start != 0:
        return []
    head = replace(row, value="", why=list(row.why))
    setattr(head, key, "")
    blank = dict.fromkeys(row.slots, BLANK)
    return [
        head,
        *(ChartRow(row.place, dict(blank), value=v, meaning=words, raw=row.raw) for v, words in pairs),
    ]


def rows_in_matrix(row: ChartRow) -> list[ChartRow]:
    """The rows in a matrix cell that names a parameter and its ranges: `Strobe (0-9 off, 10-255 slow to
    fast)`. Only where all modes say the same of it; else the row says that values were left out.
    """
    ranged = {mode: text for mode, text in row.matrix.items() if _RANGED.search(text)}
    if not ranged:
        return []
    texts = set(ranged.values())
    said = {mode for mode, text in row.matrix.items() if text and read_slot_cell(text).kind == "text"}
    one = replace(row, name=texts.pop().replace("(", " ").replace(")", " "), matrix={}, why=[])
    inside = rows_inside(one) if not texts and said == set(ranged) else []
    if not inside:
        row.why.append("values stand beside the name: they were not read")
        return []
    row.matrix = {mode: inside[0].name if mode in ranged else text for mode, text in row.matrix.items()}
    return [row, *inside[1:]]


def rows_inside(row: ChartRow) -> list[ChartRow]:
    """The rows in one cell that pairs values with words: `0-9: Open`, `10-255: Slow to fast`. Only where they
    begin at 0 and each goes on where the one before ended, or each stands on a line of its own.
    """
    for key in ("value", "meaning", "name"):
        text = getattr(row, key)
        lined = _lines_inside(row, key) if key == "value" or not row.value else []
        if lined:
            return lined
        found = list(_INSIDE.finditer(text))
        if not found or (key != "value" and row.value) or read_values(text):
            continue
        values = [read_values(match["values"]) for match in found]
        starts = not text[: found[0].start()].strip()
        if key != "value" and len(found) < 2 and not (key == "meaning" and starts and _is_whole(values[0])):
            continue
        if not all(values) or (values[0][0].start != 0 and not (starts and len(found) == 1)):
            continue
        flat = [one[0] for one in values]
        if not all(b.start == a.end + 1 for a, b in itertools.pairwise(flat)):
            continue
        before = " ".join(text[: found[0].start()].split()).strip(" :–-")
        if before and key == "value":
            continue
        head = replace(row, value="", why=list(row.why))
        setattr(head, key, before)
        if len(found) == 1:
            head.value, head.meaning = (
                found[0]["values"],
                _with(head.meaning, text[found[0].end() :].strip()),
            )
            return [head]
        made = [head]
        for index, match in enumerate(found):
            end = found[index + 1].start() if index + 1 < len(found) else len(text)
            words = " ".join(text[match.end() : end].split()).strip(" ;,")
            blank = dict.fromkeys(row.slots, BLANK)
            made.append(ChartRow(row.place, blank, value=match["values"], meaning=words, raw=row.raw))
        return made
    return []


_BEFORE = re.compile(
    r"^(?P<values>\d{1,5}(?:\s*(?:[-–—…→÷]|\.\.+|to|bis|à|a|al)\s*\d{1,5})?)\s*[:=]\s*(?P<words>\S.*)$",
    re.DOTALL,
)


def with_values_before(rows: list[ChartRow]) -> list[ChartRow]:
    """The rows of a table without a column for values, where what they mean begins with these: only for a
    slot all of whose rows do, from 0 on and each where the one before ended.
    """
    found = list(rows)
    starts = [n for n, row in enumerate(rows) if row.has_slot]
    for start, end in itertools.pairwise([*starts, len(rows)]):
        told = [_BEFORE.match(row.meaning) for row in rows[start:end]]
        values = [read_values(one["values"]) if one else () for one in told]
        if any(row.has_value or row.whole for row in rows[start:end]) or not all(values):
            continue
        chained = all(b[0].start == a[-1].end + 1 for a, b in itertools.pairwise(values))
        if not chained or values[0][0].start != 0:
            continue
        for n, one in enumerate(told, start=start):
            if one is not None:
                found[n] = replace(rows[n], value=one["values"], meaning=one["words"], why=list(rows[n].why))
    return found


def _is_whole(values: tuple[Values, ...]) -> bool:
    """Whether values are all those of a slot or two: `0-255 = magenta to green`."""
    return len(values) == 1 and values[0].start == 0 and values[0].end in (255, 65535)


def rows_behind(row: ChartRow) -> list[ChartRow]:
    """A row whose words go on with further ranges, as those ranges: only where each goes on where the one
    before ended.
    """
    if not row.value or not row.meaning:
        return [row]
    text = f"{row.value} {row.meaning}"
    found = list(_INSIDE.finditer(text))
    values = [read_values(match["values"]) for match in found]
    if len(found) < 2 or not all(values) or found[0].start() != 0:
        return [row]
    if not all(b[0].start == a[0].end + 1 for a, b in itertools.pairwise(values)):
        return [row]
    made: list[ChartRow] = []
    for index, match in enumerate(found):
        end = found[index + 1].start() if index + 1 < len(found) else len(text)
        words = " ".join(text[match.end() : end].split()).strip(" ;,")
        words = words.removesuffix(")") if words.count(")") > words.count("(") else words
        piece = replace(row, value=match["values"], meaning=words, why=list(row.why) if not index else [])
        if index:
            piece.slots, piece.name = dict.fromkeys(row.slots, BLANK), ""
        made.append(piece)
    return made


def _with(before: str, text: str) -> str:
    return f"{before} {text}" if before and before != text else text
