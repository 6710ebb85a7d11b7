"""Short forms of the eighth charts: modes out of one list of parameters, and their rows under each other."""

from __future__ import annotations

from collections.abc import Sequence

from intake.corpus.content import M, P
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_kit as x


def part(source: Sequence[P], labels: str, title: str = "", *names: str) -> M:
    """A mode of some parameters, by their labels parted by bars, one slot after the other.

    A fine byte takes a slot of its own; a label with a star behind it leaves the fine byte out.
    """
    by_label = {p.label: p for p in source}
    made: list[P] = []
    at = 1
    for label in (one.strip() for one in labels.split("|")):
        p = by_label[label.rstrip("*")]
        size = 1 if label.endswith("*") else 1 + len(p.fine)
        made.append(p.at(*range(at, at + size)))
        at += size
    return x.mode(made, title, *names)


def cells(count: int, colors: str, form: str, first: int = 1, text: str = "") -> tuple[P, ...]:
    """Cells written out in full, a slot a color; `colors` are labels and words: ``Red=red Blue=blue``."""
    spans = k.LEVEL if "%" in text else ()
    split = [one.split("=") for one in colors.split()]
    return tuple(
        P((word,), form.format(color=label, n=n + 1), (first + n * len(split) + m,), text=text, spans=spans)
        for n in range(count)
        for m, (label, word) in enumerate(split)
    )


def named(params: Sequence[P], title: str, *names: str) -> M:
    return k.mode(params, title, *names)
