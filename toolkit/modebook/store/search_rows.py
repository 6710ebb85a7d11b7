"""What a mode is found by: its words for free text, and its marks for everything that is asked exactly."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from functools import lru_cache

from modebook.checks.reading import ModeReading
from modebook.documents.fixture import Fixture
from modebook.documents.ways import SmoothingBy
from modebook.store.ids import row_number
from modebook.store.setting_rows import Settings
from modebook.store.values import Row
from modebook.words.parameters import PARAMETERS
from modebook.words.settings import SETTING_TITLES

RECORDED = "is_recorded"
"""The mark of a mode whose fixture is no draft."""

_NO_MARK = re.compile(r"[^a-z0-9]+")


@lru_cache(maxsize=2000)
def mark(kind: str, word: object) -> str:
    """A mark as the index writes it, one word of letters, digits and ``_``: ``has_pan``, ``pan_16``.

    Text that is searched has no ``_``, so no mark is ever found by free text.
    """
    return f"{_NO_MARK.sub('_', str(kind).lower())}_{_NO_MARK.sub('_', str(word).lower())}"


def fixture_text(fixture: Fixture) -> str:
    """The words of a fixture's settings: kinds, labels, choices."""
    words: list[str | None] = []
    for setting in fixture.settings:
        words.append(SETTING_TITLES[setting.setting])
        words.append(setting.label)
        words.extend(choice.label for choice in setting.choices)
    return _once(words)


def search_row(
    fixture: Fixture,
    mode: ModeReading,
    mode_id: str,
    smoothing_by: Sequence[SmoothingBy],
    settings: Settings,
    settings_text: str,
) -> Row:
    """The row of a mode in the table `search`, numbered like the mode's own."""
    size: dict[str, int] = {}
    names: dict[str, None] = {}
    labels: list[str | None] = []
    meanings: list[str] = []
    for parameter, _ in mode.parameters:
        word, slots = parameter.parameter, len(parameter.slots)
        names[word] = None
        labels.append(parameter.label)
        if slots:
            size[word] = max(size.get(word, 0), slots)
        for piece in parameter.ranges:
            meanings.append(piece.meaning)
            if piece.parameter is not None and slots:
                names[piece.parameter] = None
                size.setdefault(piece.parameter, 0)
    return (
        row_number(mode_id),
        mode_id,
        fixture.maker.replace("_", " "),
        fixture.model.replace("_", " "),
        mode.mode.name.replace("_", " "),
        fixture.category,
        ", ".join([PARAMETERS[word].name for word in names]),
        _once(labels),
        _once(meanings),
        settings_text,
        " ".join(_marks(fixture, mode, size, smoothing_by, settings)),
    )


def _marks(
    fixture: Fixture,
    mode: ModeReading,
    size: dict[str, int],
    smoothing_by: Sequence[SmoothingBy],
    settings: Settings,
) -> list[str]:
    """`size`: the bytes of each word's finest parameter; 0 for one that is only a range of another."""
    marks = [mark("category", fixture.category), mark("standing", fixture.standing)]
    if fixture.standing != "draft":
        marks.append(RECORDED)
    marks.extend([mark("by", by) for by in smoothing_by])
    if "slot" in smoothing_by or "rdm" in smoothing_by:
        marks.append(mark("by", "remote"))
    for word, bytes_each in size.items():
        marks.append(mark("has", word))
        marks.extend([mark(word, 8 * n) for n in range(1, bytes_each + 1)])
    marks.extend(sorted(_length_marks(mode, settings)))
    return marks


def _length_marks(mode: ModeReading, settings: Settings) -> set[str]:
    """``length_2`` for every length that some way reaches in this mode, ``slot_length_2`` for one by slot."""
    if not settings.lengths:
        return set()
    reached = {("slot", way.setting, way.choice or "") for way in mode.slot_ways} | settings.reached
    found: set[str] = set()
    for by, setting, choice in reached:
        for packets in settings.lengths.get((setting, choice), ()):
            found.add(mark("length", packets))
            found.add(mark(f"{by}-length", packets))
            if by in ("slot", "rdm"):
                found.add(mark("remote-length", packets))
    return found


def _once(words: Iterable[str | None]) -> str:
    return ", ".join(dict.fromkeys([word for word in words if word])).replace("_", " ")
