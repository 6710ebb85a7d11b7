"""What the cells of one column have in common: which share of them reads as slots, values, hex, percent."""

from __future__ import annotations

import itertools
import re
from dataclasses import dataclass

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.folding import fold
from modebook.intake.grid import Cell
from modebook.intake.lexicon import SURE, phrases
from modebook.intake.names import DESCRIBING, read_name
from modebook.intake.quantities import singles, spans
from modebook.intake.values import ELISIONS, Values, read_values

_BYTE = re.compile(r"[(\[]?(?:msb|lsb|coarse|fine|grob|fein|hi|lo|high|low)[)\]]?", re.IGNORECASE)

_CLASSES = frozenset(
    {
        *("step", "steps", "stepped", "proportional", "prop", "snap", "fade", "linear", "variable", "fixed"),
        *("continuous", "static", "discrete", "switch", "momentary", "toggle", "stufen", "stufig"),
        *("fest", "variabel", "schaltend", "kontinuierlich", "proportionnel", "proportionnelle", "palier"),
        *("paliers", "continu", "fixe", "pas", "proporcional", "paso", "pasos", "continuo", "fijo"),
        *("proporzionale", "passo", "passi", "scatto", "scatti", "fisso", "variabile", "lineare", "lineal"),
        *("stufenlos", "escalonado", "lineaire", "snap only", "fade only", "by steps", "step by step"),
    }
)
"""How a range may be run, folded: a column of it classes ranges and says nothing that they do."""


@dataclass(slots=True)
class Stats:
    """What stands in a column."""

    filled: int = 0
    slots: int = 0
    ranges: int = 0
    values: int = 0
    text: int = 0
    names: int = 0
    percent: int = 0
    whole_percent: int = 0
    """Cells that say 0 to 100 %: where values run on in steps, few do."""
    hexes: int = 0
    absent: int = 0
    rising: bool = True
    following: int = 0
    """Slot cells that go on where the one before ended."""
    starts: int | None = None
    distinct: int = 0
    continuing: int = 0
    """Slot cells that go on with the one before, say it again, or begin anew at 1; the first one counts."""
    spread: int = 0
    """How many different slots."""
    chained: int = 0
    """Values that begin where the ones before ended, or at 0."""
    tops: int = 0
    """Values that end where a slot or two do."""
    grouping: int = 0
    """Cells that name a cell or head with its number, or a master."""
    kinds: int = 0
    """How many different words of the vocabulary its names are."""
    bytes: int = 0
    """Cells that say which byte of a parameter a slot is, and nothing else."""
    classes: int = 0
    """Cells that say how a range is run (by steps, proportionally), and nothing else."""
    measured: int = 0
    """Cells that say from where to where something runs, in a unit."""
    figures: int = 0
    """Cells that say one figure in a unit."""
    rows: tuple[bool, ...] = ()
    """Which rows are filled."""

    @property
    def slotlike(self) -> bool:
        """Whether nearly all of it reads as slot numbers."""
        return self.slots > 0 and self.slots + self.absent >= 0.75 * self.filled

    @property
    def sequence(self) -> bool:
        """Whether it counts as slots count: on by one, or the same again."""
        return self.slotlike and self.spread >= 2 and self.continuing >= 0.8 * self.slots

    def share(self, count: int) -> float:
        """A count as a share of the filled cells."""
        return count / self.filled if self.filled else 0.0


def stats_of(cells: list[Cell]) -> Stats:
    """Count what the cells of one column are."""
    stats = Stats(rows=tuple(bool(cell.flat) for cell in cells))
    last = 0
    before: tuple[int, ...] = ()
    numbers: set[int] = set()
    end: int | None = None
    gap = False
    seen: set[str] = set()
    kinds: set[str] = set()
    cell_words = phrases("marks", "cell")
    for cell in cells:
        flat = cell.flat
        if not flat or flat in ELISIONS:
            gap = gap or bool(flat)
            continue
        stats.filled += 1
        seen.add(flat)
        stats.measured += bool(spans(flat))
        stats.figures += len(singles(flat)) == 1 and len(flat.split()) <= 2
        stats.bytes += _BYTE.fullmatch(flat) is not None
        slot = read_slot_cell(flat)
        if slot.kind == "slots":
            stats.slots += 1
            if stats.starts is None:
                stats.starts = min(slot.slots)
            if min(slot.slots) < last and min(slot.slots) != 1:
                stats.rising = False
            stats.following += min(slot.slots) == last + 1
            low = min(slot.slots)
            # Where rows are left out in print, it goes on further up.
            follows = low == last + 1 or (gap and low > last)
            stats.continuing += not before or follows or slot.slots == before or low == 1
            gap = False
            numbers.update(slot.slots)
            before, last = slot.slots, max(slot.slots)
        elif slot.kind == "absent":
            stats.absent += 1
        first = cell.lines[0] if cell.lines else flat
        values = read_values(flat) or read_values(first)
        if values:
            stats.values += 1
            stats.chained += values[0].start == 0 or (end is not None and values[0].start == end + 1)
            end = values[-1].end
            stats.ranges += not values[0].single
            stats.tops += values[-1].form != "percent" and values[-1].end in (255, 65535)
            stats.percent += values[0].form == "percent"
            stats.whole_percent += values[0].form == "percent" and _is_all(values[0])
            stats.hexes += values[0].form == "hex"
        elif re.search(r"[^\W\d_]{2,}", flat):
            stats.text += 1
            stats.classes += fold(flat) in _CLASSES
            name = read_name(first)
            plain = all(DESCRIBING.fullmatch(word) for word in fold(name.rest).split())
            stats.names += name.score >= SURE and (plain or not name.rest.endswith((".", "!")))
            if name.score >= SURE and plain:
                kinds.add(f"{name.word} {name.level}")
            words = set(fold(re.sub(r"\d+", " ", flat)).split())
            stats.grouping += bool(words) and words <= cell_words | {"master", "all", "global"}
        if re.fullmatch(
            r"(?:0x)?[0-9A-F]{2}(?:\s*\W\s*(?:0x)?[0-9A-F]{2})?", flat, re.IGNORECASE
        ) and re.search(r"[A-F]", flat, re.IGNORECASE):
            stats.hexes += 1
    stats.distinct = len(seen)
    stats.spread = len(numbers)
    stats.kinds = len(kinds)
    return stats


def _is_all(values: Values) -> bool:
    return (values.start, values.end) == (0, 255)


def ends_of(lows: list[Cell], highs: list[Cell]) -> bool:
    """Whether two columns of single numbers are where ranges begin and end: the first never above the
    second, most going on where the one before ended, some of them over all of a byte.
    """
    pairs = []
    for low, high in zip(lows, highs, strict=True):
        if not low.flat and not high.flat:
            continue
        if not (low.flat.isdigit() and high.flat.isdigit()):
            return False
        pairs.append((int(low.flat), int(high.flat)))
    if len(pairs) < 2 or any(a > b for a, b in pairs):
        return False
    going = sum(b[0] in (0, a[1] + 1) for a, b in itertools.pairwise(pairs))
    return going >= 0.8 * (len(pairs) - 1) and any(high in (255, 65535) for _, high in pairs)


def texts_of(row: list[Cell]) -> list[str]:
    return [cell.flat for cell in row]
