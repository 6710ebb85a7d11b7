"""E1.20's slot labels, slot types and ids, against numbers of the published tables.

Source: ANSI E1.20 (RDM), table C-2 (slot labels) and table C-1 (slot types), copied here so that a slip in
the package shows. PIDs and product categories: the packet dissector of Wireshark's `tshark`, which
is an outside source of its own (`tshark -G values`, fields rdm.pid and rdm.pd.product_cat).
"""

from __future__ import annotations

import shutil
import subprocess

import pytest

from modebook.words.e120 import (
    CATEGORY_IDS,
    E120_PIDS,
    PROTOTYPE_MANUFACTURERS,
    SD_UNDEFINED,
    SLOT_LABELS,
    SLOT_TYPES,
    ST_PRIMARY,
    ST_SEC_FINE,
)
from modebook.words.parameters import PARAMETERS

# ANSI E1.20, table C-2: id, name, family.
TABLE_C2 = (
    (0x0001, "SD_INTENSITY", "intensity"),
    (0x0002, "SD_INTENSITY_MASTER", "intensity"),
    (0x0101, "SD_PAN", "movement"),
    (0x0102, "SD_TILT", "movement"),
    (0x0201, "SD_COLOR_WHEEL", "color"),
    (0x0202, "SD_COLOR_SUB_CYAN", "color"),
    (0x0203, "SD_COLOR_SUB_YELLOW", "color"),
    (0x0204, "SD_COLOR_SUB_MAGENTA", "color"),
    (0x0205, "SD_COLOR_ADD_RED", "color"),
    (0x0206, "SD_COLOR_ADD_GREEN", "color"),
    (0x0207, "SD_COLOR_ADD_BLUE", "color"),
    (0x0208, "SD_COLOR_CORRECTION", "color"),
    (0x0209, "SD_COLOR_SCROLL", "color"),
    (0x020A, "SD_COLOR_ADD_LIME", "color"),
    (0x020B, "SD_COLOR_ADD_INDIGO", "color"),
    (0x020C, "SD_COLOR_ADD_CYAN", "color"),
    (0x020D, "SD_COLOR_ADD_DEEP_RED", "color"),
    (0x020E, "SD_COLOR_ADD_DEEP_BLUE", "color"),
    (0x020F, "SD_COLOR_ADD_NAT_WHITE", "color"),
    (0x0210, "SD_COLOR_SEMAPHORE", "color"),
    (0x0211, "SD_COLOR_ADD_AMBER", "color"),
    (0x0212, "SD_COLOR_ADD_WHITE", "color"),
    (0x0213, "SD_COLOR_ADD_WARM_WHITE", "color"),
    (0x0214, "SD_COLOR_ADD_COOL_WHITE", "color"),
    (0x0215, "SD_COLOR_SUB_UV", "color"),
    (0x0216, "SD_COLOR_HUE", "color"),
    (0x0217, "SD_COLOR_SATURATION", "color"),
    (0x0218, "SD_COLOR_ADD_UV", "color"),
    (0x0301, "SD_STATIC_GOBO_WHEEL", "image"),
    (0x0302, "SD_ROTO_GOBO_WHEEL", "image"),
    (0x0303, "SD_PRISM_WHEEL", "image"),
    (0x0304, "SD_EFFECTS_WHEEL", "image"),
    (0x0401, "SD_BEAM_SIZE_IRIS", "beam"),
    (0x0402, "SD_EDGE", "beam"),
    (0x0403, "SD_FROST", "beam"),
    (0x0404, "SD_STROBE", "beam"),
    (0x0405, "SD_ZOOM", "beam"),
    (0x0406, "SD_FRAMING_SHUTTER", "beam"),
    (0x0407, "SD_SHUTTER_ROTATE", "beam"),
    (0x0408, "SD_DOUSER", "beam"),
    (0x0409, "SD_BARN_DOOR", "beam"),
    (0x0501, "SD_LAMP_CONTROL", "control"),
    (0x0502, "SD_FIXTURE_CONTROL", "control"),
    (0x0503, "SD_FIXTURE_SPEED", "control"),
    (0x0504, "SD_MACRO", "control"),
    (0x0505, "SD_POWER_CONTROL", "control"),
    (0x0506, "SD_FAN_CONTROL", "control"),
    (0x0507, "SD_HEATER_CONTROL", "control"),
    (0x0508, "SD_FOUNTAIN_CONTROL", "control"),
    (0xFFFF, "SD_UNDEFINED", "control"),
)

# ANSI E1.20, table C-1: id, name.
TABLE_C1 = (
    (0x00, "ST_PRIMARY"),
    (0x01, "ST_SEC_FINE"),
    (0x02, "ST_SEC_TIMING"),
    (0x03, "ST_SEC_SPEED"),
    (0x04, "ST_SEC_CONTROL"),
    (0x05, "ST_SEC_INDEX"),
    (0x06, "ST_SEC_ROTATION"),
    (0x07, "ST_SEC_INDEX_ROTATE"),
    (0xFF, "ST_SEC_UNDEFINED"),
)

# Common practice, no source beyond the standard's names: which label a plain word of the trade carries.
LABEL_OF_WORD = (
    ("dimmer", "SD_INTENSITY"),
    ("pan", "SD_PAN"),
    ("tilt", "SD_TILT"),
    ("red", "SD_COLOR_ADD_RED"),
    ("green", "SD_COLOR_ADD_GREEN"),
    ("blue", "SD_COLOR_ADD_BLUE"),
    ("white", "SD_COLOR_ADD_WHITE"),
    ("amber", "SD_COLOR_ADD_AMBER"),
    ("lime", "SD_COLOR_ADD_LIME"),
    ("uv", "SD_COLOR_ADD_UV"),
    ("warm-white", "SD_COLOR_ADD_WARM_WHITE"),
    ("cool-white", "SD_COLOR_ADD_COOL_WHITE"),
    ("natural-white", "SD_COLOR_ADD_NAT_WHITE"),
    ("cyan", "SD_COLOR_SUB_CYAN"),
    ("magenta", "SD_COLOR_SUB_MAGENTA"),
    ("yellow", "SD_COLOR_SUB_YELLOW"),
    ("cyan-emitter", "SD_COLOR_ADD_CYAN"),
    ("hue", "SD_COLOR_HUE"),
    ("saturation", "SD_COLOR_SATURATION"),
    ("cie-x", "SD_UNDEFINED"),
    ("cie-y", "SD_UNDEFINED"),
    ("color-temperature", "SD_UNDEFINED"),
    ("tint", "SD_UNDEFINED"),
    ("color-wheel", "SD_COLOR_WHEEL"),
    ("gobo-wheel", "SD_STATIC_GOBO_WHEEL"),
    ("rotating-gobo-wheel", "SD_ROTO_GOBO_WHEEL"),
    ("prism", "SD_PRISM_WHEEL"),
    ("zoom", "SD_ZOOM"),
    ("focus", "SD_EDGE"),
    ("iris", "SD_BEAM_SIZE_IRIS"),
    ("frost", "SD_FROST"),
    ("strobe", "SD_STROBE"),
    ("shutter", "SD_STROBE"),
    ("blade-position", "SD_FRAMING_SHUTTER"),
    ("framing-rotation", "SD_SHUTTER_ROTATE"),
    ("control", "SD_FIXTURE_CONTROL"),
    ("macro", "SD_MACRO"),
    ("fan", "SD_FAN_CONTROL"),
)


def test_the_slot_labels_are_those_of_table_c2() -> None:
    """Ids, names and families of all labels, no more and no fewer."""
    assert tuple((row.number, row.name, row.family) for row in SLOT_LABELS.values()) == TABLE_C2


def test_the_slot_types_are_those_of_table_c1() -> None:
    """Ids and names of all slot types, no more and no fewer."""
    assert tuple((row.number, row.name) for row in SLOT_TYPES.values()) == TABLE_C1


def test_the_named_numbers_are_those_of_the_tables() -> None:
    """What code refers to by name has the number of the published table; prototypes end at 0x7FFF."""
    assert (ST_PRIMARY, ST_SEC_FINE, SD_UNDEFINED) == (0x00, 0x01, 0xFFFF)
    assert (min(PROTOTYPE_MANUFACTURERS), max(PROTOTYPE_MANUFACTURERS)) == (0x7FF0, 0x7FFF)


@pytest.mark.parametrize(("word", "label"), LABEL_OF_WORD, ids=[word for word, _ in LABEL_OF_WORD])
def test_a_plain_word_carries_the_standards_label(word: str, label: str) -> None:
    """The label id of a parameter, looked up in the copied table by the label's name."""
    number = {name: number for number, name, _ in TABLE_C2}[label]
    assert PARAMETERS[word].slot_label == number


def _dissector_values(field: str) -> dict[int, str]:
    """Number to name of one field of the dissector; skips aloud where there is no dissector."""
    if shutil.which("tshark") is None:
        pytest.skip(f"tshark is not installed, so {field} was NOT compared: apt-get install tshark")
    done = subprocess.run(["tshark", "-G", "values"], capture_output=True, check=True)
    rows = (line.split("\t") for line in done.stdout.decode("utf-8", "replace").splitlines())
    values = {int(row[2]): row[3] for row in rows if row[:2] == ["V", field]}
    assert values, f"tshark knows no field {field}"
    return values


def test_the_e120_pids_are_those_of_the_dissector() -> None:
    """Every PID has the dissector's number and name (which writes words where the standard writes _)."""
    known = _dissector_values("rdm.pid")
    ours = {pid.number: pid.name for pid in E120_PIDS.values()}
    assert all(number < 0x8000 for number in ours)
    assert ours == {number: known.get(number, "?").upper().replace(" ", "_") for number in ours}


# Where the dissector abbreviates: our word, and what the dissector writes.
SPELLED_OUT = {"cold cathode": "coldcathode", "low voltage": "elv", "non-dim": "nondim"}


def test_the_product_categories_are_those_of_the_dissector() -> None:
    """Table A-5's ids, no more and no fewer; and each word of ours begins a word of the dissector's name."""
    known = _dissector_values("rdm.pd.product_cat")
    assert sorted(CATEGORY_IDS.values()) == sorted(known)
    for words, number in CATEGORY_IDS.items():
        plain = words.lower()
        for ours, theirs in SPELLED_OUT.items():
            plain = plain.replace(ours, theirs)
        printed = known[number].lower().split()
        for word in plain.split():
            assert any(p.startswith(word[:4]) for p in printed), f"{words}: {known[number]}"


# From memory, ANSI E1.20 table A-5, for machines without the dissector.
@pytest.mark.parametrize(
    ("word", "number"),
    [
        ("fixed", 0x0101),
        ("moving yoke", 0x0102),
        ("moving mirror", 0x0103),
        ("atmospheric", 0x0400),
        ("pyrotechnic", 0x0402),
        ("dimmer", 0x0500),
        ("scenic drive", 0x0701),
        ("other", 0x7FFF),
    ],
)
def test_a_category_in_words_has_the_id_of_table_a5(word: str, number: int) -> None:
    """The words stand for the right ids, not only for the right set of ids."""
    assert CATEGORY_IDS[word] == number
