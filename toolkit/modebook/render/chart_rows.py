"""A mode's chart as rows of words, the same for terminal, page and dialog."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from modebook.documents.fixture import Fixture
from modebook.documents.modes import Block, Cells, Condition, Mode, Parameter, Range, Span, spans_of
from modebook.shelf.errors import printable


@dataclass(frozen=True, slots=True)
class ChartLine:
    """One row. A row of kind `block` heads cells or a part and has its words in `meaning`."""

    kind: str
    """parameter, range or block."""
    pointer: str
    depth: int = 0
    """0 for the mode's own slots, 1 within cells or a part, 2 for cells within those."""
    slots: str = ""
    parameter: str = ""
    label: str = ""
    values: str = ""
    meaning: str = ""
    hazard: str = ""
    """What the range can do to people or to the lamp, in the vocabulary's word."""


def chart_lines(fixture: Fixture, index: int) -> list[ChartLine]:
    """The rows of a mode (by its place in the document, from 0), in the order of the chart."""
    return list(_holder(fixture.modes[index], f"/modes/{index}", 0))


def _holder(holder: Mode | Block | Cells, pointer: str, depth: int) -> Iterator[ChartLine]:
    for number, parameter in enumerate(holder.parameters):
        yield from parameter_lines(parameter, f"{pointer}/parameters/{number}", depth)
    for number, cells in enumerate(holder.cells):
        at = f"{pointer}/cells/{number}"
        yield ChartLine("block", at, depth, meaning=printable(cells_words(cells)))
        yield from _holder(cells, at, depth + 1)
    for number, part in enumerate(getattr(holder, "parts", ())):
        at = f"{pointer}/parts/{number}"
        named = f" ({part.label})" if part.label else ""
        words = f"part {part.key}{named}: {part.footprint} slots from an address of its own"
        yield ChartLine("block", at, depth, meaning=printable(words))
        yield from _holder(part, at, depth + 1)


def cells_words(cells: Cells) -> str:
    """``8 cells Pixel: 3 slots apart, the first at slot 2; slots below count within a cell``."""
    name = f" {cells.label or cells.key}" if cells.label or cells.key else ""
    return (
        f"{cells.count} cells{name}: {cells.stride} slot{'s' * (cells.stride != 1)} apart, the first at slot "
        f"{cells.first}; the slots below count within a cell"
    )


def parameter_lines(parameter: Parameter, pointer: str, depth: int = 0) -> Iterator[ChartLine]:
    """The row of a parameter, then one for each of its ranges."""
    top = 256 ** len(parameter.slots) - 1
    label = parameter.label or ""
    if label.casefold().replace(" ", "-") == parameter.parameter:
        label = ""
    yield ChartLine(
        "parameter",
        pointer,
        depth,
        ", ".join(map(str, parameter.slots)) or "-",
        parameter.parameter + (f" [{parameter.key}]" if parameter.key else ""),
        printable(label),
        f"0-{top}" if parameter.slots and not parameter.ranges else "",
        printable(_parameter_words(parameter)),
    )
    for number, entry in enumerate(parameter.ranges):
        values = f"{entry.from_}-{entry.to}" if entry.from_ != entry.to else str(entry.from_)
        yield ChartLine(
            "range",
            f"{pointer}/ranges/{number}",
            depth,
            parameter=entry.parameter or "",
            values=values,
            meaning=printable(_range_words(entry)),
            hazard=entry.hazard or "",
        )


def _parameter_words(parameter: Parameter) -> str:
    told = [spans_words(parameter.span)]
    if parameter.default is not None:
        told.append(f"default {parameter.default}")
    if parameter.coarse_default is not None:
        told.append(f"default {parameter.coarse_default} for the coarse byte")
    if parameter.when:
        told.append(f"while {conditions_words(parameter.when)}")
    if parameter.for_:
        told.append(f"for {', '.join(parameter.for_)}")
    if parameter.travel is not None:
        told.append(f"{parameter.travel:g} s from end to end")
    if parameter.snap:
        told.append("not to be faded")
    return "; ".join(words for words in told if words)


def _range_words(entry: Range) -> str:
    told = [entry.meaning, spans_words(entry.span)]
    if entry.does and entry.does != entry.meaning.casefold():
        told.append(f"does: {entry.does}")
    for key, to in (entry.sets or {}).items():
        told.append(f"sets {key}: {to if isinstance(to, str) else span_words(to)}")
    if entry.hold_s is not None:
        told.append(f"hold {entry.hold_s:g} s")
    if entry.kept:
        told.append(f"kept {entry.kept}" if entry.kept != "stored" else "stored")
    if entry.needs:
        told.append(f"needs {conditions_words(entry.needs)}")
    if entry.position:
        told.append(f"position {entry.position}")
    if entry.for_:
        told.append(f"for {', '.join(entry.for_)}")
    if entry.hazard:
        told.append(f"CAUTION: {entry.hazard}")
    return "; ".join(words for words in told if words)


def spans_words(span: Span | list[Span] | None) -> str:
    """One span, or several with what each depends on."""
    return ", or ".join(span_words(one) for one in spans_of(span))


def span_words(span: Span) -> str:
    """``-270 to 270 deg``; ``2200 to 9000 K, sent as the number itself``; ``0 to 540 deg (given ...)``."""
    unit = "" if span.unit == "1" else f" {span.unit}"
    told = f"{_figure(span.from_)} to {_figure(span.to)}{unit}"
    told += ", sent as the number itself" if span.raw else ""
    return told + (f" (given {span.given})" if span.given else "")


def _figure(value: float) -> str:
    return str(int(value)) if float(value).is_integer() and abs(value) < 1e15 else repr(float(value))


def conditions_words(conditions: Sequence[Condition]) -> str:
    """``dimmer at 0-0 and color-mode at hue``."""
    return " and ".join(_condition(one) for one in conditions)


def _condition(one: Condition) -> str:
    told = ""
    if one.parameter is not None:
        told = f"{one.parameter} at " + " or ".join(
            f"{a}-{b}" if a != b else f"{a}" for a, b in one.intervals
        )
    elif one.setting is not None:
        told = f"{one.setting} is {' or '.join(one.choices or ())}"
    return ", ".join(words for words in (told, one.given or "") if words)
