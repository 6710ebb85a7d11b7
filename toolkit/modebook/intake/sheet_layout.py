"""The layout of the chart sheet: blocks of rows under titles of their own, and how each value is written."""

from __future__ import annotations

import json
import re
from dataclasses import dataclass
from typing import Any

Json = dict[str, Any]
Form = str
"""How a column writes its key: text, int, number, yes, list, span, length, sets, conditions, values, hex."""

MOST_LETTERS = 30_000
"""More than that a cell of a spreadsheet may not hold; a longer remainder goes over several cells."""
MORE = "more"


@dataclass(frozen=True, slots=True)
class Column:
    """One column: its title, the key of the document, and how its values are written."""

    title: str
    key: str
    form: Form = "text"


def _columns(*told: str) -> tuple[Column, ...]:
    made = []
    for one in told:
        title, _, rest = one.partition("=")
        key, _, form = rest.partition(":")
        made.append(Column(title, key or title.replace(" ", "_"), form or "text"))
    return tuple(made)


BLOCKS: dict[str, tuple[Column, ...]] = {
    "fixture": _columns("maker", "model", "category", "standing", "about"),
    "source": _columns("key", "title", "revision", "date", "firmware", "pages", "language", "note"),
    "setting": _columns(
        "key", "kind=setting", "label", "acts on=acts_on:list", "none=none:yes", "source", "note"
    ),
    "choice": _columns(
        "key", "label", "length=length:length", "method", "factory=factory:yes", "given", "source", "note"
    ),
    "way": _columns(
        "by",
        "pid",
        "size=size:int",
        "values=values:values",
        "path=path:path",
        "choices=choices:list",
        "kept",
        "firmware",
        "source",
        "note",
    ),
    "wheel": _columns("key", "label", "source"),
    "position": _columns("key", "label", "between=between:list"),
    "emitter": _columns("key", "label", "x=x:number", "y=y:number", "peak nm=peak_nm:number", "source"),
    "mode": _columns(
        "name", "number=number:int", "footprint=footprint:int", "given", "source", "place", "note"
    ),
    "chart": _columns(
        "slots=slots:slots",
        "parameter",
        "label",
        "default=default:int",
        "from=from:int",
        "to=to:int",
        "meaning",
        "does",
        "span=span:span",
        "sets=sets:sets",
        "hold s=hold_s:number",
        "kept",
        "hazard",
        "needs=needs:conditions",
        "when=when:conditions",
        "for=for:list",
        "position",
        "key",
        "snap=snap:yes",
        "source",
        "place",
        "note",
    ),
    "doubt": _columns("pointer", "slots=slots:list", "place", "printed", "read", "why"),
    "accepted": _columns("rule", "pointer", "reason", "by", "date"),
    "promotion": _columns("to", "by", "date", "note"),
}
"""Every block. A row of titles begins with the block's name; the rows below it leave that cell blank, or say
`cells` or `part` within a chart."""

PARAMETER_KEYS = (
    "slots",
    "parameter",
    "label",
    "default",
    "span",
    "when",
    "for",
    "key",
    "snap",
    "source",
    "place",
    "note",
)
RANGE_KEYS = (
    "from",
    "to",
    "meaning",
    "parameter",
    "does",
    "span",
    "sets",
    "hold_s",
    "kept",
    "hazard",
    "needs",
    "for",
    "position",
    "key",
    "snap",
    "source",
    "note",
)
CELLS_KEYS = ("key", "label", "source", "note")
PART_KEYS = ("key", "label", "note")

_WORD = r"[a-z0-9]+(?:-[a-z0-9]+)*"
_NUM = r"-?(?:0|[1-9]\d*)(?:\.\d+)?(?:e[+-]?\d+)?"
_UNIT = r"(?: ?([^\s\d]\S*)| 1)"
_SPAN = re.compile(rf"(?:from )?({_NUM}){_UNIT}? to ({_NUM}){_UNIT}( raw)?")
_UNITS = {"°": "deg"}
_LENGTH = re.compile(rf"({_NUM}) (packets|s)")
_CELLS = re.compile(r"(\d+) x (\d+) from (\d+)")
_ESCAPED = re.compile(r"_x[0-9A-Fa-f]{4}_")


def written(value: Any, form: Form) -> str | int | float | None:
    """A value as its cell shows it; None where the cell cannot hold it and it goes to `more`."""
    if form == "text":
        return value if isinstance(value, str) and plain(value) else None
    if form == "int":
        return value if isinstance(value, int) and not isinstance(value, bool) else None
    if form == "number":
        return (
            value
            if isinstance(value, int | float) and not isinstance(value, bool) and abs(value) < 1e15
            else None
        )
    if form == "yes":
        return "yes" if value is True else None
    text = _text(value, form)
    return text if text is not None and plain(text) and read(text, form) == value else None


def _countable(value: Any) -> bool:
    """Whether a number comes back from a spreadsheet, which keeps 15 digits."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        return False
    return abs(value) < 1e15 and float(f"{value:.15g}") == value


def _text(value: Any, form: Form) -> str | None:
    if form == "slots":
        return ", ".join(str(n) for n in value) if value else "none"
    if form == "list" and isinstance(value, list) and value:
        return ", ".join(str(item) for item in value)
    if form == "path" and isinstance(value, list) and value:
        return " > ".join(value)
    if form == "span":
        return _span(value)
    if form == "length" and isinstance(value, dict) and len(value) == 1:
        return (
            f"{value['packets']} packets"
            if "packets" in value
            else f"{value['seconds']} s"
            if "seconds" in value
            else None
        )
    if form == "values" and isinstance(value, dict) and value:
        return ", ".join(f"{key} = {number}" for key, number in value.items())
    if form == "sets" and isinstance(value, dict) and value:
        leads = {key: to if isinstance(to, str) else _span(to) for key, to in value.items()}
        if None in leads.values():
            return None
        return "; ".join(f"{key}: {to}" for key, to in leads.items())
    if form == "conditions" and isinstance(value, list) and value:
        told = [_condition(one) for one in value]
        known = [part for part in told if part]
        return "; ".join(known) if len(known) == len(told) else None
    return None


def _span(value: Any) -> str | None:
    if (
        not isinstance(value, dict)
        or not set(value) <= {"from", "to", "unit", "raw"}
        or value.get("raw", True) is not True
    ):
        return None
    told = f"{value['from']} to {value['to']} {value['unit']}{' raw' if 'raw' in value else ''}"
    # A cell that begins with a minus sign is a formula to a spreadsheet.
    return f"from {told}" if told.startswith("-") else told


def _condition(value: Json) -> str | None:
    keys = set(value)
    if keys == {"parameter", "from", "to"}:
        return f"{value['parameter']} {value['from']}-{value['to']}"
    if keys == {"parameter", "any_of"} and len(value["any_of"]) > 1:
        return f"{value['parameter']} " + " or ".join(f"{r['from']}-{r['to']}" for r in value["any_of"])
    if keys == {"setting", "choices"}:
        return f"{value['setting']} = {', '.join(value['choices'])}"
    return None


def read(text: str, form: Form) -> Any:
    """What a cell says. Raises ValueError, with what would be right, for a cell that is not of its form."""
    told = text.strip()
    if form == "text":
        return told
    if form == "int":
        if re.fullmatch(r"-?\d{1,12}", told):
            return int(told)
        raise ValueError(f"{told!r} is no whole number")
    if form == "number":
        return _number(told)
    if form == "yes":
        if told.casefold() in ("yes", "y", "x", "true"):
            return True
        raise ValueError(f"{told!r}: write yes, or leave the cell blank")
    if form == "slots":
        if told == "none":
            return []
        return [_whole(part) for part in re.split(r"[,+;/\s]+", told) if part]
    if form == "list":
        parts = [part.strip() for part in told.split(",")]
        return [int(part) if re.fullmatch(r"\d+", part) else part for part in parts]
    if form == "path":
        return [part.strip() for part in told.split(" > ")]
    if form == "span":
        return read_span(told)
    if form == "length":
        found = _LENGTH.fullmatch(told)
        if not found:
            raise ValueError(f"{told!r} is no length: write such as 2 packets or 0.5 s")
        return {"packets" if found[2] == "packets" else "seconds": _number(found[1])}
    if form == "values":
        return {
            key.strip(): _whole(number.strip())
            for key, _, number in (part.partition("=") for part in told.split(","))
        }
    if form == "sets":
        return dict(_set(part) for part in told.split(";"))
    if form == "conditions":
        return [_read_condition(part.strip()) for part in told.split(";")]
    raise ValueError(f"no such form: {form}")


def _number(text: str) -> int | float:
    if not re.fullmatch(_NUM, text):
        raise ValueError(f"{text!r} is no number: write such as 12 or 12.5")
    return int(text) if re.fullmatch(r"-?\d+", text) else float(text)


def _whole(text: str) -> int:
    if not re.fullmatch(r"\d{1,12}", text):
        raise ValueError(f"{text!r} is no whole number")
    return int(text)


def read_span(text: str) -> Json:
    """A span such as `0 to 100 %`, `from -270 to 270 deg`, `2200 to 9000 K raw`; ° is deg."""
    found = _SPAN.fullmatch(" ".join(text.replace("−", "-").split()))
    unit = _UNITS.get(found[4], found[4]) or "1" if found else ""
    if not found or (found[2] and _UNITS.get(found[2], found[2]) != unit):
        raise ValueError(f"{text!r} is no span: write such as from -270 to 270 deg")
    made: Json = {"from": _number(found[1]), "to": _number(found[3]), "unit": unit}
    if found[5]:
        made["raw"] = True
    return made


def _set(part: str) -> tuple[str, Any]:
    key, mark, to = part.partition(":")
    if not mark or not to.strip():
        raise ValueError(f"{part.strip()!r}: write such as smoothing: off")
    to = to.strip()
    return key.strip(), to if re.fullmatch(_WORD, to) else read_span(to)


def _read_condition(part: str) -> Json:
    found = re.fullmatch(rf"({_WORD}) = (.+)", part)
    if found:
        return {"setting": found[1], "choices": [choice.strip() for choice in found[2].split(",")]}
    found = re.fullmatch(rf"({_WORD}) (\d+-\d+(?: or \d+-\d+)*)", part)
    if not found:
        raise ValueError(f"{part!r} is no condition: write such as dimmer 0-0, or color-mode = hue")
    ends = [tuple(map(int, pair.split("-"))) for pair in found[2].split(" or ")]
    if len(ends) == 1:
        return {"parameter": found[1], "from": ends[0][0], "to": ends[0][1]}
    return {"parameter": found[1], "any_of": [{"from": a, "to": b} for a, b in ends]}


def plain(text: str) -> bool:
    """Whether a text comes back from any spreadsheet just as it was put in."""
    return bool(
        text
        and text == text.strip()
        and len(text) <= MOST_LETTERS
        and text.isprintable()
        and text[0] not in "=+-@＝＋－＠'\ufeff"
        and not _ESCAPED.search(text)
    )


def more_cells(rest: Json) -> list[str]:
    """What has no column of its own, as compact JSON in as few cells as hold it."""
    if not rest:
        return []
    text = json.dumps(rest, ensure_ascii=True, separators=(",", ":")).replace("_x", "\\u005fx")
    return [text[at : at + MOST_LETTERS] for at in range(0, len(text), MOST_LETTERS)]


def cells_text(block: Json) -> str:
    """How a block of cells is counted: `8 x 3 from 2` is eight cells, three slots apart, the first at slot
    2.
    """
    return f"{block['count']} x {block['stride']} from {block['first']}"


def read_cells(text: str) -> Json:
    """The opposite of cells_text."""
    found = _CELLS.fullmatch(text.strip())
    if not found:
        raise ValueError(
            f"{text!r}: write such as 8 x 3 from 2 (eight cells, three slots apart, the first at slot 2)"
        )
    return {"count": int(found[1]), "stride": int(found[2]), "first": int(found[3])}
