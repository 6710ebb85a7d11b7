"""Extras: parts of the program that need packages which not everyone wants, named where they are missing."""

from __future__ import annotations

from importlib.util import find_spec

from modebook.shelf.errors import ShelfError


def needs(package: str, extra: str, purpose: str) -> None:
    """Raise a ShelfError that says what to install, where an extra's package is missing.

    purpose: what is asked for, such as "a repatch"; the line begins with it.
    """
    if find_spec(package) is None:
        raise ShelfError(
            purpose,
            f"this needs the package {package}",
            remedy=f"install the extra: pip install 'modebook[{extra}]'",
        )
