"""CSV by four more makers: a pixel bar, a wind machine, a blinder and a dimmer pack."""

from __future__ import annotations

from typing import Any

from intake.corpus.aside import eighth_b_kit as e
from intake.corpus.content import M, Made, P
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.open.fifth_b_kit import csv_text
from intake.corpus.registry import chart

RUNG_MASTER = x.params("""
dimmer intensity-master: Master dimmer = 0-100% [0 100 %]
strobe shutter: Strobe
  0-10 out: No strobe | 11-255 flash: Slow > fast
""")
RUNG_WHOLE = x.params(
    "red: Red = 0-100% [0 100 %]\ngreen: Green = 0-100% [0 100 %]\nblue: Blue = 0-100% [0 100 %]"
)
RUNG_PIXELS = tuple(
    P((color.lower(),), f"{color} {n}", text="0-100%", spans=k.LEVEL)
    for n in range(1, 11)
    for color in ("Red", "Green", "Blue")
)
RUNG_MODES = (
    ("3 channel", s.row_of(RUNG_WHOLE)),
    ("5 channel", s.row_of((*RUNG_MASTER, *RUNG_WHOLE))),
    ("32 channel", s.row_of((*RUNG_MASTER, *RUNG_PIXELS))),
)


@chart(
    "eighth-b-rung",
    "three tables under capital titles, ten pixels written out, tabs",
    "csv",
    "en",
    "Wickerby Stage Lights",
    "Rung 10",
)
def rung(seed: int) -> Made:
    rows: list[list[Any]] = [["Wickerby Stage Lights"], ["Rung 10 pixel bar, DMX channels"], []]
    modes: list[M] = []
    for name, params in RUNG_MODES:
        title = f"{name.upper()} MODE"
        modes.append(k.mode(params, title, name))
        rows += [[title], ["CHANNEL", "FUNCTION", "VALUE", "DETAILS"]]
        rows += [*s.body(params, "slot name value text", e.between("-", 3)), []]
    return k.made("Wickerby Stage Lights", "Rung 10", modes, csv_text(rows[:-1], "\t"))


GALE = s.row_of(
    x.params("""
fan: Fan speed
  0-9 off: Off | 10-255: Minimum to maximum speed
output-duration other: Burst time = 1 to 30 seconds [1 30 s]
""")
)


@chart(
    "eighth-b-gale",
    "two slots, the head in quotes, every slot repeated",
    "csv",
    "en",
    "Thornbeck Effects",
    "Gale 2",
)
def gale(seed: int) -> Made:
    rows = [["DMX channel", "Control", "DMX value", "Result"]]
    rows += s.body(GALE, "slot name value text", e.between(" to "), every=True)
    data = "\n".join(",".join(f'"{one}"' for one in row) for row in rows) + "\n"
    return k.made("Thornbeck Effects", "Gale 2", [k.mode(GALE)], data)


CEGADORA = x.params("""
dimmer intensity-master: Intensidad general = De 0 a 100 % [0 100 %]
dimmer: Lámpara 1 = De 0 a 100 % [0 100 %]
dimmer: Lámpara 2 = De 0 a 100 % [0 100 %]
dimmer: Lámpara 3 = De 0 a 100 % [0 100 %]
dimmer: Lámpara 4 = De 0 a 100 % [0 100 %]
strobe shutter: Estrobo
  0-9 out: Sin estrobo | 10-199 flash: De lento a rápido | 200-255 random: Estrobo aleatorio
macro effect: Programas internos
  0-19 nothing: Ninguno | 20-69 perhaps: Secuencia 1 | 70-119 perhaps: Secuencia 2
  120-169 perhaps: Secuencia 3 | 170-255 perhaps: Secuencia 4
macro-speed effect-speed: Velocidad de programas = De lenta a rápida
""")
CEGADORA_PLANS = (
    ("Modo 1", "1 - - - - - - -"),
    ("Modo 2", "- 1 2 3 4 - - -"),
    ("Modo 3", "1 2 3 4 5 6 7 8"),
)


@chart(
    "eighth-b-cegadora",
    "a row each with the mode's title, columns desde and hasta, semicolons",
    "csv",
    "es",
    "Ribera Escénica",
    "Cegadora 4",
)
def cegadora(seed: int) -> Made:
    modes, rows = e.stacked(
        CEGADORA,
        CEGADORA_PLANS,
        ["Canal", "Función", "Desde", "Hasta", "Efecto"],
        lambda params: s.body(params, "slot name from to text"),
    )
    return k.made("Ribera Escénica", "Cegadora 4", modes, csv_text(rows, ";"))


CENTRALINA = tuple(
    P(("dimmer",), f"Dimmer {n}", (n,), text="Da 0 a 100%", spans=k.LEVEL) for n in range(1, 7)
)
CENTRALINA_MORE = x.params("""
dimmer-curve: Curva
  0-63 curve: Lineare | 64-127 curve: Quadratica | 128-191 curve: Interruttore | 192-255 curve: Fluorescente
dimmer-fade-time: Tempo di dissolvenza = Da 0 a 10 s [0 10 s]
""")


@chart(
    "eighth-b-centralina",
    "a dimmer pack, name before slot, one row an output",
    "csv",
    "it",
    "Quadrivio Elettronica",
    "Centralina 6 x 10 A",
)
def centralina(seed: int) -> Made:
    params = (*CENTRALINA, *s.row_of((*CENTRALINA, *CENTRALINA_MORE))[6:])
    rows = [["Funzione", "Canale DMX", "Valori", "Descrizione"]]
    rows += s.body(params, "name slot value text", e.between("-"))
    return k.made("Quadrivio Elettronica", "Centralina 6 x 10 A", [k.mode(params)], csv_text(rows))
