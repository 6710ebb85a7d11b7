"""What a chart says, apart from how it is printed: ranges, parameters, modes, and their truth."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

Json = dict[str, Any]


@dataclass(frozen=True)
class R:
    """A printed range: its ends as the chart counts them, its text, and what that text means.

    `also` lists other texts that are as right. `may` holds fields that a reading may carry and need not.
    `sets` is (kind of setting, choice key, choice label); `needs` is (parameter word, first, last).
    """

    lo: int
    hi: int
    text: str
    does: str | None = None
    span: Json | None = None
    spans_also: tuple[Json | None, ...] = ()
    sets: tuple[str, str, str] | None = None
    hold_s: float | None = None
    kept: str | None = None
    needs: tuple[tuple[str, int, int], ...] = ()
    hazard: str | None = None
    parameter: str | None = None
    also: tuple[str, ...] = ()
    may: Mapping[str, tuple[Any, ...]] = field(default_factory=dict)


@dataclass(frozen=True)
class P:
    """A printed parameter. `words` are the accepted words, best first; `slots` has the coarse byte first.

    `text` describes its whole range where it has no ranges of its own. `spans` are the accepted spans, best
    first, None among them where leaving it out is as right. `wide` says that ranges are printed in the full
    resolution and not for the coarse byte. `doubt` is "must" or "may", with `why`.
    """

    words: tuple[str, ...]
    label: str
    slots: tuple[int, ...] = ()
    fine: tuple[str, ...] = ()
    text: str = ""
    spans: tuple[Json | None, ...] = ()
    ranges: tuple[R, ...] = ()
    default: int | None = None
    fine_default: int | None = None
    wide: bool = False
    when: tuple[Json, ...] = ()
    key: str | None = None
    doubt: str | None = None
    why: str = ""
    printed_slots: str | None = None

    def at(self, *slots: int) -> P:
        """The same at these slots; finer labels beyond them fall away."""
        return replace(self, slots=slots, fine=self.fine[: max(len(slots) - 1, 0)])

    @property
    def top(self) -> int:
        """Its highest value in full resolution."""
        return int(256 ** max(len(self.slots), 1)) - 1


@dataclass(frozen=True)
class M:
    """A printed mode; `names` are the accepted names, best first, empty where the chart prints none."""

    title: str
    names: tuple[str, ...]
    footprint: int
    params: tuple[P, ...]


@dataclass(frozen=True)
class Made:
    """A chart as a file, its truth, and how a reader is to be called for it."""

    data: bytes
    truth: Json
    pages: str | None = None
    """The pages to ask for, where the chart is meant to be read with them; None reads the whole file."""


def span(first: float, last: float, unit: str, raw: bool = False) -> Json:
    """A span as documents write it."""
    made: Json = {"from": float(first), "to": float(last), "unit": unit}
    return {**made, "raw": True} if raw else made


def _range(r: R, bits: int, wide: bool) -> Json:
    scale = 1 if wide else 256 ** (bits - 1)
    made: Json = {"from": r.lo * scale, "to": r.hi * scale + scale - 1, "meaning": r.text}
    if r.parameter:
        made["parameter"] = r.parameter
    if r.does:
        made["does"] = r.does
    if r.span:
        made["span"] = r.span
    if r.sets:
        made["sets"] = {r.sets[0]: r.sets[1]}
    if r.hold_s is not None:
        made["hold_s"] = float(r.hold_s)
    if r.kept:
        made["kept"] = r.kept
    if r.needs:
        made["needs"] = [{"parameter": word, "from": lo, "to": hi} for word, lo, hi in r.needs]
    if r.hazard:
        made["hazard"] = r.hazard
    return made


def _parameter(p: P) -> Json:
    made: Json = {"parameter": p.words[0], "label": p.label}
    if p.key:
        made["key"] = p.key
    made["slots"] = list(p.slots)
    if p.default is not None:
        if len(p.slots) < 2 or p.wide:
            made["default"] = p.default
        elif p.fine_default is not None:
            made["default"] = p.default * 256 + p.fine_default
        else:
            made["coarse_default"] = p.default
    if p.spans and p.spans[0]:
        made["span"] = p.spans[0]
    if p.ranges:
        made["ranges"] = [_range(r, max(len(p.slots), 1), p.wide) for r in p.ranges]
    if p.when:
        made["when"] = list(p.when)
    return made


def _settings(modes: list[M]) -> list[Json]:
    found: dict[str, dict[str, str]] = {}
    for mode in modes:
        for p in mode.params:
            for r in p.ranges:
                if r.sets:
                    found.setdefault(r.sets[0], {})[r.sets[1]] = r.sets[2]
    return [
        {"key": kind, "setting": kind, "choices": [{"key": k, "label": v} for k, v in choices.items()]}
        for kind, choices in found.items()
    ]


def truth(
    maker: str, model: str, modes: list[M], mode_doubts: Mapping[int, tuple[str, str]] | None = None
) -> Json:
    """The truth of a chart: the document, and what else is as right.

    Keys: `document`; `words`, `spans`, `meanings`, `may`: lists by JSON pointer of what is accepted beside
    the document; `names`: accepted mode names by pointer; `texts`: what is printed for a whole parameter;
    `doubt`: pointers where a doubt is right, `must` where it is due.
    """
    settings = _settings(modes)
    document: Json = {
        "maker": maker,
        "model": model,
        "category": "not declared",
        "standing": "draft",
        **({"settings": settings} if settings else {}),
        "modes": [],
    }
    made: Json = {"document": document, "words": {}, "spans": {}, "meanings": {}, "may": {}}
    made |= {"names": {}, "texts": {}, "doubt": []}
    for number, mode in enumerate(modes):
        at = f"/modes/{number}"
        made["names"][at] = list(mode.names)
        if mode_doubts and number in mode_doubts:
            due, why = mode_doubts[number]
            made["doubt"].append({"pointer": at, "must": due == "must", "why": why})
        document["modes"].append(
            {
                "name": mode.names[0] if mode.names else mode.title or "Chart",
                "footprint": mode.footprint,
                "parameters": [_parameter(p) for p in mode.params],
            }
        )
        for index, p in enumerate(mode.params):
            _beside(made, f"{at}/parameters/{index}", p)
    return made


def _beside(made: Json, at: str, p: P) -> None:
    made["words"][at] = list(p.words)
    made["texts"][at] = p.text
    if len(p.spans) > 1:
        made["spans"][at] = list(p.spans)
    if p.doubt:
        made["doubt"].append({"pointer": at, "must": p.doubt == "must", "why": p.why})
    for index, r in enumerate(p.ranges):
        where = f"{at}/ranges/{index}"
        if r.also:
            made["meanings"][where] = list(r.also)
        if r.spans_also:
            made["spans"][where] = [r.span, *r.spans_also]
        if r.may:
            made["may"][where] = {key: list(values) for key, values in r.may.items()}
