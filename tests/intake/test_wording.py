"""Spans, holds, keeping, conditions, headings and titles, as charts in several languages print them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.conditions import read_conditions
from modebook.intake.descriptions import describe
from modebook.intake.headings import read_footnote, read_mode_head, read_slot_head
from modebook.intake.quantities import spans
from modebook.intake.titles import title_roles


@pytest.mark.parametrize(
    ("printed", "span"),
    [
        ("0-540°", (0, 540, "deg")),
        ("-270° to +270°", (-270, 270, "deg")),
        ("±135°", (-135, 135, "deg")),
        ("0 bis 540 Grad", (0, 540, "deg")),
        ("2.700–6.500 K", (2700, 6500, "K")),
        ("2,700 K - 6,500 K", (2700, 6500, "K")),
        ("2 700 à 6 500 K", (2700, 6500, "K")),
        ("0,5-25 Hz", (0.5, 25, "Hz")),
        ("0.5 Hz to 25 Hz", (0.5, 25, "Hz")),
        ("100-0%", (100, 0, "%")),
        ("0 – 100 %", (0, 100, "%")),
        ("1 - 25 flashes per second", (1, 25, "Hz")),
        ("0.2 - 5 s", (0.2, 5, "s")),
        ("-50 % (warmer) bis +50 % (kälter)", (-50, 50, "%")),
        ("2 à 18 éclairs/s", (2, 18, "Hz")),
    ],
)
def test_spans(printed: str, span: tuple[float, float, str]) -> None:
    (read,) = spans(printed)
    assert (read.start, read.end, read.unit) == span


@pytest.mark.parametrize(
    ("printed", "meaning", "hold_s", "kept", "hazard"),
    [
        ("Reset (8s)", "Reset", 8, None, "reset"),
        ("Reset, hold for 5 seconds", "Reset", 5, None, "reset"),
        ("Response: Smooth (hold 3 s; stored)", "Response: Smooth", 3, "stored", None),
        ("Response: Smooth, hold 3 s, kept until power off", "Response: Smooth", 3, "until power off", None),
        (
            "Dimmverhalten: weich (3 Sek. halten, bis zum Ausschalten)",
            "Dimmverhalten: weich",
            3,
            "until power off",
            None,
        ),
        ("Lissage : doux (maintenir 3 s, mémorisé)", "Lissage : doux", 3, "stored", None),
        ("Suavizado: suave (mantener 3 s, hasta apagar)", "Suavizado: suave", 3, "until power off", None),
        ("Smorzamento: morbido (mantenere 3 s, memorizzato)", "Smorzamento: morbido", 3, "stored", None),
        ("Lamp off after 3 s", "Lamp off after 3 s", 3, None, "lamp off"),
        ("Fan full (while sent)", "Fan full", None, "while sent", None),
        ("Stored colors", "Stored colors", None, None, None),
    ],
)
def test_remarks_go_where_they_belong(
    printed: str, meaning: str, hold_s: float | None, kept: str | None, hazard: str | None
) -> None:
    read = describe(printed, triggers=True)
    assert (read.meaning, read.said.hold_s, read.said.kept, read.said.hazard) == (
        meaning,
        hold_s,
        kept,
        hazard,
    )


def test_a_bare_time_is_a_hold_only_where_something_is_triggered() -> None:
    assert describe("Pulse (2 s)", triggers=False).said.hold_s is None
    assert describe("Fade in 2 s", triggers=True).said.hold_s is None


@pytest.mark.parametrize(
    ("printed", "does"),
    [
        ("No function", "nothing"),
        ("Keine Funktion", "nothing"),
        ("Open", "open"),
        ("Verschluss offen", "open"),
        ("Closed", "closed"),
        ("As the menu says", "as-menu"),
        ("Response: as menu", "as-menu"),
        ("Dimming: keep", "unchanged"),
        ("Random strobe", "random"),
        ("Rotation clockwise, slow to fast", "rotate"),
        ("Gobo 3 shake", "bounce"),
        ("Stop", "stop"),
        ("Red", None),
        ("Openwork pattern", None),
    ],
)
def test_what_a_range_does(printed: str, does: str | None) -> None:
    assert describe(printed).said.does == does


@pytest.mark.parametrize(
    ("printed", "expected"),
    [
        ("if slot 5 is 0-99", [(5, None, 0, 99)]),
        ("only when channel 5 = 100-199", [(5, None, 100, 199)]),
        ("wenn Kanal 5 = 10-19", [(5, None, 10, 19)]),
        ("si le canal 5 est 10 à 19", [(5, None, 10, 19)]),
        ("si el canal 5 está entre 10-19", [(5, None, 10, 19)]),
        ("se canale 5 è 10-19", [(5, None, 10, 19)]),
        ("Speed (Ch. 5: 0-99)", [(5, None, 0, 99)]),
        ("with slots 1 and 3 at 0", [(1, None, 0, 0), (3, None, 0, 0)]),
        ("dimmer at 0 and strobe at 255", [(None, "dimmer", 0, 0), (None, "strobe", 255, 255)]),
    ],
)
def test_conditions(printed: str, expected: list[tuple[int | None, str | None, int, int]]) -> None:
    read = read_conditions(printed)
    assert [(c.slot, c.name, c.values[0].start, c.values[0].end) for c in read] == expected


@pytest.mark.parametrize(
    "printed", ["Zoom 0-100", "Gobo 1", "Channel 5", "Strobe 1-20 Hz", "Slow to fast", "Reset in 5 s"]
)
def test_what_are_no_conditions(printed: str) -> None:
    assert read_conditions(printed) == ()


@pytest.mark.parametrize(
    ("printed", "name", "number", "footprint"),
    [
        ("Mode 2: Extended (24 channels)", "Extended", 2, 24),
        ("Extended mode - 24 channels", "Extended", None, 24),
        ("Mode 3 – Basic", "Basic", 3, None),
        ("DMX mode Standard", "Standard", None, None),
        ("8CH", "8CH", None, 8),
        ("16 bit mode, 12 channels", "16 bit", None, 12),
        ("Modus 1: Einfach (5 Kanäle)", "Einfach", 1, 5),
        ("Mode étendu : 12 canaux", "étendu", None, 12),
        ("Modo 2 - Extendido (14 canales)", "Extendido", 2, 14),
        ("Modalità 2: Estesa (14 canali)", "Estesa", 2, 14),
        ("Extended mode (continued)", "Extended", None, None),
        ("Profile 3: Color 16 bit (4 slots)", "Color 16 bit", 3, 4),
        ("Modus B (9 Kanäle)", "Modus B", None, 9),
        ("MODO DE 12 CANALES", "12 CANALES", None, 12),
        ("DMX channels (9CH mode)", "9CH", None, 9),
    ],
)
def test_mode_headings(printed: str, name: str, number: int | None, footprint: int | None) -> None:
    head = read_mode_head(printed)
    assert head is not None
    assert (head.name, head.number, head.footprint) == (name, number, footprint)


@pytest.mark.parametrize(
    "printed", ["Dimmer", "Channel 5: Shutter", "The fixture is packed in a carton.", "Value"]
)
def test_what_are_no_mode_headings(printed: str) -> None:
    assert read_mode_head(printed) is None


def test_slot_headings_and_footnotes() -> None:
    head = read_slot_head("Channels 2+3: Pan")
    assert head is not None
    assert (head.slots, head.name) == ((2, 3), "Pan")
    assert read_slot_head("1 Nothing of note") is None
    note = read_footnote("* not in this mode")
    assert note is not None
    assert (note.mark, note.text) == ("*", "not in this mode")
    assert read_footnote("* 5 *") is None


@pytest.mark.parametrize(
    ("printed", "role"),
    [
        ("Channel / Kanal", "slot"),
        ("Value (DMX)", "value"),
        ("Dec.", "value"),
        ("Value (hex)", "hex"),
        ("%", "percent"),
        ("Von", "from"),
        ("Hasta", "to"),
        ("MSB", "coarse"),
        ("Beschreibung", "meaning"),
        ("Fonction", "function"),
        ("Standardwert", "default"),
        ("Canal e", "slot"),
        ("0-255", "value"),
    ],
)
def test_column_titles(printed: str, role: str) -> None:
    assert title_roles(printed)[0] == role


@pytest.mark.parametrize(
    ("printed", "kind", "slots"),
    [
        ("5", "slots", (5,)),
        ("5-6", "slots", (5, 6)),
        ("5+6", "slots", (5, 6)),
        ("5/6", "slots", (5, 6)),
        ("5, 6", "slots", (5, 6)),
        ("Ch 5", "slots", (5,)),
        ("10-33", "slots", tuple(range(10, 34))),
        ("-", "absent", ()),
        ("–", "absent", ()),
        ("*", "absent", ()),
        ("", "blank", ()),
        ("0-9", "text", ()),
        ("Pan", "text", ()),
        ("5*", "slots", (5,)),
    ],
)
def test_slot_cells(printed: str, kind: str, slots: tuple[int, ...]) -> None:
    cell = read_slot_cell(printed)
    assert (cell.kind, cell.slots) == (kind, slots)


@given(st.text(max_size=60))
def test_any_text_can_be_looked_at(text: str) -> None:
    """No wording rule fails on any text."""
    describe(text, triggers=True)
    read_conditions(text)
    read_mode_head(text)
    read_slot_head(text)
    read_footnote(text)
    read_slot_cell(text)
    title_roles(text)
