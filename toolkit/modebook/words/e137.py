"""ANSI E1.37-1 (RDM dimmer message sets): the PIDs that this project knows."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from modebook.words.e120 import Pid

_TABLE: tuple[Pid, ...] = (
    Pid(0x0340, "DIMMER_INFO", "levels and number of curves supported"),
    Pid(0x0341, "MINIMUM_LEVEL", "lowest output level"),
    Pid(0x0342, "MAXIMUM_LEVEL", "highest output level"),
    Pid(0x0343, "CURVE", "dimmer curve in use and number of curves"),
    Pid(0x0344, "CURVE_DESCRIPTION", "text label of a curve"),
    Pid(0x0345, "OUTPUT_RESPONSE_TIME", "response setting in use and number of settings (one byte each)"),
    Pid(0x0346, "OUTPUT_RESPONSE_TIME_DESCRIPTION", "text label of a response setting"),
    Pid(
        0x0347,
        "MODULATION_FREQUENCY",
        "modulation (PWM) frequency setting in use and number of settings",
    ),
    Pid(0x0348, "MODULATION_FREQUENCY_DESCRIPTION", "frequency in Hz and text label"),
)

# From memory, as is what they are for.
_REMEMBERED: tuple[Pid, ...] = (
    Pid(0x0140, "DMX_BLOCK_ADDRESS", "start addresses of all sub-devices in one block", from_memory=True),
    Pid(0x0141, "DMX_FAIL_MODE", "what the fixture does when it hears nothing", from_memory=True),
    Pid(0x0142, "DMX_STARTUP_MODE", "what it does between power on and the first packet", from_memory=True),
    Pid(0x0640, "LOCK_PIN", "the code that the lock is changed with", from_memory=True),
    Pid(0x0641, "LOCK_STATE", "what is locked, and how many states there are", from_memory=True),
    Pid(0x0642, "LOCK_STATE_DESCRIPTION", "text label of a lock state", from_memory=True),
)

E137_PIDS: Mapping[int, Pid] = MappingProxyType({pid.number: pid for pid in (*_REMEMBERED, *_TABLE)})
"""By number. Those that are not `from_memory` stand in the table of dimmer message sets."""
