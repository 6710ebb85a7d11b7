"""Open traps 1 to 5, 9, 10, 14 as pasted text: the truth says what is safe."""

from __future__ import annotations

from dataclasses import replace

from intake.corpus.content import M, Made, P, R, span, truth
from intake.corpus.registry import chart

DIMMER = P(("dimmer",), "Dimmer", text="0-100 %", spans=(span(0, 100, "%"),))


def pasted(maker: str, model: str, text: str, footprint: int, *params: P, doubt: str | None = None) -> Made:
    """A text with its one untitled mode; `doubt` is why the whole mode may be doubted."""
    modes = [M("", (), footprint, params)]
    return Made(text.encode(), truth(maker, model, modes, {0: ("may", doubt)} if doubt else None))


@chart("dash-lost", "collapsed columns", "txt", "en", "Nubberly", "Trap 1", trap=1)
def dash_lost(seed: int) -> Made:
    text = """DMX chart
Channel Value Function
1 000 255 Dimmer
2 Shutter
000 011 Closed
012 047 Ramp
048 255 Open
3 000 255 Red
"""
    why = "the dash is lost"
    shutter = P(
        ("shutter", "strobe"),
        "Shutter",
        (2,),
        doubt="must",
        why=why,
        ranges=(R(0, 11, "Closed", does="closed"), R(12, 47, "Ramp"), R(48, 255, "Open", does="open")),
    )
    # 000 255 can be nothing but the whole range: a doubt there is allowed and not due.
    dimmer, red = (
        replace(DIMMER.at(1), text="", spans=(), doubt="may", why=why),
        P(("red",), "Red", (3,), doubt="may", why=why),
    )
    return pasted("Nubberly", "Trap 1", text, 3, dimmer, shutter, red)


@chart("columns-detached", "detached columns", "txt", "en", "Nubberly", "Trap 2", trap=2)
def columns_detached(seed: int) -> Made:
    text = """DMX chart
Channel  Value
1  0-255
2
000-009
010-127
128-255

Function
Dimmer
Shutter
Closed
Strobe, slow to fast
Pulse effect
Open
"""
    why = "three ranges and, later, four names"
    shutter = P(("shutter", "strobe"), "Shutter", (2,), doubt="must", why=why)
    return pasted(
        "Nubberly", "Trap 2", text, 2, replace(DIMMER.at(1), text="", spans=(), doubt="may", why=why), shutter
    )


@chart("number-after", "collapsed columns", "txt", "en", "Nubberly", "Trap 3", trap=3)
def number_after(seed: int) -> Made:
    text = """DMX chart

Channel   Value     Function
   6      000-255   Dimmer
          000-019   Idle
   7
          020-255   Sweep
          000-127   Prism out
   8
          128-255   Prism in
"""
    sweep = P(
        ("other", "macro", "effect", "control"),
        "7",
        (7,),
        doubt="may",
        why="no name is printed, and the number stands below",
        ranges=(R(0, 19, "Idle", may={"does": ("nothing",)}), R(20, 255, "Sweep", may={"does": ("runs",)})),
    )
    prism = P(
        ("prism",),
        "8",
        (8,),
        doubt="may",
        why="no name is printed, and the number stands below",
        ranges=(R(0, 127, "Prism out"), R(128, 255, "Prism in")),
    )
    why = "slots 1 to 5 are missing"
    return pasted(
        "Nubberly",
        "Trap 3",
        text,
        8,
        replace(DIMMER.at(6), text="", spans=(), doubt="may", why=why),
        sweep,
        prism,
        doubt=why,
    )


@chart("msb-lsb-thousands", "MSB and LSB number columns", "txt", "en", "Nubberly", "Trap 4", trap=4)
def msb_lsb_thousands(seed: int) -> Made:
    text = """DMX chart

MSB   LSB   Range         Function
2     1     0 to 65,535   Pan
4     3     0 to 65,535   Tilt
5     -     0 to 255      Dimmer
7     6     0 to 65,535   Zoom
"""
    made = [
        P((word,), word.title(), slots)
        for word, slots in (("pan", (2, 1)), ("tilt", (4, 3)), ("dimmer", (5,)), ("zoom", (7, 6)))
    ]
    return pasted(
        "Nubberly", "Trap 4", text, 7, *(replace(p, words=(*p.words, *DIMMER.words[1:])) for p in made)
    )


@chart("fine-far", "aligned columns", "txt", "en", "Nubberly", "Trap 5", trap=5)
def fine_far(seed: int) -> Made:
    text = """DMX chart

CH   Function      Value
1    Dimmer        0-255
2    Pan           0-255
3    Tilt          0-255
4    Zoom          0-255
5    Red           0-255
6    Green         0-255
7    Blue          0-255
8    Dimmer fine   0-255
9    Pan fine      0-255
10   Tilt fine     0-255
"""
    slots = {
        "dimmer": (1, 8),
        "pan": (2, 9),
        "tilt": (3, 10),
        "zoom": (4,),
        "red": (5,),
        "green": (6,),
        "blue": (7,),
    }
    return pasted(
        "Nubberly", "Trap 5", text, 10, *(P((word,), word.title(), at) for word, at in slots.items())
    )


@chart("overlap-gap", "aligned columns", "txt", "en", "Nubberly", "Trap 9", trap=9)
def overlap_gap(seed: int) -> Made:
    text = """DMX chart

CH   Function   Value     Description
1    Dimmer     0-255     0-100 %
2    Strobe     0-14      Off
                10-250    Pulse
3    Shutter    0-31      Closed
                40-255    Open
"""
    off = R(0, 14, "Off", may={"does": ("nothing", "closed", "open", "stop")})
    strobe = P(
        ("strobe", "shutter"),
        "Strobe",
        (2,),
        ranges=(off, R(10, 250, "Pulse")),
        doubt="must",
        why="they overlap, and 251-255 is missing",
    )
    ranges = (R(0, 31, "Closed", does="closed"), R(40, 255, "Open", does="open"))
    shutter = P(("shutter",), "Shutter", (3,), ranges=ranges, doubt="must", why="32-39 is missing")
    return pasted("Nubberly", "Trap 9", text, 3, DIMMER.at(1), strobe, shutter)


@chart("zero-absent", "aligned columns", "txt", "de", "Feldnarr", "Trap 10", trap=10)
def zero_absent(seed: int) -> Made:
    text = """DMX-Protokoll

Kanal   Funktion   Wert      Beschreibung
1       Dimmer     0-255     0-100 %
2       Effekt     1-90      Dauerlicht
                   91-180    Feuer
                   181-255   Kerze
"""
    ranges = tuple(
        R(a, z, t, may={"does": ("runs", "open")})
        for a, z, t in ((1, 90, "Dauerlicht"), (91, 180, "Feuer"), (181, 255, "Kerze"))
    )
    effect = P(("effect",), "Effekt", (2,), ranges=ranges, doubt="must", why="nothing is printed for 0")
    return pasted("Feldnarr", "Trap 10", text, 2, DIMMER.at(1), effect)


@chart("elision", "aligned columns", "txt", "en", "Nubberly", "Trap 14", trap=14)
def elision(seed: int) -> Made:
    lines = """DMX chart

CH   Function     Value   Description
1    Dimmer       0-255   0-100 %
2    Macro        0       No function
                  1       step -62
                  2       step -61
                  3       step -60
                  :
                  62      step -1
                  63-255  No function
"""
    steps = [R(n, n, f"step {n - 63}", may={"does": ("runs",)}) for n in range(1, 63)]
    ranges = (R(0, 0, "No function", does="nothing"), *steps, R(63, 255, "No function", does="nothing"))
    macro = P(("macro",), "Macro", (2,), ranges=ranges, doubt="may", why="4 to 61 are derived")
    return pasted("Nubberly", "Trap 14", lines, 2, DIMMER.at(1), macro)
