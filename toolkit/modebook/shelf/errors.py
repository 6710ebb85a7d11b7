"""The one shape of an error about a file, told in one line; and the shelf's own."""

from __future__ import annotations


class FileError(Exception):
    """Something about a file: which file, which place in it, what is wrong, what would be right."""

    def __init__(self, file: object, problem: str, *, place: str = "", remedy: str = "") -> None:
        self.file = str(file)
        self.place = place
        self.problem = problem
        self.remedy = remedy
        super().__init__(str(self))

    def __str__(self) -> str:
        at = f"{self.file}, {self.place}" if self.place else self.file
        line = f"{at}: {self.problem}" + (f"; {self.remedy}" if self.remedy else "")
        return printable(" ".join(line.split()))


class ShelfError(FileError):
    """A file that cannot be found, read or written."""


def printable(words: str) -> str:
    """The words with every sign that a terminal would not show, or would obey, spelled as an escape."""
    if words.isprintable():
        return words
    return "".join(
        sign if sign.isprintable() else sign.encode("unicode_escape", "surrogatepass").decode()
        for sign in words
    )


def reason_of(error: OSError) -> str:
    """What the system says about a file, in words."""
    return (error.strerror or str(error)).lower()
