"""The folder of sheets: what each holds, that hostile text stays text, and that nothing asks for more."""

from __future__ import annotations

import csv
import io
import re
from html.parser import HTMLParser

import pytest

from modebook.render.sheets.folder import sheets
from modebook.rig.examples import rig_of
from modebook.shelf.errors import ShelfError

WASH = {
    "maker": "Invented",
    "model": "Wash",
    "rdm": {"manufacturer": "0x7FF1", "model": "0x0102"},
    "sources": [{"key": "guide", "title": "Guide", "firmware": "2.1"}],
    "settings": [
        {
            "key": "smoothing",
            "setting": "smoothing",
            "label": "Response",
            "choices": [
                {"key": "off", "label": "Fast"},
                {"key": "short", "label": "Smooth", "factory": True},
            ],
            "ways": [
                {"by": "menu", "path": ["Setup", "Response"]},
                {"by": "rdm", "pid": "0x8001", "size": 1, "values": {"off": 1}},
            ],
        }
    ],
    "modes": [
        {
            "name": "Basic",
            "number": 3,
            "footprint": 3,
            "source": "guide",
            "parameters": [
                {"parameter": "dimmer", "slots": [1, 2]},
                {
                    "parameter": "control",
                    "label": "Function",
                    "slots": [3],
                    "ranges": [
                        {"from": 0, "to": 9, "meaning": "No function", "does": "nothing"},
                        {"from": 10, "to": 19, "meaning": "Fast", "sets": {"smoothing": "off"}, "hold_s": 3},
                        {"from": 20, "to": 29, "meaning": "Smooth", "sets": {"smoothing": "short"}},
                        {"from": 200, "to": 255, "meaning": "Reset", "hazard": "reset", "hold_s": 5},
                    ],
                },
            ],
        }
    ],
}
EVIL = "=HYPERLINK(1)<img src=x onerror=alert(1)>\u202e\"'&"
PATCH = f"""unit,fixture,mode,address,position,note
10,Wash,Basic,1/1,Truss 10,
2,Wash,Basic,1/11,Truss 2,"{EVIL.replace('"', '""')}"
3,Wash,Basic,1/13,Truss 2,{"x" * 10_000}
4,Nothing,Basic,1/101,,
"""


@pytest.fixture(scope="module")
def files() -> dict[str, str]:
    rig = {"units": {"2": {"settings": {"smoothing": "off"}, "uid": "7FF1:00000A01"}}}
    made = sheets(rig_of({"fixtures": [WASH], "patch": PATCH, "rig": rig}), ["2", "10"])
    return {name: content.decode("utf-8-sig") for name, content in made.items()}


class Seen(HTMLParser):
    """What a browser would do with a page: its elements, what it would fetch, and its text."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.elements: list[str] = []
        self.fetched: list[str] = []
        self.handlers: list[str] = []
        self.text = ""
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        self.elements.append(tag)
        for name, value in attrs:
            if name.startswith("on"):
                self.handlers.append(name)
            if name == "src" or (name == "href" and tag != "a"):
                self.fetched.append(value or "")

    def handle_data(self, data):
        self.text += data


def test_no_page_holds_script_or_fetches_anything_and_hostile_text_is_text(files):
    for name, text in files.items():
        if name.endswith(".html"):
            seen = Seen(text)
            assert (seen.handlers, seen.fetched) == ([], []), name
            assert not {"script", "img", "iframe", "link", "object"} & set(seen.elements), name
    assert EVIL in Seen(files["by-position.html"]).text


def test_links_between_the_sheets_lead_to_sheets_that_are_there(files):
    for text in files.values():
        for target in re.findall(r'<a href="([^"]+)"', text):
            assert target in files


def test_positions_stand_in_walking_order_and_units_by_number(files):
    text = files["by-position.html"]
    assert [text.index(f"<h2>{place}") for place in ("Truss 2", "Truss 10", "no position written")] == sorted(
        text.index(f"<h2>{place}") for place in ("Truss 2", "Truss 10", "no position written")
    )


def test_a_csv_holds_every_unit_and_computes_nothing(files):
    rows = list(csv.DictReader(io.StringIO(files["by-position.csv"], newline="")))
    assert [row["Unit"] for row in rows] == ["2", "3", "10", "4"]
    assert rows[0]["Note"] == "'" + EVIL
    assert [rows[0][key] for key in ("Universe", "Address", "Slots")] == ["1", "11", "3"]
    assert rows[0]["Smoothing changed by"] == "slot, RDM (if it passes), by hand: menu"
    assert rows[0]["Findings"] or rows[1]["Findings"], "they overlap"


def test_no_cell_of_the_programs_own_stands_in_a_form_that_a_spreadsheet_takes_for_a_date(files):
    """1/11, 1-9 and 1, 2 become dates or other numbers there (common practice, no source)."""
    dated = re.compile(r"\d{1,4}( ?[-/.,] ?\d{1,4}){1,2}")
    for name, text in files.items():
        if name.endswith(".csv"):
            rows = list(csv.reader(io.StringIO(text, newline="")))
            assert len(rows) > 1
            assert [cell for row in rows for cell in row if dated.fullmatch(cell)] == [], name


def test_a_control_card_of_a_mode_that_can_flash_says_so():
    """So it does where the strobe has a slot of its own, and where it is a range of another one."""
    plain = {"maker": "Invented", "model": "Wash", "modes": [{"name": "Basic", "footprint": 2}]}
    reset = {"parameter": "control", "slots": [2], "ranges": [{"from": 0, "to": 255, "hazard": "reset"}]}
    reset["ranges"][0]["meaning"] = "Reset"
    split = [
        {"from": 0, "to": 127, "meaning": "Dimmer"},
        {"from": 128, "to": 255, "meaning": "Strobe", "parameter": "strobe"},
    ]
    told = []
    for first in (
        {"parameter": "dimmer", "slots": [1]},
        {"parameter": "strobe", "slots": [1]},
        {"parameter": "dimmer", "slots": [1], "ranges": split},
    ):
        plain["modes"][0]["parameters"] = [first, reset]
        patch = "unit,fixture,mode,address\n1,Wash,Basic,1/1\n"
        text = sheets(rig_of({"fixtures": [plain], "patch": patch}))["control-cards.html"].decode()
        told.append("flashes can set off seizures" in text)
    assert told == [False, True, True]


def test_a_control_card_has_the_value_the_hold_and_what_comes_after(files):
    rows = list(csv.DictReader(io.StringIO(files["control-cards.csv"], newline="")))
    told = [
        [row[key] for key in ("Slots", "Send", "From", "To", "Hold", "Sets", "Afterward", "Caution")]
        for row in rows
    ]
    assert told == [
        ["3", "14", "10", "19", "3 s", "smoothing: off", "4: a range that does nothing (No function)", ""],
        [
            "3",
            "24",
            "20",
            "29",
            "not printed",
            "smoothing: short",
            "4: a range that does nothing (No function)",
            "",
        ],
        ["3", "227", "200", "255", "5 s", "", "4: a range that does nothing (No function)", "reset"],
    ]
    assert "keep people and cables clear" in files["control-cards.html"]


def test_a_spare_is_told_the_planned_choice_else_the_factorys_and_every_way(files):
    planned, factory = Seen(files["spare-2.html"]).text, Seen(files["spare-10.html"]).text
    assert "as rig.json has the unit" in planned
    assert "over RDM: PID 0x8001, value 1 in 1 byte" in planned
    assert "at the menu: Setup > Response > Fast" in planned
    assert "7FF1:00000A01" in planned
    assert "the factory's choice" in factory
    assert "over RDM" not in factory.split("Settings")[1].split("Then check")[0], "RDM does not reach Smooth"
    assert "Basic (3), 3 slots; over RDM: PID 0x00E0, value 3" in factory


def test_the_spare_of_an_unknown_unit_is_one_line():
    with pytest.raises(ShelfError, match="there is no unit '99'"):
        sheets(rig_of({"fixtures": [WASH], "patch": PATCH}), ["99"])


def test_a_unit_without_a_record_has_no_spare_sheet():
    with pytest.raises(ShelfError, match="has no record"):
        sheets(rig_of({"fixtures": [WASH], "patch": PATCH}), ["4"])


def test_a_csv_says_that_it_is_utf_8_and_a_page_says_so_in_its_head():
    """A byte order mark at the front of the CSV, which a spreadsheet looks for; none before the doctype."""
    made = sheets(rig_of({"fixtures": [WASH], "patch": PATCH}))
    for name, content in made.items():
        assert content.startswith(b"\xef\xbb\xbf" if name.endswith(".csv") else b"<!doctype html>"), name


def test_the_same_rig_gives_the_same_bytes():
    reading = {"fixtures": [WASH], "patch": PATCH}
    assert sheets(rig_of(reading)) == sheets(rig_of(reading))
