"""One doubt of a draft as a person is shown it: place, printed, read, why, and what it is about."""

from __future__ import annotations

from modebook.documents.fixture import Fixture
from modebook.documents.modes import Parameter
from modebook.intake.pointed import pointed
from modebook.render.chart_rows import ChartLine, parameter_lines
from modebook.render.findings_text import sentence
from modebook.render.pointer_words import in_words
from modebook.render.terminal import paint, wrapped
from modebook.shelf.errors import printable


def doubt_text(fixture: Fixture, index: int, number: str) -> str:
    """A doubt (by its place in the document) under its number, in a paragraph."""
    doubt = fixture.doubts[index]
    head = f"{number}  {paint(printable(in_words(fixture, doubt.pointer)), 'bold')}"
    if doubt.place:
        head += f"  {paint(printable(doubt.place), 'dim')}"
    indent = " " * (len(number) + 2)
    out = [wrapped(head, "", indent)] if not _styled(head) else [head]
    if doubt.printed is not None:
        out.append(wrapped(printable(doubt.printed), f"{indent}printed  ", f"{indent}         "))
    if doubt.read is not None:
        out.append(wrapped(printable(doubt.read), f"{indent}read     ", f"{indent}         "))
    out.append(wrapped(printable(sentence(doubt.why)), f"{indent}why      ", f"{indent}         "))
    return "\n".join(out)


def about_text(fixture: Fixture, index: int) -> str:
    """The parameter that a doubt is about as it now stands, its ranges numbered; nothing for a mode's."""
    place = pointed(fixture.doubts[index].pointer)
    parameter = _parameter(fixture, place.parameter)
    if parameter is None:
        return ""
    lines = list(parameter_lines(parameter, str(place.parameter)))
    out = [_line(lines[0], "", place.range is None)]
    for number, line in enumerate(lines[1:]):
        out.append(_line(line, str(number + 1), number == place.range))
    return "\n".join(out)


def _parameter(fixture: Fixture, pointer: str | None) -> Parameter | None:
    if pointer is None:
        return None
    holder: object = fixture
    for step in pointer.split("/")[1:]:
        if isinstance(holder, list):
            if not step.isdigit() or int(step) >= len(holder):
                return None
            holder = holder[int(step)]
        else:
            holder = getattr(holder, step, None)
    return holder if isinstance(holder, Parameter) else None


def _line(line: ChartLine, number: str, doubtful: bool) -> str:
    mark = ">" if doubtful else " "
    if line.kind == "parameter":
        name = line.parameter + (f" ({line.label})" if line.label else "")
        slots = f"slot{'s' * (',' in line.slots)} {line.slots}"
        words = "  ".join(word for word in (slots, name, line.meaning) if word)
        return wrapped(words, f"   {mark} ", "     ")
    head = f"   {mark} {number + ':' if number else '':<4}{line.values:>9}  "
    return wrapped("; ".join(word for word in (line.meaning, line.parameter) if word), head, " " * len(head))


def _styled(words: str) -> bool:
    return "\x1b" in words
