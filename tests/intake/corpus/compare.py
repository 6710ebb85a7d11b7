"""Compares a reading with a chart's truth, parameter by parameter: right, doubted, or silently wrong."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

from intake.corpus import meanings
from intake.corpus.content import Json

Kind = Literal["right", "thin", "doubt due", "doubt may", "doubt else", "silent", "extra"]


@dataclass(frozen=True)
class Outcome:
    """What became of one parameter. `thin`: right, but a `does` that the text says was left out."""

    kind: Kind
    pointer: str
    """In the truth; in the reading for an extra one."""
    printed: str
    read: str
    why: str


@dataclass
class Compared:
    """The outcomes of one chart, and of its modes' names and footprints."""

    outcomes: list[Outcome]
    modes_right: int
    modes: int
    mode_faults: list[str]
    doubts: list[str]
    """The reading's open doubts in a line each."""


@dataclass
class Placed:
    """A parameter at its slots of the whole mode; cells are written out."""

    pointer: str
    slots: tuple[int, ...]
    body: Json


def placed(mode: Json, pointer: str) -> list[Placed]:
    """All parameters of a mode, cells repeated, parts left out."""
    found = [
        Placed(f"{pointer}/parameters/{n}", tuple(p.get("slots", ())), p)
        for n, p in enumerate(mode.get("parameters", ()))
    ]
    for n, block in enumerate(mode.get("cells", ())):
        inner = placed(block, f"{pointer}/cells/{n}")
        for count in range(block["count"]):
            offset = block["first"] - 1 + count * block["stride"]
            found += [Placed(p.pointer, tuple(s + offset for s in p.slots), p.body) for p in inner]
    return found


def _inside(pointer: str, above: str) -> bool:
    return above == "" or pointer == above or pointer.startswith(above + "/")


class Doubts:
    """The open doubts of a reading, and what they cover."""

    def __init__(self, document: Json) -> None:
        self.open = [d for d in document.get("doubts") or () if not d.get("settled")]

    def cover(self, mode: str | None, pointer: str | None, slots: tuple[int, ...]) -> bool:
        """Whether a doubt covers a parameter: its pointer from above or within, or its slots."""
        for doubt in self.open:
            at, about = doubt["pointer"], set(doubt.get("slots") or ())
            meets = not about or bool(about & set(slots))
            if pointer is not None and _inside(at, pointer):
                return True
            if pointer is not None and _inside(pointer, at) and meets:
                return True
            if mode is None:
                if at in ("", "/modes"):
                    return True
            elif (at in ("", "/modes", mode, f"{mode}/parameters") and meets) or (
                _inside(at, mode) and about & set(slots)
            ):
                return True
        return False


def compare(truth: Json, document: Json) -> Compared:
    """Every parameter of the truth once, and every one that the reading has beyond it.

    `document` is the reading as plain JSON. Two parameters belong together by slots, then by word and label.
    """
    doubts = Doubts(document)
    pairs, lone = _modes(truth, document)
    told = [
        f"{d['pointer']} {d.get('slots') or ''}: {d['why']} ({d.get('printed') or ''})" for d in doubts.open
    ]
    result = Compared([], 0, len(truth["document"]["modes"]), [], told)
    for index, mode in enumerate(truth["document"]["modes"]):
        at = f"/modes/{index}"
        other = pairs.get(index)
        there = None if other is None else f"/modes/{other}"
        reading: Json = {} if other is None else document["modes"][other]
        if there is not None:
            fault = _mode_fault(truth, at, mode, reading)
            covered = doubts.cover(there, there, ())
            result.modes_right += not fault
            if fault and not covered:
                result.mode_faults.append(f"{at}: {fault}")
        else:
            result.mode_faults.append(f"{at}: mode {mode['name']!r} is missing")
        result.outcomes += _mode(truth, document, doubts, at, there)
    for other in lone:
        at = f"/modes/{other}"
        for p in placed(document["modes"][other], at):
            kind: Kind = "doubt else" if doubts.cover(at, p.pointer, p.slots) else "extra"
            result.outcomes.append(
                Outcome(kind, p.pointer, "", _short(p.body), "a mode that is not in the chart")
            )
        if not doubts.cover(at, at, ()):
            result.mode_faults.append(f"{at}: mode {document['modes'][other]['name']!r} is not in the chart")
    return result


def _mode_fault(truth: Json, at: str, mode: Json, reading: Json) -> str:
    faults = []
    names = truth["names"][at]
    if names and meanings.folded(reading["name"]) not in {meanings.folded(name) for name in names}:
        faults.append(f"name {reading['name']!r}, printed {names[0]!r}")
    if reading["footprint"] != mode["footprint"]:
        faults.append(f"footprint {reading['footprint']}, printed {mode['footprint']}")
    return "; ".join(faults)


def _modes(truth: Json, document: Json) -> tuple[dict[int, int], list[int]]:
    """Which mode of the reading belongs to which of the truth, best overlap first; and those left over."""
    scores = []
    for index, mode in enumerate(truth["document"]["modes"]):
        names = {meanings.folded(name) for name in truth["names"][f"/modes/{index}"]}
        mine = {(p["parameter"], tuple(p["slots"])) for p in mode["parameters"]}
        for other, reading in enumerate(document["modes"]):
            theirs = {(p.body["parameter"], p.slots) for p in placed(reading, "")}
            overlap = len(mine & theirs) / max(len(mine | theirs), 1)
            named = meanings.folded(reading["name"]) in names
            if named or overlap > 0.1:
                scores.append((overlap + named, -abs(index - other), index, other))
    pairs: dict[int, int] = {}
    for _, _, index, other in sorted(scores, reverse=True):
        if index not in pairs and other not in pairs.values():
            pairs[index] = other
    left = [n for n in range(len(document["modes"])) if n not in pairs.values()]
    for index in range(len(truth["document"]["modes"])):
        if index not in pairs and left:
            pairs[index] = left.pop(0)
    return pairs, left


def _mode(truth: Json, document: Json, doubts: Doubts, at: str, there: str | None) -> list[Outcome]:
    mine = placed(_at(truth["document"], at), at)
    theirs = placed(_at(document, there), there) if there else []
    matched = _match(truth, mine, theirs)
    outcomes = []
    for index, p in enumerate(mine):
        q = theirs[matched[index]] if index in matched else None
        thin = False
        if q is None:
            why = "missing"
        else:
            faults, thin = meanings.faults(truth, document, at, there or "", p, q)
            why = "; ".join(faults)
        reach = tuple({*p.slots, *(q.slots if q else ())})
        covered = doubts.cover(there, q.pointer if q else None, reach)
        due = _due(truth, p.pointer)
        outcomes.append(
            Outcome(
                _kind(why, thin, covered, due),
                p.pointer,
                _short(p.body),
                _short(q.body) if q else "",
                why or due or "",
            )
        )
    for number, q in enumerate(theirs):
        if number not in matched.values():
            kind: Kind = "doubt else" if doubts.cover(there, q.pointer, q.slots) else "extra"
            outcomes.append(Outcome(kind, q.pointer, "", _short(q.body), "not in the chart"))
    return outcomes


def _kind(why: str, thin: bool, covered: bool, due: str | None) -> Kind:
    if covered:
        return "doubt due" if due == "must" else "doubt may" if due else "doubt else"
    if why or due == "must":
        return "silent"
    return "thin" if thin else "right"


def _due(truth: Json, pointer: str) -> str | None:
    """Whether a doubt is due ("must") or allowed ("may") at a parameter of the truth."""
    found = [d for d in truth["doubt"] if _inside(pointer, d["pointer"]) or _inside(d["pointer"], pointer)]
    if not found:
        return None
    return "must" if any(d["must"] for d in found) else "may"


def _match(truth: Json, mine: list[Placed], theirs: list[Placed]) -> dict[int, int]:
    scores = []
    for i, p in enumerate(mine):
        words = truth["words"].get(p.pointer, [p.body["parameter"]])
        for j, q in enumerate(theirs):
            if p.slots != q.slots and not set(p.slots) & set(q.slots):
                continue
            score = 4 * (p.slots == q.slots) + 2 * (q.body["parameter"] in words)
            score += meanings.folded(p.body.get("label") or "") == meanings.folded(q.body.get("label") or "")
            score += bool(p.body.get("when")) == bool(q.body.get("when"))
            scores.append((score, -abs(i - j), -i, -j))
    pairs: dict[int, int] = {}
    taken: set[int] = set()
    for _, _, i, j in sorted(scores, reverse=True):
        if -i not in pairs and -j not in taken:
            pairs[-i] = -j
            taken.add(-j)
    return pairs


def _at(document: Json, pointer: str | None) -> Json:
    here: Any = document
    for step in (pointer or "").split("/")[1:]:
        here = here[int(step)] if isinstance(here, list) else here[step]
    return dict(here)


def _short(p: Json) -> str:
    parts = [f"{p['parameter']} {list(p.get('slots', ()))}"]
    for key in ("label", "default", "coarse_default", "when"):
        if p.get(key) not in (None, []):
            parts.append(f"{key} {p[key]}")
    if p.get("span"):
        parts.append(f"span {meanings.span_text(p['span'])}")
    for r in (p.get("ranges") or [])[:40]:
        more = {
            k: v
            for k, v in r.items()
            if v is not None and k not in ("from", "to", "meaning", "snap") and v is not False
        }
        parts.append(f"{r['from']}-{r['to']} {r['meaning']}{' ' + str(more) if more else ''}")
    return " | ".join(parts)
