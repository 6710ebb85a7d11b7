"""E1.37-1's PIDs, against numbers of the published table and against a packet dissector.

Source: ANSI E1.37-1, dimmer message sets, copied here; and the packet dissector of Wireshark's
`tshark` (`tshark -G values`, field rdm.pid), for PIDs below 0x8000: from there on they are makers' own.
"""

from __future__ import annotations

import shutil
import subprocess

import pytest

from modebook.words.e137 import E137_PIDS

# ANSI E1.37-1, dimmer message sets: PID, name.
TABLE = (
    (0x0340, "DIMMER_INFO"),
    (0x0341, "MINIMUM_LEVEL"),
    (0x0342, "MAXIMUM_LEVEL"),
    (0x0343, "CURVE"),
    (0x0344, "CURVE_DESCRIPTION"),
    (0x0345, "OUTPUT_RESPONSE_TIME"),
    (0x0346, "OUTPUT_RESPONSE_TIME_DESCRIPTION"),
    (0x0347, "MODULATION_FREQUENCY"),
    (0x0348, "MODULATION_FREQUENCY_DESCRIPTION"),
)

# From memory: the start, loss and lock messages of the same standard.
REMEMBERED = (
    (0x0140, "DMX_BLOCK_ADDRESS"),
    (0x0141, "DMX_FAIL_MODE"),
    (0x0142, "DMX_STARTUP_MODE"),
    (0x0640, "LOCK_PIN"),
    (0x0641, "LOCK_STATE"),
    (0x0642, "LOCK_STATE_DESCRIPTION"),
)


def test_the_dimmer_pids_are_those_of_the_table() -> None:
    """Numbers and names of all dimmer messages; none of them is marked as remembered."""
    ours = tuple((pid.number, pid.name) for pid in E137_PIDS.values() if not pid.from_memory)
    assert ours == TABLE


def test_the_remembered_pids_are_marked_so() -> None:
    """What was not read from the table says that it was not."""
    ours = tuple((pid.number, pid.name) for pid in E137_PIDS.values() if pid.from_memory)
    assert ours == REMEMBERED


def test_the_pids_are_those_of_the_dissector() -> None:
    """The dissector gives every number below 0x8000 the same name (in words, where the standard writes _)."""
    if shutil.which("tshark") is None:
        pytest.skip("tshark is not installed, so the PIDs were NOT compared: apt-get install tshark")
    done = subprocess.run(["tshark", "-G", "values"], capture_output=True, check=True)
    rows = (line.split("\t") for line in done.stdout.decode("utf-8", "replace").splitlines())
    known = {int(row[2]): row[3] for row in rows if row[:2] == ["V", "rdm.pid"] and int(row[2]) < 0x8000}
    assert known, "tshark knows no field rdm.pid"
    ours = {pid.number: pid.name for pid in E137_PIDS.values()}
    assert ours == {number: known.get(number, "?").upper().replace(" ", "_") for number in ours}
