"""JSON pointers followed through a document's models."""

from __future__ import annotations

from pydantic import BaseModel


def points_at_something(document: BaseModel, pointer: str) -> bool:
    """Whether a JSON pointer (RFC 6901) leads to something in a document; what is absent is nothing."""
    here: object = document
    for token in pointer.split("/")[1:]:
        key = token.replace("~1", "/").replace("~0", "~")
        if isinstance(here, BaseModel):
            fields = type(here).model_fields
            name = next((n for n, field in fields.items() if (field.alias or n) == key), None)
            here = None if name is None else getattr(here, name)
        elif isinstance(here, list):
            here = here[int(key)] if key.isascii() and key.isdigit() and int(key) < len(here) else None
        elif isinstance(here, dict):
            here = here.get(key)
        else:
            here = None
        if here is None:
            return False
    return True
