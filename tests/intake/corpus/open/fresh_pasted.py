"""German text as a PDF viewer gives it, and web pages in French and English."""

from __future__ import annotations

from html import escape

from intake.corpus.content import M, Made, P, R, span
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

ROT, GRUEN, BLAU, WEISS = (
    k.level(word, label, "0 bis 100 %")
    for word, label in (("red", "Rot"), ("green", "Grün"), ("blue", "Blau"), ("white", "Weiß"))
)
MASTER = k.level("dimmer", "Gesamtdimmer", "0 bis 100 %", also=("intensity-master",))
BLITZ = P(
    ("strobe", "shutter"),
    "Stroboskop",
    ranges=(k.out(0, 9, "Kein Stroboskop"), k.flash(10, 255, "Langsam bis schnell")),
)
FARBE = P(
    ("color-macro", "color-preset", "virtual-color-wheel"),
    "Farbmakros",
    ranges=(
        k.nothing(0, 15, "Keine Funktion"),
        *k.steps(16, 30, "Rot", "Gelb", "Grün", "Türkis", "Blau", "Violett", "Orange", "Warmweiß"),
    ),
)
PROGRAMM = P(
    ("macro", "effect"),
    "Programme",
    ranges=(
        k.nothing(0, 31, "Keine Funktion"),
        *(k.runs(32 + 64 * n, 95 + 64 * n, f"Programm {n + 1}") for n in range(3)),
        k.runs(224, 255, "Musiksteuerung"),
    ),
)
TEMPO = P(("macro-speed", "effect-speed"), "Programmgeschwindigkeit", text="Langsam bis schnell")
PAR = (
    ("4-Kanal-Modus", (ROT, GRUEN, BLAU, WEISS)),
    ("6-Kanal-Modus", (MASTER, ROT, GRUEN, BLAU, WEISS, BLITZ)),
    ("9-Kanal-Modus", (MASTER, ROT, GRUEN, BLAU, WEISS, BLITZ, FARBE, PROGRAMM, TEMPO)),
)


@chart("fresh-par", "pasted text, a line a range", "txt", "de", "Holderbach", "Zaunkönig 18")
def par(seed: int) -> Made:
    text = ["Zaunkönig 18 Bedienungsanleitung", "", "5. DMX-Betrieb", ""]
    text += [
        "Stellen Sie die Startadresse im Menü ein. Das Gerät belegt je nach Modus 4, 6 oder 9 Kanäle.",
        "",
    ]
    modes = []
    for name, params in PAR:
        mode = k.mode([p.at(n) for n, p in enumerate(params, 1)], name, name.split("-")[0] + "-Kanal")
        modes.append(mode)
        text += [name, "", "Kanal Wert Funktion"]
        for line in k.lines(mode.params):
            if len(line.rows) == 1:
                lo, hi, said = line.rows[0]
                text.append(f"{line.slot} {k.zeros(lo, hi)} {line.name} ({said})")
                continue
            text.append(f"{line.slot} {line.name}")
            text += [f"{k.zeros(lo, hi)} {said}" for lo, hi, said in line.rows]
        text.append("")
    text += ["6. Technische Daten", "Leistungsaufnahme 190 W", "Gewicht 4,2 kg", ""]
    return k.made("Holderbach", "Zaunkönig 18", modes, "\n".join(text))


FAISCEAU = (
    P(("pan",), "Pan", fine=("Pan fin",), text="0° à 540°", spans=(span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", fine=("Tilt fin",), text="0° à 250°", spans=(span(0, 250, "deg"),)),
    P(("movement-speed",), "Vitesse Pan/Tilt", text="Rapide à lent"),
    P(("dimmer",), "Gradateur", fine=("Gradateur fin",), text="0 à 100 %", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Obturateur / Stroboscope",
        ranges=(
            k.closed(0, 7, "Fermé"),
            k.opened(8, 15, "Ouvert"),
            k.flash(16, 131, "Stroboscope, lent à rapide"),
            k.opened(132, 139, "Ouvert"),
            k.chance(140, 230, "Stroboscope aléatoire"),
            k.opened(231, 255, "Ouvert"),
        ),
    ),
    P(
        ("color-wheel",),
        "Roue de couleurs",
        ranges=(
            k.opened(0, 11, "Ouvert"),
            *k.steps(
                12, 12, "Rouge", "Bleu foncé", "Jaune", "Vert", "Magenta", "Orange", "CTO", "UV", last=127
            ),
            k.rainbow(128, 189, "Rotation horaire, rapide à lente"),
            k.stop(190, 193, "Arrêt"),
            k.rainbow(194, 255, "Rotation antihoraire, lente à rapide"),
        ),
    ),
    P(
        ("gobo-wheel",),
        "Roue de gobos fixes",
        ranges=(
            k.opened(0, 9, "Ouvert"),
            *k.steps(10, 10, *(f"Gobo {n}" for n in range(1, 10))),
            *(k.shake(100 + 12 * n, 111 + 12 * n, f"Gobo {n + 1} vibrant, lent à rapide") for n in range(9)),
            k.spin(208, 255, "Défilement des gobos", "gobo-wheel"),
        ),
    ),
    P(("prism",), "Prisme", ranges=(k.out(0, 127, "Sans prisme"), R(128, 255, "Prisme inséré"))),
    P(
        ("prism-rotation",),
        "Rotation du prisme",
        ranges=(
            k.stop(0, 9, "Sans rotation"),
            k.spin(10, 130, "Sens horaire, lent à rapide"),
            k.spin(131, 255, "Sens antihoraire, lent à rapide"),
        ),
    ),
    P(("focus",), "Mise au point", text="Près à loin"),
    P(
        ("control", "reset"),
        "Réinitialisation",
        ranges=(k.nothing(0, 199, "Pas de fonction"), k.reset(200, 255, "Réinitialisation complète")),
    ),
)
FAISCEAU_MODES = (
    ("Mode 1 : 11 canaux", "1 2 3 4 5 6 7 8 9 10 11"),
    ("Mode 2 : 14 canaux", "1/2 3/4 5 6/7 8 9 10 11 12 13 14"),
)
STYLE = "table {border-collapse: collapse} td, th {border: 1px solid #999; padding: 3px 8px}"


@chart("fresh-faisceau", "web page, rows merged", "html", "fr", "Corbelaine", "Martinet B8")
def faisceau(seed: int) -> Made:
    page = [
        "<!DOCTYPE html><html lang='fr'><head><meta charset='utf-8'><title>Martinet B8</title>",
        f"<style>{STYLE}</style></head><body>",
    ]
    page += ["<h1>Martinet B8 – Protocole DMX</h1>", "<p>Le mode se choisit dans le menu Réglages.</p>"]
    modes = []
    for title, plan in FAISCEAU_MODES:
        number, count = title.split(" : ")
        mode = k.mode(k.seat(FAISCEAU, plan), title, number, count)
        modes.append(mode)
        page.append(
            f"<h2>{title}</h2><table><thead><tr><th>Canal</th><th>Fonction</th><th>Valeur</th><th>Description</th></tr></thead><tbody>"
        )
        for line in k.lines(mode.params):
            tall = f' rowspan="{len(line.rows)}"' if len(line.rows) > 1 else ""
            for n, (lo, hi, text) in enumerate(line.rows):
                head = f"<td{tall}>{line.slot}</td><td{tall}>{line.name}</td>" if n == 0 else ""
                page.append(f"<tr>{head}<td>{k.dash(lo, hi)}</td><td>{escape(text)}</td></tr>")
        page.append("</tbody></table>")
    return k.made("Corbelaine", "Martinet B8", modes, "\n".join([*page, "</body></html>"]))


DUAL = (
    P(("pan",), "Pan", (1, 2), wide=True),
    P(("tilt",), "Tilt", (3, 4), wide=True),
    P(("dimmer",), "Dimmer", (5, 6), wide=True),
    P(
        ("strobe", "shutter"),
        "Shutter",
        (7,),
        ranges=(k.closed(0, 4), k.flash(5, 250, "Strobe slow to fast"), k.opened(251, 255)),
    ),
    P(("cyan",), "Cyan", (8,)),
    P(("magenta",), "Magenta", (9,)),
    P(("yellow",), "Yellow", (10,)),
    P(("zoom",), "Zoom", (11, 12), wide=True),
    P(("focus",), "Focus", (13, 14), wide=True),
    P(
        ("control", "reset"),
        "Function",
        (15,),
        ranges=(k.nothing(0, 249), k.reset(250, 255, "Reset, hold 3 s", 3)),
    ),
)


@chart("fresh-dual", "web page, MSB and LSB beside the slot", "html", "en", "Mossgate", "Finch Duo")
def dual(seed: int) -> Made:
    page = ["<html><head><title>Finch Duo</title></head><body><h2>DMX chart</h2>", "<table border=1>"]
    page.append("<tr><th>Slot</th><th>Parameter</th><th>Values</th><th>Function</th></tr>")
    for p in DUAL:
        rows = [(k.hyphen(r.lo, r.hi), r.text) for r in p.ranges] or [("0-255", "")]
        if len(p.slots) == 2:
            page.append(
                f"<tr><td>{p.slots[0]} (MSB)</td><td rowspan=2>{p.label}</td>"
                "<td rowspan=2>0-65535</td><td rowspan=2></td></tr>"
            )
            page.append(f"<tr><td>{p.slots[1]} (LSB)</td></tr>")
            continue
        for n, (values, text) in enumerate(rows):
            head = (
                f"<td rowspan={len(rows)}>{p.slots[0]}</td><td rowspan={len(rows)}>{p.label}</td>"
                if n == 0
                else ""
            )
            page.append(f"<tr>{head}<td>{values}</td><td>{text}</td></tr>")
    page.append("</table></body></html>")
    return k.made("Mossgate", "Finch Duo", [M("", (), 15, DUAL)], "\n".join(page))
