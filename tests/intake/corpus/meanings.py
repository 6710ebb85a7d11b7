"""What is the same in meaning in two parameters: words, slots, spans, ranges, conditions, settings."""

from __future__ import annotations

import re
import unicodedata
from typing import TYPE_CHECKING, Any

from intake.corpus.content import Json

if TYPE_CHECKING:
    from intake.corpus.compare import Placed

FIELDS = ("hold_s", "kept", "hazard", "parameter")


def folded(text: str) -> str:
    """Letters and digits alone, without case: dashes, blanks and marks do not part two readings."""
    flat = unicodedata.normalize("NFKC", text).casefold()
    return "".join(sign for sign in flat if sign.isalnum())


def same_text(printed: list[str], read: str) -> bool:
    """Whether a text is one of those printed, a note in brackets at its end left aside or not."""
    accepted = {folded(text) for text in printed}
    accepted |= {folded(re.sub(r"\s*[(\[][^()\[\]]*[)\]]\s*$", "", text)) for text in printed}
    return folded(read) in accepted


def span_text(span: Any) -> str:
    if isinstance(span, list):
        return ", ".join(span_text(one) for one in span)
    return (
        "none"
        if not span
        else f"{span['from']:g} to {span['to']:g} {span['unit']}{' raw' if span.get('raw') else ''}"
    )


def _same_span(a: Any, b: Any) -> bool:
    if not a or not b or isinstance(a, list) or isinstance(b, list):
        return not a and not b
    ends = all(abs(float(a[end]) - float(b[end])) < 1e-9 for end in ("from", "to"))
    return ends and a["unit"] == b["unit"] and bool(a.get("raw")) == bool(b.get("raw"))


def whole(p: Json) -> Json:
    """The same parameter with a lone range over all its values, or one sent raw, taken in as `text`."""
    ranges = list(p.get("ranges") or ())
    top = 256 ** max(len(p.get("slots") or ()), 1) - 1
    if len(ranges) == 1:
        only = ranges[0]
        span = only.get("span")
        raw = isinstance(span, dict) and bool(span.get("raw"))
        if raw or (only["from"] == 0 and only["to"] == top):
            rest = {key: only.get(key) for key in ("does", *FIELDS, "sets", "needs") if only.get(key)}
            return {**p, "ranges": [], "span": p.get("span") or span, "text": only["meaning"], "rest": rest}
    return {**p, "ranges": ranges}


def faults(truth: Json, document: Json, at: str, there: str, p: Placed, q: Placed) -> tuple[list[str], bool]:
    """What a read parameter `q` has other than the true one `p`; and whether a `does` was left out."""
    found: list[str] = []
    words = truth["words"].get(p.pointer, [p.body["parameter"]])
    if q.body["parameter"] not in words:
        found.append(f"word {q.body['parameter']}, not {' or '.join(words)}")
    if p.slots != q.slots:
        found.append(f"slots {list(q.slots)}, not {list(p.slots)}")
    for key in ("default", "coarse_default", "travel"):
        if p.body.get(key) != q.body.get(key):
            found.append(f"{key} {q.body.get(key)}, not {p.body.get(key)}")
    mine, theirs = whole(p.body), whole(q.body)
    accepted = truth["spans"].get(p.pointer) or [mine.get("span")]
    raw = [truth["spans"].get(f"{p.pointer}/ranges/0")] if not mine["ranges"] and p.body.get("ranges") else []
    for spans in raw:
        accepted = [*accepted, *(spans or [])]
    if not any(_same_span(span, theirs.get("span")) for span in accepted):
        found.append(
            f"span {span_text(theirs.get('span'))}, not {' or '.join(span_text(s) for s in accepted)}"
        )
    found += _text_fault(truth, p, mine, theirs)
    names, others = _names(truth["document"], at), _names(document, there)
    if _conditions(p.body.get("when"), names) != _conditions(q.body.get("when"), others):
        found.append(f"when {q.body.get('when')}, not {p.body.get('when')}")
    more, thin = _ranges(truth, document, p, mine, theirs, names, others)
    return [*found, *more], thin


def _text_fault(truth: Json, p: Placed, mine: Json, theirs: Json) -> list[str]:
    """A text read over the whole parameter must be printed there; leaving it out is no fault."""
    read = theirs.get("text")
    if read is None or theirs["ranges"]:
        return []
    label, text = p.body.get("label") or "", truth["texts"].get(p.pointer) or ""
    printed = [t for t in (mine.get("text") or "", text, label, f"{label} {text}", f"{text} {label}") if t]
    rest = set(theirs.get("rest") or ()) - set(mine.get("rest") or ())
    if p.body["parameter"] == "reserved":
        rest -= {"does"}
    wrong = [f"the whole range has {', '.join(sorted(rest))}"] if rest else []
    return wrong if not read or same_text(printed, read) else [*wrong, f"text {read!r}, not {text!r}"]


def _ranges(
    truth: Json, document: Json, p: Placed, mine: Json, theirs: Json, names: Json, others: Json
) -> tuple[list[str], bool]:
    numbered = sorted(enumerate(mine["ranges"]), key=lambda pair: (pair[1]["from"], pair[1]["to"]))
    read = sorted(theirs["ranges"], key=lambda r: (r["from"], r["to"]))
    if len(numbered) != len(read):
        return [f"{len(read)} ranges, not {len(numbered)}"], False
    found: list[str] = []
    thin = False
    for (index, a), b in zip(numbered, read, strict=True):
        where = f"{p.pointer}/ranges/{index}"
        may = truth["may"].get(where, {})
        here = f"{a['from']}-{a['to']}"
        if (a["from"], a["to"]) != (b["from"], b["to"]):
            found.append(f"range {b['from']}-{b['to']}, not {here}")
            continue
        texts = [a["meaning"], *truth["meanings"].get(where, ())]
        if any(a.get(key) for key in ("hold_s", "kept", "needs", "span")):
            # Recorded of the range itself, and compared below: `Reset, hold 3 s` may be read as Reset.
            texts.append(a["meaning"].split(",")[0])
        if not same_text(texts, b["meaning"]):
            found.append(f"{here} {b['meaning']!r}, not {a['meaning']!r}")
        does = b.get("does")
        if does is None:
            thin = thin or bool(a.get("does"))
        elif does != a.get("does") and does not in may.get("does", ()):
            found.append(f"{here} does {does!r}, not {a.get('does')!r}")
        spans = truth["spans"].get(where) or [a.get("span")]
        if not any(_same_span(span, b.get("span")) for span in spans):
            found.append(f"{here} span {span_text(b.get('span'))}, not {span_text(spans[0])}")
        for key in FIELDS:
            if a.get(key) != b.get(key) and b.get(key) not in may.get(key, ()):
                found.append(f"{here} {key} {b.get(key)!r}, not {a.get(key)!r}")
        if _conditions(a.get("needs"), names) != _conditions(b.get("needs"), others):
            found.append(f"{here} needs {b.get('needs')}, not {a.get('needs')}")
        found += _sets(truth, document, here, a, b, may.get("sets", ()))
    return found, thin


def _sets(truth: Json, document: Json, here: str, a: Json, b: Json, may: list[str]) -> list[str]:
    """Settings by kind and by their choices' labels: the keys are each reading's own."""
    mine, theirs = _choices(truth["document"], a), _choices(document, b)
    if not mine:
        extra = sorted(set(theirs) - set(may))
        return [f"{here} sets {', '.join(extra)}, which is not printed"] if extra else []
    if set(mine) != set(theirs):
        return [f"{here} sets {sorted(theirs)}, not {sorted(mine)}"]
    text = folded(a["meaning"])
    wrong = []
    for kind, label in mine.items():
        read = folded(theirs[kind])
        if not read or not (read in text or text in read or folded(label) in read):
            wrong.append(f"{here} sets {kind} to {theirs[kind]!r}, not {label!r}")
    return wrong


def _choices(document: Json, r: Json) -> dict[str, str]:
    made: dict[str, str] = {}
    for key, choice in (r.get("sets") or {}).items():
        setting = next((s for s in document.get("settings") or () if s["key"] == key), None)
        if setting is None or not isinstance(choice, str):
            made[key if setting is None else setting["setting"]] = "" if setting is None else str(choice)
            continue
        found: Json = next((c for c in setting.get("choices") or () if c["key"] == choice), {})
        made[setting["setting"]] = found.get("label") or choice
    return made


def _names(document: Json, at: str) -> dict[str, tuple[int, ...]]:
    """The slots behind the names that conditions use in a mode."""
    if not at:
        return {}
    mode = document["modes"][int(at.split("/")[2])]
    return {p.get("key") or p["parameter"]: tuple(p["slots"]) for p in reversed(mode.get("parameters") or [])}


def _conditions(conditions: Any, names: dict[str, tuple[int, ...]]) -> set[tuple[Any, ...]]:
    made: set[tuple[Any, ...]] = set()
    for c in conditions or ():
        where = names.get(c.get("parameter") or "", c.get("parameter") or c.get("setting") or c.get("given"))
        stretches = c.get("any_of") or [c]
        made |= {(where, s.get("from"), s.get("to")) for s in stretches}
    return made
