"""The one error of measuring: a clip or trace that holds no answer, told in one line."""

from __future__ import annotations


class MeasureError(Exception):
    """A clip or trace that cannot be measured: which file, where, what is wrong, what would be right."""

    def __init__(self, file: object, problem: str, *, place: str = "", remedy: str = "") -> None:
        self.file = str(file)
        self.place = place
        self.problem = problem
        self.remedy = remedy
        super().__init__(str(self))

    def __str__(self) -> str:
        at = f"{self.file}, {self.place}" if self.place else self.file
        return " ".join((f"{at}: {self.problem}" + (f"; {self.remedy}" if self.remedy else "")).split())


class MissingPartError(MeasureError):
    """A reader whose package is not installed; says which extra brings it."""
