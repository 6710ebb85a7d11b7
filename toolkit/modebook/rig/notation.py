"""How people write addresses: beside a universe, both in one, or counted on; what is ambiguous is refused.

What stands in one cell can often be read in two ways, so all cells of a file are looked at together. Read
without doubt: ``2/101``, ``2:101``, ``U2 101``, ``U2.101``; ``2.101`` with three digits after the point,
since a sheet shortens 2.100 and 2.010 but nothing that ends otherwise; ``613`` where no cell of the file
names a universe; ``2-101`` where some cell of the file cannot be a stretch from one address to another.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from modebook.documents.address import LAST_UNIVERSE, SLOTS_PER_UNIVERSE, Address, AddressError
from modebook.shelf.numbers import whole_number
from modebook.shelf.table import Kind

_PREFIX = r"(?P<named>u(?:ni(?:v(?:erse)?)?)?\.?\s*#?)?"
_PAIR = re.compile(
    rf"{_PREFIX}\s*(?P<universe>[0-9]+)\s*(?P<mark>[/:.,\u2013-]|\s)\s*(?:a(?:ddr(?:ess)?)?\.?\s*)?(?P<address>[0-9]+)",
    re.IGNORECASE,
)
_UNIVERSE = re.compile(rf"{_PREFIX}\s*(?P<universe>[0-9]+)", re.IGNORECASE)
_LETTER = re.compile(r"[A-Z]{1,2}\s*[/:.,-]?\s*[0-9]+", re.IGNORECASE)
_MONTH = re.compile(r"\b(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\b", re.IGNORECASE)
_THREE_NUMBERS = re.compile(r"[0-9]{1,4}([./-])[0-9]{1,2}\1[0-9]{1,4}")
_UNPATCHED = frozenset({"", "-", "\u2013", "\u2014", "none", "n/a", "unpatched", "not patched"})

RIGHT = "write it as 2/101"


@dataclass(frozen=True, slots=True)
class Written:
    """What a row says about its address."""

    universe: str
    address: str
    universe_kind: Kind = "text"
    address_kind: Kind = "text"


@dataclass(frozen=True, slots=True)
class Misread:
    """A cell that gives no address."""

    column: str
    """`universe` or `address`."""
    found: str
    why: str


class _RefusedError(ValueError):
    pass


@dataclass(frozen=True, slots=True)
class _Custom:
    """What holds for a whole file."""

    universe_column: bool
    named_universe: bool
    """Whether some cell names its universe."""
    dash_is_pair: bool
    """Whether some cell such as 7-1 cannot be a stretch from one address to another."""


def read_addresses(rows: Sequence[Written]) -> list[Address | Misread | None]:
    """The address of each row; None where it is not patched, a Misread where no single reading is sure."""
    custom = _custom(rows)
    return [_read(row, custom) for row in rows]


def _custom(rows: Sequence[Written]) -> _Custom:
    by_column = any(row.universe.strip().casefold() not in _UNPATCHED for row in rows)
    named = dash = False
    for row in rows:
        match = _PAIR.fullmatch(row.address.strip()) if row.address_kind == "text" else None
        if match:
            named = True
            if match["mark"] in "-\u2013" and int(match["universe"]) > int(match["address"]):
                dash = True
        elif row.address_kind == "number" and "." in row.address:
            named = True
    return _Custom(by_column, named, dash)


def _read(row: Written, custom: _Custom) -> Address | Misread | None:
    universe, address = row.universe.strip(), row.address.strip()
    no_address = address.casefold() in _UNPATCHED
    if no_address and universe.casefold() in _UNPATCHED:
        return None
    if no_address:
        return Misread(
            "address", address, f"a universe, {universe}, without an address: write one, or neither"
        )
    try:
        given = _universe(universe, row.universe_kind) if universe.casefold() not in _UNPATCHED else None
    except (_RefusedError, AddressError) as error:
        return Misread("universe", universe, str(error))
    try:
        return _address(address, row.address_kind, given, custom)
    except (_RefusedError, AddressError) as error:
        return Misread("address", address, str(error))


def _universe(text: str, kind: Kind) -> int:
    if kind == "date":
        raise _RefusedError(f"a date, {text}: write the universe's number in a cell formatted as text")
    match = _UNIVERSE.fullmatch(text)
    if match:
        number = _digits(match["universe"])
    elif re.fullmatch(r"[A-Za-z]{1,2}", text):
        raise _RefusedError(f"a universe by letter, {text!r}: write its number, 1 to {LAST_UNIVERSE}")
    else:
        number = _whole(text)
    if not 1 <= number <= LAST_UNIVERSE:
        raise _RefusedError(f"universe {number} is not within 1 to {LAST_UNIVERSE}")
    return number


def _address(text: str, kind: Kind, universe: int | None, custom: _Custom) -> Address:
    if kind == "date" or _looks_like_a_date(text):
        raise _RefusedError(
            f"a date, {text}: a spreadsheet makes 2/10 a date; format the column as text and write it again"
        )
    if kind == "truth":
        raise _RefusedError(f"{text} is no address: {RIGHT}")
    match = _PAIR.fullmatch(text)
    if match:
        pair = _pair(text, match, universe, custom)
        if universe is not None and pair.universe != universe:
            raise _RefusedError(
                f"{text} names universe {pair.universe}, beside universe {universe}: which is right?"
            )
        return pair
    if _LETTER.fullmatch(text):
        raise _RefusedError(f"a universe by letter, {text!r}: write its number, such as 2/101")
    number = _whole(text)
    if universe is not None:
        if number > SLOTS_PER_UNIVERSE:
            raise _RefusedError(
                f"address {number} beside universe {universe} is not within 1 to {SLOTS_PER_UNIVERSE}: "
                "write the address within its universe"
            )
        return Address(universe, number)
    if custom.universe_column:
        raise _RefusedError(f"address {number} has no universe, as other rows have: write it")
    if custom.named_universe and number <= SLOTS_PER_UNIVERSE:
        raise _RefusedError(
            f"address {number} names no universe, as other rows do: 1/{number} if it is the first"
        )
    try:
        return Address.from_absolute(number)
    except AddressError:
        most = LAST_UNIVERSE * SLOTS_PER_UNIVERSE
        raise _RefusedError(
            f"address {number} counted on over all universes is not within 1 to {most}"
        ) from None


def _pair(text: str, match: re.Match[str], universe: int | None, custom: _Custom) -> Address:
    first, second, mark = match["universe"], match["address"], match["mark"]
    named = bool(match["named"])
    if mark == "." and not named and len(second) != 3:
        if len(second) < 3:
            readings = " or ".join(
                f"{first}/{second}{zeros}" for zeros in ("", "0", "00") if len(second + zeros) <= 3
            )
            raise _RefusedError(
                f"{text} may have been {readings}, since a sheet drops zeros: write it as one of them"
            )
        raise _RefusedError(f"{text} is no universe and address: {RIGHT}")
    if mark == "," and not named:
        raise _RefusedError(f"{text} may be universe {first}, address {second}, or a decimal comma: {RIGHT}")
    if mark.isspace() and not named:
        raise _RefusedError(f"{text} may be universe {first}, address {second}, or {first}{second}: {RIGHT}")
    if mark in "-\u2013" and not named and (universe is not None or not custom.dash_is_pair):
        raise _RefusedError(
            f"{text} may be universe {first}, address {second}, or addresses {first} to {second}: "
            f"write it as {first}/{second}, or the first address alone"
        )
    return Address(_digits(first), _digits(second))


def _looks_like_a_date(text: str) -> bool:
    return bool(_THREE_NUMBERS.fullmatch(text)) or (
        bool(_MONTH.search(text)) and any(letter.isdigit() for letter in text)
    )


def _digits(text: str) -> int:
    return int(text) if len(text) <= 12 else 10**12


def _whole(text: str) -> int:
    try:
        return whole_number(text)
    except ValueError as error:
        raise _RefusedError(f"{error}; {RIGHT}" if "write" not in str(error) else str(error)) from None
