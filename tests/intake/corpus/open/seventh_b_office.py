"""Three more workbooks and four of the open format: uplights, smoke, drivers, a PAR, stage heads."""

from __future__ import annotations

from intake.corpus.content import M, Made, P
from intake.corpus.grids import C, Element, Heading, Para
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_b_kit as v
from intake.corpus.open import sixth_b_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.open.fifth_b_kit import Cell, beside, table
from intake.corpus.registry import chart
from intake.corpus.writers.sheets import ods

STUB_COLORS = x.params("red: Red\ngreen: Green\nblue: Blue\nwhite: White\namber: Amber\nuv: UV")
STUB_ALL = (
    *x.params("dimmer intensity-master: Master dimmer"),
    *STUB_COLORS,
    *x.params("""
strobe shutter: Strobe
  0-7 out: No strobe | 8-255 flash: Slow to fast
color-preset color-macro macro virtual-color-wheel: Static colors
  0-9 nothing: Off | 10-49: Warm white | 50-89: Cold white | 90-129: Straw | 130-169: Rose | 170-209: Teal
  210-255: Congo blue
macro color-macro effect: Programs
  0-9 nothing: Off | 10-79 perhaps: Color change | 80-149 perhaps: Color fade | 150-219 perhaps: Pulse
  220-255 sound: Sound active
"""),
)
STUB_MODES = (STUB_COLORS[:4], STUB_COLORS, STUB_ALL)


@chart(
    "seventh-b-stub",
    "names in the column of texts, their ranges in rows below, modes under merged titles",
    "xlsx",
    "en",
    "Bellwether Wireless",
    "Stub 6",
)
def stub(seed: int) -> Made:
    rows: list[list[v.Item]] = []
    modes: list[M] = []
    for params in STUB_MODES:
        modes.append(v.sized(s.row_of(params), "", "{}{}CH mode", "{1}CH"))
        rows += [[C(modes[-1].title, cols=3), None, None], ["CH", "Value", "Function"]]
        for p in modes[-1].params:
            if not p.ranges:
                rows.append([p.slots[0], "000-255", p.label])
                continue
            rows.append([C(str(p.slots[0]), rows=1 + len(p.ranges)), "", p.label])
            rows += [[None, k.zeros(r.lo, r.hi), r.text] for r in p.ranges]
        rows.append([])
    return k.made("Bellwether Wireless", "Stub 6", modes, v.workbook([("DMX", rows)]))


# The percents beside the values may be read as those of the light.
NEBULA = s.row_of(
    x.params("""
fog-output haze-output fluid-pump: Uscita fumo
  0-9 off: Spenta | 10-255: Da minima a massima
red: LED rosso = Da spento a pieno [? 0 100 %]
green: LED verde = Da spento a pieno [? 0 100 %]
blue: LED blu = Da spento a pieno [? 0 100 %]
amber: LED ambra = Da spento a pieno [? 0 100 %]
strobe shutter: Strobo LED
  0-9 out: Senza strobo | 10-255 flash: Da lento a veloce
color-macro macro effect: Colori automatici
  0-9 nothing: Nessuno | 10-90 perhaps: Cambio a scatti | 91-170 perhaps: Dissolvenza
  171-255 perhaps: Arcobaleno
""")
)


@chart(
    "seventh-b-nebula",
    "percents without their sign in a column of their own, the table away from the corner",
    "xlsx",
    "it",
    "Officina del Fumo",
    "Nebula 1500",
)
def nebula(seed: int) -> Made:
    rows: list[list[v.Item]] = [["Nebula 1500 - modo a 7 canali"], []]
    rows.append(["Canale", "Funzione", "Valore", "%", "Effetto"])
    for line in k.lines(NEBULA):
        for n, (lo, hi, text) in enumerate(line.rows):
            share = f"{round(lo / 2.55)}-{round(hi / 2.55)}"
            rows.append(["" if n else line.slot, "" if n else line.name, k.hyphen(lo, hi), share, text])
    rows += [[], ["Tempo di riscaldamento: circa 7 minuti"], ["Liquido consigliato: a base d'acqua"]]
    mode = k.mode(NEBULA)
    book = v.workbook([("Canali DMX", rows)], top=3, left=2)
    return k.made("Officina del Fumo", "Nebula 1500", [mode], book)


DRIVE_COLORS = tuple(
    P((name.lower(),), name, text="0-100%", spans=k.LEVEL) for name in ("Red", "Green", "Blue", "White")
)
DRIVE_FADE = x.params("dimmer-fade-time: Fade time = 0-8 s [0 8 s]")
DRIVE_TUNED = x.params("""
dimmer intensity-master: Intensity = 0-100% [0 100 %]
color-temperature: Color temperature = 2200-5700 K [2200 5700 K]
dimmer-fade-time: Fade time = 0-8 s [0 8 s]
""")
DRIVE = (
    ("Mode A", "RGBW", k.seat(DRIVE_COLORS, "1 2 3 4")),
    ("Mode B", "RGBW 16 bit", k.seat((*DRIVE_COLORS, *DRIVE_FADE), "1/2 3/4 5/6 7/8 9")),
    ("Mode C", "Tunable white 16 bit", k.seat(DRIVE_TUNED, "1/2 3/4 5")),
)


@chart(
    "seventh-b-drive",
    "a column each for the coarse and the fine slot, values up to 65535, modes under each other",
    "xlsx",
    "en",
    "Harcourt & Vane",
    "LinearDrive 4",
)
def drive(seed: int) -> Made:
    rows: list[list[v.Item]] = [["LinearDrive 4 constant current driver"], ["DMX reference, issue 3"]]
    modes: list[M] = []
    for letter, name, params in DRIVE:
        modes.append(k.mode(params, f"{letter} - {name}", letter, name, letter.split()[1]))
        rows += [[], [modes[-1].title], ["Coarse slot", "Fine slot", "Parameter", "Values", "Output"]]
        for p in modes[-1].params:
            fine: v.Item = p.slots[1] if len(p.slots) > 1 else ""
            rows.append([p.slots[0], fine, p.label, f"0-{p.top}", p.text])
    return k.made("Harcourt & Vane", "LinearDrive 4", modes, v.workbook([("DMX slots", rows)]))


PAR_COLORS = tuple(
    P((word,), label, text="0–100 %", spans=k.LEVEL)
    for word, label in zip(
        ("red", "green", "blue", "white", "amber", "uv"),
        ("Rot", "Grün", "Blau", "Weiß", "Amber", "UV"),
        strict=True,
    )
)
PAR_MORE = x.params("""
strobe shutter: Strobe
  0-15 out: aus | 16-255 flash: langsam – schnell
color-macro macro effect color-preset: Farbmakros
  0-15 nothing: keine Funktion | 16-95 perhaps: Makro 1 | 96-175 perhaps: Makro 2
  176-255 sound: Musiksteuerung
macro-speed color-macro-speed effect-speed: Makrotempo = langsam – schnell
""")
PAR_DIMMER = x.params("dimmer intensity-master: Dimmer = 0–100 % [0 100 %]")
PAR_MODES = (PAR_COLORS, (*PAR_DIMMER, *PAR_COLORS, PAR_MORE[0]), (*PAR_DIMMER, *PAR_COLORS, *PAR_MORE))


@chart(
    "seventh-b-par",
    "a sheet a mode that nothing but its tab names, heads in the first row, merged downward",
    "ods",
    "de",
    "Lichtwerk Ammerau",
    "PAR 64 Hex",
)
def par(seed: int) -> Made:
    sheets: list[tuple[str, list[Element]]] = []
    modes: list[M] = []
    for params in PAR_MODES:
        modes.append(v.sized(s.row_of(params), "", "{}{} Kanäle", "{1}-Kanal-Modus"))
        rows: list[list[Cell]] = [["Kanal", "Funktion", "Werte", "Bedeutung"]]
        for line in k.lines(modes[-1].params):
            rows += beside([line.slot, line.name], [[v.en(lo, hi), text] for lo, hi, text in line.rows])
        sheets.append((modes[-1].title, [table(rows)]))
    return k.made("Lichtwerk Ammerau", "PAR 64 Hex", modes, ods(sheets))


NIGHT = s.row_of(
    x.params("""
uv dimmer intensity-master: UV intensity = 0% to 100% [0 100 %]
strobe shutter: Strobe
  0-5 out: Off | 6-255 flash: 1 to 13 Hz [1 13 Hz]
dimmer-fade-time: Fade time = 0 s to 6 s [0 6 s]
fan-mode fan: Fan
  0-127 fan: Automatic | 128-255 fan: Always on
""")
)


@chart(
    "seventh-b-night",
    "decimal and hex in two columns, warnings above and below",
    "ods",
    "en",
    "Pennyfarthing Effects",
    "Nightshade UV 400",
)
def night(seed: int) -> Made:
    rows: list[list[Cell]] = [["Slot", "Function", "Dec", "Hex", "Effect"]]
    for slot, name, value, low, high, text in s.body(NIGHT, "slot name value from to text"):
        rows.append([slot, name, value, f"{low:02X}h-{high:02X}h", text])
    sheet: list[Element] = [
        Heading("Nightshade UV 400"),
        Para("Do not look into the lamp from less than 3 m."),
        table(rows),
        Para("The fixture has one mode. Set the start address with the three wheels at the back."),
    ]
    return k.made("Pennyfarthing Effects", "Nightshade UV 400", [k.mode(NIGHT)], ods([("DMX", sheet)]))


PONANT = x.params("""
dimmer intensity-master: Intensité + Intensité fine = 0 à 100 % [0 100 %]
color-temperature: Température de couleur = 2 700 K à 6 500 K [2700 6500 K]
tint green-correction: Correction vert/magenta = De magenta à vert
strobe shutter: Stroboscope
  0-10 out: Arrêt | 11-255 flash: De 1 à 15 Hz [1 15 Hz]
smoothing: Lissage
  0-63 menu smoothing: Selon le menu | 64-127 set smoothing off: Sans | 128-191 set smoothing short: Court
  192-255 set smoothing long: Long
fan-mode fan: Ventilateur
  0-127 fan: Automatique | 128-255 fan: Silencieux
""")
PONANT_MODES = (("Mode 1", "1 2 - - - -"), ("Mode 2", "1 2 3 4 - -"), ("Mode 3", "1/2 3 4 5 6 7"))


@chart(
    "seventh-b-ponant",
    "from and to, each mode under a line with its number and count of slots",
    "ods",
    "fr",
    "Scènes du Ponant",
    "Découpe 36 V",
)
def ponant(seed: int) -> Made:
    sheet: list[Element] = [Heading("Découpe 36 V"), Para("Protocole DMX 512")]
    modes: list[M] = []
    for name, plan in PONANT_MODES:
        modes.append(v.sized(k.seat(PONANT, plan), name, "{} : {} canaux", "{1} canaux"))
        rows: list[list[Cell]] = [["Canal", "Fonction", "De", "À", "Action"]]
        rows += s.body(modes[-1].params, "slot name from to text")
        sheet += [Heading(modes[-1].title), table(rows)]
    return k.made("Scènes du Ponant", "Découpe 36 V", modes, ods([("Feuille1", sheet)]))


SWEEP = x.params("""
pan: Pan + Pan fine = 0° to 540° [0 540 deg]
tilt: Tilt + Tilt fine = 0° to 220° [0 220 deg]
movement-speed: Movement speed = Fast to slow
shutter strobe: Shutter
  0-19 closed: Closed | 20-49 open: Open | 50-199 flash: Strobe, slow to fast
  200-249 random: Random strobe, slow to fast | 250-255 open: Open
dimmer intensity-master: Dimmer + Dimmer fine = 0 to 100% [0 100 %]
red: Red + Red fine = 0 to 100% [0 100 %]
green: Green + Green fine = 0 to 100% [0 100 %]
blue: Blue + Blue fine = 0 to 100% [0 100 %]
white: White + White fine = 0 to 100% [0 100 %]
color-temperature: Color temperature
  0-9 nothing: Off | 10-255: 2500 K to 8000 K [2500 8000 K]
zoom: Zoom = 6° to 48° [6 48 deg]
control reset: Control
  0-9 nothing: No function | 10-19 set fan auto: Fan automatic (hold 3 s) {hold 3}
  20-29 set fan quiet: Fan quiet (hold 3 s) {hold 3} | 30-199 nothing: Reserved
  200-209 reset: Reset pan and tilt (hold 5 s) {hold 5} | 210-219 reset: Reset all (hold 5 s) {hold 5}
  220-255 nothing: Reserved
""")
SWEEP_PLANS = (
    ("Basic", "1 2 3 4 5 6 7 8 9 - 10 11"),
    ("Extended", "1/2 3/4 5 6 7/8 9/10 11/12 13/14 15/16 17 18 19"),
)


@chart(
    "seventh-b-sweep",
    "a head of two rows over two slot columns, blank where absent, merged downward",
    "ods",
    "en",
    "Orrery Motion",
    "Sweep 7 Wash",
)
def sweep(seed: int) -> Made:
    heads: list[Cell] = [C("Channel", cols=2), None]
    rows: list[list[Cell]] = [[*heads, *(C(text, rows=2) for text in ("Function", "DMX", "Description"))]]
    rows.append([*(name for name, _ in SWEEP_PLANS), None, None, None])
    for side in k.sides(SWEEP, *(plan for _, plan in SWEEP_PLANS)):
        slots = ["" if at is None else at for at in side.slots]
        rows += beside([*slots, side.name], [[v.zeros_spaced(lo, hi), text] for lo, hi, text in side.rows])
    modes = [k.mode(k.seat(SWEEP, plan), name) for name, plan in SWEEP_PLANS]
    return k.made("Orrery Motion", "Sweep 7 Wash", modes, ods([("DMX channels", [table(rows)])]))
