"""What can stop a repatch, each in one line: no solver, or a rig that nothing can be made of."""

from __future__ import annotations


class RepatchError(Exception):
    """A repatch that cannot be made."""


class SolverMissingError(RepatchError):
    """The solver is not installed."""

    def __init__(self) -> None:
        super().__init__(
            "repatch needs the solver HiGHS, which is not installed: pip install 'modebook[repatch]'"
        )


class ImpossibleError(RepatchError):
    """No arrangement exists, or the wishes contradict each other."""


class UnsolvedError(RepatchError):
    """No arrangement was found in the time given, and none was excluded."""


class RewriteError(RepatchError):
    """A patch that cannot be written so that it says what the plan says."""
