"""Finds cells: Red 1, Green 1, Blue 1, Red 2, ...: one block where slots, numbers and ranges all agree."""

from __future__ import annotations

import itertools
import re

from modebook.documents.base import slug
from modebook.intake.drafts import DraftMode, DraftParameter, Json
from modebook.intake.folding import fold
from modebook.intake.lexicon import phrases
from modebook.words.parameters import PARAMETERS

_BESIDE = frozenset(
    {
        "dimmer",
        "strobe",
        "shutter",
        "hue",
        "saturation",
        "cie-x",
        "cie-y",
        "color-temperature",
        "tint",
        "zoom",
        "tilt",
        "pan",
        "focus",
        "cie-u-prime",
        "cie-v-prime",
        "white-color-crossfade",
        "color-preset",
        "effect",
        "color-wheel",
        "color-macro",
    }
)


def _may_be_cell(parameter: DraftParameter) -> bool:
    word = parameter.word
    emitter = PARAMETERS[word].family == "color" and PARAMETERS[word].quantity == "level"
    return emitter or word in _BESIDE


def number_groups(mode: DraftMode) -> None:
    """Take the number of a cell from the label of its group (Cell 2 beside Red, Green, Blue)."""
    words = phrases("marks", "cell")
    for parameter in mode.parameters:
        group = parameter.entry.group
        found = re.search(r"(\d{1,3})", group)
        if (
            found
            and parameter.number is None
            and any(word in fold(group).split() or fold(group).startswith(word) for word in words)
        ):
            parameter.number, parameter.cell = int(found[1]), True


def find_cells(mode: DraftMode) -> None:
    """Move the parameters of regular cells into blocks; what is not regular stays and gets keys."""
    for numbered in _candidates(mode):
        block = _block(numbered)
        if block is None:
            continue
        cells, first, derived = block
        if derived:
            cells["note"] = "Derived: the chart leaves out the cells in between, and the numbers fit."
        mode.cells.append((cells, first))
        mode.parameters = [p for p in mode.parameters if all(p is not q for q in numbered)]
    for parameter in mode.parameters:
        if parameter.after_gap and parameter.number is not None:
            parameter.doubt("rows are left out in print before it", read="nothing")
    _keys(mode)


def _candidates(mode: DraftMode) -> list[list[DraftParameter]]:
    """Groups of numbered parameters with one set of numbers each, said cells apart from others."""
    by_word: dict[tuple[bool, str, str], list[DraftParameter]] = {}
    for parameter in mode.parameters:
        if (
            parameter.number is not None
            and not parameter.when
            and (_may_be_cell(parameter) or parameter.cell)
        ):
            by_word.setdefault((parameter.cell, parameter.word, _label(parameter)), []).append(parameter)
    by_numbers: dict[tuple[bool, tuple[int, ...]], list[DraftParameter]] = {}
    for (cell, _, _), members in by_word.items():
        numbers = tuple(sorted(m.number or 0 for m in members))
        if len(set(numbers)) == len(numbers) and len(numbers) >= 2:
            by_numbers.setdefault((cell, numbers), []).extend(members)
    found = []
    for (cell, numbers), members in by_numbers.items():
        kinds = len({(m.word, _label(m)) for m in members})
        emitters = all(PARAMETERS[m.word].family in ("color", "intensity") for m in members)
        if cell or kinds >= 2 or (emitters and len(numbers) >= 3):
            found.append(members)
    return found


def _label(parameter: DraftParameter) -> str:
    return " ".join(word for word in fold(parameter.label).split() if not re.search(r"\d", word))


def _block(members: list[DraftParameter]) -> tuple[Json, list[DraftParameter], bool] | None:
    numbers = sorted({m.number or 0 for m in members})
    cells = {n: sorted((m for m in members if m.number == n), key=lambda m: m.slots[0]) for n in numbers}
    first = cells[numbers[0]]
    derived = any(m.after_gap for m in members)
    steps = {b - a for a, b in itertools.pairwise(numbers)}
    if steps != {1} and not (derived and numbers[0] == 1):
        return None
    if any(m.unsure for m in members if m not in first):
        return None
    start = min(m.slots[0] for m in first)
    span = numbers[-1] - numbers[0]
    last_start = min(m.slots[0] for m in cells[numbers[-1]])
    if (last_start - start) % span:
        return None
    stride = (last_start - start) // span
    if stride < 1:
        return None
    if 1 not in steps and stride != sum(len(m.slots) for m in first):
        return None  # no two cells are printed side by side, so that nothing but their size tells the step
    shape = [(m.word, tuple(s - start for s in m.slots)) for m in first]
    for number in numbers[1:]:
        offset = start + (number - numbers[0]) * stride
        if [(m.word, tuple(s - offset for s in m.slots)) for m in cells[number]] != shape:
            return None
        for mine, theirs in zip(cells[number], first, strict=True):
            if (mine.ranges, mine.span, mine.default) != (theirs.ranges, theirs.span, theirs.default):
                return None
    low = min(min(offsets) for _, offsets in shape)
    for parameter in first:
        parameter.slots = [slot - start - low + 1 for slot in parameter.slots]
        parameter.label = _plain_label(parameter)
    cells_json: Json = {"count": span + 1, "first": start + low, "stride": stride}
    label = _cell_label(first[0])
    if label:
        cells_json["label"] = label
    return cells_json, first, derived


def _plain_label(parameter: DraftParameter) -> str:
    """The label without the cell's number and word."""
    words = phrases("marks", "cell")
    kept = [
        w
        for w in re.split(r"\s+", re.sub(r"\d+", " ", parameter.label))
        if w and fold(w) not in words and re.search(r"\w", w)
    ]
    return " ".join(kept).strip(" :–-()#.,")


def _cell_label(parameter: DraftParameter) -> str:
    words = phrases("marks", "cell")
    source = (
        parameter.entry.group
        if parameter.entry.group and not re.search(r"\d", parameter.label)
        else parameter.name.label
    )
    return next((w.strip(" :()#.,") for w in re.split(r"[\s\d]+", source) if w and fold(w) in words), "")


def _keys(mode: DraftMode) -> None:
    """Give parameters of one word keys of their own; two with one name and no condition are doubtful."""
    by_word: dict[str, list[DraftParameter]] = {}
    for parameter in mode.parameters:
        by_word.setdefault(parameter.word, []).append(parameter)
    taken: set[str] = set()
    for word, members in by_word.items():
        if len(members) < 2 and not (
            members[0].number
            and word
            in ("color-wheel", "gobo-wheel", "rotating-gobo-wheel", "prism", "blade-position", "blade-angle")
            and members[0].number > 1
        ):
            taken.add(word)
            continue
        if word in ("reserved",):
            continue
        if all(m.when for m in members) or (len(members) < 2 and not members[0].number):
            pass
        labels: dict[str, DraftParameter] = {}
        for parameter in members:
            same = labels.get(fold(parameter.label))
            grouped = same is not None and same.entry.group != parameter.entry.group
            if same is not None and not (same.when and parameter.when) and word != "other" and not grouped:
                parameter.doubt(
                    f"slots {same.slots[0]} and {parameter.slots[0]} have the same name",
                    f"{same.entry.printed} / {parameter.entry.printed}",
                    "two parameters",
                )
            labels[fold(parameter.label)] = parameter
        for parameter in members:
            key = _key(parameter)
            base, count = key, 2
            while key in taken:
                key = f"{base[:76]}-{count}"
                count += 1
            taken.add(key)
            parameter.key = key


def _key(parameter: DraftParameter) -> str:
    word = parameter.word
    if parameter.number is not None:
        side = f"-{slug(parameter.name.side)}" if parameter.name.side else ""
        return f"{word}-{parameter.number}{side}"
    if parameter.name.side:
        return f"{word}-{slug(parameter.name.side)}"
    return (slug(parameter.label) or word)[:76]
