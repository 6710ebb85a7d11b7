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
    except ValueError as error:
        raise ShelfError(path, str(error), remedy="name a file that can be read") from error
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
        raise DocumentError(path, _faults(error, content, model)) from error
    if not _surely_no_duplicates(content):
        doubled = duplicate_keys(content)
        if doubled:
            raise DocumentError(path, doubled)
    return document


def _surely_no_duplicates(content: bytes) -> bool:
    return data_without_doubles(content) is not None


def data_without_doubles(content: bytes) -> Any:
    """A JSON text as data, where a count of quotation marks rules out duplicate keys; None where it does not.

    A parser keeps one of two equal keys, so what is written again from what it read has at least two
    quotation marks less. All others come back one for one, unless one is spelled as a number (``\\u0022``).
    """
    if b"\\u" in content:
        return None
    import orjson

    try:
        data = orjson.loads(content)
        return data if content.count(b'"') == orjson.dumps(data).count(b'"') else None
    except (orjson.JSONDecodeError, orjson.JSONEncodeError):
        return None


def duplicate_keys(content: bytes) -> list[DocumentFault]:
    """The keys that stand twice in one object of a JSON text that is otherwise in order, by their place."""
    from modebook.shelf.lines import repeated_keys

    doubled = False

    def look(pairs: list[tuple[str, Any]]) -> None:
        nonlocal doubled
        doubled = doubled or len({key for key, _ in pairs}) < len(pairs)

    json.loads(content, object_pairs_hook=look)
    if not doubled:
        return []
    return [
        DocumentFault(
            pointer,
            f"the key {key!r} stands twice in one object, in lines {first} and {again}"
            if first != again
            else f"the key {key!r} stands twice in one object, in line {first}",
            "keep one of the two",
        )
        for pointer, key, first, again in repeated_keys(content)[:MOST_FAULTS]
    ]


def _faults(error: ValidationError, content: bytes, model: type[Part]) -> list[DocumentFault]:
    from modebook.shelf.faults import form_faults, syntax_fault

    details = error.errors(include_url=False)
    if details[0]["type"] == "json_invalid":
        return [DocumentFault("", *syntax_fault(details[0], content))]
    told = [DocumentFault(*fault) for fault in form_faults(details[:MOST_FAULTS], json.loads(content), model)]
    return list(dict.fromkeys(told)) + duplicate_keys(content)
