"""The demonstration rigs: their patches read plainly, and their planted faults counted by brute force."""

from __future__ import annotations

import csv
import json
import math
from collections import Counter, defaultdict
from pathlib import Path

import pytest

from modebook.documents.fixture import Fixture
from modebook.documents.layout import blocks
from modebook.documents.rig import Rig
from modebook.rig.audit import audit
from modebook.rig.fixtures import CatalogFixtures
from modebook.rig.patch_reading import read_patch
from modebook.rig.reading import RigReading, policy_of
from modebook.shelf.catalog import Catalog

CATALOG = Path(__file__).parents[2] / "catalog"
PIER = CATALOG / "rigs" / "ossilby-pier"
KITCHEN = CATALOG / "rigs" / "ossilby-kitchen"

Row = dict[str, str]


def fixtures() -> dict[str, Fixture]:
    """Every fixture by its model, and by maker and model."""
    found: dict[str, Fixture] = {}
    for path in (CATALOG / "fixtures").glob("*/*.json"):
        fixture = Fixture.model_validate_json(path.read_bytes())
        found[fixture.model] = found[f"{fixture.maker} {fixture.model}"] = fixture
    return found


def rows_of(folder: Path) -> list[Row]:
    """The rows under one set of titles, whatever the sheet calls them."""
    names = {"#": "Unit", "Type": "Fixture", "Personality": "Mode", "Location": "Position", "Use": "Purpose"}
    with (folder / "patch.csv").open(encoding="utf-8", newline="") as file:
        rows = [
            {names.get(title, title): cell for title, cell in row.items()} for row in csv.DictReader(file)
        ]
    for row in rows:
        if "Addr" not in row:
            row["Addr"] = f"{row['Universe']}/{row['Address']}"
    return rows


def footprint(row: Row, known: dict[str, Fixture]) -> int | None:
    """The slots behind a row's start address; None where fixture or mode is not known."""
    fixture = known.get(row["Fixture"])
    mode = next((m for m in fixture.modes if m.name == row["Mode"]), None) if fixture else None
    if mode is None:
        return None
    return next(b.footprint for b in blocks(mode) if (b.key or "") == row.get("Part", ""))


def faults_by_brute_force(folder: Path) -> Counter[tuple[str, str]]:
    """The faults of a patch's rows, slot by slot, as (rule, unit)."""
    known = fixtures()
    found: Counter[tuple[str, str]] = Counter()
    held: dict[tuple[int, int], list[tuple[Row, str]]] = defaultdict(list)
    seen: set[tuple[str, str]] = set()
    for row in rows_of(folder):
        unit = row["Unit"]
        throw = row.get("Throw (m)", row.get("Throw", ""))
        universe, address = (int(number) for number in row["Addr"].split("/"))
        if not throw.replace(".", "", 1).isdigit() or not 1 <= address <= 512:
            found["bad-row", unit] += 1
        if (unit, row.get("Part", "")) in seen:
            found["duplicate-unit", unit] += 1
        seen.add((unit, row.get("Part", "")))
        if row["Fixture"] not in known:
            found["unknown-fixture", unit] += 1
            continue
        count = footprint(row, known)
        if count is None:
            found["unknown-mode", unit] += 1
            continue
        if not 1 <= address <= 512:
            continue
        if address + count - 1 > 512:
            found["past-universe-end", unit] += 1
        others: set[str] = set()
        for slot in range(address, min(address + count, 513)):
            for other, at in held[universe, slot]:
                same = (other["Fixture"], other["Mode"], at) == (row["Fixture"], row["Mode"], row["Addr"])
                others.add(f"{'address-shared' if same else 'address-overlap'} {other['Unit']}")
            held[universe, slot].append((row, row["Addr"]))
        for other_told in others:
            found[other_told.split()[0], unit] += 1
    return found


PATCH_RULES = {
    *("address-overlap", "address-shared", "past-universe-end", "unknown-fixture", "unknown-mode"),
    *("duplicate-unit", "bad-row"),
}


RIG_RULES = {"mode-mixed", "rdm-blocked", "control-slot-missing", "smoothing-mixed"}
"""The rules about units together, or a unit and its universe: each has its own count by hand below."""


def planted(folder: Path) -> Counter[tuple[str, str]]:
    rig = Rig.model_validate_json((folder / "rig.json").read_bytes())
    return Counter((fault.rule, fault.unit) for fault in rig.planted)


def test_the_pier_has_at_least_84_units_over_5_universes() -> None:
    """The big rig is as big as it is said to be; its units have positions, purposes and groups."""
    rows = rows_of(PIER)
    assert len({row["Unit"] for row in rows}) >= 84
    assert {row["Addr"].split("/")[0] for row in rows} == {"1", "2", "3", "4", "5"}
    assert all(row["Position"] and row["Purpose"] and row["Group"] for row in rows)
    assert {row["Reach"] for row in rows} == {"floor", "ladder", "lift", "not at all"}


def test_the_faults_of_the_pier_are_the_planted_ones() -> None:
    """Slot by slot: overlaps, twins, rows past the end, names that do not exist, doubled units, bad rows."""
    wanted = Counter({key: n for key, n in planted(PIER).items() if key[0] in PATCH_RULES})
    assert faults_by_brute_force(PIER) == wanted
    assert {rule for rule, _ in wanted} == PATCH_RULES


def test_the_kitchen_has_no_faults() -> None:
    """The small rig is clean: 24 rows, 2 universes."""
    rows = rows_of(KITCHEN)
    assert len(rows) == 24
    assert {row["Universe"] for row in rows} == {"1", "2"}
    assert faults_by_brute_force(KITCHEN) == Counter()
    assert planted(KITCHEN) == Counter()


def test_planted_findings_of_a_rig_name_its_units() -> None:
    """Each planted fault is about a unit of the patch and says what it is about."""
    units = {row["Unit"] for row in rows_of(PIER)}
    rig = Rig.model_validate_json((PIER / "rig.json").read_bytes())
    assert {fault.unit for fault in rig.planted} <= units
    assert set(rig.units) <= units
    assert all(fault.about for fault in rig.planted)


def test_the_coarse_and_smoothing_faults_of_the_pier_follow_from_planted_json() -> None:
    """A unit has the planted findings of its mode, and those of its fixture's smoothing; both lists agree.

    The plain tape 561 is the exception: its document accepts that its smoothing is unknown, a rig cannot.
    """
    known = fixtures()
    by_model: dict[str, list[tuple[str, int | None]]] = defaultdict(list)
    for entry in json.loads((CATALOG / "planted.json").read_bytes()):
        model = Fixture.model_validate_json((CATALOG / entry["file"]).read_bytes()).model
        steps = entry["pointer"].split("/")
        mode = int(steps[2]) if steps[1:2] == ["modes"] else None
        if entry["rule"].startswith(("coarse-", "smoothing-", "slow-")):
            by_model[model].append((entry["rule"], mode))
    wanted: Counter[tuple[str, str]] = Counter({("smoothing-unknown", "561"): 1})
    for row in rows_of(PIER):
        fixture = known.get(row["Fixture"])
        places = [i for i, m in enumerate(fixture.modes) if m.name == row["Mode"]] if fixture else []
        if fixture is None or not places or row.get("Part"):
            continue
        for rule, mode in by_model[fixture.model]:
            if mode is None or mode in places:
                wanted[rule, row["Unit"]] += 1
    told = Counter({key: n for key, n in planted(PIER).items() if key[0] not in PATCH_RULES | RIG_RULES})
    assert told == wanted


def patched(folder: Path) -> list[tuple[Row, Fixture, int]]:
    """Each unit's first row with its fixture and the place of its mode; rows without either are left out."""
    known = fixtures()
    found = []
    for row in rows_of(folder):
        fixture = known.get(row["Fixture"])
        places = [i for i, m in enumerate(fixture.modes) if m.name == row["Mode"]] if fixture else []
        if fixture is not None and places and not row.get("Part"):
            found.append((row, fixture, places[0]))
    return found


def of_rule(folder: Path, rule: str) -> list[str]:
    return sorted(unit for name, unit in planted(folder).elements() if name == rule)


@pytest.mark.parametrize("folder", [PIER, KITCHEN], ids=lambda folder: folder.name)
def test_the_mixed_modes_are_the_planted_ones(folder: Path) -> None:
    """Counted from the sheet: for each group and fixture, the first unit not in the mode of the most."""
    groups: dict[tuple[str, str], list[tuple[str, int]]] = defaultdict(list)
    for row, fixture, place in patched(folder):
        groups[row["Group"], fixture.id].append((row["Unit"], place))
    wanted = []
    for units in groups.values():
        most = Counter(place for _, place in units).most_common(1)[0][0]
        others = [unit for unit, place in units if place != most]
        wanted += others[:1]
    assert of_rule(folder, "mode-mixed") == sorted(wanted)


def by_slot(fixture: Fixture, place: int) -> bool:
    """Whether the text of a mode sets a smoothing of its fixture."""
    keys = {s.key for s in fixture.settings if s.setting == "smoothing" or any(c.length for c in s.choices)}
    text = fixture.modes[place].model_dump_json(exclude_none=True)
    return any(f'"sets":{{"{key}"' in text for key in keys)


def over_rdm(fixture: Fixture) -> bool:
    """Whether a way over RDM with values leads to a smoothing."""
    return any(
        way.by == "rdm" and way.values
        for s in fixture.settings
        if s.setting == "smoothing" or any(c.length for c in s.choices)
        for way in s.ways
    )


@pytest.mark.parametrize("folder", [PIER, KITCHEN], ids=lambda folder: folder.name)
def test_blocked_universes_are_the_planted_ones(folder: Path) -> None:
    """For each universe where RDM does not surely pass: the first unit that has no way but RDM."""
    links = json.loads((folder / "rig.json").read_bytes())["links"]
    first: dict[str, str] = {}
    for row, fixture, place in patched(folder):
        universe, address = row["Addr"].split("/")
        stopped = int(address) <= 512 and links[universe]["rdm"] != "yes"
        if stopped and over_rdm(fixture) and not by_slot(fixture, place):
            first.setdefault(universe, row["Unit"])
    assert of_rule(folder, "rdm-blocked") == sorted(first.values())


@pytest.mark.parametrize("folder", [PIER, KITCHEN], ids=lambda folder: folder.name)
def test_missing_control_slots_are_the_planted_ones(folder: Path) -> None:
    """Units without a slot for smoothing whose fixture has a mode with one."""
    wanted = [
        row["Unit"]
        for row, fixture, place in patched(folder)
        if not by_slot(fixture, place) and any(by_slot(fixture, i) for i in range(len(fixture.modes)))
    ]
    assert of_rule(folder, "control-slot-missing") == sorted(wanted)


def test_the_mixed_smoothing_of_the_pier_is_worked_out_by_hand() -> None:
    """Half-way delays in ms from the records' lengths, by closed form, against a frame of 1000/24 ms.

    221, 222: 5 packets at 44 Hz, interpolated: 5/44 - 1/88 s. 513, 514: a lag of 0.3 s from 10 to 90 %, so
    a time constant of 0.3 / ln 9 and a half-way point of ln 2 of it. In all other groups the known delays
    (none, 2 packets of 44 or 40 a second, 50 ms limited or restarted, 2 packets' time constant) lie within
    25 ms of each other. Of known delays beside unknown ones only the practicals are left over.
    """
    frame_ms = 1000 / 24
    assert abs(1000 * (5 / 44 - 1 / 88) - 102) < 0.5
    assert abs(1000 * 0.3 * math.log(2) / math.log(9) - 95) < 0.5
    assert max(1000 * 2 / 40 / 2, 50 / 2) < frame_ms
    assert of_rule(PIER, "smoothing-mixed") == ["221", "513", "561"]
    assert of_rule(KITCHEN, "smoothing-mixed") == []


def test_uids_and_settings_of_units_fit_their_fixtures() -> None:
    """A unit's UID carries its maker's id, and its settings and choices are those of its fixture's record."""
    known = fixtures()
    for folder in (PIER, KITCHEN):
        rig = Rig.model_validate_json((folder / "rig.json").read_bytes())
        by_unit = {row["Unit"]: known.get(row["Fixture"]) for row in rows_of(folder)}
        for unit, note in rig.units.items():
            fixture = by_unit[unit]
            assert fixture is not None
            if note.uid is not None:
                assert fixture.rdm is not None
                assert note.uid.split(":")[0] == fixture.rdm.manufacturer.removeprefix("0x")
            choices = {s.key: {c.key for c in s.choices} for s in fixture.settings}
            for setting, choice in note.settings.items():
                assert choice in choices[setting]


def test_the_reading_told_in_words_names_every_planted_unit() -> None:
    """README.md tells each planted fault's rule and unit."""
    text = (PIER / "README.md").read_text(encoding="utf-8")
    for rule, unit in planted(PIER):
        assert f"`{rule}`" in text
        assert unit in text or unit in {"212", "213", "532", "533"}, unit


@pytest.mark.parametrize("folder", [PIER, KITCHEN], ids=lambda folder: folder.name)
def test_the_audit_finds_the_planted_findings_and_nothing_else(folder: Path) -> None:
    """Rule by rule and unit by unit the program and the list made by hand agree; the kitchen is clean."""
    rig = Rig.model_validate_json((folder / "rig.json").read_bytes())
    fixtures_of = CatalogFixtures(Catalog(CATALOG))
    reading = RigReading(folder.name, rig, read_patch(folder / "patch.csv"), fixtures_of, policy_of(rig))
    assert {(finding.rule, finding.unit) for finding in audit(reading).findings} == set(planted(folder))
