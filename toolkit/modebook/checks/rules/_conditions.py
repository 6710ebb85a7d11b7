"""Conditions as sets: whether two can hold together, and where none of several holds."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from modebook.checks.rules._values import Intervals, merged, shared, without
from modebook.documents.modes import Condition, Parameter

Variable = tuple[str, str]
"""What a condition looks at: ("parameter", its name), ("setting", its key), or ("given", "")."""
Values = Intervals | frozenset[str]
"""What it may be: values of a parameter, choices of a setting, states in words."""
Box = dict[Variable, Values]
"""Conditions that hold together; a variable that is not in it may be anything."""

MOST_BOXES = 5_000
"""More pieces than any chart has; beyond them nobody could follow the conditions either."""


class TooManyError(ValueError):
    """Conditions that fall into more pieces than are followed."""


def box(conditions: Sequence[Condition]) -> Box:
    """The box of conditions that must all hold. Two states in words are taken never to hold together."""
    found: Box = {}
    for condition in conditions:
        if condition.parameter is not None:
            _narrow(found, ("parameter", condition.parameter), merged(condition.intervals))
        elif condition.setting is not None:
            _narrow(found, ("setting", condition.setting), frozenset(condition.choices or ()))
        if condition.given is not None:
            _narrow(found, ("given", ""), frozenset({condition.given}))
    return found


def existence(parameter: Parameter, by_name: Mapping[str, Sequence[Parameter]]) -> Box:
    """When a parameter has its meaning: its own conditions, and those of the parameters they name.

    A name that stands for several parameters is not followed further.
    """
    conditions: list[Condition] = []
    to_follow, seen = [parameter], {id(parameter)}
    while to_follow:
        for condition in to_follow.pop().when or ():
            conditions.append(condition)
            named = by_name.get(condition.parameter or "", ())
            if len(named) == 1 and id(named[0]) not in seen:
                seen.add(id(named[0]))
                to_follow.append(named[0])
    return box(conditions)


def can_meet(a: Box, b: Box) -> bool:
    """Whether both can hold at once."""
    if not all(a.values()) or not all(b.values()):
        return False
    return all(common(values, b[variable]) for variable, values in a.items() if variable in b)


def holes(domain: Box, boxes: Sequence[Box]) -> list[Box]:
    """What of a domain none of the boxes covers, in boxes that do not overlap.

    Raises TooManyError where they come to more than MOST_BOXES.
    """
    left = [domain]
    for taken in boxes:
        left = [piece for whole in left for piece in _rest(whole, taken)]
        if len(left) > MOST_BOXES:
            raise TooManyError(f"more than {MOST_BOXES} pieces")
    return left


def common(a: Values, b: Values) -> Values:
    """What two sets of one variable share; nothing where they are of different kinds."""
    if isinstance(a, frozenset) or isinstance(b, frozenset):
        return a & b if isinstance(a, frozenset) and isinstance(b, frozenset) else ()
    return shared(a, b)


def _rest(whole: Box, taken: Box) -> list[Box]:
    """What is left of a box when another is taken from it."""
    inner = dict(whole)
    pieces: list[Box] = []
    for variable, values in taken.items():
        have = inner[variable]
        outside = _less(have, values)
        if outside:
            pieces.append({**inner, variable: outside})
        inside = common(have, values)
        if not inside:
            return [whole]
        inner[variable] = inside
    return pieces


def _less(a: Values, b: Values) -> Values:
    if isinstance(a, frozenset) or isinstance(b, frozenset):
        return a - b if isinstance(a, frozenset) and isinstance(b, frozenset) else a
    return without(a, b)


def _narrow(found: Box, variable: Variable, values: Values) -> None:
    found[variable] = common(found[variable], values) if variable in found else values
