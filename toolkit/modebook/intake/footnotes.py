"""Applies footnotes: the legend decides what a mark means; a mark without a legend is doubtful."""

from __future__ import annotations

import re
from dataclasses import replace

from modebook.intake.chart_rows import SlotCell
from modebook.intake.conditions import read_conditions
from modebook.intake.drafts import DraftMode, Unsure
from modebook.intake.entries import Entry, Stretch
from modebook.intake.folding import fold
from modebook.intake.grid import Line, Source
from modebook.intake.headings import Footnote, without_mark
from modebook.intake.lexicon import phrases
from modebook.intake.names import read_name
from modebook.intake.phrases import read_description

_LEGEND = re.compile(r"\s*\(?(\d)\)\s+\S")
_BRACKETED = re.compile(r"\s*\((\d)\)$")


def bracketed_marks(source: Source) -> frozenset[str]:
    """The digits that are footnote marks, `(1)` or `1)`: one line begins with each, another text ends so."""
    begun: set[str] = set()
    ended: set[str] = set()
    for leaf in source.leaves:
        for item in leaf.items:
            texts = [item.text] if isinstance(item, Line) else [c.flat for row in item.rows for c in row]
            begun.update(found[1] for text in texts if (found := _LEGEND.match(text)))
            ended.update(found[1] for text in texts if (found := _BRACKETED.search(text.strip())))
            ended.update(mark for text in texts if (mark := without_mark(text)[1]) and mark.isdecimal())
    return frozenset(begun & ended)


class Footnotes:
    """The legends of one chart, by mark."""

    def __init__(self, notes: list[Footnote]) -> None:
        self.texts: dict[str, str] = {}
        for note in notes:
            known = self.texts.get(note.mark)
            if known is None:
                self.texts[note.mark] = note.text
            elif known != note.text:
                self.texts[note.mark] = f"{known} {note.text}"

    def says_absent(self, mark: str) -> bool | None:
        """Whether a legend says that the slot is not there; None without a legend."""
        text = self.texts.get(mark)
        if text is None:
            return None
        form = f" {fold(text)} "
        return any(f" {phrase} " in form for phrase in phrases("phrases", "absent"))

    def applied(self, entries: list[Entry], column: int, mode: DraftMode) -> list[Entry]:
        """The entries as they stand in one mode column once their marks are understood."""
        found: list[Entry] = []
        asked = False
        for entry in entries:
            cell = entry.slots.get(column)
            changed = replace(
                entry,
                slots=dict(entry.slots),
                stretches=list(entry.stretches),
                why=list(entry.why),
                remarks=list(entry.remarks),
            )
            if cell is not None and cell.mark:
                changed.slots[column], ask = self._cell(changed, cell)
                if ask and not asked:
                    mode.unsure.append(
                        Unsure(
                            ask,
                            entry.printed,
                            "absent" if cell.kind == "absent" else "present",
                            "",
                            entry.place,
                            cell.slots,
                        )
                    )
                    asked = cell.kind == "absent"
            self._texts(changed)
            found.append(changed)
        return found

    def _cell(self, entry: Entry, cell: SlotCell) -> tuple[SlotCell, str]:
        mark = cell.mark or ""
        if cell.kind == "absent":
            if mark not in ("*", "**"):
                return cell, ""
            absent = self.says_absent(mark)
            if absent:
                return cell, ""
            return cell, f"{mark} stands for a slot and no legend says that it means absent"
        if cell.kind != "slots" or mark == "fine only":
            return cell, ""
        absent = self.says_absent(mark)
        if absent is None:
            return cell, f"the mark {mark} beside slot {cell.slots[0]} has no legend"
        if absent:
            return SlotCell("absent", mark="-"), ""
        self._note(entry, mark)
        return cell, ""

    def _note(self, entry: Entry, mark: str) -> None:
        text = self.texts[mark]
        if read_conditions(text) and entry.name:
            entry.condition = f"{entry.condition} {text}".strip()
        else:
            entry.remarks.append(text)

    def _marked(self, text: str) -> tuple[str, str | None]:
        """A text and its mark; a digit in brackets is one where it has a legend."""
        bracketed = _BRACKETED.search(text)
        if bracketed and bracketed[1] in self.texts:
            return text[: bracketed.start()].strip(), bracketed[1]
        return without_mark(text)

    def _texts(self, entry: Entry) -> None:
        """Marks behind names and meanings."""
        for key in ("name",):
            body, mark = self._marked(getattr(entry, key))
            if mark is None or not body:
                continue
            if mark in self.texts:
                setattr(entry, key, body)
                self._note(entry, mark)
            elif not re.fullmatch(r"\d\)", mark):
                setattr(entry, key, body)
                entry.why.append((f"the mark {mark} behind {body!r} has no legend", getattr(entry, key)))
        entry.stretches = [self._stretch(entry, stretch) for stretch in entry.stretches]

    def _stretch(self, entry: Entry, stretch: Stretch) -> Stretch:
        body, mark = self._marked(stretch.text)
        if mark is None or not body:
            return stretch
        if mark in self.texts:
            said = read_description(self.texts[mark], triggers=True)
            useful = said.hold_s is not None or said.kept or read_conditions(self.texts[mark])
            return replace(stretch, text=f"{body} ({self.texts[mark].rstrip('.')})" if useful else body)
        if re.fullmatch(r"\d\)", mark):
            return stretch
        entry.why.append((f"the mark {mark} behind {body!r} has no legend", stretch.printed))
        return replace(stretch, text=body)


def is_legend(text: str, told: str) -> bool:
    """Whether a line that begins with a digit in brackets tells what a mark means, and is no row."""
    return text.startswith("(") or not read_name(told).sure
