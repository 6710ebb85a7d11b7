"""Lights of houses and stages in PDFs: relays, a line of LEDs, a cyc light, a facade and a fresnel."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from intake.corpus.content import M, Made, P
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

RELAYS = [
    P(("power",), f"Relay {n}", ranges=x.params("power: x\n  0-127 off: Off | 128-255: On")[0].ranges)
    for n in range(1, 9)
]


@chart(
    "seventh-relays",
    "one mode of like slots, slot after name, amid wiring tables",
    "pdf",
    "en",
    "Cornishead Controls",
    "RP 8",
)
def relays(seed: int) -> Made:
    seated = x.run(RELAYS)
    pdf = f.book("Times", "Cornishead Controls", "RP 8 relay pack, sheet", "letter")
    pdf.say("Terminals", 12, True, 1)
    wires = [["Terminal", "Use", "Wire"], ["1 - 8", "Relay outputs", "2.5 mm"], ["9", "Neutral", "4 mm"]]
    pdf.grid(wires, (28, 50, 30), size=9)
    pdf.say("Wiring is to be done by a qualified electrician within local codes.", 10)
    pdf.say("DMX512 control", 12, True, 1)
    pdf.say("The pack uses eight slots. Relays keep their last state if DMX is lost.", 10)
    rows = [["Output", "Slot", "DMX value", "State"], *f.body(seated, "name slot value text", k.hyphen)]
    pdf.grid(rows, (36, 20, 32, 32), (0, 1), size=9)
    return k.made("Cornishead Controls", "RP 8", [k.mode(seated)], bytes(pdf.output()))


LIGNE = x.params("""
intensity-master dimmer: Intensité générale = 0 à 100 % [0 100 %]
red: Rouge = 0 à 100 % [0 100 %]
green: Vert = 0 à 100 % [0 100 %]
blue: Bleu = 0 à 100 % [0 100 %]
white: Blanc = 0 à 100 % [0 100 %]
strobe shutter: Stroboscope
  0-9 out: arrêt | 10-255 flash: de lent à rapide
""")
LIGNE_PLANS = (("Mode 4 canaux", "- 1 2 3 4 -"), ("Mode 6 canaux", "1 2 3 4 5 6"))


@chart(
    "seventh-ligne",
    "no table: a line a slot with its number first, values indented where there are several",
    "pdf",
    "fr",
    "Maison Arvault",
    "Ligne R4",
)
def ligne(seed: int) -> Made:
    sheet = x.Sheet("Helvetica", "Maison Arvault - éclairage architectural", "Ligne R4 - fiche de pose")
    sheet.say("Commande DMX", 14, True)
    sheet.say("Le mode se règle à la commande, en usine ou avec le boîtier de réglage BR 1.", after=8)
    modes = []
    for title, plan in LIGNE_PLANS:
        seated = k.seat(LIGNE, plan)
        modes.append(s.titled(seated, title, title.removeprefix("Mode ")))
        sheet.say(title, 11, True, 3)
        for line in k.lines(seated):
            if len(line.rows) == 1:
                sheet.say(f"Canal {line.slot} : {line.name}, {line.rows[0][2]}", after=1, x=10)
                continue
            sheet.say(f"Canal {line.slot} : {line.name}", after=1, x=10)
            for lo, hi, text in line.rows:
                sheet.say(f"{lo} à {hi} : {text}", after=1, x=40)
        sheet.y -= 10
    sheet.say("Indice de protection", 11, True, 3)
    sheet.say("IP67, résistance aux chocs IK08, température de -20 à 45 °C.")
    return k.made("Maison Arvault", "Ligne R4", modes, sheet.data())


HORIZONT = x.params("""
dimmer: Gesamtdimmer + Gesamtdimmer fein = Zu bis voll [? 0 100 %]
red: Rot = Zu bis voll [? 0 100 %]
orange: Orange = Zu bis voll [? 0 100 %]
lime: Limette = Zu bis voll [? 0 100 %]
green: Grün = Zu bis voll [? 0 100 %]
blue: Blau = Zu bis voll [? 0 100 %]
indigo: Indigo = Zu bis voll [? 0 100 %]
color-preset color-macro virtual-color-wheel swatch: Farbvorwahl
  0-9 nothing: Keine Vorwahl | 10-59: Mondlicht | 60-109: Morgenrot | 110-159: Mittag | 160-209: Abendrot
  210-255: Nachtblau
strobe shutter: Blitz
  0-9 out: Aus | 10-255 flash: Langsam bis schnell
dimmer-fade-time: Überblendzeit = 0 bis 10 s [0 10 s]
""")
HORIZONT_PLANS = (
    ("Kurz", "1 2 3 4 5 6 7 - - -"),
    ("Normal", "1 2 3 4 5 6 7 8 9 10"),
    ("Lang", "1/2 3 4 5 6 7 8 9 10 11"),
)


@chart(
    "seventh-horizont",
    "name, decimal, percent, effect, then slots of three modes, an x where a mode lacks it",
    "pdf",
    "de",
    "Rotheck Bühnenlicht",
    "Horizont 6",
)
def horizont(seed: int) -> Made:
    rows = [["Funktion", "Dezimal", "Prozent", "Wirkung", *(name for name, _ in HORIZONT_PLANS)]]
    for row in f.beside(HORIZONT, [p for _, p in HORIZONT_PLANS], "name value text slots", k.hyphen, "x"):
        low, high = (round(int(one) / 2.55) for one in row[1].split("-"))
        rows.append([*row[:2], f"{low}-{high} %", *row[2:]])
    marks: list[tuple[Any, ...]] = [("GRID", (0, 0), (-1, -1), 0.4, "#000000")]
    marks += [("BACKGROUND", (0, 0), (-1, 0), "#ffe9b8"), ("BACKGROUND", (4, 1), (-1, -1), "#fbf6e8")]
    marks += f.merges(rows, (0,))
    for y in [n for n in range(1, len(rows)) if rows[n][0]]:
        end = next((n for n in range(y + 1, len(rows)) if rows[n][0]), len(rows)) - 1
        marks += [("SPAN", (column, y), (column, end)) for column in (4, 5, 6) if end > y]
    parts = [
        f.say("DMX-Tabelle", 14, "Helvetica-Bold", 8),
        f.say("Betriebsarten Kurz, Normal und Lang: Menü > DMX > Betriebsart. x: Funktion nicht vorhanden."),
        f.grid(rows, [112, 52, 56, 110, 46, 46, 46], *marks),
        f.say("Leistungsaufnahme höchstens 310 W, Gewicht 9,4 kg.", 8),
    ]
    modes = [s.titled(k.seat(HORIZONT, plan), name) for name, plan in HORIZONT_PLANS]
    data = f.flow(parts, "Rotheck Bühnenlicht", head="Horizont 6 – Horizontfluter – Gerätehandbuch")
    return k.made("Rotheck Bühnenlicht", "Horizont 6", modes, data)


LASTRA = x.params("""
dimmer: Intensità + fine = 0–100% [0 100 %]
color-temperature: Temperatura colore + fine = 2700–5700 K [2700 5700 K]
dimmer-fade-time: Tempo di dissolvenza = 0–20 s [0 20 s]
""")
LASTRA_PLANS = (("Modalità 1", "2 canali", "1 2 -"), ("Modalità 2", "5 canali", "1/2 3/4 5"))


@chart(
    "seventh-lastra",
    "two slots in one cell with values up to 65535, a table a mode",
    "pdf",
    "it",
    "Faro Civile",
    "Lastra W",
)
def lastra(seed: int) -> Made:
    pdf = f.book("stix", "Faro Civile - illuminazione di facciate", "Lastra W, scheda tecnica, pagina")
    pdf.say("Canali DMX", 15, True, 3)
    pdf.say("In Modalità 2 il primo canale di ogni coppia è il byte alto.", 10)
    modes: list[M] = []
    for name, count, plan in LASTRA_PLANS:
        seated = k.seat(LASTRA, plan)
        modes.append(f.named(seated, name, f"({count})"))
        pdf.say(modes[-1].title, 11.5, True, 1)
        rows = [["Canale", "Funzione", "Valore", "Descrizione"]]
        rows += x.joined(seated, lambda lo, hi: f"{lo}–{hi}", "slot name value text")
        pdf.grid(rows, (22, 48, 32, 44), size=10, borders_layout="MINIMAL")
    pdf.say("Installazione", 13, True, 1)
    pdf.say("Lasciare 5 cm liberi dietro l'apparecchio. Coppia di serraggio delle viti: 4 Nm.", 10)
    return k.made("Faro Civile", "Lastra W", modes, bytes(pdf.output()))


FRESNEL = x.params("""
dimmer: Intensity MSB + Intensity LSB = 0 to 100% [0 100 %]
color-temperature: Colour temperature = 2800K to 6000K [2800 6000 K]
green-correction tint: Green correction = Minus green to plus green
zoom: Zoom = 50° to 14° [50 14 deg]
strobe shutter: Strobe
  0-5 out: Off | 6-255 flash: 1Hz to 20Hz [1 20 Hz]
dimmer-curve: Dimmer curve
  0-63 set dimmer-curve linear: Linear | 64-127 set dimmer-curve square: Square law
  128-191 set dimmer-curve s: S curve | 192-255 set dimmer-curve tungsten: Tungsten
""")
FRESNEL_PLANS = (
    ("Personality 1", "Basic", "1 2 - - - -"),
    ("Personality 2", "Standard", "1 2 3 4 5 -"),
    ("Personality 3", "Studio", "1/2 3 4 5 6 7"),
)


@chart(
    "seventh-fresnel",
    "three personalities, British spelling, MSB and LSB, stripes",
    "pdf",
    "en",
    "Whitlow Theatre Lighting",
    "Fresnel 180 VW",
)
def fresnel(seed: int) -> Made:
    pdf = f.book("dejavu", "", "Whitlow Theatre Lighting · Fresnel 180 VW · issue 4 ·")
    pdf.say("DMX personalities", 14, True)
    pdf.say("Choose the personality in the Setup menu. Personality 2 is set when the lantern is delivered.")
    modes: list[M] = []
    for number, name, plan in FRESNEL_PLANS:
        params = [replace(FRESNEL[0], label="Intensity"), *FRESNEL[1:]] if "/" not in plan else FRESNEL
        seated = k.seat(params, plan)
        modes.append(f.named(seated, number, name, count=False, joint=": "))
        pdf.say(modes[-1].title, 10.5, True, 1)
        rows = [["Channel", "Function", "DMX values", "Description"]]
        rows += f.body(seated, "slot name value text", lambda lo, hi: f"{lo} to {hi}")
        pdf.grid(
            rows,
            (20, 46, 34, 60),
            size=8.5,
            borders_layout="NONE",
            cell_fill_color=(238, 236, 226),
            cell_fill_mode="ROWS",
        )
    pdf.say("Spares", 12, True, 1)
    pdf.grid([["Part", "Code"], ["Lens", "W180-04"], ["Yoke knob", "W180-11"]], (40, 40))
    return k.made("Whitlow Theatre Lighting", "Fresnel 180 VW", modes, bytes(pdf.output()))
