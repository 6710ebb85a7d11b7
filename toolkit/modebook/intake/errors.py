"""The named errors of the intake: a chart that cannot be read, a promotion that is refused."""

from __future__ import annotations


class IntakeError(Exception):
    """A chart that cannot be read: which file, which place in it, what is wrong, what would be right."""

    def __init__(self, file: object, problem: str, *, place: str = "", remedy: str = "") -> None:
        self.file = str(file)
        self.place = place
        self.problem = problem
        self.remedy = remedy
        super().__init__(str(self))

    def __str__(self) -> str:
        at = f"{self.file}, {self.place}" if self.place else self.file
        return " ".join((f"{at}: {self.problem}" + (f"; {self.remedy}" if self.remedy else "")).split())


class MissingExtraError(IntakeError):
    """A format whose reader is not installed; says which extra brings it."""


class PickError(Exception):
    """A mode or a firmware that a document does not have, with what it has, in one line."""


class PromotionRefusedError(Exception):
    """A rise in standing that the record does not bear yet; `reasons` says why, one line each."""

    def __init__(self, identity: str, reasons: list[str]) -> None:
        self.identity = identity
        self.reasons = reasons
        super().__init__(f"{identity}: " + "; ".join(reasons))
