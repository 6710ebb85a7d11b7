"""Unruled tables under a line of titles: columns part where the fewest words stand between two titles."""

from __future__ import annotations

import itertools
import re

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.headings import read_mode_head, read_slot_head
from modebook.intake.lexicon import exact
from modebook.intake.readers.pieces import AlignedLine, Piece, Word, piece_of
from modebook.intake.readers.two_rows import mode_titles
from modebook.intake.titles import is_title_row, title_roles
from modebook.intake.values import read_values

_SECTION = re.compile(r"\d{1,2}(?:\.\d{1,2}){1,3}\.?\s+(?P<name>[^\W\d_]{4,})")
"""A manual's section, such as `6.3 Cleaning`."""
Columns = list[tuple[float, float]]


def is_heading(text: str) -> bool:
    """Whether a text names a mode, a slot or a numbered section, so that no table goes on over it."""
    head = read_mode_head(text)
    section = _SECTION.match(text)
    if section and section["name"][0].isupper() and text[-1:].isalpha():
        return True
    return (head is not None and head.strong) or (read_slot_head(text) is not None and text[:1].isalpha())


def title_pieces(line: AlignedLine, least: float = 0.6) -> list[Piece] | None:
    """The titles in a line, a piece each; None if it is no line of titles, with a share of known ones."""
    made: list[Piece] = []
    for piece in line.pieces:
        if title_roles(piece.text) or len(piece.words) < 2 or _is_whole(piece.text):
            made.append(piece)
            continue
        made.extend(_segmented(piece) or [piece])
    texts = [piece.text for piece in made]
    hits = is_title_row(texts)
    if hits >= 2 and (len(made) == 2 or hits >= least * len(texts)):
        return made
    return None


def _is_whole(text: str) -> bool:
    """Whether a piece of several words means something as it stands: a mode's title, `No function`."""
    known = exact(text)
    return read_mode_head(text) is not None or (known is not None and known.word == "reserved")


def _segmented(piece: Piece) -> list[Piece] | None:
    """A piece of several titles with narrow gaps as its titles, if every word is of one."""
    made: list[Piece] = []
    at = 0
    while at < len(piece.words):
        for length in (3, 2, 1):
            words = piece.words[at : at + length]
            if len(words) == length and title_roles(" ".join(word for word, _, _ in words)):
                made.append(piece_of(words))
                at += length
                break
        else:
            return None
    return made


def titled_table(
    lines: list[AlignedLine], start: int, gap: float
) -> tuple[int, list[AlignedLine], Columns] | None:
    """The table that begins with the titles in a line: where it ends, its lines parted into cells, its
    columns.
    """
    titles, height = _titles(lines, start)
    if titles is None:
        return None
    end = start + height
    while end < len(lines):
        line = lines[end]
        text = " ".join(piece.text for piece in line.pieces)
        other = title_pieces(line) if line.pieces else None
        if (
            other is not None
            and [p.text for p in other] != [p.text for p in titles]
            and not _second_row(line, titles)
        ):
            end = _headed_anew(lines, end, start + height, titles, gap) or end
            break
        if (len(line.pieces) == 1 and is_heading(text)) or _spread_heading(lines, end):
            break
        anew = _headed_anew(lines, end, start + height, titles, gap) if other is not None else None
        if anew is not None:
            end = anew
            break
        end += 1
    body = lines[start + height : end]
    rows = [line for line in body if line.pieces]
    spaced = height > 1 or len(lines[start].pieces) == len(titles)
    if not spaced and sum(len(line.pieces) > 1 for line in rows) < 0.5 * len(rows):
        # Titles a space apart may as well be running text: the rows must have columns of their own.
        return None
    bounds = _bounds(titles, [line for line in body if len(line.pieces) > 1], gap)
    if bounds is None:
        return None
    starts = _starts(titles, [line for line in body if len(line.pieces) > 1], gap)
    more = _within(bounds, rows, gap)
    bounds = sorted([*bounds, *(bound for bound, _ in more)])
    starts.extend(start for _, start in more)
    kept: list[AlignedLine] = [_with(lines[start], titles)]
    crossing = 0
    last = start + height
    blank = False
    for index, line in enumerate(body, start=start + height):
        if not line.pieces:
            blank = True
            continue
        repeated = title_pieces(line)
        parted = (
            repeated
            if repeated is not None and len(repeated) == len(titles)
            else _parted(line, bounds, gap, starts)
        )
        if parted is None:
            crossing += 1
            if crossing > 1 or blank:
                break
            kept.append(line)
            continue
        if (
            blank
            and len(parted) == 1
            and len(line.pieces) == 1
            and any(letter.isalpha() for letter in parted[0].text)
            and _index(parted[0], bounds) == 0
        ):
            break
        crossing = 0
        blank = False
        kept.append(_with(line, parted))
        last = index + 1
    while kept and len(kept) > 1 and kept[-1].pieces and _parted(kept[-1], bounds, gap, starts) is None:
        kept.pop()
    if len(kept) < 2:
        return None
    edges = [float("-inf"), *bounds, float("inf")]
    columns: Columns = []
    for low, high in itertools.pairwise(edges):
        words = [
            piece
            for line in kept
            for piece in line.pieces
            if low <= (piece.x0 + piece.x1) / 2 < high and not (piece.x0 < low or piece.x1 > high)
        ]
        if not words:
            return None
        columns.append((min(piece.x0 for piece in words), max(piece.x1 for piece in words)))
    return last, kept, columns


def _spread_heading(lines: list[AlignedLine], at: int) -> bool:
    """Whether a line of several pieces is a mode's heading, set wide: `Advanced   - 18 channels` above titles
    that need no second line.
    """
    line = lines[at]
    told = read_mode_head(" ".join(piece.text for piece in line.pieces))
    if told is None or not told.footprint or any(read_mode_head(p.text) == told for p in line.pieces):
        return False
    under = next((one for one in lines[at + 1 : at + 3] if one.pieces), None)
    return under is not None and len(title_pieces(under) or ()) > 2 and title_pieces(line) is None


def _headed_anew(
    lines: list[AlignedLine], at: int, first: int, titles: list[Piece], gap: float
) -> int | None:
    """Where a heading stands right above titles that are said again: a lone text from the left edge on,
    below a row of the table, with an empty line below it at most.
    """
    above = at - 1 if lines[at - 1].pieces else at - 2
    if above <= first or len(lines[above].pieces) != 1:
        return None
    piece = lines[above].pieces[0]
    begins = abs(piece.x0 - titles[0].x0) <= gap and any(letter.isalpha() for letter in piece.text)
    return above if begins else None


def _titles(lines: list[AlignedLine], start: int) -> tuple[list[Piece] | None, int]:
    """The titles that begin at a line, and over how many lines they go: words below each other are one
    title.
    """
    if len(lines[start].pieces) == 1 and read_mode_head(lines[start].pieces[0].text):
        return None, 1
    if _spread_heading(lines, start):
        return None, 1
    if len(lines[start].pieces) == 1:
        # `DMX channel functions` over the titles is a heading made of words that title columns, too.
        after = next((line for line in lines[start + 1 : start + 3] if line.pieces), None)
        if after is not None and len(after.pieces) > 2 and title_pieces(after, 0.4) is not None:
            return None, 1
    if start + 2 < len(lines):
        below = next((line for line in lines[start + 2 : start + 4] if line.pieces), None)
        modes = mode_titles(lines[start], lines[start + 1], below)
        if modes is not None:
            return modes, 2
    single = title_pieces(lines[start])
    under_rule = _ruled_titles(lines, start, single)
    if under_rule is not None:
        return under_rule
    best, height = single, 1
    merged = lines[start]
    for count in (2, 3):
        if start + count > len(lines) or not lines[start].pieces:
            break
        under = lines[start + count - 1]
        if not under.pieces or any(
            read_slot_cell(p.text).kind == "slots" or read_values(p.text) for p in under.pieces
        ):
            break
        if any(read_mode_head(p.text) for p in under.pieces):
            break
        merged = _stacked(merged, under)
        titles = title_pieces(merged)
        if titles is None:
            continue
        known = sum(bool(title_roles(piece.text)) for piece in titles)
        before = 0 if best is None else sum(bool(title_roles(piece.text)) for piece in best)
        if known > before or (known == before and best is not None and len(titles) > len(best)):
            best, height = titles, count
    return best, height


def _ruled_titles(
    lines: list[AlignedLine], start: int, upper: list[Piece] | None
) -> tuple[list[Piece], int] | None:
    """The titles below a line that only rules them (`Channel` and `Functions` over two columns and more),
    and the lines that both take.
    """
    if upper is None or len(lines) < start + 3 or not all(title_roles(p.text) for p in upper):
        return None
    under = title_pieces(lines[start + 1], 0.4) if lines[start + 1].pieces else None
    if under is None or len(under) < len(upper) + 2:
        return None
    rest = lines[start + 2]
    if not rest.pieces or not all(p.text.isalpha() and p.text.islower() for p in rest.pieces):
        return under, 2
    # `ed` under `Advanc`: a narrow column breaks words.
    joined = _stacked(_with(lines[start + 1], under), rest).pieces
    return (joined, 3) if len(joined) == len(under) else (under, 2)


def _stacked(upper: AlignedLine, lower: AlignedLine) -> AlignedLine:
    """Two lines as one: pieces above each other are joined."""
    pieces = list(upper.pieces)
    for piece in lower.pieces:
        over = [p for p in pieces if p.x0 < piece.x1 and piece.x0 < p.x1]
        if len(over) == 1:
            joined = over[0]
            words = ((f"{joined.text} {piece.text}", min(joined.x0, piece.x0), max(joined.x1, piece.x1)),)
            pieces[pieces.index(joined)] = piece_of(words)
        else:
            pieces.append(piece)
    return _with(upper, sorted(pieces, key=lambda p: p.x0))


def _second_row(line: AlignedLine, titles: list[Piece]) -> bool:
    """Whether a line of titles only adds to the one above: each stands under one of its titles or beside
    them.
    """
    return len(line.pieces) < len(titles)


def _with(line: AlignedLine, pieces: list[Piece]) -> AlignedLine:
    return AlignedLine(pieces, line.place, line.height, line.middle, line.band)


def _bounds(titles: list[Piece], body: list[AlignedLine], gap: float) -> list[float] | None:
    """One x between each two titles, where the fewest words stand."""
    spans = [
        (x0, x1)
        for line in body
        for piece in line.pieces
        for _, x0, x1 in (piece.words or ((piece.text, piece.x0, piece.x1),))
    ]
    found: list[float] = []
    low = titles[0].x0
    for left, right in itertools.pairwise(titles):
        start, stop = max(low, left.x0), right.x1
        points = sorted(
            {start, stop, *(x for span in spans for x in span if start < x < stop), left.x1, right.x0}
        )
        best: tuple[float, float, float] | None = None
        for a, b in itertools.pairwise(points):
            if b - a < 0.01 or (a < left.x1 and b > left.x0) or (a < right.x1 and b > right.x0):
                continue
            middle = (a + b) / 2
            count = sum(x0 < middle < x1 for x0, x1 in spans)
            score = (count, -(b - a))
            if best is None or score < best[:2]:
                best = (*score, middle)
        if best is None or best[0] > 0.15 * max(1, len(body)) + 1:
            return None
        found.append(best[2])
        low = best[2]
    return found


def _within(bounds: list[float], rows: list[AlignedLine], gap: float) -> list[tuple[float, float]]:
    """Further bounds within columns, each with where the cells behind it begin: numbers of slots stand beside
    other pieces under one title, or beside a column without any.
    """
    found: list[tuple[float, float]] = []
    for low, high in itertools.pairwise([float("-inf"), *bounds, float("inf")]):
        pieces = [p for line in rows for p in line.pieces if low <= p.x0 and p.x1 <= high]
        clusters: list[list[Piece]] = []
        for piece in sorted(pieces, key=lambda p: p.x0):
            right = max((p.x1 for p in clusters[-1]), default=0.0) if clusters else 0.0
            if clusters and piece.x0 < right + 0.5 * gap:
                clusters[-1].append(piece)
            else:
                clusters.append([piece])
        if len(clusters) < 2 or any(len(cluster) < 2 for cluster in clusters):
            continue
        counting = [
            sum(read_slot_cell(p.text).kind in ("slots", "absent") for p in cluster) >= 0.7 * len(cluster)
            for cluster in clusters
        ]
        slots_apart = any(counting[1:]) or (counting[0] and low == float("-inf"))
        if not slots_apart and not _values_apart(clusters, gap):
            continue
        for left, right_ in itertools.pairwise(clusters):
            start = min(p.x0 for p in right_)
            found.append(((max(p.x1 for p in left) + start) / 2, start))
    return found


def _values_apart(clusters: list[list[Piece]], gap: float) -> bool:
    """Whether pieces under one title are values and, from one edge on, what they mean."""
    left, right = clusters[0], clusters[1]
    begins = [piece.x0 for piece in right]
    return len(clusters) == 2 and max(begins) - min(begins) < gap and all(read_values(p.text) for p in left)


def _index(piece: Piece, bounds: list[float]) -> int:
    middle = (piece.x0 + piece.x1) / 2
    return sum(middle >= bound for bound in bounds)


def _parted(line: AlignedLine, bounds: list[float], gap: float, starts: list[float]) -> list[Piece] | None:
    """The cells of a line; None if its text runs over a border as text does: it is no row of the table."""
    cells: dict[int, list[Word]] = {}
    for piece in line.pieces:
        parts = _piece_parts(piece, bounds, gap, starts)
        if parts is None:
            if len(line.pieces) == 1:
                return None
            parts = [(_column(piece.words[0], bounds), piece.words)]
        for column, words in parts:
            cells.setdefault(column, []).extend(words)
    return [piece_of(tuple(sorted(cells[column], key=lambda word: word[1]))) for column in sorted(cells)]


def _column(word: Word, bounds: list[float]) -> int:
    return sum((word[1] + word[2]) / 2 >= bound for bound in bounds)


def _piece_parts(
    piece: Piece, bounds: list[float], gap: float, starts: list[float]
) -> list[tuple[int, tuple[Word, ...]]] | None:
    """The columns that a piece has words in, each with its words; None if it may not be parted there.

    A piece is parted where a word begins as the cells of its column do, or where the space is a wide one.
    """
    words = piece.words or ((piece.text, piece.x0, piece.x1),)
    spaces = sorted(b[1] - a[2] for a, b in itertools.pairwise(words))
    usual = spaces[len(spaces) // 2] if spaces else 0.0
    parts: list[tuple[int, list[Word]]] = [(_column(words[0], bounds), [words[0]])]
    for before, word in itertools.pairwise(words):
        column = _column(word, bounds)
        if column == parts[-1][0]:
            parts[-1][1].append(word)
            continue
        begins = any(abs(word[1] - start) <= 0.6 * gap for start in starts)
        wide = word[1] - before[2] > max(1.3 * usual, 0.6 * gap)
        if not begins and not wide:
            return None
        parts.append((column, [word]))
    columns = [column for column, _ in parts]
    if len(set(columns)) != len(columns):
        return None
    return [(column, tuple(some)) for column, some in parts]


def _starts(titles: list[Piece], body: list[AlignedLine], gap: float) -> list[float]:
    """Where cells begin: under the titles, and wherever pieces of two lines do."""
    seen: list[float] = sorted(piece.x0 for line in body for piece in line.pieces)
    twice = [a for a, b in itertools.pairwise(seen) if b - a <= 0.3 * gap]
    return [piece.x0 for piece in titles] + twice
