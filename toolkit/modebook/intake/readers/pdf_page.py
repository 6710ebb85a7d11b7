"""One PDF page as items: ruled tables by their lines, the rest by how its words are aligned."""

from __future__ import annotations

import re
from typing import Any

from modebook.intake.grid import Box, Cell, Grid, Item, Line, Place
from modebook.intake.readers.aligned import items_of
from modebook.intake.readers.pieces import AlignedLine, Piece
from modebook.intake.readers.sides import stretches
from modebook.intake.readers.stripes import are_stripes
from modebook.intake.readers.subrows import TextLine, split_row

_RULED = {
    "vertical_strategy": "lines",
    "horizontal_strategy": "lines",
    "snap_tolerance": 3,
    "join_tolerance": 3,
    "intersection_tolerance": 4,
    "edge_min_length": 3,
}
_UNKNOWN = re.compile(r"\(cid:\d+\)")
"""A sign that its font does not name, on its own: a bullet."""
Word = dict[str, Any]


def page_words(page: Any) -> list[Word]:
    """The words of a pdfplumber page, letters that are printed twice taken once."""
    if _doubled(page):
        page = page.dedupe_chars(tolerance=1)
    return [
        {**w, "text": "•"} if _UNKNOWN.fullmatch(w["text"]) else w
        for w in page.extract_words(x_tolerance=1.6, y_tolerance=2.5, keep_blank_chars=False)
        if w.get("upright", True) and w["text"].strip()
    ]


def page_items(page: Any, words: list[Word]) -> list[Item]:
    """The items that words of a pdfplumber page make up, in reading order."""
    if not words:
        return []
    number = int(page.page_number)
    tables = _tables(page, words) if len(page.edges) >= 4 and len(page.edges) < 60_000 else []
    inside = {id(word) for _, box in tables for word in words if _within(word, box)}
    rest = [word for word in words if id(word) not in inside]
    placed: list[tuple[float, float, Item]] = []
    for index, (rows, box) in enumerate(tables, start=1):
        grid = _ruled(rows, words, number, index, box)
        if grid is not None:
            placed.append((box[1], box[0], grid))
        else:
            rest.extend(word for word in words if _within(word, box) and id(word) in inside)
    bands = _bands(page)
    for column in _page_columns(rest, [box for _, box in tables]) if tables else _beside(rest):
        lines = _lines(column, number, bands)
        size = _size(column)
        for item in items_of(lines, 0.55 * size):
            box = _box(item)
            placed.append((box[1], box[0], item))
    if not tables:
        return [item for _, _, item in placed]
    return _ordered(placed, [box for _, box in tables])


def _doubled(page: Any) -> bool:
    """Whether letters are printed twice to look bold."""
    chars = page.chars
    if not chars or len(chars) > 30_000:
        return False
    places = {(c["text"], round(c["x0"]), round(c["top"])) for c in chars}
    return len(places) < 0.9 * len(chars)


def _tables(page: Any, words: list[Word]) -> list[tuple[list[list[Box | None]], Box]]:
    found: list[tuple[list[list[Box | None]], Box]] = []
    for table in page.find_tables(_RULED):
        rows = [list(row.cells) for row in table.rows]
        width = max((len(row) for row in rows), default=0)
        cells = sum(cell is not None for row in rows for cell in row)
        if width < 2 or cells < 4 or len(rows) < 2:
            continue
        found.append((rows, tuple(table.bbox)))
    # A table inside another's box is a part of it.
    found = [
        one for one in found if not any(other is not one and _holds(other[1], one[1]) for other in found)
    ]
    outside = [word for word in words if not any(_within(word, box) for _, box in found)]
    return [one for one in found if not are_stripes(*one, page.edges, outside)]


def _holds(outer: Box, inner: Box) -> bool:
    return (
        outer[0] <= inner[0] + 1
        and outer[1] <= inner[1] + 1
        and outer[2] >= inner[2] - 1
        and outer[3] >= inner[3] - 1
    )


def _within(word: Word, box: Box) -> bool:
    x, y = (word["x0"] + word["x1"]) / 2, (word["top"] + word["bottom"]) / 2
    return bool(box[0] - 0.5 <= x <= box[2] + 0.5 and box[1] - 0.5 <= y <= box[3] + 0.5)


def _ruled(rows: list[list[Box | None]], words: list[Word], page: int, table: int, box: Box) -> Grid | None:
    """A ruled table as a grid; None if its lines are no grid of cells (zebra stripes, a frame)."""
    mine = [word for word in words if _within(word, box)]
    edges = sorted({round(cell[0], 1) for row in rows for cell in row if cell is not None})
    single = sum(1 for row in rows if sum(cell is not None for cell in row) <= 1)
    if single > 0.6 * len(rows) and len(rows) > 2:
        return None
    made: list[list[Cell]] = []
    count = 0
    for cells in rows:
        filled = [c for c in cells if c is not None]
        if not filled:
            continue
        texts = [_cell_lines([w for w in mine if _within(w, c)]) if c is not None else [] for c in cells]
        if not any(texts):
            continue
        count += 1
        row_box: Box = (
            min(c[0] for c in filled),
            min(c[1] for c in filled),
            max(c[2] for c in filled),
            min(c[3] for c in filled),
        )
        spans = [
            sum(1 for edge in edges if c[0] - 1 <= edge < c[2] - 1) if c is not None else 1 for c in cells
        ]
        for piece in split_row(texts):
            place = Place(page, None, table, count, row_box)
            made.append(
                [
                    Cell(text, place, len(made), column, max(1, spans[column]))
                    for column, text in enumerate(piece)
                ]
            )
    return Grid(made, Place(page, None, table, None, box)) if made else None


def _cell_lines(words: list[Word]) -> list[TextLine]:
    return [
        TextLine(
            " ".join(w["text"] for w in line), sum((w["top"] + w["bottom"]) / 2 for w in line) / len(line)
        )
        for line in grouped(words)
    ]


def grouped(words: list[Word]) -> list[list[Word]]:
    """Words on lines, from the top; each line from left to right."""
    lines: list[list[Word]] = []
    for word in sorted(words, key=lambda w: ((w["top"] + w["bottom"]) / 2, w["x0"])):
        middle = (word["top"] + word["bottom"]) / 2
        height = word["bottom"] - word["top"]
        if lines:
            last = lines[-1]
            other = sum((w["top"] + w["bottom"]) / 2 for w in last) / len(last)
            if abs(middle - other) <= max(2.0, 0.35 * height):
                last.append(word)
                continue
        lines.append([word])
    return [sorted(line, key=lambda w: w["x0"]) for line in lines]


def _size(words: list[Word]) -> float:
    heights = sorted(w["bottom"] - w["top"] for w in words)
    return float(heights[len(heights) // 2]) if heights else 10.0


def _lines(words: list[Word], page: int, bands: list[float]) -> list[AlignedLine]:
    """Words as lines of pieces; a wide gap parts pieces, rules or stripes between lines group them."""
    found: list[AlignedLine] = []
    last_bottom: float | None = None
    last_height = 0.0
    size = _size(words)
    for number, line in enumerate(grouped(words), start=1):
        top, bottom = min(w["top"] for w in line), max(w["bottom"] for w in line)
        height = _size(line)
        # A heading in larger letters is no row of what stands below it, however near.
        other_size = max(height, last_height) > 1.15 * min(height, last_height) if last_height else False
        if last_bottom is not None and (top - last_bottom > 2.2 * size or other_size):
            found.append(AlignedLine([], Place(page)))
        last_bottom, last_height = bottom, height
        pieces: list[Piece] = []
        run: list[Word] = []
        for word in line:
            if run and word["x0"] - run[-1]["x1"] > 0.75 * size:
                pieces.append(_piece(run))
                run = []
            run.append(word)
        pieces.append(_piece(run))
        box: Box = (min(w["x0"] for w in line), top, max(w["x1"] for w in line), bottom)
        middle = (top + bottom) / 2
        band = sum(1 for y in bands if y < middle)
        found.append(
            AlignedLine(
                pieces, Place(page, None, None, number, box), bottom - top, middle, band if bands else None
            )
        )
    return found


def _piece(words: list[Word]) -> Piece:
    return Piece(
        " ".join(w["text"] for w in words),
        float(words[0]["x0"]),
        float(words[-1]["x1"]),
        tuple((w["text"], float(w["x0"]), float(w["x1"])) for w in words),
    )


def _bands(page: Any) -> list[float]:
    """Heights of rules and of the edges of stripes that go over a good part of the page."""
    width = float(page.width)
    lengths: dict[int, tuple[float, float]] = {}
    for edge in page.edges:
        if edge["orientation"] == "h":
            # The edges of the cells of one row stand at one height: together they go over the page.
            key = round(float(edge["top"]))
            length, _ = lengths.get(key, (0.0, 0.0))
            lengths[key] = (length + float(edge["x1"]) - float(edge["x0"]), float(edge["top"]))
    found = [top for length, top in lengths.values() if length > 0.3 * width]
    merged: list[float] = []
    for y in sorted(found):
        if not merged or y - merged[-1] > 2:
            merged.append(y)
    return merged


def _beside(words: list[Word]) -> list[list[Word]]:
    """The words of a page without ruled tables, in the order of reading: charts side by side one by one."""
    lines = grouped(words)
    told = [[(str(w["text"]), float(w["x0"]), float(w["x1"])) for w in line] for line in lines]
    found: list[list[Word]] = []
    at = 0
    for start, end, gutter in stretches(told, _size(words)):
        found.append([word for line in lines[at:start] for word in line])
        both = [word for line in lines[start:end] for word in line]
        found.append([word for word in both if word["x0"] < gutter])
        found.append([word for word in both if word["x0"] >= gutter])
        at = end
    found.append([word for line in lines[at:] for word in line])
    return [column for column in found if column]


def _page_columns(words: list[Word], tables: list[Box]) -> list[list[Word]]:
    """The words beside tables that stand side by side, apart: what is over the left one is not over the
    right.
    """
    for index, one in enumerate(tables):
        for other in tables[index + 1 :]:
            left, right = sorted((one, other), key=lambda box: box[0])
            if left[2] <= right[0] + 1 and min(left[3], right[3]) - max(left[1], right[1]) > 15:
                middle = (left[2] + right[0]) / 2
                top = min(left[1], right[1]) - 60
                sides: list[list[Word]] = [[], [], []]
                for word in words:
                    if word["bottom"] < top or word["x0"] < middle < word["x1"]:
                        sides[0].append(word)
                    else:
                        sides[1 if word["x1"] <= middle else 2].append(word)
                return [side for side in sides if side]
    return [words] if words else []


def _box(item: Item) -> Box:
    if isinstance(item, Line):
        return item.place.box or (0.0, 0.0, 0.0, 0.0)
    boxes = [row[0].place.box for row in item.rows if row and row[0].place.box is not None]
    if not boxes:
        return item.place.box or (0.0, 0.0, 0.0, 0.0)
    return (
        min(b[0] for b in boxes),
        min(b[1] for b in boxes),
        max(b[2] for b in boxes),
        max(b[3] for b in boxes),
    )


def _ordered(placed: list[tuple[float, float, Item]], tables: list[Box]) -> list[Item]:
    """Items from the top; where tables stand side by side, first the left column with its headings."""
    for index, one in enumerate(tables):
        for other in tables[index + 1 :]:
            left, right = sorted((one, other), key=lambda box: box[0])
            if left[2] <= right[0] + 1 and min(left[3], right[3]) - max(left[1], right[1]) > 15:
                middle = (left[2] + right[0]) / 2
                top = min(left[1], right[1]) - 60

                def key(
                    entry: tuple[float, float, Item], middle: float = middle, top: float = top
                ) -> tuple[int, float, float]:
                    box = _box(entry[2])
                    side = 0 if box[3] < top or box[0] < middle < box[2] else (1 if box[2] <= middle else 2)
                    return (side, entry[0], entry[1])

                return [item for _, _, item in sorted(placed, key=key)]
    return [item for _, _, item in sorted(placed, key=lambda entry: (round(entry[0], 1), entry[1]))]
