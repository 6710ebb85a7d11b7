"""Strategies for what the slots of a mode do: spans, conditions, ranges, parameters, cells, parts, modes."""

from __future__ import annotations

from hypothesis import strategies as st

from modebook.documents.modes import Block, Cells, Condition, Mode, Parameter, Range, Span, ValueRange
from modebook.words.parameters import PARAMETERS
from modebook.words.ranges import Does, Hazard, Kept
from modebook.words.units import UNITS
from support.pieces import (
    CHOICES,
    COUNTS,
    FIGURES,
    KEYS,
    POSITIVE,
    SETTINGS,
    SOURCE,
    TEXTS,
    YES_NO,
    Json,
    piece,
    words,
)

POSITIONS = ("open", "red-1", "half")
PARTS = ("head", "base")


def spans() -> st.SearchStrategy[Json]:
    """A physical span in any unit."""
    return _SPAN


_SPAN = piece(
    Span,
    {"from": FIGURES, "to": FIGURES, "unit": st.sampled_from(list(UNITS))},
    {"raw": YES_NO, "given": TEXTS, "source": SOURCE},
)
_SPANS = _SPAN | st.lists(_SPAN, min_size=2, max_size=3)
_STRETCH = piece(ValueRange, {}, {}, ("from", "to")).flatmap(
    lambda _: st.tuples(COUNTS, COUNTS).map(lambda ends: {"from": min(ends), "to": max(ends)})
)


def conditions(names: tuple[str, ...] = ("dimmer",)) -> st.SearchStrategy[Json]:
    """A condition on one of the named parameters, on a setting, or in words."""
    words = {"given": TEXTS}
    named = {"parameter": st.sampled_from(names)}
    by_value = st.builds(lambda a, b: {**a, **b}, st.fixed_dictionaries(named, optional=words), _STRETCH)
    piece(Condition, {}, words, ("parameter", "from", "to", "any_of", "setting", "choices"))
    return st.one_of(
        by_value,
        st.fixed_dictionaries(
            {**named, "any_of": st.lists(_STRETCH, min_size=1, max_size=3)}, optional=words
        ),
        st.fixed_dictionaries(
            {
                "setting": st.sampled_from(SETTINGS),
                "choices": st.lists(st.sampled_from(CHOICES), min_size=1, unique=True),
            },
            optional=words,
        ),
        st.fixed_dictionaries(words),
    )


_RANGE = piece(
    Range,
    {"meaning": TEXTS},
    {
        "parameter": st.sampled_from(list(PARAMETERS)),
        "key": KEYS,
        "does": words(Does),
        "span": _SPANS,
        "position": st.sampled_from(POSITIONS),
        "sets": st.dictionaries(st.sampled_from(SETTINGS), st.sampled_from(CHOICES) | _SPAN, max_size=2),
        "hold_s": st.integers(0, 10) | st.floats(0, 10),
        "kept": words(Kept),
        "needs": st.lists(conditions(), max_size=2),
        "hazard": words(Hazard),
        "for": st.lists(KEYS, max_size=2),
        "snap": YES_NO,
        "source": SOURCE,
        "note": TEXTS,
    },
    elsewhere=("from", "to"),
)


def ranges(top: int = 255) -> st.SearchStrategy[list[Json]]:
    """The ranges of a parameter: in order, none over another, not always without gaps, up to `top`."""

    def pair(ends: list[int], rest: list[Json]) -> list[Json]:
        ends = sorted(ends)
        return [
            {"from": first, "to": last, **one}
            for first, last, one in zip(ends[::2], ends[1::2], rest, strict=False)
        ]

    ends = st.lists(st.integers(0, top), unique=True, max_size=6)
    return ends.flatmap(
        lambda found: st.lists(_RANGE, min_size=len(found) // 2, max_size=len(found) // 2).map(
            lambda rest: pair(found, rest)
        )
    )


_PARAMETER = piece(
    Parameter,
    {"parameter": st.sampled_from(list(PARAMETERS))},
    {
        "label": TEXTS,
        "span": _SPANS,
        "travel": POSITIVE,
        "snap": YES_NO,
        "coarse_default": st.integers(0, 255),
        "source": SOURCE,
        "place": TEXTS,
        "note": TEXTS,
    },
    elsewhere=("key", "slots", "default", "ranges", "when", "for"),
)


@st.composite
def parameters(draw: st.DrawFn, slots: tuple[int, ...] = (1, 2), names: tuple[str, ...] = ()) -> Json:
    """A parameter at the given slots; `names` are the other parameters that it may refer to."""
    made: Json = draw(_PARAMETER)
    made["slots"] = list(draw(st.permutations(slots)))
    if slots:
        top = 256 ** len(slots) - 1
        if draw(YES_NO):
            made["default"] = draw(st.integers(0, top))
        if draw(YES_NO):
            made["ranges"] = draw(ranges(top))
    if bool(names) and draw(YES_NO):
        made["when"] = draw(st.lists(conditions(names), min_size=1, max_size=2))
    if bool(names) and draw(YES_NO):
        made["for"] = draw(st.lists(st.sampled_from(names), unique=True))
    return made


@st.composite
def _charts(draw: st.DrawFn, most: int) -> tuple[list[Json], int]:
    """Parameters one after another without overlap, and the slots that they take."""
    found: list[Json] = []
    names: list[str] = []
    used = 0
    for size in draw(st.lists(st.integers(0, 4), max_size=most)):
        slots = tuple(range(used + 1, used + size + 1))
        used += size
        made = draw(parameters(slots, tuple(names)))
        if made["parameter"] in names or draw(YES_NO):
            made["key"] = f"{made['parameter']}-{len(found) + 1}"
        names.append(made.get("key", made["parameter"]))
        found.append(made)
    return found, used


@st.composite
def cells(draw: st.DrawFn, first: int = 1, depth: int = 2) -> Json:
    """A block of cells from slot `first`, without overlap, at most `depth` deep."""
    more = {"key": KEYS, "label": TEXTS, "source": SOURCE, "note": TEXTS}
    made = draw(piece(Cells, {}, more, ("count", "first", "stride", "parameters", "cells")))
    chart, used = draw(_charts(2))
    made |= {"count": draw(st.integers(1, 3)), "first": first, "parameters": chart}
    if depth > 1 and draw(YES_NO):
        inner = draw(cells(used + 1, depth - 1))
        made["cells"] = [inner]
        used = _end(inner)
    made["stride"] = used + draw(st.integers(0, 2))
    return made


def _end(block: Json) -> int:
    """The last slot that a block of cells made here may use."""
    return int(block["first"] - 1 + block["count"] * block["stride"])


@st.composite
def _layouts(draw: st.DrawFn) -> tuple[Json, int]:
    chart, used = draw(_charts(4))
    made: Json = {"parameters": chart}
    if draw(YES_NO):
        block = draw(cells(used + 1))
        made["cells"] = [block]
        used = _end(block)
    return made, used


@st.composite
def _blocks(draw: st.DrawFn, key: str) -> Json:
    made = draw(
        piece(Block, {}, {"label": TEXTS, "note": TEXTS}, ("key", "footprint", "parameters", "cells"))
    )
    layout, used = draw(_layouts())
    return {"key": key, "footprint": max(used, 1), **layout, **made}


@st.composite
def modes(draw: st.DrawFn, name: str | None = None) -> Json:
    """A mode whose parameters, cells and parts do not overlap and whose footprint is right."""
    more = {
        "number": st.integers(1, 255),
        "source": SOURCE,
        "place": TEXTS,
        "given": TEXTS,
        "continues": YES_NO,
        "note": TEXTS,
    }
    made = draw(piece(Mode, {}, more, ("name", "footprint", "parameters", "cells", "parts")))
    layout, used = draw(_layouts())
    if draw(st.integers(0, 4)) == 4:
        layout["parts"] = [draw(_blocks(key)) for key in PARTS]
        used += sum(part["footprint"] for part in layout["parts"])
    return {"name": name or draw(TEXTS), "footprint": used, **layout, **made}
