"""More open charts in layouts of their own: lists, bars, no titles at all, several values in one cell."""

from __future__ import annotations

from intake.corpus.content import M, Made, R, span, truth
from intake.corpus.grids import Element, Heading, Look, Para, Table
from intake.corpus.open.firsts import DIMMER, FLASH, LEVEL, OPEN, STROBE, grid, p
from intake.corpus.registry import chart
from intake.corpus.writers.pdf_fpdf import fpdf_pdf
from intake.corpus.writers.web import html_page


@chart("list-lines", "a line a slot", "txt", "en", "Wexhollow", "Fen 1")
def list_lines(seed: int) -> Made:
    text = """Fen 1 - DMX protocol, 6 channels

CH1: Dimmer (0-100%)
CH2: Red
CH3: Green
CH4: Blue
CH5: Strobe
  0-9: Off
  10-255: Slow to fast
CH6: Control
  0-99: No function
  100-149: Reset (hold 3 seconds)
  150-255: No function
"""
    mode = M(
        "",
        (),
        6,
        (
            p(DIMMER, "Dimmer", 1, text="0-100%", spans=LEVEL),
            p("red", "Red", 2),
            p("green", "Green", 3),
            p("blue", "Blue", 4),
            p(
                STROBE,
                "Strobe",
                5,
                ranges=(R(0, 9, "Off", may=OPEN), R(10, 255, "Slow to fast", may=FLASH)),
            ),
            p(
                "control",
                "Control",
                6,
                ranges=(
                    R(0, 99, "No function", does="nothing"),
                    R(100, 149, "Reset (hold 3 seconds)", hazard="reset", hold_s=3.0, also=("Reset",)),
                    R(150, 255, "No function", does="nothing"),
                ),
            ),
        ),
    )
    return Made(text.encode(), truth("Wexhollow", "Fen 1", [mode]))


@chart("min-max-home", "from and to columns", "pdf", "en", "Wexhollow", "Ridge 9")
def min_max_home(seed: int) -> Made:
    rows = [
        "1|Pan|0|255|540 degree travel|128",
        "2|Pan fine|0|255||128",
        "3|Shutter|0|31|Closed|32",
        "||32|63|Open|",
        "||64|255|Strobe slow to fast|",
        "4|Zoom|0|255|Narrow to wide|0",
        "5|Frost|0|127|No frost|0",
        "||128|255|Frost in|",
    ]
    table = grid(
        ["Chan.", "Name", "DMX min", "DMX max", "Effect", "Home"], *rows, widths=[16, 34, 22, 22, 60, 20]
    )
    mode = M(
        "",
        (),
        5,
        (
            p(
                "pan",
                "Pan",
                1,
                2,
                text="540 degree travel",
                fine=("Pan fine",),
                default=128,
                fine_default=128,
                spans=(span(0, 540, "deg"), span(-270, 270, "deg"), None),
                doubt="may",
                why="one figure alone",
            ),
            p(
                ("shutter", "strobe"),
                "Shutter",
                3,
                default=32,
                ranges=(
                    R(0, 31, "Closed", does="closed"),
                    R(32, 63, "Open", does="open"),
                    R(64, 255, "Strobe slow to fast", may=FLASH),
                ),
            ),
            p("zoom", "Zoom", 4, text="Narrow to wide", default=0),
            p(
                "frost",
                "Frost",
                5,
                default=0,
                ranges=(
                    R(0, 127, "No frost", may={"does": ("open", "nothing")}),
                    R(128, 255, "Frost in"),
                ),
            ),
        ),
    )
    inner: list[Element] = [Heading("Channel functions"), Table(table, Look("rows", 9))]
    return Made(fpdf_pdf(inner, foot="Wexhollow Ridge 9"), truth("Wexhollow", "Ridge 9", [mode]))


@chart("de-tabs", "slot, function, value, description", "txt", "de", "Grautal", "Kant 5")
def de_tabs(seed: int) -> Made:
    lines = [
        "Kanal\tAufgabe\tDMX-Bereich\tWas geschieht",
        "1\tSchwenken\t0-255\t0-540°",
        "2\tSchwenken fein\t0-255\t",
        "3\tNeigen\t0-255\t0-270°",
        "4\tNeigen fein\t0-255\t",
        "5\tBlende\t0-19\tgeschlossen",
        "\t\t20-24\toffen",
        "\t\t25-255\tBlitze, langsam bis schnell",
        "6\tDimmer\t0-255\t0-100 %",
    ]
    flash = R(25, 255, "Blitze, langsam bis schnell", may=FLASH)
    mode = M(
        "",
        (),
        6,
        (
            p(
                "pan",
                "Schwenken",
                1,
                2,
                text="0-540°",
                spans=(span(0, 540, "deg"),),
                fine=("Schwenken fein",),
            ),
            p("tilt", "Neigen", 3, 4, text="0-270°", spans=(span(0, 270, "deg"),), fine=("Neigen fein",)),
            p(
                ("shutter", "strobe", "iris"),
                "Blende",
                5,
                ranges=(
                    R(0, 19, "geschlossen", does="closed"),
                    R(20, 24, "offen", does="open"),
                    flash,
                ),
                doubt="may",
                why="Blende may be a shutter or an iris",
            ),
            p(DIMMER, "Dimmer", 6, text="0-100 %", spans=LEVEL),
        ),
    )
    return Made("\n".join(lines).encode(), truth("Grautal", "Kant 5", [mode]))


@chart("es-wide-pairs", "5/6 with one wide range", "pdf", "es", "Peñarroya", "Haz 9")
def es_wide_pairs(seed: int) -> Made:
    rows = [
        "1 / 2|Giro (Pan) 16 bits|0 - 65535|0 a 540°",
        "3 / 4|Inclinación (Tilt) 16 bits|0 - 65535|0 a 270°",
        "5|Dimmer|0 - 255|0 a 100 %",
        "6|Iris|0 - 255|De abierto a cerrado",
        "7|Sin uso|0 - 255|",
    ]
    table = grid(["Canal", "Parámetro", "Valores", "Efecto"], *rows, widths=[20, 60, 34, 60])
    mode = M(
        "",
        (),
        7,
        (
            p("pan", "Giro (Pan)", 1, 2, text="0 a 540°", spans=(span(0, 540, "deg"),), wide=True),
            p("tilt", "Inclinación (Tilt)", 3, 4, text="0 a 270°", spans=(span(0, 270, "deg"),), wide=True),
            p(DIMMER, "Dimmer", 5, text="0 a 100 %", spans=LEVEL),
            p("iris", "Iris", 6, text="De abierto a cerrado"),
            p("reserved", "Sin uso", 7),
        ),
    )
    inner: list[Element] = [Heading("Protocolo DMX512"), Table(table, Look("zebra", 9))]
    return Made(fpdf_pdf(inner, foot="Peñarroya Haz 9"), truth("Peñarroya", "Haz 9", [mode]))


@chart("fr-heads", "group label beside rows", "html", "fr", "Vaubrelle", "Orme 4")
def fr_heads(seed: int) -> Made:
    rows, params = [], []
    rows.append("Général|1|Gradateur général|0..255|")
    params.append(p(DIMMER, "Gradateur général", 1))
    at = 1
    for head in range(1, 4):
        for word, label in (("red", "Rouge"), ("green", "Vert"), ("blue", "Bleu")):
            at += 1
            rows.append(f"{f'Tête {head}' if word == 'red' else ''}|{at}|{label}|0..255|")
            params.append(p(word, label, at, key=f"{word}-{head}"))
    table = grid(["Partie", "Canal", "Paramètre", "Valeur", "Remarque"], *rows)
    mode = M("", (), at, tuple(params))
    inner: list[Element] = [Heading("Canaux"), Para("Toutes les valeurs sont décimales."), Table(table)]
    return Made(html_page(inner, "Orme 4", "fr", plain=True), truth("Vaubrelle", "Orme 4", [mode]))


@chart("bars-modes", "two modes side by side", "txt", "en", "Wexhollow", "Fen 8")
def bars_modes(seed: int) -> Made:
    text = """| 4-ch | 6-ch | Control of | Range   | Result        |
|------|------|------------|---------|---------------|
|  -   |  1   | Dimmer     | 0-255   | 0-100%        |
|  1   |  2   | Red        | 0-255   |               |
|  2   |  3   | Green      | 0-255   |               |
|  3   |  4   | Blue       | 0-255   |               |
|  4   |  5   | White      | 0-255   |               |
|  -   |  6   | Strobe     | 0-15    | Open          |
|      |      |            | 16-255  | Slow to fast  |
"""
    flash = p(
        STROBE,
        "Strobe",
        6,
        ranges=(R(0, 15, "Open", does="open", may=OPEN), R(16, 255, "Slow to fast", may=FLASH)),
    )
    colors = (("red", "Red"), ("green", "Green"), ("blue", "Blue"), ("white", "White"))
    small = tuple(p(word, label, n) for n, (word, label) in enumerate(colors, 1))
    large = tuple(p(word, label, n) for n, (word, label) in enumerate(colors, 2))
    dimmer = p(DIMMER, "Dimmer", 1, text="0-100%", spans=LEVEL)
    modes = [M("4-ch", ("4-ch", "4"), 4, small), M("6-ch", ("6-ch", "6"), 6, (dimmer, *large, flash))]
    return Made(text.encode(), truth("Wexhollow", "Fen 8", modes))


@chart("it-no-titles", "no column titles", "pdf", "it", "Montelieve", "Scia 8")
def it_no_titles(seed: int) -> Made:
    rows = [
        "1|Dimmer|0-255|0 - 100 %",
        "2|Rosso|0-255|",
        "3|Verde|0-255|",
        "4|Blu|0-255|",
        "5|Strobo|0-7|Aperto",
        "||8-255|Da lento a veloce",
        "6|Macro colore|0-49|Nessuna funzione",
        "||50-149|Macro 1",
        "||150-255|Macro 2",
    ]
    runs = {"does": ("runs",)}
    mode = M(
        "",
        (),
        6,
        (
            p(DIMMER, "Dimmer", 1, text="0 - 100 %", spans=LEVEL),
            p("red", "Rosso", 2),
            p("green", "Verde", 3),
            p("blue", "Blu", 4),
            p(
                STROBE,
                "Strobo",
                5,
                ranges=(
                    R(0, 7, "Aperto", does="open", may=OPEN),
                    R(8, 255, "Da lento a veloce", may=FLASH),
                ),
            ),
            p(
                ("color-macro", "macro", "color-preset"),
                "Macro colore",
                6,
                ranges=(
                    R(0, 49, "Nessuna funzione", does="nothing"),
                    R(50, 149, "Macro 1", may=runs),
                    R(150, 255, "Macro 2", may=runs),
                ),
            ),
        ),
    )
    inner: list[Element] = [
        Heading("Canali DMX"),
        Table(grid([], *rows, widths=[14, 46, 30, 70]), Look("ruled", 9)),
    ]
    return Made(fpdf_pdf(inner, foot="Montelieve Scia 8"), truth("Montelieve", "Scia 8", [mode]))


@chart("ranges-in-cell", "several ranges in one cell", "html", "en", "Wexhollow", "Ridge 2")
def ranges_in_cell(seed: int) -> Made:
    rows = [
        "1|Dimmer|0-255: 0 to 100%",
        "2|Strobe|0-9: Open\n10-249: Slow to fast\n250-255: Open",
        "3|Red|0-255",
        "4|Green|0-255",
        "5|Control|0-127: No function\n128-255: Reset",
    ]
    mode = M(
        "",
        (),
        5,
        (
            p(DIMMER, "Dimmer", 1, text="0 to 100%", spans=LEVEL),
            p(
                STROBE,
                "Strobe",
                2,
                ranges=(
                    R(0, 9, "Open", does="open", may=OPEN),
                    R(10, 249, "Slow to fast", may=FLASH),
                    R(250, 255, "Open", does="open", may=OPEN),
                ),
            ),
            p("red", "Red", 3),
            p("green", "Green", 4),
            p(
                "control",
                "Control",
                5,
                ranges=(R(0, 127, "No function", does="nothing"), R(128, 255, "Reset", hazard="reset")),
            ),
        ),
    )
    inner: list[Element] = [Heading("DMX"), Table(grid(["Slot", "Function", "Values"], *rows))]
    return Made(html_page(inner, "Ridge 2", "en"), truth("Wexhollow", "Ridge 2", [mode]))
