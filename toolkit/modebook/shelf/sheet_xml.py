"""Streams the XML inside an XLSX or ODS to a handler, names without their prefixes."""

from __future__ import annotations

import re
import zipfile
from xml.parsers import expat

from modebook.shelf.errors import ShelfError

CHUNK = 1 << 16
_REFERENCE = re.compile(r"([A-Z]{1,3})([0-9]{1,7})")


class Handler:
    """What is listened to in a stream of XML."""

    def start(self, name: str, attributes: dict[str, str]) -> None:
        """An element begins."""

    def end(self, name: str) -> None:
        """An element ends."""

    def text(self, data: str) -> None:
        """Text between two tags."""


def parse(archive: zipfile.ZipFile, name: str, path: str, handler: Handler) -> None:
    """Feed a member to a handler. ShelfError where it declares a document type."""
    parser = expat.ParserCreate()
    parser.buffer_text = True

    def refuse(*_: object) -> None:
        raise ShelfError(
            path, f"{name} declares a document type, which no sheet does", remedy="save it as CSV"
        )

    parser.StartDoctypeDeclHandler = refuse
    parser.StartElementHandler = lambda tag, attributes: handler.start(
        tag.rpartition(":")[2], {key.rpartition(":")[2]: value for key, value in attributes.items()}
    )
    parser.EndElementHandler = lambda tag: handler.end(tag.rpartition(":")[2])
    parser.CharacterDataHandler = handler.text
    with archive.open(name) as stream:
        while chunk := stream.read(CHUNK):
            parser.Parse(chunk, False)
    parser.Parse(b"", True)


def cell_place(reference: str) -> tuple[int, int] | None:
    """Row and column, from 0, of a reference such as ``B7``; None for anything else."""
    place = _REFERENCE.fullmatch(reference)
    if not place:
        return None
    column = 0
    for letter in place[1]:
        column = column * 26 + ord(letter) - 64
    return int(place[2]) - 1, column - 1
