"""Fifteen ways in which printed charts mislead a reader, each with the outcome that is safe."""

from __future__ import annotations

from intake.drafted import drafted, named, short, slots, spans, whys


def test_a_lost_dash_is_a_range_and_marked() -> None:
    """1: `012 047 Ramp` is 12-47, marked, and never one number."""
    document = drafted("Channel Value Function\n1 Strobe\n000 011 Idle\n012 047 Ramp\n048 255 Sweep\n")
    (parameter,) = document.modes[0].parameters
    assert short(parameter) == ("strobe", [1], [(0, 11, "Idle"), (12, 47, "Ramp"), (48, 255, "Sweep")])
    for index in range(3):
        assert whys(document, f"/modes/0/parameters/0/ranges/{index}")
    assert "dash" in whys(document, "/modes/0/parameters/0/ranges/1")[0]


def test_a_lost_dash_in_a_column_of_values_is_marked_too() -> None:
    document = drafted(
        "Slot  Function  Value    Meaning\n1     Strobe    000 011  Idle\n                012 255  Ramp\n"
    )
    (parameter,) = document.modes[0].parameters
    assert [(r.from_, r.to) for r in parameter.ranges] == [(0, 11), (12, 255)]
    assert len(whys(document, "/modes/0/parameters/0")) == 2


def test_detached_columns_are_not_paired() -> None:
    """2: three ranges, then four names: no range gets a name, and the doubt says what was printed."""
    document = drafted("Channel 1: Strobe\n0-9\n10-99\n100-255\nOff\nSlow\nFast\nFaster\n")
    (parameter,) = document.modes[0].parameters
    assert (parameter.parameter, parameter.slots, parameter.ranges) == ("strobe", [1], [])
    (doubt,) = document.doubts
    assert "not paired" in doubt.why
    assert doubt.printed == "0-9 / 10-99 / 100-255 / Off / Slow / Fast / Faster"


def test_as_many_names_as_detached_values_are_paired_and_marked() -> None:
    document = drafted("Channel 1: Strobe\n0-9\n10-255\nOff\nSlow\n")
    (parameter,) = document.modes[0].parameters
    assert [(r.from_, r.to, r.meaning) for r in parameter.ranges] == [(0, 9, "Off"), (10, 255, "Slow")]
    assert any("stand apart" in why for why in whys(document, "/modes/0/parameters/0"))


def test_a_slot_number_after_its_first_row_holds_for_both_rows() -> None:
    """3: `000-019 Idle` / `7` / `020-255 Sweep`: both rows are slot 7's."""
    chart = (
        "Slot  Value    Function\n6     0-255    Dimmer\n      000-019  Gobo open\n7\n"
        "      020-255  Gobo sweep\n8     0-255    Zoom\n"
    )
    mode = drafted(chart).modes[0]
    assert [p.slots for p in mode.parameters] == [[6], [7], [8]]
    assert [(r.from_, r.to) for r in mode.parameters[1].ranges] == [(0, 19), (20, 255)]
    assert mode.parameters[2].ranges == []


def test_a_slot_number_after_its_first_row_in_bare_lines() -> None:
    mode = drafted("000-019 Idle\n7\n020-255 Sweep\n").modes[0]
    (parameter,) = mode.parameters
    assert (parameter.slots, [(r.from_, r.to, r.meaning) for r in parameter.ranges]) == (
        [7],
        [(0, 19, "Idle"), (20, 255, "Sweep")],
    )


def test_msb_and_lsb_columns_give_the_order_of_bytes() -> None:
    """4: `MSB 4 | LSB 3 | 0 to 65,535`: coarse 4, fine 3; the comma is a thousands mark."""
    document = drafted(
        "MSB | LSB | Value | Function\n2 | 1 | 0 to 65,535 | Dimmer\n4 | 3 | 0 to 65,535 | Zoom\n"
    )
    assert slots(document.modes[0]) == [("dimmer", [2, 1]), ("zoom", [4, 3])]
    assert document.doubts == []


def test_a_fine_byte_far_away_is_paired_by_name() -> None:
    """5: `2 Swing ... 9 Swing fine` is one parameter of slots 2 and 9; its unknown name is marked."""
    document = drafted("1 Dimmer\n2 Swing\n3 Red\n4 Green\n5 Blue\n6 Zoom\n7 Focus\n8 Iris\n9 Swing fine\n")
    mode = document.modes[0]
    assert [p.slots for p in mode.parameters] == [[1], [2, 9], [3], [4], [5], [6], [7], [8]]
    assert (mode.parameters[1].parameter, mode.parameters[1].label) == ("other", "Swing")
    assert whys(document) == ["the name is not in the list of synonyms"]


def test_a_fine_byte_far_away_of_a_known_name_needs_no_doubt() -> None:
    document = drafted("1 Pan\n2 Tilt\n3 Dimmer\n4 Pan fine\n5 Tilt fine\n")
    assert slots(document.modes[0]) == [("pan", [1, 4]), ("tilt", [2, 5]), ("dimmer", [3])]
    assert document.doubts == []


def test_a_fine_byte_right_behind_may_leave_out_words_of_the_name() -> None:
    """`Temperature fine` below `Color temperature` is its fine byte; farther away it is asked about."""
    near = drafted("1 Dimmer\n2 Color temperature\n3 Temperature fine\n4 Tint\n")
    assert [p.slots for p in near.modes[0].parameters] == [[1], [2, 3], [4]]
    assert not near.doubts
    far = drafted("1 Dimmer\n2 Color temperature\n3 Tint\n4 Temperature fine\n")
    assert far.doubts


def test_a_row_of_16_bits_takes_the_next_slot_where_the_next_row_leaves_it_out() -> None:
    """`1 Dimmer, 16 bit` above `3 Zoom` are slots 1 and 2; a slot that is named is nobody's second."""
    titles = "Slot\tFunction\tResolution\tValue\n"
    skipped = drafted(f"{titles}1\tDimmer\t16 bit\t0-65535\n3\tZoom\t16 bit\t0-65535\n5\tFan\t8 bit\t0-255\n")
    assert [p.slots for p in skipped.modes[0].parameters] == [[1, 2], [3, 4], [5]]
    assert not skipped.doubts
    full = drafted(f"{titles}1\tDimmer\t8 bit\t0-255\n2\tIris\t8 bit\t0-255\n3\tFan\t8 bit\t0-255\n")
    assert [p.slots for p in full.modes[0].parameters] == [[1], [2], [3]]


def test_a_name_of_two_letters_on_two_slots_is_one_parameter() -> None:
    """`G/M` on slots 2 and 3 is a tint of 16 bits; `R/G` is not known as one thing."""
    document = drafted("Slot\tFunction\tValue\n1\tDimmer\t0-255\n2+3\tG/M\t0-65535\n")
    assert [(p.parameter, p.slots) for p in document.modes[0].parameters][1:] == [("tint", [2, 3])]


def test_dotted_pairs_are_coarse_and_fine_and_a_dotted_kelvin_is_thousands() -> None:
    """6: 090.000-143.255 is 90 x 256 + 0 to 143 x 256 + 255; 3.400 K is 3400 K."""
    chart = (
        "Slot\tFunction\tValue\tDescription\n"
        "1+2\tGobo wheel\t000.000–089.255\tOpen\n\t\t090.000–143.255\tLeaves\n\t\t144.000–255.255\tBars\n"
        "3+4\tColor temperature\t0-65.535\t3.400 K – 5.600 K\n"
    )
    document = drafted(chart)
    gobo, white = document.modes[0].parameters
    assert [(r.from_, r.to) for r in gobo.ranges] == [(0, 90 * 256 - 1), (23040, 36863), (144 * 256, 65535)]
    assert spans(document.modes[0])["color-temperature"] == [(3400, 5600, "K")]
    assert document.doubts == []
    assert white.ranges == []


def test_values_printed_for_the_coarse_byte_count_in_full_resolution() -> None:
    """6: a range a-b of the coarse byte is 256a to 256b + 255; a lone default leaves the fine byte
    unknown.
    """
    chart = (
        "Slot  Function    Value    Meaning  Default\n1     Iris        0-9      Open     128\n"
        "                  10-255   Pulse\n2     Iris fine\n"
    )
    document = drafted(chart)
    (iris,) = document.modes[0].parameters
    assert iris.slots == [1, 2]
    assert [(r.from_, r.to) for r in iris.ranges] == [(0, 2559), (2560, 65535)]
    assert (iris.default, iris.coarse_default) == (None, 128)


def test_both_bytes_defaults_make_one() -> None:
    mode = drafted("Slot  Function  Default\n1     Pan       128\n2     Pan fine  0\n").modes[0]
    assert (mode.parameters[0].default, mode.parameters[0].coarse_default) == (32768, None)


def test_raw_kelvin_is_not_scaled() -> None:
    """7: `6+7 | 2200-9000 | send kelvin`: the number sent is the kelvin."""
    document = drafted(
        "Slot | Value | Function\n1 | 0-255 | Dimmer\n2+3 | 2200–9000 | Color temperature, send kelvin\n"
    )
    span = named(document.modes[0], "color-temperature").span
    assert span is not None
    assert not isinstance(span, list)
    assert (span.from_, span.to, span.unit, span.raw) == (2200, 9000, "K", True)
    assert document.doubts == []


def test_kelvin_that_is_not_said_to_be_sent_is_marked() -> None:
    document = drafted("Slot | Value | Function\n1 | 0-255 | Dimmer\n2+3 | 2200–9000 | Color temperature\n")
    assert len(whys(document, "/modes/0/parameters/1")) == 1


def test_a_degree_sign_read_as_a_zero_is_not_believed() -> None:
    """8: `Pan 0-4800` is marked."""
    document = drafted("Slot  Function    Value\n1     Pan 0-4800  0-255\n2     Tilt 0-270° 0-255\n")
    (doubt,) = document.doubts
    assert (doubt.pointer, doubt.printed, doubt.read) == (
        "/modes/0/parameters/0/span",
        "0-4800",
        "0 to 480 deg",
    )
    assert spans(document.modes[0])["tilt"] == [(0, 270, "deg")]


def test_overlap_and_gap_stay_as_printed_and_are_marked() -> None:
    """9: `0-14 Off, 10-250 Pulse`."""
    document = drafted(
        "Slot  Function  Value   Meaning\n1     Strobe    0-14    Off\n                10-250  Pulse\n"
    )
    assert short(document.modes[0].parameters[0]) == ("strobe", [1], [(0, 14, "Off"), (10, 250, "Pulse")])
    assert whys(document) == ["10-250 overlaps 0-14", "what 251 to 255 does is not printed"]


def test_an_absent_zero_is_unknown() -> None:
    """10: `1-90 Steady`: what 0 does is not Steady."""
    document = drafted(
        "Slot  Function  Value   Meaning\n1     Strobe    1-90    Steady\n                91-255  Pulse\n"
    )
    assert [(r.from_, r.to) for r in document.modes[0].parameters[0].ranges] == [(1, 90), (91, 255)]
    assert whys(document) == ["what 0 does is not printed"]


def test_two_tables_of_one_title_are_two_modes() -> None:
    """11: with different contents; the second is marked."""
    chart = (
        "Extended mode\nSlot  Function\n1     Dimmer\n2     Red\n\nExtended mode\n"
        "Slot  Function\n1     Dimmer\n2     Amber\n3     Blue\n"
    )
    document = drafted(chart)
    assert [(m.name, m.footprint) for m in document.modes] == [("Extended", 2), ("Extended", 3)]
    assert [d.pointer for d in document.doubts] == ["/modes/1/name"]


def test_a_table_printed_twice_is_one_mode() -> None:
    table = "Extended mode\nSlot  Function\n1     Dimmer\n2     Red\n\n"
    assert [m.name for m in drafted(table + table).modes] == ["Extended"]


def test_a_slot_that_depends_on_another_is_conditional() -> None:
    """12: both meanings stand with their conditions, the hole between them is left for the checks."""
    chart = (
        "Slot  Function                          Value    Meaning\n"
        "1     Dimmer                            0-255\n"
        "2     Effect                            0-99     Off\n"
        "                                        100-255  Wave\n"
        "3     Gobo shake (if slot 2 is 0-99)    0-255\n"
        "3     Effect speed (if slot 2 is 110-255)   0-255\n"
    )
    document = drafted(chart)
    shake, speed = document.modes[0].parameters[2:]
    assert (shake.parameter, shake.slots, speed.parameter, speed.slots) == (
        "gobo-shake",
        [3],
        "effect-speed",
        [3],
    )
    assert shake.when
    assert (shake.when[0].parameter, shake.when[0].from_, shake.when[0].to) == (
        "effect",
        0,
        99,
    )
    assert speed.when
    assert (speed.when[0].parameter, speed.when[0].from_, speed.when[0].to) == (
        "effect",
        110,
        255,
    )
    assert document.doubts == []


_MARKED = (
    "Mode A  Mode B  Function\n1       1       Dimmer\n2       *       Red\n"
    "*       2       Amber\n3*      3       Blue\n"
)


def test_marks_follow_their_legend() -> None:
    """13: with a legend that says absent, marked numbers and stars are absent."""
    document = drafted(_MARKED + "\n* not available in this mode\n")
    assert [slots(m) for m in document.modes] == [
        [("dimmer", [1]), ("red", [2])],
        [("dimmer", [1]), ("amber", [2]), ("blue", [3])],
    ]
    assert document.doubts == []


def test_a_mark_with_another_legend_is_a_footnote() -> None:
    chart = "Slot  Function  Value\n1     Dimmer    0-255\n2*    Pan       0-255\n\n* 0 to 540°\n"
    document = drafted(chart)
    assert slots(document.modes[0]) == [("dimmer", [1]), ("pan", [2])]
    assert spans(document.modes[0]) == {"pan": [(0, 540, "deg")]}


def test_marks_without_a_legend_are_asked_about() -> None:
    document = drafted(_MARKED)
    assert sum("legend" in why for why in whys(document)) >= 2


def test_left_out_rows_are_filled_in_where_the_arithmetic_fits() -> None:
    """14: `3 step -60` / `:` / `62 step -1` are 60 rows, each derived one marked as such."""
    chart = (
        "Slot  Function  Value   Meaning\n1     Macro     0-2     Off\n"
        "                3       step -60\n                :\n                62      step -1\n"
        "                63-255  Off\n"
    )
    document = drafted(chart)
    ranges = document.modes[0].parameters[0].ranges
    assert [(r.from_, r.to, r.meaning) for r in ranges[1:61]] == [
        (v, v, f"step {v - 63}") for v in range(3, 63)
    ]
    assert [bool(r.note) for r in ranges[1:61]] == [False, *[True] * 58, False]
    assert document.doubts == []


def test_left_out_rows_stay_out_where_the_arithmetic_does_not_fit() -> None:
    chart = (
        "Slot  Function  Value   Meaning\n1     Macro     0-2     Off\n"
        "                3       step -60\n                :\n                61      step -1\n"
        "                62-255  Off\n"
    )
    document = drafted(chart)
    assert [(r.from_, r.to) for r in document.modes[0].parameters[0].ranges] == [
        (0, 2),
        (3, 3),
        (61, 61),
        (62, 255),
    ]
    assert any("arithmetic" in why for why in whys(document))


def test_hold_keeping_and_conditions_belong_to_each_range() -> None:
    """15: one control slot with ranges that act while sent, that latch, and a reset that needs
    other slots.
    """
    chart = (
        "Slot  Function   Value     Description\n"
        "1     Dimmer     0-255\n"
        "2     Strobe     0-255\n"
        "3     Control    0-9       No function\n"
        "                 10-14     Fan full (while sent)\n"
        "                 15-19     Response: Sharp (hold 3 s, until power off)\n"
        "                 20-24     Response: Smooth, hold 3 s, stored\n"
        "                 25-249    No function\n"
        "                 250-255   Reset (slot 1 at 0 and slot 2 at 255, hold 5 s)\n"
    )
    document = drafted(chart)
    ranges = named(document.modes[0], "control").ranges
    assert [(r.meaning, r.hold_s, r.kept, r.hazard, r.sets) for r in ranges] == [
        ("No function", None, None, None, None),
        ("Fan full", None, "while sent", None, {"fan": "full"}),
        ("Response: Sharp", 3, "until power off", None, {"smoothing": "sharp"}),
        ("Response: Smooth", 3, "stored", None, {"smoothing": "smooth"}),
        ("No function", None, None, None, None),
        ("Reset", 5, None, "reset", None),
    ]
    assert [(c.parameter, c.from_, c.to) for c in ranges[5].needs or []] == [
        ("dimmer", 0, 0),
        ("strobe", 255, 255),
    ]
    assert [r.needs for r in ranges[:5]] == [None] * 5
    assert {s.setting: [c.key for c in s.choices] for s in document.settings} == {
        "fan": ["full"],
        "smoothing": ["sharp", "smooth"],
    }
    assert all(
        choice.length is None and not choice.factory for s in document.settings for choice in s.choices
    )
    assert document.doubts == []


def test_two_reserved_slots_are_two_slots() -> None:
    """`12-13 RESERVED` is two slots, not one of 16 bits."""
    document = drafted(
        "Slot  Function  Value\n1     Dimmer    0-255\n2-3   RESERVED\n4-5   Pan       0-65535\n"
    )
    assert slots(document.modes[0]) == [
        ("dimmer", [1]),
        ("reserved", [2]),
        ("reserved", [3]),
        ("pan", [4, 5]),
    ]
    assert document.doubts == []


def test_single_points_are_no_ranges() -> None:
    """What lies between single printed points is marked as unknown."""
    document = drafted(
        "Slot  Function           Value  Meaning\n1     Color temperature  0      2700 K\n"
        "                         128    4200 K\n                         255    6500 K\n"
    )
    assert [(r.from_, r.to) for r in document.modes[0].parameters[0].ranges] == [
        (0, 0),
        (128, 128),
        (255, 255),
    ]
    assert all("single points" in why for why in whys(document))
    assert len(whys(document)) == 2
