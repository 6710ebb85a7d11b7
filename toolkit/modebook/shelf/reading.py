"""Reads documents from disk: size, encoding, duplicate keys, then the model; every fault with its pointer."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

from modebook.documents.base import Part
from modebook.documents.fixture import Fixture
from modebook.shelf.errors import ShelfError, reason_of

if TYPE_CHECKING:
    from pydantic import ValidationError
    from pydantic_core import ErrorDetails

LARGEST_BYTES = 8_000_000
"""A document of this size would be a thousand times a usual one."""

MOST_FAULTS = 20
"""Faults told of one document: past that, the first ones are the cause."""

Document = TypeVar("Document", bound=Part)


@dataclass(frozen=True, slots=True)
class DocumentFault:
    """One thing wrong with a document's form."""

    pointer: str
    message: str
    remedy: str = ""


class DocumentError(ShelfError):
    """A document that cannot be taken in, with all that is wrong with it."""

    def __init__(self, file: object, faults: list[DocumentFault]) -> None:
        self.faults = faults
        first = faults[0]
        more = f" (and {len(faults) - 1} more)" if len(faults) > 1 else ""
        super().__init__(file, first.message + more, place=first.pointer, remedy=first.remedy)


def read_bytes(path: Path | str, largest: int = LARGEST_BYTES) -> bytes:
    """A file's bytes. Raises ShelfError where it is missing, unreadable, or larger than `largest` bytes."""
    try:
        with open(path, "rb") as file:  # noqa: PTH123 - twice as fast as Path.read_bytes over a whole catalog
            content = file.read(largest + 1)
    except OSError as error:
        raise ShelfError(path, reason_of(error), remedy="name a file that can be read") from error
    if len(content) > largest:
        raise ShelfError(
            path,
            f"larger than {largest / 1e6:.0f} MB",
            remedy="no fixture document is: is this the right file?",
        )
    return content


def read_fixture(path: Path | str) -> Fixture:
    """The fixture document in a file. Raises ShelfError (or its DocumentError) with what is wrong."""
    return parse(read_bytes(path), Fixture, path)


def read_document(path: Path | str, model: type[Document], largest: int = LARGEST_BYTES) -> Document:
    """A document of any model in a file, under the same rules as a fixture's."""
    return parse(read_bytes(path, largest), model, path)


def parse(content: bytes, model: type[Document], path: Path | str) -> Document:
    """A document out of bytes. Raises DocumentError with every fault found."""
    from pydantic import ValidationError

    try:
        document = model.model_validate_json(content, by_alias=True, by_name=False)
    except ValidationError as error:
        raise DocumentError(path, _faults(error, content)) from error
    if model is Fixture and _colons_tell_no_duplicates(content, document):
        return document
    doubled = duplicate_keys(content)
    if doubled:
        raise DocumentError(path, doubled)
    return document


def _colons_tell_no_duplicates(content: bytes, document: Part) -> bool:
    """Whether a count of bytes already rules out duplicate keys (the parser silently keeps the last).

    Every key is written as `"key":` or with white space before the colon. With no such space, there are at
    most as many keys as there are `":` in the text; as many as the model took in means that none was lost.
    """
    if b" :" in content or b"\n:" in content or b"\t:" in content or b"\r:" in content:
        return False
    return content.count(b'":') == _count_keys(document)


def _count_keys(part: Any) -> int:
    # Reads the instance dictionary directly: this runs for every piece of every document.
    total = len(part.__pydantic_fields_set__)
    fields = part.__dict__
    for name in part.__pydantic_fields_set__:
        value = fields[name]
        kind = type(value)
        if kind is list:
            for item in value:
                if isinstance(item, Part):
                    total += _count_keys(item)
        elif kind is dict:
            total += len(value)
            for item in value.values():
                if isinstance(item, Part):
                    total += _count_keys(item)
        elif isinstance(value, Part):
            total += _count_keys(value)
    return total


def duplicate_keys(content: bytes) -> list[DocumentFault]:
    """The keys that stand twice in one object of a JSON text that is otherwise in order."""
    found: list[DocumentFault] = []

    def look(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
        result = dict(pairs)
        if len(result) < len(pairs):
            keys = [key for key, _ in pairs]
            twice = sorted({key for key in keys if keys.count(key) > 1})
            name = result.get("name") or result.get("key") or result.get("label")
            near = f" in the object {name!r}" if isinstance(name, str) else ""
            found.extend(
                DocumentFault("", f"the key {key!r} stands twice{near}", "keep one of the two")
                for key in twice
            )
        return result

    json.loads(content, object_pairs_hook=look)
    return found[:MOST_FAULTS]


def _faults(error: ValidationError, content: bytes) -> list[DocumentFault]:
    details = error.errors(include_url=False, include_context=True)
    first = details[0]
    if first["type"] == "json_invalid":
        return [_syntax_fault(first, content)]
    return [_fault(detail) for detail in details[:MOST_FAULTS]]


def _syntax_fault(detail: ErrorDetails, content: bytes) -> DocumentFault:
    try:
        content.decode()
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        return DocumentFault(
            "", f"byte {error.start} (line {line}) is not UTF-8", "save the file in UTF-8 and try again"
        )
    why = str(detail.get("ctx", {}).get("error", detail["msg"]))
    if content.startswith(b"\xef\xbb\xbf"):
        return DocumentFault("", "a byte order mark stands before the first bracket", "save it without one")
    if "recursion" in why:
        return DocumentFault("", "brackets are nested too deeply", "no document needs more than a few levels")
    if not content.strip():
        return DocumentFault("", "the file is empty", "start from one of the catalog's documents")
    return DocumentFault("", f"not JSON: {why}", "look at that line for a comma, quote or bracket")


def _fault(detail: ErrorDetails) -> DocumentFault:
    place = [str(step) for step in detail["loc"] if step not in ("one", "several", "[key]")]
    pointer = "".join("/" + step.replace("~", "~0").replace("/", "~1") for step in place)
    kind = detail["type"]
    name = place[-1] if place else "the document"
    if kind == "extra_forbidden":
        return DocumentFault(pointer, f"the key {name!r} is unknown here", _nearest(name))
    if kind == "missing":
        return DocumentFault(pointer, f"the key {name!r} is missing", f"add {name!r}")
    shown = json.dumps(detail["input"], default=str, ensure_ascii=False)
    shown = shown if len(shown) <= 60 else shown[:57] + "..."
    if kind == "literal_error":
        expected = detail.get("ctx", {}).get("expected", "")
        return DocumentFault(
            pointer, f"{shown} is not a word that is known here", _word(detail["input"], expected)
        )
    message = detail["msg"].removeprefix("Value error, ")
    return DocumentFault(
        pointer, f"{shown}: {message[:1].lower()}{message[1:]}" if kind != "value_error" else message
    )


def _nearest(name: str) -> str:
    from rapidfuzz import fuzz, process

    near = process.extractOne(name, sorted(_all_keys()), scorer=fuzz.ratio, score_cutoff=70)
    return f"is {near[0]!r} meant?" if near else "take it out"


def _word(found: object, expected: str) -> str:
    from rapidfuzz import fuzz, process

    words = [word.strip(" '\"") for word in expected.replace(" or ", ", ").split(", ")]
    near = process.extract(str(found), words, scorer=fuzz.ratio, limit=3, score_cutoff=50)
    if near:
        return "is " + " or ".join(repr(word) for word, _, _ in near) + " meant?"
    return f"one of {expected}" if len(expected) < 200 else "see the schema for the words that are"


def _all_keys() -> set[str]:
    found: set[str] = set()
    waiting: list[type[Part]] = [Part]
    while waiting:
        model = waiting.pop()
        waiting.extend(model.__subclasses__())
        found.update(field.alias or name for name, field in model.model_fields.items())
    return found
