"""A setting with three choices, and slots and ways that lead to them."""

from __future__ import annotations

from typing import Any

CHOICES: list[dict[str, Any]] = [
    {"key": "off", "label": "Off", "length": {"packets": 0}},
    {"key": "short", "label": "Short", "length": {"packets": 2}, "factory": True},
    {"key": "long", "label": "Long", "length": {"packets": 8}},
]
CONTROL: dict[str, Any] = {
    "parameter": "control",
    "slots": [3],
    "default": 0,
    "ranges": [
        {"from": 0, "to": 9, "meaning": "No function", "does": "nothing"},
        {
            "from": 10, "to": 14, "meaning": "Off", "sets": {"smoothing": "off"}, "hold_s": 3,
            "kept": "until power off",
        },
        {
            "from": 15, "to": 19, "meaning": "Short", "sets": {"smoothing": "short"}, "hold_s": 3,
            "kept": "until power off", "needs": [{"parameter": "dimmer", "from": 0, "to": 0}],
        },
        {"from": 20, "to": 24, "meaning": "Reset", "hazard": "reset", "hold_s": 5},
        {
            "from": 25, "to": 29, "meaning": "Long", "sets": {"smoothing": "long"}, "hold_s": 3,
            "kept": "until power off",
        },
    ],
}  # fmt: skip
DIMMER = {"parameter": "dimmer", "slots": [1, 2]}
WHILE_SENT: dict[str, Any] = {
    "parameter": "smoothing",
    "slots": [3],
    "ranges": [
        {"from": 0, "to": 99, "meaning": "Off", "sets": {"smoothing": "off"}, "kept": "while sent"},
        {"from": 100, "to": 199, "meaning": "As the menu", "does": "as-menu"},
        {"from": 200, "to": 255, "meaning": "Long", "sets": {"smoothing": "long"}, "kept": "while sent"},
    ],
}
RDM = {
    "by": "rdm",
    "pid": "0x8001",
    "size": 2,
    "values": {"off": 0, "short": 2, "long": 300},
    "kept": "stored",
}
MENU = {"by": "menu", "path": ["Setup", "Response"], "kept": "stored"}
