"""The named errors of the intake: a chart that cannot be read, a promotion that is refused."""

from __future__ import annotations

from modebook.shelf.errors import FileError


class IntakeError(FileError):
    """A chart that cannot be read: which file, which place in it, what is wrong, what would be right."""


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
