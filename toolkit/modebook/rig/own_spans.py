"""A mode as one unit has it: of spans that a menu state decides, the one of the unit's own menu."""

from __future__ import annotations

from collections.abc import Mapping

from modebook.checks.reading import ModeReading
from modebook.documents.modes import Block, Cells, Mode, Parameter, Span


def as_in_menu(mode: ModeReading, menu: Mapping[str, str]) -> ModeReading:
    """The mode with each list of spans cut down to the one whose `given` the menu states; else itself.

    `given` is written ``Entry > Entry: state``, and rig.json's `menu` has the entries and the state; case
    and spaces do not count. Pointers are those of the document.
    """
    states = {_folded(f"{entry}: {state}") for entry, state in menu.items()}
    if not states or not any(_decided(parameter, states) for parameter in mode.written):
        return mode
    return ModeReading(_of_mode(mode.mode, states), mode.pointer)


def _folded(text: str) -> str:
    return "".join(text.casefold().split())


def _own(span: Span | list[Span] | None, states: set[str]) -> Span | list[Span] | None:
    if not isinstance(span, list):
        return span
    fitting = [one for one in span if one.given is not None and _folded(one.given) in states]
    return fitting[0] if len(fitting) == 1 else span


def _decided(parameter: Parameter, states: set[str]) -> bool:
    spans = [parameter.span, *(piece.span for piece in parameter.ranges)]
    return any(_own(span, states) is not span for span in spans)


def _of_parameter(parameter: Parameter, states: set[str]) -> Parameter:
    if not _decided(parameter, states):
        return parameter
    ranges = [piece.model_copy(update={"span": _own(piece.span, states)}) for piece in parameter.ranges]
    return parameter.model_copy(update={"span": _own(parameter.span, states), "ranges": ranges})


def _of_cells(cells: list[Cells], states: set[str]) -> list[Cells]:
    return [
        block.model_copy(
            update={
                "parameters": [_of_parameter(one, states) for one in block.parameters],
                "cells": _of_cells(block.cells, states),
            }
        )
        for block in cells
    ]


def _of_mode(mode: Mode, states: set[str]) -> Mode:
    parts: list[Block] = [
        part.model_copy(
            update={
                "parameters": [_of_parameter(one, states) for one in part.parameters],
                "cells": _of_cells(part.cells, states),
            }
        )
        for part in mode.parts
    ]
    return mode.model_copy(
        update={
            "parameters": [_of_parameter(one, states) for one in mode.parameters],
            "cells": _of_cells(mode.cells, states),
            "parts": parts,
        }
    )
