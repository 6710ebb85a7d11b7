"""What else hangs on a stage, in PDFs: an Italian profile, a fogger, a dimmer, a laser and a wind machine."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from intake.corpus.aside import eighth_kit as e
from intake.corpus.content import Made
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.open import seventh_b_kit as v
from intake.corpus.open import seventh_kit as s
from intake.corpus.open import sixth_kit as x
from intake.corpus.registry import chart

BLADES = "\n".join(
    f"blade-position: Lama {n} inserimento = 0 - 100% [0 100 %]\n"
    f"blade-angle: Lama {n} rotazione = -25° - +25° [-25 25 deg]"
    for n in range(1, 5)
)
SAGOMA = x.params(f"""
pan: Pan + Pan fine = 0° - 540° [0 540 deg]
tilt: Tilt + Tilt fine = 0° - 270° [0 270 deg]
dimmer: Dimmer + Dimmer fine = 0 - 100% [0 100 %]
shutter strobe: Otturatore
  0-15 closed: Chiuso | 16-31 open: Aperto | 32-159 flash: Strobo lento - veloce
  160-223 random: Strobo casuale lento - veloce | 224-255 open: Aperto
cyan: Ciano = 0 - 100% [0 100 %]
magenta: Magenta = 0 - 100% [0 100 %]
yellow: Giallo = 0 - 100% [0 100 %]
warm-correction color-correction: CTO = 0 - 100% [0 100 %]
rotating-gobo-wheel gobo-wheel: Gobo
  0-31 white: Aperto | 32-63: Gobo 1 | 64-95: Gobo 2 | 96-127: Gobo 3 | 128-159: Gobo 4 | 160-191: Gobo 5
  192-255: Gobo 6
gobo-rotation: Rotazione gobo
  0-127 index gobo: Indicizzazione | 128-189 spin: Rotazione oraria, veloce - lenta | 190-193 stop: Stop
  194-255 spin: Rotazione antioraria, lenta - veloce
iris: Iris = Aperto - chiuso
frost: Frost = 0 - 100% [0 100 %]
zoom: Zoom = 7° - 48° [7 48 deg]
focus: Fuoco = Vicino - lontano
{BLADES}
framing-rotation: Rotazione lame = -45° - +45° [-45 45 deg]
control reset: Funzioni
  0-199 nothing: Nessuna funzione | 200-219 reset: Reset, tenere 5 secondi {{hold 5}}
  220-255 nothing: Nessuna funzione
""")


@chart(
    "eighth-sagoma",
    "27 slots on one page, spaced hyphens, thin lines above each slot",
    "pdf",
    "it",
    "Officina Teatrale Brenzone",
    "Sagoma 600",
)
def sagoma(seed: int) -> Made:
    seated = x.run(SAGOMA)
    font = f.letter("dejavu")
    rows = [["Canale", "Parametro", "Valori", "Effetto"], *f.body(seated, "slot name value text", v.spaced)]
    marks: list[tuple[Any, ...]] = [
        ("BACKGROUND", (0, 0), (-1, 0), "#f3d9c4"),
        *s.above(rows, "#b08060", 0.5),
    ]
    parts = [
        f.say("PROTOCOLLO DMX", 15, f"{font}-Bold", 6),
        f.say("Il proiettore Sagoma 600 impiega 27 canali DMX. Versione software 1.4 e successive.", 9, font),
        f.grid(rows, [48, 150, 76, 220], *marks, font=font, size=8.5),
    ]
    data = f.flow(parts, "Officina Teatrale Brenzone s.r.l.", head="Sagoma 600 - Manuale di istruzioni")
    return k.made("Officina Teatrale Brenzone", "Sagoma 600", [x.mode(seated)], data)


JET = x.params("""
fog-output haze-output: Fog
  0-9 off: No fog | 10-255: Fog output small to big
red: Red LED = Brightness 0-100% [0 100 %]
green: Green LED = Brightness 0-100% [0 100 %]
blue: Blue LED = Brightness 0-100% [0 100 %]
amber: Amber LED = Brightness 0-100% [0 100 %]
strobe shutter: LED strobe
  0-9 out: No strobe | 10-255 flash: Strobe slow to fast
color-macro macro effect: LED program
  0-9 nothing: No program | 10-99 perhaps: Jump change | 100-189 perhaps: Gradual change
  190-255 perhaps: Colorful pulse
""")


@chart(
    "eighth-jet",
    "a centered table of one mode for a vertical fogger, pages about fluid and alarms around",
    "pdf",
    "en",
    "Xinmiao Effect Machinery",
    "V-Jet 1500",
)
def jet(seed: int) -> Made:
    pdf = f.book("dejavu", "V-Jet 1500 vertical fog machine", "Xinmiao Effect Machinery -")
    pdf.say("Operation", 14, True)
    pdf.say(
        "1. Fill the tank with fog liquid (max. 2.5 L).\n2. Heat up for 8 minutes. The display shows READY."
    )
    messages = [
        ["Display", "Cause", "Solution"],
        ["E1", "No liquid", "Fill"],
        ["E2", "Hot", "Wait 20 minutes"],
    ]
    pdf.grid(messages, (24, 40, 50))
    pdf.say("DMX Channel (7CH)", 14, True)
    seated = x.run(JET)
    rows = [["CH", "Function", "DMX", "Description"], *f.body(seated, "slot name value text", k.zeros)]
    pdf.grid(rows, (16, 40, 30, 70), (0, 1), 9, text_align="CENTER", v_align="MIDDLE")
    pdf.say("The fog cannot be started during heating.", 8)
    mode = x.mode(seated, "DMX Channel (7CH)", "7CH", "DMX Channel")
    return k.made("Xinmiao Effect Machinery", "V-Jet 1500", [mode], bytes(pdf.output()))


@chart(
    "eighth-sixpack",
    "a short sheet of a dimmer, one output a row, no descriptions beyond percents",
    "pdf",
    "en",
    "Wendover Power Control",
    "SixPack 10A",
)
def sixpack(seed: int) -> Made:
    lines = "\n".join(f"dimmer: Output {n} = 0% to 100% [0 100 %]" for n in range(1, 7))
    seated = x.run(x.params(lines))
    sheet = x.Sheet("Helvetica", "", "Wendover Power Control    SixPack 10A    Data sheet 7", (612, 792))
    sheet.say("SixPack 10A Dimmer", 18, True, 10)
    sheet.say("Six outputs of 10 A each, 120 V. Each output has a 10 A breaker. Total load 60 A maximum.")
    sheet.say("DMX Assignments", 12, True)
    rows = [["DMX Channel", "Output", "DMX Level", "Action"], *f.body(seated, "slot name value text", k.dash)]
    sheet.table(rows, (80, 90, 80, 120), "head", 9)
    sheet.say("Outputs may be set to relay (switch at 50%) with the slide switches on the front panel.", 8)
    return k.made("Wendover Power Control", "SixPack 10A", [x.mode(seated)], sheet.data())


LASER = x.params("""
laser-output: Laser
  0-63 closed: Laser off | 64-255: Laser on
laser-pattern: Laser pattern = 64 patterns
image-rotation: Pattern rotation
  0-127: Static angle | 128-191 spin: Clockwise, slow to fast | 192-255 spin: Anticlockwise, slow to fast
image-position-x: Horizontal position = Left to right
image-position-y: Vertical position = Top to bottom
image-scale zoom: Pattern size = Large to small
color-preset color-macro color-wheel virtual-color-wheel: Color
  0-31 white: Original color | 32-63: Red | 64-95: Green | 96-127: Blue | 128-159: Yellow | 160-191: Purple
  192-223: Cyan | 224-255 perhaps: Color change
""")
OFF, ON = LASER[0].ranges
TURN = LASER[2].ranges
LASER = (
    replace(
        LASER[0],
        ranges=(
            k.optional(OFF, does=("nothing", "closed"), hazard=("blackout",)),
            k.optional(ON, does=("open",), hazard=("laser",)),
        ),
    ),
    LASER[1],
    replace(LASER[2], ranges=(k.optional(TURN[0], does=("index", "stop")), *TURN[1:])),
    *LASER[3:],
)


@chart(
    "eighth-aurum",
    "channels as words, en dashes, a warning box above the table",
    "pdf",
    "en",
    "Beiling Laser Display",
    "Aurum 1W",
)
def aurum(seed: int) -> Made:
    seated = x.run(LASER)
    rows = [["Channel", "Function", "DMX value", "Effect"]]
    rows += [
        [f"Channel {row[0]}" if row[0] else "", *row[1:]]
        for row in f.body(seated, "slot name value text", v.en)
    ]
    marks: list[tuple[Any, ...]] = [("GRID", (0, 0), (-1, -1), 0.5, "#000000"), *f.merges(rows, (0, 1))]
    parts = [
        f.say("WARNING: Class 4 laser product. Avoid eye or skin exposure. Trained operators only.", 10),
        f.say("DMX mode (7 channels)", 14, "Helvetica-Bold", 6),
        f.grid(rows, [58, 88, 58, 122], *marks, size=8.5),
        f.say(
            "When the DMX signal is lost the laser is switched off. Key switch and interlock stay in force."
        ),
    ]
    mode = x.mode(seated, "DMX mode (7 channels)", "7 channels", "DMX mode")
    data = f.flow(parts, "Aurum 1W user manual", (420, 595))
    return k.made("Beiling Laser Display", "Aurum 1W", [mode], data)


WIND = x.params("""
fan: Drehzahl
  0-9 off: Aus | 10-255: Langsam bis schnell
red: Rot = 0 bis 100 % [0 100 %]
green: Grün = 0 bis 100 % [0 100 %]
blue: Blau = 0 bis 100 % [0 100 %]
""")


@chart(
    "eighth-boe",
    "one slot or four, headings with the number of channels, small striped tables",
    "pdf",
    "de",
    "Friesenhagen Effekte",
    "Windmaschine Böe 3",
)
def boe(seed: int) -> Made:
    pdf = f.book("serif", "", "Friesenhagen Effekte · Windmaschine Böe 3 · Seite", (148, 210))
    pdf.say("DMX-Betrieb", 14, True)
    pdf.say("Taste MODE drücken, bis „1Ch“ oder „4Ch“ erscheint, dann mit ENTER bestätigen.")
    modes = []
    for title, labels in (("1-Kanal-Modus", "Drehzahl"), ("4-Kanal-Modus", "Drehzahl | Rot | Grün | Blau")):
        modes.append(e.part(WIND, labels, title, title[0], f"{title[0]}-Kanal", f"{title[0]}Ch"))
        rows = [["Kanal", "Wert", "Funktion", "Bemerkung"]]
        rows += f.body(modes[-1].params, "slot value name text", s.padded)
        pdf.say(title, 11, True, 1)
        pdf.grid(rows, (15, 28, 28, 45), cell_fill_color=238, cell_fill_mode="ROWS", borders_layout="NONE")
    pdf.say("Die Maschine darf nicht länger als 30 Minuten mit voller Drehzahl laufen.", 8)
    return k.made("Friesenhagen Effekte", "Windmaschine Böe 3", modes, bytes(pdf.output()))
