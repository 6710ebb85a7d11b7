"""The one written form of a document: keys in the models' order, short pieces on one line."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any, TypeVar

from modebook.documents.base import Part
from modebook.shelf.reading import parse

WIDTH = 160
"""A piece that fits into so many columns stands on one line."""

_encode = json.JSONEncoder(ensure_ascii=False).encode
"""As json.dumps does, which would make an encoder for every piece."""

Document = TypeVar("Document", bound=Part)


def canonical(document: Part) -> bytes:
    """The document as it stands in a file: UTF-8, two spaces a level, a line break at the end.

    What was not written is not written (defaults are not added); whole numbers lose their ``.0``. A list or
    object stands on one line if it fits and is not the document itself, else one piece a line: so a range or
    a parameter is one line of a diff.
    """
    return (_form(as_written(document), 0, WIDTH, WIDTH) + "\n").encode()


def as_written(document: Part) -> Any:
    """The document as plain lists and dictionaries, keys as in the file, in the models' order."""
    return _plain(document.model_dump(mode="json", by_alias=True, exclude_unset=True))


def is_canonical(content: bytes, document: Part) -> bool:
    """Whether a file's bytes are the written form of the document that was read from them."""
    return canonical(document) == content


def canonical_bytes(content: bytes, model: type[Document], path: Path | str) -> bytes:
    """The canonical form of a document's bytes; DocumentError where they are not such a document."""
    return canonical(parse(content, model, path))


def _plain(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _plain(item) for key, item in value.items()}
    if isinstance(value, list):
        return [_plain(item) for item in value]
    if isinstance(value, float) and value.is_integer() and abs(value) < 1e15:
        return int(value)
    return value


def form(value: Any, width: int = WIDTH) -> str:
    """Plain data as text in the same shape: a piece that fits into `width` columns stands on one line."""
    return _form(value, 0, 0, width)


def _form(value: Any, indent: int, taken: int, width: int) -> str:
    """JSON of a value that begins in column `taken` of a line indented by `indent`."""
    line = _encode(value)
    if not isinstance(value, dict | list) or not value or taken + len(line) <= width:
        return line
    inner = indent + 2
    pad = " " * inner
    if isinstance(value, dict):
        pieces = []
        for key, item in value.items():
            name = _encode(key) + ": "
            pieces.append(pad + name + _form(item, inner, inner + len(name) + 1, width))
        return "{\n" + ",\n".join(pieces) + "\n" + " " * indent + "}"
    pieces = [pad + _form(item, inner, inner + 1, width) for item in value]
    return "[\n" + ",\n".join(pieces) + "\n" + " " * indent + "]"
