"""Numbers as people type them: decimal points and commas, grouped thousands; what is ambiguous is refused."""

from __future__ import annotations

import math
import re

_SPACES = re.compile(r"[\u0020\u00a0\u2007\u2009\u202f']")
_GROUPED = re.compile(r"[+-]?[0-9]{1,3}(?:[\u0020\u00a0\u2007\u2009\u202f'][0-9]{3})+(?:[.,][0-9]+)?")
_PLAIN = re.compile(r"[+-]?(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)(?:[eE][+-]?[0-9]{1,3})?")
_POINTS_THEN_COMMA = re.compile(r"[+-]?[0-9]{1,3}(?:\.[0-9]{3})+,[0-9]+")
_COMMAS_THEN_POINT = re.compile(r"[+-]?[0-9]{1,3}(?:,[0-9]{3})+\.[0-9]+")
_EITHER = re.compile(r"[+-]?[1-9][0-9]{0,2},[0-9]{3}")


def number(text: str) -> float:
    """The number that a text says: ``2.5``, ``2,5``, ``1 250``, ``1.250,5``, ``1,250.5``, ``1e3``.

    Raises ValueError, with what would be right, for anything else, and for a comma before exactly three
    digits (``1,250`` may be 1.25 or 1250). Digits are ASCII; the result is finite.
    """
    told = text.strip().replace("\u2212", "-")
    if _EITHER.fullmatch(told):
        whole, _, rest = told.partition(",")
        raise ValueError(f"{text!r} may be {whole}.{rest} or {whole}{rest}: write it without the comma")
    if _GROUPED.fullmatch(told):
        told = _SPACES.sub("", told)
    elif _POINTS_THEN_COMMA.fullmatch(told):
        told = told.replace(".", "")
    elif _COMMAS_THEN_POINT.fullmatch(told):
        told = told.replace(",", "")
    elif not _PLAIN.fullmatch(told):
        raise ValueError(f"{text!r} is not a number: write one such as 12 or 12.5")
    value = float(told.replace(",", "."))
    if not math.isfinite(value):
        raise ValueError(f"{text!r} is too large a number")
    return value


def whole_number(text: str) -> int:
    """The whole number that a text says. Raises ValueError for anything else, fractions included."""
    value = number(text)
    if not value.is_integer():
        raise ValueError(f"{text!r} is not a whole number")
    return int(value)
