"""Open charts in layouts of their own, written out by hand: what the reader meets for the first time."""

from __future__ import annotations

from intake.corpus.content import M, Made, P, R, span, truth
from intake.corpus.grids import Element, Grid, Heading, Look, Table, cells
from intake.corpus.registry import chart
from intake.corpus.writers.pdf_fpdf import fpdf_pdf
from intake.corpus.writers.pdf_reportlab import reportlab_pdf
from intake.corpus.writers.sheets import csv_file, xlsx
from intake.corpus.writers.web import html_page

FLASH = {"does": ("runs", "random"), "parameter": ("strobe", "strobe-mode", "shutter")}
OPEN = {"does": ("open", "closed", "nothing"), "parameter": ("shutter",)}
DIMMER = ("dimmer", "intensity-master")
STROBE = ("strobe", "shutter")


def p(words: str | tuple[str, ...], label: str, *slots: int, text: str = "", **more: object) -> P:
    """A parameter; finer bytes are labelled by `fine`."""
    named = (words,) if isinstance(words, str) else words
    return P(named, label, slots, text=text, **more)  # type: ignore[arg-type]


def grid(head: list[str], *rows: str, widths: list[float] | None = None) -> Grid:
    """A table out of lines with bars."""
    body = [cells(*(part.strip() for part in row.split("|"))) for row in rows]
    return Grid([cells(*head)] if head else [], body, widths or [180 / len(body[0])] * len(body[0]))


LEVEL = (span(0, 100, "%"),)


@chart("transposed", "slots across, a line a property", "csv", "en", "Wexhollow", "Sill 4")
def transposed(seed: int) -> Made:
    rows = [
        "Attribute|Intensity|Red|Green|Blue|Strobe rate",
        "DMX|0-255|0-255|0-255|0-255|0-255",
        "Remarks|0-100 %|||  |slow to fast",
    ]
    table = grid(["DMX ch.", "1", "2", "3", "4", "5"], *rows)
    mode = M(
        "",
        (),
        5,
        (
            p(DIMMER, "Intensity", 1, text="0-100 %", spans=LEVEL),
            p("red", "Red", 2),
            p("green", "Green", 3),
            p("blue", "Blue", 4),
            p(STROBE, "Strobe rate", 5, text="slow to fast"),
        ),
    )
    return Made(csv_file([Table(table)]), truth("Wexhollow", "Sill 4", [mode]))


@chart("de-all-bases", "decimal, hex and percent", "pdf", "de", "Grautal", "Kant 2")
def de_all_bases(seed: int) -> Made:
    rows = [
        "1|Helligkeit|000-255|00-FF|0-100|Gesamthelligkeit 0 bis 100 %",
        "2|Stroboskop|000-015|00-0F|0-6|Verschluss offen",
        "||016-239|10-EF|6-94|Blitzen, langsam bis schnell",
        "||240-255|F0-FF|94-100|Zufallsblitz",
        "3|Rot|000-255|00-FF|0-100|",
        "4|Rot fein|000-255|00-FF|0-100|",
        "5|Weiß|000-255|00-FF|0-100|",
        "6|Lüfter|000-099|00-63|0-39|Automatik",
        "||100-255|64-FF|39-100|Volle Drehzahl",
    ]
    head = ["Kanal-Nr.", "Bezeichnung", "DMX dez.", "DMX hex", "%", "Bemerkung"]
    table = grid(head, *rows, widths=[20, 32, 24, 22, 20, 60])
    mode = M(
        "",
        (),
        6,
        (
            p(DIMMER, "Helligkeit", 1, text="Gesamthelligkeit 0 bis 100 %", spans=LEVEL),
            p(
                STROBE,
                "Stroboskop",
                2,
                ranges=(
                    R(0, 15, "Verschluss offen", does="open", may=OPEN),
                    R(16, 239, "Blitzen, langsam bis schnell", may=FLASH),
                    R(240, 255, "Zufallsblitz", may=FLASH),
                ),
            ),
            p("red", "Rot", 3, 4, fine=("Rot fein",)),
            p("white", "Weiß", 5),
            p(
                ("fan", "fan-mode"),
                "Lüfter",
                6,
                ranges=(
                    R(0, 99, "Automatik", may={"sets": ("fan",)}),
                    R(100, 255, "Volle Drehzahl", may={"sets": ("fan",)}),
                ),
            ),
        ),
    )
    inner: list[Element] = [Heading("DMX-Tabelle Kant 2"), Table(table, Look("ruled", 8))]
    return Made(fpdf_pdf(inner, foot="Grautal Kant 2"), truth("Grautal", "Kant 2", [mode]))


@chart("fr-own-titles", "slot, function, value, description", "pdf", "fr", "Vaubrelle", "Orme 1")
def fr_own_titles(seed: int) -> Made:
    rows = [
        "1|Gradateur|0 à 255|de 0 à 100 %",
        "2|Obturateur électronique|0 à 7|Fermé",
        "||8 à 15|Ouvert",
        "||16 à 255|Stroboscope du plus lent au plus rapide",
        "3|Teinte|0 à 255|0 à 360°",
        "4|Saturation|0 à 255|de 0 à 100 %",
        "5|Roue de couleurs|0 à 31|Blanc",
        "||32 à 63|Rouge profond",
        "||64 à 127|Bleu nuit",
        "||128 à 255|Défilement, lent à rapide",
        "6|Réglages|0 à 199|Inutilisé",
        "||200 à 209|Réinitialisation complète (maintenir 5 s)",
        "||210 à 255|Inutilisé",
    ]
    table = grid(["Voie", "Dénomination", "Niveaux DMX", "Rôle de la plage"], *rows, widths=[14, 50, 30, 84])
    turn = {"does": ("rotate", "runs"), "parameter": ("color-wheel-rotation",)}
    mode = M(
        "",
        (),
        6,
        (
            p(DIMMER, "Gradateur", 1, text="de 0 à 100 %", spans=LEVEL),
            p(
                ("shutter", "strobe"),
                "Obturateur électronique",
                2,
                ranges=(
                    R(0, 7, "Fermé", does="closed"),
                    R(8, 15, "Ouvert", does="open"),
                    R(16, 255, "Stroboscope du plus lent au plus rapide", may=FLASH),
                ),
            ),
            p("hue", "Teinte", 3, text="0 à 360°", spans=(span(0, 360, "deg"),)),
            p("saturation", "Saturation", 4, text="de 0 à 100 %", spans=LEVEL),
            p(
                "color-wheel",
                "Roue de couleurs",
                5,
                ranges=(
                    R(0, 31, "Blanc", may={"does": ("open",)}),
                    R(32, 63, "Rouge profond"),
                    R(64, 127, "Bleu nuit"),
                    R(128, 255, "Défilement, lent à rapide", may=turn),
                ),
            ),
            p(
                "control",
                "Réglages",
                6,
                ranges=(
                    R(0, 199, "Inutilisé", does="nothing"),
                    R(
                        200,
                        209,
                        "Réinitialisation complète (maintenir 5 s)",
                        hazard="reset",
                        hold_s=5.0,
                        also=("Réinitialisation complète",),
                    ),
                    R(210, 255, "Inutilisé", does="nothing"),
                ),
            ),
        ),
    )
    inner: list[Element] = [Heading("Affectation des voies"), Table(table, Look("bare", 9))]
    return Made(reportlab_pdf(inner, foot="Vaubrelle Orme 1"), truth("Vaubrelle", "Orme 1", [mode]))


@chart("es-modes-right", "modes at the right", "xlsx", "es", "Peñarroya", "Haz 6")
def es_modes_right(seed: int) -> Made:
    rows = [
        "Intensidad|0-255|0 a 100 %|1|1",
        "Intensidad fina|0-255||-|2",
        "Rojo|0-255||2|3",
        "Verde|0-255||3|4",
        "Azul|0-255||4|5",
        "Estrobo|0-10|Abierto|-|6",
        "|11-255|Destello lento a rápido|-|",
        "Zoom|0-255|De estrecho a ancho|-|7",
    ]
    table = grid(["Prestación", "Rango DMX", "Explicación", "Modo 1", "Modo 2"], *rows)
    flash = p(
        STROBE,
        "Estrobo",
        6,
        ranges=(
            R(0, 10, "Abierto", does="open", may=OPEN),
            R(11, 255, "Destello lento a rápido", may=FLASH),
        ),
    )
    one = M(
        "Modo 1",
        ("Modo 1", "1"),
        4,
        (
            p(DIMMER, "Intensidad", 1, text="0 a 100 %", spans=LEVEL),
            p("red", "Rojo", 2),
            p("green", "Verde", 3),
            p("blue", "Azul", 4),
        ),
    )
    two = M(
        "Modo 2",
        ("Modo 2", "2"),
        7,
        (
            p(DIMMER, "Intensidad", 1, 2, text="0 a 100 %", spans=LEVEL, fine=("Intensidad fina",)),
            p("red", "Rojo", 3),
            p("green", "Verde", 4),
            p("blue", "Azul", 5),
            flash,
            p("zoom", "Zoom", 7, text="De estrecho a ancho"),
        ),
    )
    data = xlsx([("Canales", [Heading("Haz 6: canales DMX"), Table(table)])])
    return Made(data, truth("Peñarroya", "Haz 6", [one, two]))


@chart("it-from-to", "from and to columns", "csv", "it", "Montelieve", "Scia 3")
def it_from_to(seed: int) -> Made:
    rows = [
        "1|Intensità|0|255|0 - 100 %|0",
        "2|Strobo|0|4|Aperto|0",
        "|| 5|255|Lampeggio da lento a veloce|",
        "3|Temperatura colore|0|255|2700 - 6500 K|128",
        "4|Fuoco|0|255|da vicino a lontano|",
        "5|Non utilizzato|0|255||",
    ]
    table = grid(["Can.", "Cosa controlla", "Da", "A", "Effetto", "Val. iniziale"], *rows)
    mode = M(
        "",
        (),
        5,
        (
            p(DIMMER, "Intensità", 1, text="0 - 100 %", spans=LEVEL, default=0),
            p(
                STROBE,
                "Strobo",
                2,
                default=0,
                ranges=(
                    R(0, 4, "Aperto", does="open", may=OPEN),
                    R(5, 255, "Lampeggio da lento a veloce", may=FLASH),
                ),
            ),
            p(
                "color-temperature",
                "Temperatura colore",
                3,
                text="2700 - 6500 K",
                spans=(span(2700, 6500, "K"),),
                default=128,
            ),
            p("focus", "Fuoco", 4, text="da vicino a lontano"),
            p("reserved", "Non utilizzato", 5),
        ),
    )
    return Made(csv_file([Table(table)], ";"), truth("Montelieve", "Scia 3", [mode]))


@chart("slot-rows-inside", "a block a slot", "html", "en", "Wexhollow", "Ridge 7")
def slot_rows_inside(seed: int) -> Made:
    rows = [
        "Ch 1 – Pan|",
        "0-255|0 to 540°",
        "Ch 2 – Pan fine|",
        "0-255|",
        "Ch 3 – Color wheel|",
        "0-9|Open",
        "10-19|Congo blue",
        "20-29|Deep red",
        "30-255|Rainbow, slow to fast",
        "Ch 4 – Dimmer|",
        "0-255|0 to 100%",
    ]
    mode = M(
        "",
        (),
        4,
        (
            p("pan", "Pan", 1, 2, text="0 to 540°", spans=(span(0, 540, "deg"),), fine=("Pan fine",)),
            p(
                "color-wheel",
                "Color wheel",
                3,
                ranges=(
                    R(0, 9, "Open", may={"does": ("open",)}),
                    R(10, 19, "Congo blue"),
                    R(20, 29, "Deep red"),
                    R(
                        30,
                        255,
                        "Rainbow, slow to fast",
                        may={"does": ("rotate", "runs"), "parameter": ("color-wheel-rotation",)},
                    ),
                ),
            ),
            p(DIMMER, "Dimmer", 4, text="0 to 100%", spans=LEVEL),
        ),
    )
    inner: list[Element] = [Heading("DMX values"), Table(grid(["DMX value", "Effect"], *rows))]
    return Made(html_page(inner, "Ridge 7", "en"), truth("Wexhollow", "Ridge 7", [mode]))
