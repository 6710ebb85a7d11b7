"""What a name means may depend on the kind of light: the other slots of the mode tell it."""

from __future__ import annotations

from intake.drafted import drafted, named, short, slots, whys

LASER = """Channel\tControl\tValue\tDescription
1\tLaser power\t0-255\t0-100%
2\tPattern\t0-99\tDots
\t\t100-255\tTunnels
3\tPattern size\t0-255\tSmall to large
4\tHorizontal movement\t0-255\tLeft to right
5\tColor\t0-99\tWhite
\t\t100-255\tRed
6\tSize\t0-255\tSmall to large
7\tRotation\t0-255\tSlow to fast
"""
HEAD = """Channel\tControl\tValue\tDescription
1\tPan\t0-255\t0-540°
2\tTilt\t0-255\t0-270°
3\tPattern\t0-99\tOpen
\t\t100-255\tDots
4\tColor\t0-99\tWhite
\t\t100-255\tRed
5\tControl\t0-99\tNo function
\t\t100-255\tLaser pointer on
"""
MIX = "Channel\tControl\tValue\tDescription\n1\tRed\t0-255\t0-100%\n2\tGreen\t0-255\t0-100%\n"


def test_what_a_laser_draws_are_figures_with_a_size_and_a_place():
    """A laser has no gobos, its picture moves and not its head, and its white opens nothing."""
    document = drafted(LASER)
    words = [word for word, _ in slots(document.modes[0])]
    assert words == [
        *("laser-output", "laser-pattern", "image-scale", "image-position-x", "color-preset"),
        *("image-scale", "image-rotation"),
    ]
    assert all(entry.does is None for entry in named(document.modes[0], "color-preset").ranges)
    assert not whys(document)


def test_figures_of_a_laser_are_known_in_other_languages():
    """Their names say too little anywhere else, and are doubted there."""
    table = "Canal\tFonction\tValeur\tDescription\n1\tMotif\t0-99\tPoints\n\t\t100-255\tLignes\n"
    rest = "2\tTaille du motif\t0-255\tPetit à grand\n3\tRotation du motif\t0-255\tLente à rapide\n"
    document = drafted(f"{table}{rest}4\tFaisceau\t0-99\tLaser éteint\n\t\t100-255\tLaser allumé\n")
    words = [word for word, _ in slots(document.modes[0])]
    assert words[:3] == ["laser-pattern", "image-scale", "image-rotation"]
    assert not whys(document, "/modes/0/parameters/0")
    assert whys(drafted(f"{table}{rest}4\tGradateur\t0-255\t0-100%\n"), "/modes/0/parameters/0")


def test_a_head_with_a_laser_pointer_keeps_its_gobos():
    words = [word for word, _ in slots(drafted(HEAD).modes[0])]
    assert words[:4] == ["pan", "tilt", "gobo-wheel", "color-wheel"]


def test_a_laser_on_a_head_that_turns_is_moved_by_its_head():
    """In whatever language the head's movements are called."""
    rest = "2\tSchwenken\t0-255\t0-540°\n3\tNeigen\t0-255\t0-270°\n"
    (mode,) = drafted("Kanal\tFunktion\tWert\tBeschreibung\n1\tLaserleistung\t0-255\t0-100%\n" + rest).modes
    assert [word for word, _ in slots(mode)][1:] == ["pan", "tilt"]


def test_a_choice_of_colors_beside_three_emitters_is_no_wheel():
    rest = "3\tBlue\t0-255\t0-100%\n4\tColor selection\t0-99\tNo function\n\t\t100-255\tPink\n"
    assert slots(drafted(MIX + rest).modes[0])[3] == ("color-preset", [4])
    told = rest.replace("Color selection", "Color wheel")
    assert slots(drafted(MIX + told).modes[0])[3] == ("color-wheel", [4])
    halves = rest.replace("Pink", "Split colors")
    assert slots(drafted(MIX + halves).modes[0])[3] == ("color-wheel", [4])


def test_a_function_whose_values_are_programs_is_one_of_programs_and_its_speed_is_theirs():
    """`Function` alone may be a control slot; with no reset among its values and fades in all it is none."""
    rest = (
        "3\tBlue\t0-255\t0-100%\n4\tFunction\t0-9\tNo function\n\t\t10-99\tColor fading\n"
        "\t\t100-199\tJumping\n\t\t200-255\tSound active\n5\tFunction speed\t0-255\tSlow to fast\n"
    )
    document = drafted(MIX + rest)
    assert slots(document.modes[0])[3:] == [("macro", [4]), ("macro-speed", [5])]
    assert not whys(document)


def test_a_frequency_of_a_few_hertz_is_of_flashes():
    """Pulsed dimming runs at hundreds of hertz; up to 18 Hz the light is seen to flash."""
    table = "Channel\tControl\tValue\tDescription\n1\tDimmer\t0-255\t0-100%\n2\tFrequency\t0-9\tOff\n"
    (mode,) = drafted(table + "\t\t10-255\t1 to 18 flashes/s\n").modes
    assert short(mode.parameters[1])[0] == "strobe"
    (span,) = [entry.span for entry in mode.parameters[1].ranges if entry.span]
    assert (span.from_, span.to, str(span.unit)) == (1, 18, "Hz")
    pulsed = drafted(table + "\t\t10-255\t600 to 4000 Hz\n")
    assert short(pulsed.modes[0].parameters[1])[0] == "modulation-frequency"


def test_numbered_outputs_are_the_dimmers_of_a_pack_and_a_lone_output_is_not_sure():
    table = "Channel\tControl\tValue\n1\tCircuit 1\t0-255\n2\tCircuit 2\t0-255\n"
    document = drafted(table)
    assert slots(document.modes[0]) == [("dimmer", [1]), ("dimmer", [2])]
    assert not whys(document)
    assert whys(drafted("Channel\tControl\tValue\n1\tCircuit\t0-255\n2\tRed\t0-255\n"))


def test_lamps_that_are_numbered_are_dimmed_and_one_that_is_switched_is_not():
    table = "Canal\tFunción\tValor\tDescripción\n"
    lamps = "".join(f"{n}\tLámpara {n}\t0-255\t0-100%\n" for n in (1, 2, 3))
    (block,) = drafted(table + lamps).modes[0].cells
    assert (block.count, [p.parameter for p in block.parameters]) == (3, ["dimmer"])
    switched = "1\tLamp\t0-127\tLamp off\n\t\t128-255\tLamp on\n2\tRed\t0-255\t0-100%\n"
    assert (
        slots(drafted("Channel\tControl\tValue\tDescription\n" + switched).modes[0])[0][0] == "lamp-control"
    )


def test_wind_that_runs_from_slow_to_fast_is_a_fan():
    table = "Channel\tControl\tValue\tDescription\n1\tDimmer\t0-255\t0-100%\n"
    document = drafted(table + "2\tWind\t0-5\tOff\n\t\t6-255\tSlow to fast\n")
    assert (slots(document.modes[0])[1], whys(document)) == (("fan", [2]), [])
    assert whys(drafted(table + "2\tWind\t0-5\tOff\n\t\t6-255\tGusts\n"))


def test_a_rainbow_turns_a_wheel_and_is_a_program_among_programs():
    table = "Channel\tControl\tValue\tDescription\n1\tDimmer\t0-255\t0-100%\n"
    rest = "\t0-49\tNone\n\t\t50-149\tRainbow\n\t\t150-255\tCandle\n"
    for label, word in (("Effect", "effect"), ("Color presets", "color-preset")):
        (mode,) = drafted(f"{table}2\t{label}{rest}").modes
        assert named(mode, word).ranges[1].does is None
    wheel = drafted(f"{table}2\tColor wheel{rest}").modes[0]
    assert named(wheel, "color-wheel").ranges[1].does == "rotate"


def test_going_dark_while_something_moves_is_a_setting_for_each_thing_that_moves():
    table = (
        "Channel\tControl\tValue\tDescription\n1\tDimmer\t0-255\t0-100%\n2\tSpecial functions\t0-9\tUnused\n"
        "\t\t10-19\tBlackout during pan/tilt movement\n\t\t20-29\tNo blackout during pan/tilt movement\n"
        "\t\t30-39\tBlackout on gobo change\n\t\t40-255\tBlackout\n"
    )
    document = drafted(table)
    found = [(s.setting, s.key, [c.label for c in s.choices]) for s in document.settings]
    assert found == [
        ("blackout-on-move", "blackout-on-move", ["Blackout", "No blackout"]),
        ("blackout-on-move", "blackout-on-move-gobo", ["Blackout"]),
    ]
    assert [bool(entry.sets) for entry in named(document.modes[0], "control").ranges] == [
        *(False, True, True, True, False)
    ]


def test_speed_behind_programs_is_theirs_where_nothing_else_moves():
    """Beside a head that turns it may be the head's, and is doubted."""
    rest = "{0}\tPrograms\t0-9\tNone\n\t\t10-255\tCandle\n{1}\tSpeed\t0-255\tSlow to fast\n"
    still = drafted(MIX + "3\tBlue\t0-255\t0-100%\n" + rest.format(4, 5))
    assert (slots(still.modes[0])[4], whys(still)) == (("macro-speed", [5]), [])
    turning = drafted(MIX + "3\tPan\t0-255\t0-540°\n4\tTilt\t0-255\t0-270°\n" + rest.format(5, 6))
    assert any("Speed" in why for why in whys(turning))


def test_words_of_a_lone_range_stay_as_printed_beside_their_span():
    (mode,) = drafted(MIX + "3\tMaster\t0-255\tDims all emitters, 0-100%\n").modes
    assert short(mode.parameters[2])[2] == [(0, 255, "Dims all emitters, 0-100%")]


def test_warm_beside_cool_is_a_pair_of_whites_and_alone_is_not_sure():
    table = "Channel\tControl\tValue\n1\tDimmer\t0-255\n2\tWarm\t0-255\n"
    document = drafted(table + "3\tCool\t0-255\n")
    assert slots(document.modes[0])[1:] == [("warm-white", [2]), ("cool-white", [3])]
    assert not whys(document)
    assert whys(drafted(table))


def test_none_is_a_choice_where_one_setting_is_chosen():
    """Of the programs in a slot, None is no program; of the smoothings, it is a way to be smoothed."""
    rest = "\t0-99\tNone\n\t\t100-255\tLong\n"
    (mode,) = drafted(f"{MIX}3\tSmoothing{rest}4\tMacro{rest}").modes
    smoothing, macro = (named(mode, word).ranges[0] for word in ("smoothing", "macro"))
    assert (smoothing.does, smoothing.sets, macro.does, macro.sets) == (
        *(None, {"smoothing": "none"}, "nothing", None),
    )


def test_cyan_beside_red_and_blue_is_an_emitter():
    rest = "2\tCyan\t0-255\t0-100%\n3\tBlue\t0-255\t0-100%\n"
    table = MIX.split("2\t")[0] + rest
    assert slots(drafted(table).modes[0])[1] == ("cyan-emitter", [2])


def test_a_scene_that_imitates_is_an_effect_and_its_speed_is_the_effects():
    """Candles and lightning are imitated; scenes that only have numbers may be anything."""
    text = "Slot\tFunction\tValue\tMeaning\n1\tDimmer\t0-255\t\n2\tScene\t0-99\t{0}\n"
    text += "\t\t100-199\t{1}\n\t\t200-255\t{2}\n"
    speed = "3\tScene speed\t0-255\tslow to fast\n"
    document = drafted(text.format("None", "Campfire", "Lightning") + speed)
    assert slots(document.modes[0])[1:] == [("effect", [2]), ("effect-speed", [3])]
    assert document.doubts == []
    assert whys(drafted(text.format("One", "Two", "Three")), "/modes/0/parameters/1")


def test_names_of_blades_motors_and_times_of_fading():
    text = "Kanal\tFunktion\tWert\tWirkung\n1\tStreuwinkel\t0-255\t8-40°\n2\tFadedauer\t0-255\t0-9 s\n"
    text += "3\tMotordrehung\t0-127\tStopp\n\t\t128-255\tlangsam bis schnell\n"
    document = drafted(text)
    assert [word for word, _ in slots(document.modes[0])] == ["zoom", "dimmer-fade-time", "motor-speed"]
    assert document.doubts == []
