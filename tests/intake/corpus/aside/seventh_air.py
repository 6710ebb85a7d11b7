"""Haze, snow and laser light in PDFs: three machines that call for care."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from intake.corpus.content import M, Made
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

MISTRAL = x.params("""
haze-output fog-output fluid-pump: Haze
  0-9 off: Off | 10-255: 5% to 100% [5 100 %]
fan: Fan
  0-9 off: Off | 10-255: 20% to 100% [20 100 %]
""")


@chart(
    "seventh-mistral",
    "two slots in a small table amid warnings and a table of messages",
    "pdf",
    "en",
    "Nimbus & Co.",
    "Mistral 3",
)
def mistral(seed: int) -> Made:
    seated = x.run(MISTRAL)
    font = f.letter("stix")
    rows = [["DMX channel", "Function", "Value", "Output"], *f.body(seated, "slot name value text")]
    marks: list[tuple[Any, ...]] = [("GRID", (0, 0), (-1, -1), 0.7, "#205060"), *f.merges(rows, (0, 1))]
    messages = [["Message", "Meaning"], ["HEAT", "Warming up, wait 2 minutes"], ["FILL", "Tank is empty"]]
    parts = [
        f.say("5 Operation with DMX", 14, f"{font}-Bold", 8),
        f.say("Check with the venue whether smoke alarms must be switched off by its staff.", 10, font),
        f.say("Set the DMX address with + and -. The Mistral 3 occupies two channels.", 10, font),
        f.grid(rows, [80, 90, 80, 110], *marks, font=font, size=9.5),
        f.say("6 Messages", 14, f"{font}-Bold"),
        f.grid(messages, [80, 190], ("GRID", (0, 0), (-1, -1), 0.7, "#205060"), font=font, size=9.5),
        f.say("7 Care", 14, f"{font}-Bold"),
        f.say("Rinse with distilled water after every 40 hours of use.", 10, font),
    ]
    data = f.flow(parts, "Nimbus & Co.", (420, 595), "Mistral 3 hazer")
    return k.made("Nimbus & Co.", "Mistral 3", [k.mode(seated)], data)


FLURRY = x.params("""
fluid-pump other fog-output power: Snow output = 0-100% [0 100 %]
fan: Blower speed = 0-100% [0 100 %]
output-duration: Run time = 1-60 s [1 60 s]
output-interval: Pause time = 5-300 s [5 300 s]
""")
TIMED = ({"parameter": "fluid-pump", "from": 10, "to": 255},)
FLURRY_NOTE = "a note under the table gives a condition, and no word is made for snow"


@chart(
    "seventh-flurry",
    "two modes, a note on a slot under the table",
    "pdf",
    "en",
    "Fairground Effects",
    "Flurry S",
)
def flurry(seed: int) -> Made:
    snow, blower, *times = FLURRY
    params = [
        replace(snow, doubt="may", why=FLURRY_NOTE),
        blower,
        *(replace(p, when=TIMED, doubt="may", why=FLURRY_NOTE) for p in times),
    ]
    pdf = f.book("serif", "Fairground Effects", "Flurry S snow machine, page", f.A5)
    pdf.say("DMX mode", 13, True)
    modes: list[M] = []
    for name, plan in (("2-slot mode", "1 2 - -"), ("4-slot mode", "1 2 3 4")):
        seated = k.seat(params, plan)
        modes.append(s.titled(seated, name, name.removesuffix(" mode")))
        pdf.say(name, 10.5, True, 1)
        rows = [["Slot", "Function", "DMX", "Range"], *f.body(seated, "slot name value text", s.padded)]
        pdf.grid(rows, (14, 40, 26, 32), size=8.5)
    pdf.say("Run time and pause time act only while slot 1 is at 10 or more.", 8.5)
    pdf.say("Snow fluid makes floors slippery. Keep the fall area free of people who dance.", 8.5)
    return k.made("Fairground Effects", "Flurry S", modes, bytes(pdf.output()))


SABLE = x.params("""
laser-output control: Laser
  0-63 closed: Laser off | 64-127 runs: Automatic show | 128-191 sound: Sound show | 192-255: DMX control
laser-pattern: Pattern
  0-31: Circle | 32-63: Square | 64-95: Triangle | 96-127: Line | 128-159: Cross | 160-191: Wave
  192-223: Star | 224-255: Dots
image-scale zoom: Size = Small to large
image-rotation: Rotation
  0-127 index image: Angle 0° to 360° [0 360 deg] | 128-191 spin image: Clockwise, slow to fast
  192-255 spin image: Counterclockwise, slow to fast
image-position-x: Horizontal position = Left to right
image-position-y: Vertical position = Down to up
color-preset color-wheel virtual-color-wheel color-macro swatch: Color
  0-31: Red | 32-63: Green | 64-95: Blue | 96-127: Yellow | 128-159: Cyan | 160-191: Violet
  192-223: White | 224-255 perhaps: Color change
""")
LASER_MAY: dict[str, dict[str, Any]] = {
    "Laser off": {"hazard": ("blackout", "laser"), "does": ("nothing", "stop", "closed")},
    "Automatic show": {"hazard": ("laser",)},
    "Sound show": {"hazard": ("laser",), "does": ("runs", "random")},
    "DMX control": {"hazard": ("laser",)},
    "Angle 0° to 360°": {"parameter": ("image-rotation",)},
}


@chart(
    "seventh-sable",
    "a ruled table in a landscape booklet, values in two columns with zeros",
    "pdf",
    "en",
    "Redline Optics",
    "Sable 2",
)
def sable(seed: int) -> Made:
    params = [
        replace(p, ranges=tuple(k.optional(r, **LASER_MAY.get(r.text, {})) for r in p.ranges)) for p in SABLE
    ]
    seated = x.run(params)
    pdf = f.book("vera", "Sable 2 show laser, class 4", "Redline Optics", f.A5, across=True)
    pdf.say("DMX table, 7 channels", 13, True)
    pdf.say(
        "Audience scanning is not allowed. Stop the laser with the key switch or the remote interlock.", 8
    )
    rows = [["Channel", "Function", "From", "To", "Description"]]
    for row in f.body(seated, "slot name low high text"):
        rows.append([*row[:2], *(f"{int(one):03}" for one in row[2:4]), row[4]])
    pdf.grid(rows, (20, 44, 18, 18, 66), (0, 1), 8)
    return k.made("Redline Optics", "Sable 2", [k.mode(seated)], bytes(pdf.output()))
