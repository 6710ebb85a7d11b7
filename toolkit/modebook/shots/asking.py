"""Asks the engine each distinct question once: many at a time in two processes, kept for the next plan."""

from __future__ import annotations

import hashlib
import multiprocessing
import os
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import astuple, dataclass
from importlib.metadata import version
from pathlib import Path
from typing import Any

import orjson

from modebook.checks.fingerprint import text_of
from modebook.response.fade import Fade
from modebook.response.judge import judge_lateness, judge_stepping
from modebook.shelf.cache import cache_folder
from modebook.shelf.errors import ShelfError
from modebook.shelf.writing import write_whole

WORTH_A_PROCESS = 40
"""Fades from which a second process pays for its start."""
MOST_KEPT = 50_000
"""Answers that are kept; of more the oldest go."""

Told = Callable[[int, int], None]
"""Gets how many are answered, of how many."""


@dataclass(frozen=True, slots=True)
class Essence:
    """What a plan compares choices by: some figures of response.judge.Judgement, in half of its time."""

    worst_stepping_jnd: float
    added_s: float
    delay_s: float


class Engine:
    """The engine with a memory. keep: look among the answers of former plans first, and keep the new ones.

    Former answers hold as long as the engine's own text and its library are the same. Nothing of that file
    is needed: one that is missing or torn costs time, and nothing else.
    """

    def __init__(self, keep: bool = True) -> None:
        self.keep = keep
        self.asked = 0
        """Distinct questions that were put to it."""
        self.computed = 0
        """Those among them that no former plan had asked."""
        self._kept: dict[str, list[Any]] = _read() if keep else {}
        self._answers: dict[Fade, Essence] = {}
        self._fresh: dict[str, list[Any]] = {}

    def ask(self, question: Fade) -> Essence:
        """The answer to one question. Raises ResponseError as response.judge does."""
        found = self._answers.get(question) or self._known(question)
        if found is None:
            found = _judged(question)
            self._learn(question, found)
        return found

    def ask_all(self, questions: Iterable[Fade], told: Told | None = None) -> None:
        """Put many questions at once; their answers are then at hand. Raises ResponseError as `ask` does."""
        distinct = list(dict.fromkeys(questions))
        fresh = [one for one in distinct if one not in self._answers and self._known(one) is None]
        for done, (question, answer) in enumerate(_answered(fresh), 1):
            self._learn(question, answer)
            if told:
                told(len(distinct) - len(fresh) + done, len(distinct))

    def save(self) -> None:
        """Keep what is new for the next plan."""
        if not (self.keep and self._fresh):
            return
        newest = dict(list((self._kept | self._fresh).items())[-MOST_KEPT:])
        try:
            write_whole(_file(), b"\n".join((_head(), orjson.dumps(newest))))
        except (ShelfError, RuntimeError, orjson.JSONEncodeError):
            # A disk that takes nothing, or no home folder: the next plan is as slow as this.
            return

    def _known(self, question: Fade) -> Essence | None:
        told = self._kept.get(_name(question))
        if told is None:
            return None
        self.asked += 1
        self._answers[question] = found = Essence(*told)
        return found

    def _learn(self, question: Fade, answer: Essence) -> None:
        self.asked += 1
        self.computed += 1
        self._answers[question] = answer
        self._fresh[_name(question)] = list(astuple(answer))


def _judged(question: Fade) -> Essence:
    late = judge_lateness(question)
    return Essence(judge_stepping(question).worst_stepping_jnd, late.added_s, late.delay_s)


def _answered(questions: Sequence[Fade]) -> Iterator[tuple[Fade, Essence]]:
    several = len(questions) >= WORTH_A_PROCESS and hasattr(os, "fork") and (os.cpu_count() or 1) > 1
    if not several:
        yield from ((question, _judged(question)) for question in questions)
        return
    context = multiprocessing.get_context("fork")
    with context.Pool(min(os.cpu_count() or 1, 4)) as pool:
        yield from zip(questions, pool.imap(_judged, questions, chunksize=4), strict=True)


def _name(question: Fade) -> str:
    return hashlib.sha256(repr(question).encode()).hexdigest()[:32]


def _file() -> Path:
    return cache_folder() / "judged.results"


def _head() -> bytes:
    text = f"{text_of(('response',))} numpy {version('numpy')}"
    return hashlib.sha256(text.encode()).hexdigest().encode()


def _read() -> dict[str, list[Any]]:
    try:
        head, _, body = _file().read_bytes().partition(b"\n")
        return dict(orjson.loads(body)) if head == _head() else {}
    except (OSError, RuntimeError, ValueError, TypeError):
        return {}
