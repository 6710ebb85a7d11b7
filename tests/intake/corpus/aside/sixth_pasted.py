"""More charts copied out of PDF viewers: a line a slot, and merged cells that come out in the middle."""

from __future__ import annotations

from dataclasses import replace

from intake.corpus.content import Made
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

SQUALL = x.params("""
fan: Fan speed
  0-9 off: off | 10-255: 10-100% [10 100 %]
haze-output fog-output: Haze output
  0-9 off: off | 10-255: 1-100% [1 100 %]
movement-mode movement-macro control other effect macro pan: Swing
  0-84 stop: fixed | 85-169 bounce: narrow swing | 170-255 bounce: wide swing
movement-speed pan-speed movement-macro-speed effect-speed macro-speed other: Swing speed = slow to fast
""")


@chart(
    "sixth-paste-squall",
    "a line a slot, its ranges with equals signs and semicolons",
    "txt",
    "en",
    "Marlpit Effects",
    "Squall 2",
)
def squall(seed: int) -> Made:
    seated = x.run(SQUALL)
    out = ["Squall 2 wind and haze machine", "DMX channels (4):", ""]
    for line in k.lines(seated):
        said = "; ".join(f"{k.hyphen(lo, hi)} = {text}" for lo, hi, text in line.rows)
        out.append(f"Ch {line.slot}  {line.name}: {said}")
    out += ["", "Allow 5 minutes for warm-up."]
    return k.made("Marlpit Effects", "Squall 2", [k.mode(seated)], "\n".join(out) + "\n")


BAR = x.params("""
intensity-master dimmer: Master dimmer = Dark to bright
red: Red dimmer = Dark to bright
green: Green dimmer = Dark to bright
blue: Blue dimmer = Dark to bright
strobe shutter: Strobe
  0-9 out: No function | 10-129 flash: Strobe slow to fast | 130-255 random: Random strobe slow to fast
macro effect color-macro: Auto program
  0-9 nothing: No function | 10-59 runs: Auto 1 | 60-109 runs: Auto 2 | 110-159 runs: Auto 3
  160-209 runs: Auto 4 | 210-255 sound: Sound control
macro-speed effect-speed color-macro-speed: Program speed = Slow to fast
""")


@chart(
    "sixth-paste-bar",
    "number and name at the middle line of their ranges, as merged cells are copied",
    "txt",
    "en",
    "Jiuyao Stage",
    "JY-1818",
    3,
)
def bar(seed: int) -> Made:
    seated = [
        replace(p, doubt="may", why="the number stands in the middle of its rows") if len(p.ranges) > 2 else p
        for p in x.run(BAR)
    ]
    rows = [["CH", "FUNCTION", "VALUE", "INSTRUCTION"]]
    for line in k.lines(seated):
        middle = len(line.rows) // 2 if len(line.rows) > 2 else 0
        for n, (lo, hi, text) in enumerate(line.rows):
            rows.append(
                [*((f"CH{line.slot}", line.name) if n == middle else ("", "")), k.zeros(lo, hi), text]
            )
    out = ["JY-1818 LED wall washer 7CH mode", "", *x.columns(rows, (6, 18, 12, 40)), "", "Power: 60W"]
    mode = x.mode(seated, "JY-1818 LED wall washer 7CH mode", "7CH mode", "7CH")
    return k.made("Jiuyao Stage", "JY-1818", [mode], "\n".join(out) + "\n")
