"""Text as a page may show it: signs that would turn the line around, or show nothing, are spelled out."""

from __future__ import annotations

import re

_OBEYED = re.compile(
    "[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u2069\ufeff]"
)
"""Controls (ECMA-48), the bidirectional controls (Unicode UAX 9), zero-width signs; not tab or line ends."""


def shown(text: str) -> str:
    """The text with every such sign as an escape, ``\\u202e``, as terminal output has it too."""
    if text.isprintable():
        return text
    return _OBEYED.sub(lambda found: f"\\u{ord(found[0]):04x}", text)
