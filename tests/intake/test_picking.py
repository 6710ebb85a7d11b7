"""A document cut down to some modes, or to one firmware: pointers of what stays still lead to it."""

from __future__ import annotations

from pathlib import Path

import pytest

from modebook.intake.compare import compare_firmware
from modebook.intake.errors import PickError
from modebook.intake.picking import modes_named, of_firmware, one_mode, with_modes
from modebook.shelf.reading import read_fixture

FIXTURES = Path(__file__).parents[2] / "catalog" / "fixtures"
GLAWM = read_fixture(FIXTURES / "zandroveil" / "glawm-200.json")


def test_a_mode_goes_by_name_and_by_number() -> None:
    """Letter case and spaces do not count."""
    assert modes_named(GLAWM, "xy16") == modes_named(GLAWM, "3") == [2]
    assert one_mode(GLAWM, "everything") == 7
    with pytest.raises(PickError, match="XY 16"):
        one_mode(GLAWM, "XY 61")


def test_one_number_may_be_two_modes() -> None:
    """Where a menu state decides, both are meant, and one alone must be named."""
    sheetle = read_fixture(FIXTURES / "zandroveil" / "sheetle-44.json")
    numbers = [mode.number for mode in sheetle.modes]
    twice = next(number for number in numbers if numbers.count(number) == 2)
    assert len(modes_named(sheetle, str(twice))) == 2
    with pytest.raises(PickError, match="tell them apart"):
        one_mode(sheetle, str(twice))


def test_doubts_follow_the_modes_that_stay() -> None:
    """Those about other modes are left out, those about the whole stay."""
    data = GLAWM.model_copy(
        update={
            "doubts": [
                GLAWM_DOUBT.model_copy(update={"pointer": pointer})
                for pointer in ("/modes/2/parameters/0", "/modes/1", "/settings/0")
            ]
        }
    )
    cut = with_modes(data, [2])
    assert [mode.name for mode in cut.modes] == ["XY 16"]
    assert [doubt.pointer for doubt in cut.doubts] == ["/modes/0/parameters/0", "/settings/0"]


def test_a_firmware_has_the_modes_of_its_sources() -> None:
    """Firmware 3.0 is what guide 3 describes: one mode."""
    cut = of_firmware(GLAWM, "3.0")
    assert [mode.name for mode in cut.fixture.modes] == ["Everything"]
    assert cut.pointer("/modes/0/footprint") == "/modes/7/footprint"
    with pytest.raises(PickError, match=r"2\.1, 3\.0"):
        of_firmware(GLAWM, "9")


def test_pointers_between_firmwares_lead_into_the_whole_documents() -> None:
    """The mode that only 3.0 has is mode 8 of the document."""
    found = compare_firmware(GLAWM, "2.1", GLAWM, "3.0")
    assert {"pointer": "/modes/7", "a": None, "b": "Everything"} in found
    assert {"pointer": "/modes/0", "a": "CCT 8", "b": None} in found


GLAWM_DOUBT = read_fixture(FIXTURES / "pelluwick" / "torvane-12.json").doubts[0]
