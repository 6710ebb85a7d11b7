"""The cautions that stand on every sheet, once and plainly."""

CREW = (
    "Work at height, electrical work and rigging belong to qualified people; local codes come first. "
    "Warn the floor before a head moves, a lamp strikes or a light goes out; nobody on a ladder relies "
    "on it. Values are copied from records: check them on the fixture before a take."
)

CONTROL = (
    "Some of these values make a fixture move, go dark, strobe or get hot, and a wrong neighbor value does "
    "something else. Check on the fixture, out of a take, with people clear of it and the floor warned; "
    "lasers, ultraviolet light, flames and hoists are run by qualified people within local codes, never from "
    "this sheet alone."
)

STROBE = (
    "This mode can flash: flashes can set off seizures and hide steps and edges. Warn everyone before any "
    "strobe, post it at the door, and keep to local rules."
)

SPARE = (
    "Let qualified people hang, connect and disconnect it: power off, wait until it has cooled, safety bond "
    "first. It may move, strike or reset when it gets power or data: keep people clear. Local codes come "
    "first."
)
