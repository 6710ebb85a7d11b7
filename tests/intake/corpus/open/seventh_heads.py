"""Moving heads in PDFs, more of them: a framing profile, a wash with a ring, and a follow spot."""

from __future__ import annotations

from typing import Any

from intake.corpus.content import M, Made
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

PROSCENIUM = (
    (
        "INTENSITY",
        """
dimmer: Dimmer + Dimmer fine = Closed to open
shutter strobe: Shutter
  0-7 closed: Closed | 8-15 open: Open | 16-131 flash: Strobe 1 Hz to 12 Hz [1 12 Hz]
  132-167 pulse: Opening pulse, slow to fast | 168-203 pulse: Closing pulse, slow to fast
  204-239 random: Random strobe, slow to fast | 240-255 open: Open
""",
    ),
    (
        "POSITION",
        """
pan: Pan + Pan fine = 0° to 540° [0 540 deg]
tilt: Tilt + Tilt fine = 0° to 260° [0 260 deg]
movement-speed: Position speed = Fast to slow
""",
    ),
    (
        "COLOR",
        """
cyan: Cyan + Cyan fine = Out to full
magenta: Magenta + Magenta fine = Out to full
yellow: Yellow + Yellow fine = Out to full
warm-correction color-correction: CTO = Out to full
color-wheel: Color wheel
  0-15 white: Open | 16-31: Deep red | 32-47: Deep blue | 48-63: Green | 64-79: Minus green | 80-95: Congo
  96-127: CRI filter | 128-187 rainbow: Spin forward, fast to slow | 188-195 stop: Stop
  196-255 rainbow: Spin backward, slow to fast
""",
    ),
    (
        "BEAM",
        """
rotating-gobo-wheel gobo-wheel: Gobo
  0-19 white: Open | 20-54: Breakup | 55-89: Leaves | 90-124: Window | 125-159: Water | 160-194: Prison bars
  195-255: Clouds
gobo-index: Gobo angle + Gobo angle fine = 0° to 360° [0 360 deg]
frost: Light frost = Out to full
frost: Heavy frost = Out to full
iris: Iris = Open to closed
zoom: Zoom + Zoom fine = 6° to 52° [6 52 deg]
focus: Focus + Focus fine = Near to far
""",
    ),
    (
        "SHAPING",
        "\n".join(
            f"""
blade-position: Blade {n} insert = Out to full
blade-angle: Blade {n} angle = -30° to 30° [-30 30 deg]
""".strip()
            for n in range(1, 5)
        )
        + """
framing-rotation: Frame rotation + Frame rotation fine = -60° to 60° [-60 60 deg]
""",
    ),
    (
        "CONTROL",
        """
control: Control
  0-49 nothing: Idle | 50-59 reset: Reset all, hold 3 s {hold 3}
  60-69 reset: Reset position, hold 3 s {hold 3} | 70-79 reset: Reset shaping, hold 3 s {hold 3}
  80-255 nothing: Idle
""",
    ),
)


@chart(
    "seventh-proscenium",
    "groups as bands across the table, 37 slots over pages, head repeated",
    "pdf",
    "en",
    "Thornbridge Automated",
    "Proscenium 800 P",
)
def proscenium(seed: int) -> Made:
    rows = [["Channel", "Parameter", "DMX", "Function"]]
    every: list[Any] = []
    for group, text in PROSCENIUM:
        seated = x.run(x.params(text), 1 + sum(len(p.slots) for p in every))
        every += seated
        rows.append([group, "", "", ""])
        rows += f.body(seated, "slot name value text", k.dash, "Fine")
    marks: list[tuple[Any, ...]] = [("LINEBELOW", (0, 0), (-1, 0), 1, "#000000")]
    marks += [*s.above(rows, "#a0a0a0", 0.3), *s.across(rows, "#cdd8cf")]
    font = f.letter("serif")
    parts = [
        f.say("DMX protocol", 16, f"{font}-Bold", 8),
        f.say(f"The Proscenium 800 P uses {every[-1].slots[-1]} consecutive channels.", 9, font),
        f.grid(rows, [50, 130, 80, 220], *marks, font=font, size=8),
    ]
    data = f.flow(parts, "thornbridge automated", head="Proscenium 800 P technical manual")
    return k.made("Thornbridge Automated", "Proscenium 800 P", [k.mode(every)], data)


RING = [
    p
    for n in range(1, 7)
    for p in x.params(f"""
red: Ring {n} red = 0-100% [0 100 %]
green: Ring {n} green = 0-100% [0 100 %]
blue: Ring {n} blue = 0-100% [0 100 %]
""")
]
HALO = x.params("""
pan: PAN + PAN FINE = 0-540° [0 540 deg]
tilt: TILT + TILT FINE = 0-200° [0 200 deg]
dimmer intensity-master: DIMMER = 0-100% [0 100 %]
shutter strobe: SHUTTER
  0-31 closed: Closed | 32-63 open: Open | 64-95 flash: Strobe, slow to fast | 96-127 open: Open
  128-159 pulse: Pulse, slow to fast | 160-191 open: Open | 192-223 random: Random, slow to fast
  224-255 open: Open
red: RED = 0-100% [0 100 %]
green: GREEN = 0-100% [0 100 %]
blue: BLUE = 0-100% [0 100 %]
white: WHITE = 0-100% [0 100 %]
zoom: ZOOM = Wide to narrow
pixel-effect pixel-macro effect macro: RING EFFECT
  0-9 nothing: Off | 10-89 runs: Chase | 90-169 runs: Pulse | 170-255 runs: Sparkle
""")
HALO_PLANS = (
    ("STANDARD", [*HALO], "1/2 3/4 5 6 7 8 9 10 11 12"),
    ("EXTENDED", [*HALO[:9], *RING], "1/2 3/4 5 6 7 8 9 10 11 " + " ".join(map(str, range(12, 30)))),
)


@chart(
    "seventh-halo",
    "names in bold capitals above their values in the last column",
    "pdf",
    "en",
    "Pyrrho Scenic",
    "Halo Ring 7",
)
def halo(seed: int) -> Made:
    sheet = x.Sheet(head="Pyrrho Scenic Ltd", foot="Halo Ring 7 user guide, issue 3", paper=(612, 792))
    sheet.say("DMX channel assignments", 14, True, 8)
    modes: list[M] = []
    for name, params, plan in HALO_PLANS:
        if modes:
            sheet.turn()
        seated = k.seat(params, plan)
        count = max(slot for p in seated for slot in p.slots)
        modes.append(f.named(seated, f"{name} MODE", f"{count} CHANNELS", joint=" - "))
        modes[-1] = s.titled(seated, modes[-1].title, *modes[-1].names, name)
        sheet.say(modes[-1].title, 11, True, 3)
        rows = [["Channel", "Value", "Function"], *s.under(seated, k.dash, "Fine control")]
        sheet.table(rows, (70, 90, 260), "slots")
    sheet.say("Ring pixels are counted clockwise from the connector side.", 8)
    return k.made("Pyrrho Scenic", "Halo Ring 7", modes, sheet.data())


SKYLARK = x.params("""
dimmer: Dimmer + Dimmer fine = Out to full [? 0 100 %]
shutter strobe: Shutter
  0-9 closed: Closed | 10-19 open: Open | 20-239 flash: Strobe, slow to fast | 240-255 open: Open
iris: Iris = Closed to open [? 0 100 %]
zoom: Zoom = 4° to 12° [4 12 deg]
focus: Focus = Near to far [? 0 100 %]
frost: Frost
  0-127 out: Out | 128-255: In
color-wheel: Color
  0-31 white: Open | 32-63: Quarter CTO | 64-95: Half CTO | 96-127: Full CTO | 128-159: Straw
  160-191: Pink | 192-223: Lavender | 224-255: Steel blue
fan-mode fan: Fan
  0-127 fan: Normal | 128-255 fan: Theater
""")


@chart(
    "seventh-skylark",
    "slots as CH with a number, percent columns beside values, a frame with light lines",
    "pdf",
    "en",
    "Skylark Followspots",
    "FS 600",
)
def skylark(seed: int) -> Made:
    seated = x.run(SKYLARK)
    rows = [["DMX", "Function", "Decimal", "Percent", "Action"]]
    for row in f.body(seated, "slot name value share text", k.hyphen, "Fine step of CH 1"):
        rows.append([f"CH {row[0]}" if row[0] else "", *row[1:]])
    marks: list[tuple[Any, ...]] = [("BOX", (0, 0), (-1, -1), 1, "#22324a")]
    marks += [("INNERGRID", (0, 0), (-1, -1), 0.25, "#b0b8c4"), ("BACKGROUND", (0, 0), (-1, 0), "#d5dce8")]
    parts = [
        f.say("Remote control by DMX512", 14, "Helvetica-Bold", 8),
        f.say(
            "The operator may take over at any time: move the DMX switch on the rear panel to LOCAL. The "
            "fixture listens to nine channels from its start address."
        ),
        f.grid(rows, [44, 110, 70, 70, 150], *marks, *f.merges(rows, (0, 1))),
        f.say("Lamp and power", 12, "Helvetica-Bold"),
        f.grid([["Item", "Value"], ["Power", "720 W"], ["LED life", "30000 h"], ["Mass", "19 kg"]], [90, 90]),
    ]
    data = f.flow(parts, "FS 600 owner's manual", (612, 792), "Skylark Followspots")
    return k.made("Skylark Followspots", "FS 600", [k.mode(seated)], data)
