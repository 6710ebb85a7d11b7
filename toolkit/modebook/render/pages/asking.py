"""What an address asks, read strictly: an unknown or odd parameter is refused in one line, never guessed."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from modebook.render.pages.failing import not_so

Asked = Mapping[str, Sequence[str]]
"""The parameters of an address: each name with its values in order."""

LONGEST_TEXT = 200
"""Characters of a text in an address."""


def only(asked: Asked, known: Collection[str]) -> None:
    """Raises PageError (400) for a parameter that the page does not know."""
    for name in asked:
        if name not in known:
            raise not_so(f"there is no parameter {short(name)!r} here; there are {', '.join(sorted(known))}")


def text(asked: Asked, name: str) -> str:
    """A text, without blanks around it; empty where it is not given. Raises PageError (400) past a length."""
    told = last(asked, name)
    if len(told) > LONGEST_TEXT:
        raise not_so(f"{name} has {len(told)} characters; {LONGEST_TEXT} are enough")
    return told


def number(asked: Asked, name: str, least: int, most: int) -> int | None:
    """A whole number within bounds; None where it is not given or empty. Raises PageError (400)."""
    told = last(asked, name)
    if not told:
        return None
    if not (told.isascii() and told.isdigit() and len(told) <= 9 and least <= int(told) <= most):
        raise not_so(f"{name} is {short(told)!r}; give a whole number, {least} to {most}")
    return int(told)


def word(asked: Asked, name: str, words: Collection[str]) -> str:
    """One of some words; empty where it is not given. Raises PageError (400)."""
    told = last(asked, name)
    if told and told not in words:
        raise not_so(f"{name} is {short(told)!r}; it may be {', '.join(sorted(words))}")
    return told


def flag(asked: Asked, name: str) -> bool:
    """Whether something is switched on, by ``1``. Raises PageError (400) for anything but 1, 0 or nothing."""
    return word(asked, name, ("0", "1")) == "1"


def last(asked: Asked, name: str) -> str:
    """The last value given, without blanks around it."""
    values = asked.get(name) or ("",)
    return values[-1].strip()


def short(told: str) -> str:
    """So much of a text as an error line can hold."""
    return told if len(told) <= 60 else f"{told[:57]}..."
