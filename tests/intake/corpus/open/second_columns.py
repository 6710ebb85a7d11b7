"""A rotating effect whose slots stand in two columns across a landscape page."""

from __future__ import annotations

import io

from intake.corpus.content import Made, P
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

FLOWER = (
    k.level("dimmer", "Master dimmer", "0-100%", also=("intensity-master",)),
    P(("strobe", "shutter"), "Strobe", ranges=(k.out(0, 7, "No strobe"), k.flash(8, 255, "Slow to fast"))),
    *(
        k.level(word, f"{name} {n}", "0-100%")
        for n in (1, 2, 3)
        for word, name in (
            ("red", "Red"),
            ("green", "Green"),
            ("blue", "Blue"),
            ("white", "White"),
            ("amber", "Amber"),
        )
    ),
    P(
        ("macro", "effect"),
        "Auto show",
        ranges=(
            k.nothing(0, 15, "No show"),
            *(k.runs(16 + 40 * n, 55 + 40 * n, f"Show {n + 1}") for n in range(6)),
        ),
    ),
    P(("macro-speed", "effect-speed"), "Show speed", text="Slow to fast"),
    P(
        ("motor-speed", "other", "gobo-rotation", "roll-rotation", "mirror-rotation"),
        "Motor",
        ranges=(
            k.stop(0, 9, "Stop"),
            k.spin(10, 131, "Clockwise, slow to fast"),
            k.spin(132, 255, "Counterclockwise, slow to fast"),
        ),
        doubt="may",
        why="a motor of no stated kind",
    ),
)
FLOWER_SEATS = k.seat(FLOWER, " ".join(map(str, range(1, 21))))


@chart("second-flower", "two columns of slots across a page", "pdf", "en", "Bellhurst", "Teasel 3")
def flower(seed: int) -> Made:
    from reportlab.pdfgen.canvas import Canvas

    kept = io.BytesIO()
    page = Canvas(kept, pagesize=(842, 595), invariant=1)
    page.setFont("Helvetica-Bold", 14)
    page.drawString(40, 550, "Teasel 3 DMX table")
    lines = k.lines(FLOWER_SEATS)
    for left, part in ((40, lines[:13]), (440, lines[13:])):
        rows: list[tuple[str, ...]] = []
        for line in part:
            for n, (lo, hi, text) in enumerate(line.rows):
                rows.append((*((f"CH{line.slot}", line.name) if n == 0 else ("", "")), k.zeros(lo, hi), text))
        columns = (left, left + 45, left + 145, left + 205)
        y = 520.0
        for number, row in enumerate([("Channel", "Function", "Value", "Description"), *rows]):
            page.setFont("Helvetica-Bold" if number == 0 else "Helvetica", 8.5)
            if row[0]:
                page.line(left, y + 12, left + 360, y + 12)
            for x, text in zip(columns, row, strict=True):
                page.drawString(x + 3, y + 2, text)
            y -= 16
        page.line(left, y + 12, left + 360, y + 12)
        for x in (*columns, left + 360):
            page.line(x, 532, x, y + 12)
    page.save()
    return k.made("Bellhurst", "Teasel 3", [k.mode(FLOWER_SEATS)], kept.getvalue())
