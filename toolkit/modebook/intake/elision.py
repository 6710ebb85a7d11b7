"""Rows left out in print (`3 step -60`, `:`, `62 step -1`): filled in only where the arithmetic fits."""

from __future__ import annotations

import re
from dataclasses import replace

from modebook.intake.chart_rows import ChartRow
from modebook.intake.drafts import DraftParameter
from modebook.intake.entries import Stretch
from modebook.intake.values import Values

_NUMBER = re.compile(r"[-−–+]?\d+")
_MOST = 512


def expand(parameter: DraftParameter) -> list[Stretch]:
    """The stretches with those in between filled in and marked as derived; a doubt where it does not fit."""
    found: list[Stretch] = []
    stretches = parameter.stretches
    index = 0
    while index < len(stretches):
        stretch = stretches[index]
        if not stretch.elided:
            found.append(stretch)
            index += 1
            continue
        while index < len(stretches) and stretches[index].elided:
            index += 1
        if not found or index >= len(stretches):
            parameter.doubt("rows are left out in print", stretch.printed, "left out")
            continue
        between = _between(found, stretches[index])
        if between is None:
            printed = f"{found[-1].printed} / {stretch.printed} / {stretches[index].printed}"
            parameter.doubt(
                "rows are left out in print, and the arithmetic does not fit", printed, "left out"
            )
        else:
            found.extend(between)
    return found


def _between(before: list[Stretch], last: Stretch) -> list[Stretch] | None:
    """The stretches between the last one before and the next one, if widths and numbers both fit."""
    first = before[-1]
    a, b = _only(first), _only(last)
    if a is None or b is None:
        return None
    width = a.end - a.start + 1
    if b.end - b.start + 1 != width or (b.start - a.start) % width:
        return None
    steps = (b.start - a.start) // width
    if not 1 <= steps <= _MOST:
        return None
    numbers_a, numbers_b = _numbers(first.text), _numbers(last.text)
    if len(numbers_a) != len(numbers_b) or _frame(first.text) != _frame(last.text):
        return None
    changing = [i for i, (x, y) in enumerate(zip(numbers_a, numbers_b, strict=True)) if x != y]
    if len(changing) != 1:
        return None
    at = changing[0]
    delta = numbers_b[at] - numbers_a[at]
    if delta % steps or not delta:
        return None
    # Where two rows are printed before the gap, they must step alike.
    if len(before) > 1:
        previous = _only(before[-2])
        told = _numbers(before[-2].text)
        if (
            previous is not None
            and _frame(before[-2].text) == _frame(first.text)
            and len(told) == len(numbers_a)
            and (a.start - previous.start != width or numbers_a[at] - told[at] != delta // steps)
        ):
            return None
    made: list[Stretch] = []
    for step in range(1, steps):
        start = a.start + step * width
        text = _with_number(first.text, at, numbers_a[at] + step * (delta // steps))
        row = ChartRow(
            first.place,
            value=f"{start}-{start + width - 1}",
            meaning=text,
            raw=first.printed,
            why=["derived"],
        )
        made.append(
            replace(first, values=(Values(start, start + width - 1, single=width == 1),), text=text, row=row)
        )
    return made


def _only(stretch: Stretch) -> Values | None:
    return stretch.values[0] if len(stretch.values) == 1 else None


def _numbers(text: str) -> list[int]:
    return [
        int(number.replace("−", "-").replace("–", "-").replace("+", "")) for number in _NUMBER.findall(text)
    ]


def _frame(text: str) -> str:
    return " ".join(_NUMBER.sub("#", text).casefold().split())


def _with_number(text: str, index: int, number: int) -> str:
    seen = -1

    def put(match: re.Match[str]) -> str:
        nonlocal seen
        seen += 1
        if seen != index:
            return match[0]
        sign = "+" if match[0].startswith("+") and number > 0 else ""
        return f"{sign}{number}"

    return _NUMBER.sub(put, text)
