"""Heads with much in them: a wash in three modes, a framing profile with holds, a bar of five heads."""

from __future__ import annotations

from typing import Any

from intake.corpus.content import Made
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

LEVANTE = x.params("""
pan: Pan + Pan fine = 0-540° [0 540 deg]
tilt: Tilt + Tilt fine = 0-210° [0 210 deg]
movement-speed: Velocità Pan/Tilt = Da veloce a lenta
intensity-master dimmer: Dimmer generale = 0-100% [0 100 %]
shutter strobe: Otturatore
  0-7 closed: Chiuso | 8-15 open: Aperto | 16-131 flash: Strobo da lento a veloce
  132-181 pulse: Impulso da lento a veloce | 182-239 random: Strobo casuale da lento a veloce
  240-255 open: Aperto
red: Rosso = 0-100% [0 100 %]
green: Verde = 0-100% [0 100 %]
blue: Blu = 0-100% [0 100 %]
white: Bianco = 0-100% [0 100 %]
color-preset color-macro virtual-color-wheel: Colori predefiniti
  0-9 nothing: Nessuna funzione | 10-39: Bianco 2700 K [? 2700 2700 K]
  40-69: Bianco 3200 K [? 3200 3200 K] | 70-99: Bianco 5600 K [? 5600 5600 K]
  100-129: Ambra | 130-159: Ciano | 160-189: Magenta | 190-255 runs: Arcobaleno
zoom: Zoom = Da stretto a largo
reset control: Reset
  0-199 nothing: Nessuna funzione | 200-255 reset: Reset completo (3 secondi) {hold 3}
""")
LEVANTE_PLANS = (
    ("9 ch", "1 2 - 3 4 5 6 7 8 - 9 -"),
    ("12 ch", "1 2 3 4 5 6 7 8 9 10 11 12"),
    ("14 ch", "1/2 3/4 5 6 7 8 9 10 11 12 13 14"),
)


@chart(
    "sixth-levante",
    "columns written one after the other on a bare canvas, three slot columns with blanks",
    "pdf",
    "it",
    "Officine Tramontana",
    "Levante 7",
)
def levante(seed: int) -> Made:
    sheet = x.Sheet(foot="Officine Tramontana – Levante 7 – manuale d'uso", margin=44)
    sheet.say("CANALI DMX", 14, True, 8)
    rows = [[*(name for name, _ in LEVANTE_PLANS), "Funzione", "Valore", "Descrizione"]]
    rows += f.beside(LEVANTE, [plan for _, plan in LEVANTE_PLANS], "slots name value text", lacks="")
    sheet.table(rows, (38, 38, 38, 120, 70, 200), "slots", by_column=True)
    sheet.say("Tra parentesi il tempo per cui il valore va mantenuto.", 8)
    modes = [f.named(k.seat(LEVANTE, plan), name) for name, plan in LEVANTE_PLANS]
    return k.made("Officine Tramontana", "Levante 7", modes, sheet.data())


BLADE = x.params("""
dimmer: Intensity + Intensity fine = 0-100% [0 100 %]
shutter strobe: Shutter/strobe
  0-9 closed: Closed | 10-19 open: Open | 20-199 flash: Strobe slow to fast | 200-255 open: Open
pan: Pan + Pan fine = 0-540° [0 540 deg]
tilt: Tilt + Tilt fine = 0-280° [0 280 deg]
cyan: Cyan = 0-100% [0 100 %]
magenta: Magenta = 0-100% [0 100 %]
yellow: Yellow = 0-100% [0 100 %]
warm-correction color-correction: CTO = 0-100% [0 100 %]
color-wheel: Color wheel
  0-15 white: Open | 16-31: Red | 32-47: Blue | 48-63: Green | 64-79: Minus green | 80-95: High CRI
  96-127 nothing: Reserved | 128-191 rainbow: Spin, fast to slow | 192-255 rainbow: Reverse spin, slow to fast
iris: Iris = Open to closed
zoom: Zoom + Zoom fine = 7°-52° [7 52 deg]
focus: Focus + Focus fine = Near to far
frost: Frost = 0-100% [0 100 %]
blade-position: Blade 1 in/out = 0-100% [0 100 %]
blade-angle: Blade 1 angle = -30° to +30° [-30 30 deg]
blade-position: Blade 2 in/out = 0-100% [0 100 %]
blade-angle: Blade 2 angle = -30° to +30° [-30 30 deg]
blade-position: Blade 3 in/out = 0-100% [0 100 %]
blade-angle: Blade 3 angle = -30° to +30° [-30 30 deg]
blade-position: Blade 4 in/out = 0-100% [0 100 %]
blade-angle: Blade 4 angle = -30° to +30° [-30 30 deg]
framing-rotation: Blade module rotation = -60° to +60° [-60 60 deg]
control: Control
  0-9 nothing: No function
  10-19 set smoothing fast: Dimmer response fast (1) {hold 3; kept stored}
  20-29 set smoothing smooth: Dimmer response smooth (1) {hold 3; kept stored}
  30-39 set fan auto: Fan auto (1) {hold 3; kept stored}
  40-49 set fan quiet: Fan quiet (1) {hold 3; kept stored} | 50-199 nothing: No function
  200-209 reset: Reset head (2) {hold 5; needs shutter 0 9}
  210-219 reset: Reset framing (2) {hold 5; needs shutter 0 9}
  220-255 nothing: No function
""")
GROUPS = (("Dimming", 0), ("Position", 2), ("Color", 4), ("Beam", 9), ("Framing", 13), ("Control", 22))
"""Each group with the place of its first parameter."""


def grouped(rows: list[list[str]], starts: dict[str, str]) -> list[list[str]]:
    """Rows with a group's label before the first row of its first slot."""
    return [[starts.get(row[0], ""), *row] for row in rows]


@chart(
    "sixth-blade",
    "group labels merged beside the slots in a table a group, holds and conditions in two notes",
    "pdf",
    "en",
    "Greywater Lighting",
    "Blade 900",
    15,
)
def blade(seed: int) -> Made:
    seated = x.run(BLADE)
    starts = {str(seated[first].slots[0]): name for name, first in GROUPS}
    rows = [["Group", "Slot", "Parameter", "Value", "Range"]]
    rows += grouped(f.body(seated, "slot name value text", fine="16-bit"), starts)
    parts: list[Any] = [f.say("Appendix B: DMX slots", 14, "Helvetica-Bold", 8)]
    marks: list[tuple[Any, ...]] = [("GRID", (0, 0), (-1, -1), 0.4, "#555555")]
    marks += [("BACKGROUND", (0, 0), (-1, 0), "#dddddd"), ("VALIGN", (0, 1), (0, -1), "MIDDLE")]
    cuts = [n for n, row in enumerate(rows) if n and row[0]]
    for first, end in zip(cuts, [*cuts[1:], len(rows)], strict=True):
        part = [rows[0], *rows[first:end]]
        parts.append(f.grid(part, [62, 36, 130, 70, 190], *marks, ("SPAN", (0, 1), (0, -1))))
    parts += [
        f.say("(1) Hold for 3 seconds. The choice is stored and stays after power off.", 8),
        f.say("(2) Hold for 5 seconds while the shutter (slot 3) is at 0-9.", 8),
    ]
    data = f.flow(parts, "Blade 900 reference", (612, 792), "Greywater Lighting")
    return k.made("Greywater Lighting", "Blade 900", [k.mode(seated)], data)


BARRE = x.params("""
tilt: Tilt + Tilt fin = 0 – 220° [0 220 deg]
tilt-speed movement-speed: Vitesse tilt = rapide – lent
intensity-master dimmer: Gradateur général = 0 – 100 % [0 100 %]
shutter strobe: Stroboscope
  0-9 open: ouvert | 10-199 flash: lent – rapide | 200-255 random: aléatoire, lent – rapide
""")
TETE = x.params("""
red: Rouge = 0 – 100 % [0 100 %]
green: Vert = 0 – 100 % [0 100 %]
blue: Bleu = 0 – 100 % [0 100 %]
white: Blanc = 0 – 100 % [0 100 %]
""")
EFFETS = x.params("""
macro effect pixel-effect pixel-macro: Programme
  0-15 nothing: aucun | 16-63 runs: vague | 64-111 runs: balayage | 112-159 runs: éclairs
  160-255 sound: audio
macro-speed effect-speed pixel-effect-speed pixel-macro-speed: Vitesse programme = lent – rapide
""")


@chart(
    "sixth-barre",
    "a merged column of heads whose colors bear one name each, zebra by group",
    "pdf",
    "fr",
    "Lumières Castelneau",
    "Barre Mobile 5",
)
def barre(seed: int) -> Made:
    seated = x.run((*BARRE, *(TETE * 5), *EFFETS))
    starts = {"1": "Mouvement", "4": "Général", "26": "Effets"}
    starts |= {str(6 + 4 * n): f"Tête {n + 1}" for n in range(5)}
    font = f.letter("dejavu")
    rows = [["Section", "Canal", "Paramètre", "Valeurs", "Effet"]]
    rows += grouped(f.body(seated, "slot name value text", k.dash), starts)
    marks: list[tuple[Any, ...]] = [("LINEBELOW", (0, 0), (-1, 0), 1, "#000000")]
    marks += [("VALIGN", (0, 1), (0, -1), "MIDDLE"), *f.merges(rows, (0,))]
    cuts = [n for n, row in enumerate(rows) if n and row[0]]
    for n, (first, end) in enumerate(zip(cuts, [*cuts[1:], len(rows)], strict=True)):
        if n % 2:
            marks.append(("BACKGROUND", (0, first), (-1, end - 1), "#eeeeee"))
    parts = [
        f.say("Tableau DMX – mode unique, 27 canaux", 12, f"{font}-Bold", 8),
        f.grid(rows, [80, 50, 130, 80, 150], *marks, font=font, size=8),
    ]
    mode = x.mode(
        seated, "Tableau DMX – mode unique, 27 canaux", "mode unique", "27 canaux", "mode unique, 27 canaux"
    )
    data = f.flow(parts, "Lumières Castelneau", head="Barre Mobile 5 · mode d'emploi")
    return k.made("Lumières Castelneau", "Barre Mobile 5", [mode], data)
