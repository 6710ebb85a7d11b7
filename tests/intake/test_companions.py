"""Names of two uses are settled by the names beside them, and by nothing else."""

from __future__ import annotations

from intake.drafted import drafted, slots

TITLES = "Slot\tFunction\tValue\tDescription\n"


def chart(*names: str) -> str:
    return TITLES + "".join(f"{n}\t{name}\t0-255\tLow to high\n" for n, name in enumerate(names, 1))


def test_warm_beside_cool_is_a_white():
    """Warm alone may be a correction."""
    both = drafted(chart("Warm", "Cool"))
    assert slots(both.modes[0]) == [("warm-white", [1]), ("cool-white", [2])]
    assert not both.doubts
    assert drafted(chart("Dimmer", "Warm")).doubts


def test_what_is_beside_a_laser_is_of_its_figure():
    """A laser has no wheels; in a moving head the same names keep their doubts."""
    names = ("Pattern", "Size", "Rotation", "X position", "Y position", "Color")
    laser = drafted(chart("Laser power", *names))
    assert [word for word, _ in slots(laser.modes[0])] == [
        "laser-output",
        "laser-pattern",
        "image-scale",
        "image-rotation",
        "image-position-x",
        "image-position-y",
        "color-preset",
    ]
    assert not laser.doubts
    head = drafted(chart("Pan", "Tilt", "Dimmer", *names))
    assert "laser-pattern" not in dict(slots(head.modes[0]))
    assert head.doubts


def test_a_tempo_behind_a_program_is_its_speed():
    """Where it is counted in beats it stays a tempo, and is asked about."""
    program = "2\tProgram\t0-9\tOff\n\t\t10-127\tFade\n\t\t128-255\tJump\n"
    plain = drafted(f"{TITLES}1\tDimmer\t0-255\t0-100 %\n{program}3\tTempo\t0-255\tSlow to fast\n")
    assert dict(slots(plain.modes[0]))["macro-speed"] == [3]
    assert not plain.doubts
    counted = drafted(f"{TITLES}1\tDimmer\t0-255\t0-100 %\n{program}3\tTempo\t0-255\t30 to 240 bpm\n")
    assert dict(slots(counted.modes[0]))["tempo"] == [3]
