"""What a page answers where it cannot show what was asked: an HTTP status and one clear line."""

from __future__ import annotations


class PageError(Exception):
    """A page that is not there (404), or a question that cannot be answered as asked (400)."""

    def __init__(self, status: int, message: str) -> None:
        super().__init__(message)
        self.status = status
        self.message = message


def not_there(message: str) -> PageError:
    """There is no such page or thing."""
    return PageError(404, message)


def not_so(message: str) -> PageError:
    """The address asks for something that cannot be: which, and what would be right."""
    return PageError(400, message)
