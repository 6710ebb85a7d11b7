"""Brings the bytes of one parameter together: fine to coarse by name, wherever they stand."""

from __future__ import annotations

import itertools
import re
from dataclasses import replace

from modebook.intake.chart_rows import SlotCell
from modebook.intake.drafts import DraftParameter
from modebook.intake.entries import Entry
from modebook.intake.folding import fold
from modebook.intake.lexicon import SURE
from modebook.intake.listed_slots import names_of_run, of_one_cell
from modebook.intake.loose_rows import values_of
from modebook.intake.names import Name, read_name
from modebook.intake.naming import settle_name
from modebook.words.parameters import PARAMETERS

_LETTERS = {
    "r": "red",
    "g": "green",
    "b": "blue",
    "w": "white",
    "a": "amber",
    "c": "cyan",
    "m": "magenta",
    "y": "yellow",
    "l": "lime",
    "u": "UV",
}
_MIX = re.compile(r"(?:rgb|cmy)[wacl]{0,4}(?:uv|u)?", re.IGNORECASE)
"""Emitters by their letters. Two whites (RGBWW) do not say which of them comes first."""
_CIRCLE = {"h": "hue", "s": "saturation", "i": "intensity", "v": "intensity", "b": "brightness"}
_CIRCLES = ("hsi", "hsv", "hsb")
_SPELLED = re.compile(r"\b[RGBWACMYLU](?:\s*[,/+&-]\s*[RGBWACMYLU]){2,}\b")


def name_of_entry(entry: Entry, mode: int) -> Name:
    """The name of an entry in one mode, with the byte that a column of bits adds, and its cell's number."""
    name = read_name(_printed(entry, mode))
    if entry.bits and name.level is None:
        marked = read_name(
            f"x {entry.bits}" if not re.fullmatch(r"\d+", entry.bits.strip()) else f"x {entry.bits} bit"
        )
        if marked.level is not None:
            name = replace(name, level=marked.level, bits=marked.bits)
    return name


def _printed(entry: Entry, mode: int) -> str:
    printed = entry.matrix.get(mode) or entry.name
    return entry.stretches[0].text if not printed and len(entry.stretches) == 1 else printed


def parameters_of(entries: list[Entry], mode: int) -> list[DraftParameter]:
    """The parameters of one mode: its entries with a slot in it, fine bytes joined to their coarse ones."""
    found: list[DraftParameter] = []
    fines: list[tuple[DraftParameter, int]] = []
    gap = False
    # Where rows called `fine` have 16 bits, too, the column tells the whole parameter's, not the byte.
    whole = any("16" in e.bits and (read_name(_printed(e, mode)).level or 0) > 0 for e in entries)
    second = _second_slots(entries, mode)
    for entry in entries:
        gap = gap or entry.elision
        if whole and entry.bits:
            entry = replace(entry, bits="")
        cell = entry.slots.get(mode)
        if cell is None or cell.kind != "slots":
            continue
        if cell.slots in second:
            # `1 Dimmer 16 bit`, `3 Zoom`: the bits are the parameter's, and slot 2 is its fine byte.
            cell = replace(cell, slots=(cell.slots[0], cell.slots[0] + 1))
            entry = replace(entry, bits="", slots={**entry.slots, mode: cell})
        if _stands_for_others(entry, cell):
            gap = True
            continue
        name = name_of_entry(entry, mode)
        name = replace(name, level=None) if len(cell.slots) == 2 and name.bits == 16 else name
        for parameter in _split(entry, cell, name):
            parameter.after_gap, gap = gap, False
            settle_name(parameter)
            level = parameter.name.level
            if level and parameter.bytes == 1:
                fines.append((parameter, len(found)))
            found.append(parameter)
    for parameter, _ in fines:
        coarse = _coarse_of(parameter, found)
        if coarse is None:
            parameter.doubt(
                "the name says that it is a fine byte, and no coarse byte of that name is printed",
                read="a parameter of its own",
            )
            continue
        coarse.slots.append(parameter.slots[0])
        coarse.fines.append(parameter.entry)
        coarse.defaults.append(parameter.entry.default)
        if values_of_entry(parameter) and _tells_more(parameter):
            coarse.doubt("the fine byte has ranges of its own", parameter.entry.printed, "left out")
        for why, printed in parameter.entry.why:
            coarse.doubt(why, printed)
        found.remove(parameter)
    return found


def _second_slots(entries: list[Entry], mode: int) -> frozenset[tuple[int, ...]]:
    """The slots of rows that take the next slot as well, though its number is not printed: 16 bits are told
    of them, and the row below goes on with the slot after the next.
    """
    cells = [(e, e.slots[mode].slots) for e in entries if mode in e.slots and e.slots[mode].kind == "slots"]
    used = {slot for _, slots in cells for slot in slots}
    found = []
    for (entry, slots), (_, after) in itertools.pairwise(cells):
        wide = any(value.wide for stretch in entry.stretches for value in stretch.values)
        told = wide or "16" in entry.bits or read_name(_printed(entry, mode)).bits == 16
        skipped = len(slots) == 1 and after[0] == slots[0] + 2 and slots[0] + 1 not in used
        if told and skipped:
            found.append(slots)
    return frozenset(found)


_AS_ABOVE = re.compile(
    r"\b(?:as|like|same as|repeat\w*|ditto|wie|analog|entsprechend|comme|idem|como|igual|come|etc|usw|ecc)\b"
    r"|\.\.\.|…",
    re.IGNORECASE,
)


def _stands_for_others(entry: Entry, cell: SlotCell) -> bool:
    """Whether a row of many slots stands for rows that are left out: `5-28 | Segments 2 to 7, as slots 1-4`.

    Cells that are numbered before and behind it tell what it holds; else its slots are missing, and told so.
    """
    if not cell.run or len(cell.slots) < 4 or len(entry.stretches) > 1:
        return False
    texts = [entry.name, *(text for s in entry.stretches for text in (s.text, s.row.value))]
    told = " ".join(text for text in texts if text)
    begun = told.lstrip().startswith(("…", "..."))
    return _AS_ABOVE.search(told) is not None and (begun or not any(s.values for s in entry.stretches))


def values_of_entry(parameter: DraftParameter) -> bool:
    """Whether its entry prints values."""
    return any(stretch.values for stretch in parameter.entry.stretches)


def _tells_more(parameter: DraftParameter) -> bool:
    values = [v for s in parameter.entry.stretches for v in s.values]
    if len(values) != 1:
        return len(values) > 1
    return not (values[0].start == 0 and values[0].end in (255, 65535, 16777215))


def _coarse_of(fine: DraftParameter, found: list[DraftParameter]) -> DraftParameter | None:
    """The parameter that a fine byte belongs to: by its printed name, else by its word, else the one
    before.
    """
    level = fine.name.level or 1
    open_ = [p for p in found if p is not fine and not (p.name.level or 0) >= 1 and len(p.slots) == level]
    base = fold(fine.name.base)
    if base:
        same = [p for p in open_ if fold(p.name.base) == base and p.entry.group == fine.entry.group]
        if not same:
            same = [p for p in open_ if fold(p.name.base) == base]
        if len(same) > 1:
            # The same name several times: cells without numbers. The nearest one before it.
            before = [p for p in same if p.slots[0] < fine.slots[0]]
            nearest = max(before, key=lambda p: p.slots[0]) if before else None
            if nearest is not None:
                return nearest
        if same:
            return same[0]
        if fine.name.sure:
            word = [p for p in open_ if p.name.sure and p.word == fine.word and p.number == fine.number]
            above = [p for p in open_ if p.slots[-1] + 1 == fine.slots[0] and p not in word]
            exact = not word and above and above[0].word.startswith(f"{fine.word}-")
            if exact and fold(above[0].label).startswith(f"{base} "):
                # `Gobo indexing fine` right behind `Gobo indexing / rotation`: finer where that is exact.
                return above[0]
            if above and set(base.split()) < set(re.findall(r"\w+", fold(above[0].label))):
                # `Gobo 1 fine` right below `Gobo 1 index` is of that, not of the wheel called `Gobo 1`.
                above[0].doubt(
                    f"the fine byte is called {fine.name.label!r}, the coarse one {above[0].label!r}",
                    fine.entry.printed,
                    f"slots {above[0].slots[0]} and {fine.slots[0]}",
                )
                return above[0]
            if len(word) == 1:
                if fold(word[0].label) != base and not _shortened(base, fold(word[0].label)):
                    near = word[0].slots[-1] + 1 == fine.slots[0]
                    if not near:
                        word[0].doubt(
                            f"the fine byte is called {fine.name.label!r}, the coarse one {word[0].label!r}",
                            fine.entry.printed,
                            f"slots {word[0].slots[0]} and {fine.slots[0]}",
                        )
                return word[0]
            # `Gobo indexing fine` right behind `Gobo indexing / rotation`: it is finer where that is exact.
            label = [
                p for p in open_ if p.slots[-1] + 1 == fine.slots[0] and p.word.startswith(f"{fine.word}-")
            ]
            if len(label) == 1 and fold(label[0].label).startswith(f"{base} "):
                return label[0]
    above = [p for p in open_ if p.slots[-1] + 1 == fine.slots[0]]
    if base:
        # `Temperature fine` right behind `Color temperature`: the name with words left out.
        short = [p for p in above if set(base.split()) < set(fold(p.name.base).split())]
        return short[0] if len(short) == 1 and short[0].number == fine.number else None
    # Nothing but `fine`: it can only be the slot above.
    return above[0] if len(above) == 1 else None


def _shortened(base: str, label: str) -> bool:
    """Whether one name is the other without some of its words: `X axis` for `X axis (Pan)`."""
    mine, other = set(base.split()), set(label.split())
    return bool(mine and other) and (mine <= other or other <= mine)


def _split(entry: Entry, cell: SlotCell, name: Name) -> list[DraftParameter]:
    """The parameters behind one slot cell: mostly one; several slots may be bytes, or several things."""
    slots = list(cell.slots)
    if cell.mark == "fine only":
        name = replace(name, level=name.level or 1)
    count = len(slots)
    word = name.word or "other"
    if count == 1:
        return [_one(entry, slots, name, word)]
    names = _names(entry.name or (entry.stretches[0].text if len(entry.stretches) == 1 else ""), count)
    if names:
        return [_listed(entry, slot, part) for slot, part in zip(slots, names, strict=True)]
    if word == "reserved" or (word == "other" and not name.label):
        return [_one(entry, [slot], name, "reserved" if word == "reserved" else "other") for slot in slots]
    if count <= 4:
        made = _one(entry, slots, name, word)
        single = PARAMETERS[word].continuous
        values = [v for s in entry.stretches for v in s.values]
        wide = any(v.wide or v.pairs for v in values)
        marked = name.bits in (16, 24) or (name.level or 0) >= 1
        if cell.run and count > 2 and not wide:
            made.doubt(
                f"slots {slots[0]}-{slots[-1]} may be {count} bytes of one parameter or {count} parameters",
                read="bytes of one parameter",
            )
        elif not single and not wide and not marked:
            made.doubt(
                "two slots beside one selector: bytes of one parameter or two parameters",
                read="bytes of one parameter",
            )
        return [made]
    made = _one(entry, slots[:1], name, word)
    made.doubt(
        f"{count} slots beside one name are not taken apart",
        read=f"slot {slots[0]} only; {slots[1]}-{slots[-1]} are missing",
    )
    return [made]


def _listed(entry: Entry, slot: int, printed: str) -> DraftParameter:
    """One of several parameters that a cell names in a list."""
    own = replace(entry, name=printed, named=True, matrix={})
    if not entry.name:
        # The names stand where the meaning would.
        own.stretches = [replace(s, text="") for s in entry.stretches]
    name = read_name(printed)
    return _one(own, [slot], name, name.word or "other")


def _names(text: str, count: int) -> list[str]:
    """The names in a list (Red, Green, Blue; RGB), if there are just as many as slots."""
    mixed = _mixed(text, count) or names_of_run(text, count)
    if mixed:
        return mixed
    parts = [
        part.strip()
        for part in re.split(r"\s*(?:,|/|;|\+|&|\n|\band\b|\bund\b|\bet\b|\by\b)\s*", text)
        if part.strip()
    ]
    whole = read_name(text)
    if len(parts) != count or (whole.sure and not whole.rest and "/" in text):
        return []  # `G/M` is one thing, though G and M are two
    parts = of_one_cell(parts)
    read = [read_name(part) for part in parts]
    if (
        all(one.word for one in read)
        and len({(one.word, one.number) for one in read}) == count
        and all(one.score >= SURE or len(part) == 1 for one, part in zip(read, parts, strict=True))
    ):
        return parts
    return []


def _mixed(text: str, count: int) -> list[str]:
    """The names behind a mix of emitters by their letters, alone or of a cell: `RGBW`, `Pixel 2 RGB`."""
    flat = _SPELLED.sub(lambda found: re.sub(r"\W", "", found[0]), " ".join(text.split()))
    flat = flat.replace("(", " ").replace(")", " ")
    for token in flat.split():
        letters = re.sub(r"uv$", "u", token.strip(",.:-").casefold())
        known = (
            {**_LETTERS, **_CIRCLE} if letters in _CIRCLES else _LETTERS if _MIX.fullmatch(letters) else {}
        )
        if not known or len(letters) != count or len(set(letters)) < count:
            continue
        names = [" ".join(flat.replace(token, known[letter], 1).split()) for letter in letters]
        read = [read_name(name) for name in names]
        alone = flat.strip(" ,.:-") == token.strip(",.:-")
        if alone or all(one.sure and one.number is not None and not one.rest for one in read):
            return names
    return []


def _one(entry: Entry, slots: list[int], name: Name, word: str) -> DraftParameter:
    made = DraftParameter(
        word,
        slots,
        entry,
        name,
        label=name.label,
        number=name.number,
        cell=name.cell,
        defaults=[entry.default],
    )
    made.stretches = list(entry.stretches)
    for why, printed in entry.why:
        made.doubt(why, printed)
    return made


def has_values(entry: Entry) -> bool:
    """Whether any row of an entry prints values."""
    return any(values_of(stretch.row) for stretch in entry.stretches)
