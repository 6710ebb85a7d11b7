"""Plain text of three makers: a pool light, a blinder of two lamps and a snow machine."""

from __future__ import annotations

from intake.corpus.aside import eighth_b_kit as e
from intake.corpus.content import M, Made
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

LAGOON = x.params("""
red: Red = 0% to 100% [0 100 %]
green: Green = 0% to 100% [0 100 %]
blue: Blue = 0% to 100% [0 100 %]
white: White = 0% to 100% [0 100 %]
dimmer intensity-master: Master = 0% to 100% [0 100 %]
strobe shutter: Strobe
  0-15 out: Steady | 16-255 flash: Slow to fast
color-macro macro effect: Programs
  0-15 nothing: No program | 16-75 perhaps: Slow fade | 76-135 perhaps: Waves | 136-195 perhaps: Sunset
  196-255 perhaps: All colors
""")
LAGOON_PLANS = (("RGBW mode, 4 channels", "1 2 3 4 - - -"), ("Full mode, 7 channels", "1 2 3 4 5 6 7"))


@chart(
    "eighth-b-lagoon",
    "columns of one width, two modes under titles with a line of dashes",
    "txt",
    "en",
    "Merrow Underwater Lights",
    "Lagoon 36",
)
def lagoon(seed: int) -> Made:
    out = ["Lagoon 36 - DMX512 information", "==============================", ""]
    modes: list[M] = []
    for title, plan in LAGOON_PLANS:
        name, size = title.split(", ")
        names = (name, name.split()[0], size, f"{name.split()[0]}, {size}")
        modes.append(k.mode(k.seat(LAGOON, plan), title, *names))
        rows = [["Ch", "Function", "DMX value", "Description"]]
        rows += [
            [str(one) for one in row]
            for row in s.body(modes[-1].params, "slot name value text", e.between(" - ", 3))
        ]
        lines = x.columns(rows, (6, 14, 14, 40))
        out += [title, "-" * len(title), *lines, ""]
    out += ["Do not operate out of the water for more than 5 minutes."]
    return k.made("Merrow Underwater Lights", "Lagoon 36", modes, "\n".join(out) + "\n")


DOPPEL = s.row_of(
    x.params("""
dimmer: Dimmer links = 0-100 % [0 100 %]
dimmer: Dimmer rechts = 0-100 % [0 100 %]
strobe shutter: Blitz
  0-10 out: kein Blitz | 11-255 flash: Blitz langsam bis schnell
dimmer-curve: Dimmerkennlinie
  0-127 curve: linear | 128-255 curve: Halogen
""")
)


@chart(
    "eighth-b-doppel",
    "tabs between cells, one table, a heading with a number and a page's foot",
    "txt",
    "de",
    "Hagebutt Veranstaltungstechnik",
    "Doppelblender 2",
)
def doppel(seed: int) -> Made:
    rows = [["DMX-Kanal", "Funktion", "DMX-Wert", "Beschreibung"]]
    rows += [[str(one) for one in row] for row in s.body(DOPPEL, "slot name value text", e.between("-"))]
    out = ["7 DMX-Betrieb", "Das Gerät belegt 4 DMX-Kanäle.", "", *("\t".join(row) for row in rows)]
    out += ["", "Bedienungsanleitung Doppelblender 2", "Seite 11"]
    mode = k.mode(DOPPEL)
    return k.made("Hagebutt Veranstaltungstechnik", "Doppelblender 2", [mode], "\r\n".join(out) + "\r\n")


DRIFT = s.row_of(
    x.params("""
fluid-pump fog-output other fountain-pump: SNOW OUTPUT
  0-5 off: Off | 6-255: Low to high
fan: BLOWER
  0-5 off: Off | 6-255: Slow to fast
reserved: NOT USED
""")
)


@chart(
    "eighth-b-drift",
    "a heading for each channel, its values indented below",
    "txt",
    "en",
    "Ptarmigan Effects Supply",
    "Drift 1200",
)
def drift(seed: int) -> Made:
    out = ["DRIFT 1200 DMX CONTROL", "The machine uses 3 DMX channels.", ""]
    for line in k.lines(DRIFT):
        out.append(f"CHANNEL {line.slot}: {line.name}")
        out += [f"    {lo:03} - {hi:03}   {text}".rstrip() for lo, hi, text in line.rows]
        out.append("")
    out += ["Fill the tank with snow fluid only."]
    return k.made("Ptarmigan Effects Supply", "Drift 1200", [k.mode(DRIFT)], "\n".join(out) + "\n")
