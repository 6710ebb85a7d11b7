"""What an answer is worth beside the truth, and the tally of many."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from .case import Truth
from .telling import TOLERANCE

KINDS = ("can tell", "cannot tell", "gray")


@dataclass(frozen=True, slots=True)
class Score:
    """One answer: the kind of case, whether the answer is right, and what is wrong with it otherwise.

    inside: whether the interval holds the true length; None where no interval of a smoothing is judged.
    """

    name: str
    kind: str
    truth: Truth
    answer: Mapping[str, Any]
    right: bool
    inside: bool | None
    fault: str

    @property
    def line(self) -> str:
        """The fault as a line for a person who mends it."""
        found = {
            key: self.answer.get(key) for key in ("can_tell", "method", "length_packets", "interval_packets")
        }
        true = f"{self.truth.method} over {self.truth.length_packets:g} packets"
        return f"{self.name}: {self.fault}; true: {true}; found: {found}; {self.truth.why}"


def kind_of(truth: Truth) -> str:
    """can tell: method and length surely. cannot tell: surely not both. gray: neither is sure."""
    if truth.can_tell_method and truth.can_tell_length:
        return "can tell"
    if truth.can_tell_method is False or truth.can_tell_length is False:
        return "cannot tell"
    return "gray"


def score(name: str, truth: Truth, answer: Mapping[str, Any]) -> Score:
    """Judge an answer (the keys of `measure --json`, or `error`).

    A case that can tell wants can_tell, the method, and the length within TOLERANCE. One that cannot wants
    can_tell false, and a length, if one is given all the same, that is no wrong figure.
    """
    kind, fault = kind_of(truth), ""
    length, interval = answer.get("length_packets"), answer.get("interval_packets")
    off = None if length is None else abs(length - truth.length_packets)
    if "error" in answer:
        fault = f"error: {answer['error']}"
    elif kind == "can tell":
        if not answer["can_tell"]:
            fault = f"says that it cannot tell ({answer.get('why')})"
        elif answer["method"] != truth.method:
            fault = "wrong method"
        elif off is None or off > TOLERANCE:
            fault = "wrong length"
    elif kind == "cannot tell":
        if answer["can_tell"]:
            fault = "claims to tell"
        elif off is not None and off > TOLERANCE:
            fault = "gives a wrong length although it says that it cannot tell"
        elif truth.can_tell_method is False and answer["method"] not in (None, truth.method):
            fault = "names a wrong method although it says that it cannot tell"
    inside = None
    if kind == "can tell" and truth.method != "none" and interval and answer.get("method") == truth.method:
        inside = interval[0] <= truth.length_packets <= interval[1]
    return Score(name, kind, truth, answer, not fault, inside, fault)


def tally(scores: Sequence[Score]) -> list[str]:
    """Give the figures as lines."""
    sure = [score for score in scores if score.kind == "can tell"]
    never = [score for score in scores if score.kind == "cannot tell"]
    off = [score for score in sure if score.truth.method == "none"]
    told = [score for score in sure if score.answer.get("can_tell")]
    method = [score for score in sure if score.answer.get("method") == score.truth.method]
    close = [score for score in sure if _close(score)]
    judged = [score for score in scores if score.inside is not None]
    gray = len(scores) - len(sure) - len(never)
    lines = [
        f"{len(scores)} cases: {len(sure)} can tell, {len(never)} cannot, {gray} between (not counted)",
        _share("told where it can be told", told, sure),
        _share("right method", method, sure),
        _share(f"length within {TOLERANCE} packets", close, sure),
        _share("right method and length (target 95 %)", [one for one in sure if one.right], sure),
        _share("'cannot tell' where it cannot", [one for one in never if one.right], never),
        _share("  of these, claims to tell", [one for one in never if one.answer.get("can_tell")], never),
        _share("off known as off", [one for one in off if one.right], off),
        _share(
            "interval holds the length (target 90 to 99 %)", [one for one in judged if one.inside], judged
        ),
    ]
    for method_name in ("none", "average", "interpolate", "lag", "limit", "restart"):
        own = [one for one in sure if one.truth.method == method_name]
        lines.append(_share(f"  {method_name}: right", [one for one in own if one.right], own))
    return lines


def _close(score: Score) -> bool:
    length = score.answer.get("length_packets")
    return length is not None and abs(length - score.truth.length_packets) <= TOLERANCE


def _share(what: str, part: Sequence[Score], whole: Sequence[Score]) -> str:
    share = f"{100 * len(part) / len(whole):5.1f} %" if whole else "   none"
    return f"{what:<48} {share}  ({len(part)} of {len(whole)})"
