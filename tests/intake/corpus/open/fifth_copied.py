"""Charts copied out of a PDF viewer: blanks, wide columns, tabs, blocks with colons, capitals, two modes."""

from __future__ import annotations

from intake.corpus.content import Made, P, R, span
from intake.corpus.open import fifth_kit as f
from intake.corpus.open import fresh_kit as k
from intake.corpus.registry import chart

MIX = [
    P((name.lower(),), name, text="0-100%", spans=k.LEVEL)
    for name in ("Red", "Green", "Blue", "White", "Lime")
]
WASH = (
    P(("pan",), "Pan", fine=("Pan Fine",), text="0-540°", spans=(span(0, 540, "deg"),)),
    P(("tilt",), "Tilt", fine=("Tilt Fine",), text="0-230°", spans=(span(0, 230, "deg"),)),
    P(("movement-speed",), "Pan/Tilt Speed", text="Fast to slow"),
    P(("dimmer",), "Dimmer", text="0-100%", spans=k.LEVEL),
    P(
        ("shutter", "strobe"),
        "Shutter",
        ranges=(
            k.closed(0, 9, "Shutter closed"),
            k.opened(10, 19, "Shutter open"),
            k.flash(20, 129, "Strobe slow to fast"),
            k.chance(130, 239, "Random strobe slow to fast"),
            k.opened(240, 255, "Shutter open"),
        ),
    ),
    *MIX,
    P(("zoom",), "Zoom", text="6°-60°", spans=(span(6, 60, "deg"),)),
    P(
        ("control", "reset"),
        "Function",
        ranges=(
            k.nothing(0, 199),
            k.reset(200, 219, "Reset pan and tilt"),
            k.reset(220, 239, "Reset all"),
            k.nothing(240, 255),
        ),
    ),
)
WASH_PLANS = (
    ("12-Channel Mode", "1 2 3 4 5 6 7 8 9 10 11 12"),
    ("14-Channel Mode", "1/2 3/4 5 6 7 8 9 10 11 12 13 14"),
)


@chart("fifth-paste-wash", "single blanks, page foot in between", "txt", "en", "Marrowby Lighting", "Orbel 7")
def wash(seed: int) -> Made:
    out = ["DMX CHANNELS", "The fixture has two DMX modes. Choose one under Setup > DMX Mode.", ""]
    modes = []
    for number, (title, plan) in enumerate(WASH_PLANS):
        modes.append(k.mode(k.seat(WASH, plan), title, title.replace(" Mode", "")))
        out += [title, "Channel Function Value Description"]
        for row in f.body(modes[-1].params, "slot name value text", k.zeros, "16-bit fine control"):
            out.append(" ".join(cell for cell in row if cell))
        out += [f"Orbel 7 User Manual {14 + number}", ""]
    out += ["MAINTENANCE", "Clean the front lens every 30 days with a soft cloth."]
    return k.made("Marrowby Lighting", "Orbel 7", modes, "\n".join(out) + "\n")


SOFT = (
    P(("dimmer",), "Intensity", fine=("Intensity fine",), text="0 to 100 %", spans=k.LEVEL),
    P(
        ("color-temperature",),
        "Color temperature",
        fine=("Color temperature fine",),
        text="2700 K to 7500 K",
        spans=(span(2700, 7500, "K"),),
    ),
    P(("tint", "green-correction"), "Green/magenta point", text="Minus green to plus green"),
    P(
        ("strobe", "shutter"),
        "Strobe",
        ranges=(k.out(0, 19, "Off"), k.flash(20, 255, "1 Hz to 20 Hz", (1, 20))),
    ),
    P(
        ("fan-mode", "fan"),
        "Fan",
        ranges=(
            k.fan_choice(0, 63, "Automatic"),
            k.fan_choice(64, 127, "Low"),
            k.fan_choice(128, 255, "High"),
        ),
    ),
    P(("reserved",), "Reserved", text="For future use"),
)
SOFT_PLANS = (("Basic", "1 2 3 - - -"), ("8 bit", "1 2 3 4 5 6"), ("16 bit", "1/2 3/4 5 6 7 8"))


@chart(
    "fifth-paste-soft", "wide columns of blanks, three slot columns", "txt", "en", "Ashgrove Cine", "Pane 2x1"
)
def soft(seed: int) -> Made:
    rows = [[*(name for name, _ in SOFT_PLANS), "Parameter", "Value", "Range"]]
    plans = [plan for _, plan in SOFT_PLANS]
    rows += f.beside(SOFT, plans, "slots name value text", lambda lo, hi: f"{lo} - {hi}")
    widths = [max(len(row[x]) for row in rows) + 4 for x in range(len(rows[0]))]
    lines = ["".join(t.ljust(w) for t, w in zip(row, widths, strict=True)).rstrip() for row in rows]
    modes = [f.named(k.seat(SOFT, plan), name) for name, plan in SOFT_PLANS]
    text = "\n".join(["Pane 2x1 DMX table", "", *lines, "", "Firmware 1.4, subject to change", ""])
    return k.made("Ashgrove Cine", "Pane 2x1", modes, text)


HALL = (
    P(("dimmer",), "Helligkeit", fine=("Helligkeit fein",), text="0 bis 100 %", spans=k.LEVEL),
    P(("warm-white",), "Warmweiß", text="0 bis 100 %", spans=k.LEVEL),
    P(("cool-white",), "Kaltweiß", text="0 bis 100 %", spans=k.LEVEL),
    P(("amber",), "Amber", text="0 bis 100 %", spans=k.LEVEL),
    P(
        ("smoothing",),
        "Dimmverhalten",
        ranges=(
            k.optional(R(0, 85, "wie im Menü", "as-menu"), sets=("smoothing",)),
            R(86, 170, "ohne Glättung", sets=("smoothing", "off", "ohne Glättung")),
            R(171, 255, "mit Glättung", sets=("smoothing", "on", "mit Glättung")),
        ),
        doubt="may",
        why="the slot's own name says little",
    ),
)
HALL_PLANS = (("Modus 3", "1 2 3 - -"), ("Modus 6", "1/2 3 4 5 6"))


@chart("fifth-paste-saal", "tabs, two tables, value before name", "txt", "de", "Kastenholz Saallicht", "SL 3")
def hall(seed: int) -> Made:
    out = ["Saalleuchte SL 3", "DMX-Tabellen", ""]
    modes = []
    for title, plan in HALL_PLANS:
        modes.append(f.named(k.seat(HALL, plan), title))
        out += [title, "Kanal\tDMX-Wert\tFunktion\tBemerkung"]
        for row in f.body(modes[-1].params, "slot value name text", lambda lo, hi: f"{lo} bis {hi}"):
            out.append("\t".join(row))
        out.append("")
    out += ["Ohne DMX-Signal leuchtet die SL 3 nach 3 s mit voller Helligkeit."]
    return k.made("Kastenholz Saallicht", "SL 3", modes, "\r\n".join(out) + "\r\n")


BLINDER = (
    P(("dimmer", "intensity-master"), "Intensité générale", (1,), text="0 à 100 %", spans=k.LEVEL),
    *(P(("dimmer",), f"Intensité lampe {n}", (n + 1,), text="0 à 100 %", spans=k.LEVEL) for n in range(1, 5)),
    P(
        ("strobe", "shutter"),
        "Stroboscope",
        (6,),
        ranges=(k.out(0, 10, "arrêté"), k.flash(11, 255, "lent à rapide")),
    ),
    P(
        ("macro", "effect"),
        "Programmes internes",
        (7,),
        ranges=(
            k.nothing(0, 15, "sans fonction"),
            *(k.runs(16 + 48 * n, 63 + 48 * n, f"programme {n + 1}") for n in range(5)),
        ),
    ),
    P(("macro-speed", "effect-speed"), "Vitesse des programmes", (8,), text="lente à rapide"),
    P(("dimmer-fade-time",), "Temps de fondu", (9,), text="0 à 5 s", spans=(span(0, 5, "s"),)),
)


@chart("fifth-paste-blinder", "a line a slot, values and colons below", "txt", "fr", "Sorbelin", "Quatre 650")
def blinder(seed: int) -> Made:
    out = ["7. Fonctions DMX", "L'appareil occupe 9 canaux à partir de l'adresse de départ.", ""]
    for line in k.lines(BLINDER):
        out.append(f"Canal {line.slot} – {line.name}")
        out += [f"{lo} – {hi} : {text}" for lo, hi, text in line.rows]
    out += ["", "8. Entretien", "Débranchez l'appareil et laissez-le refroidir 20 minutes avant de l'ouvrir."]
    return k.made("Sorbelin", "Quatre 650", [k.mode(BLINDER)], "\n".join(out) + "\n")


FOG = (
    P(
        ("fog-output", "haze-output"),
        "FUMO",
        (1,),
        ranges=(
            k.optional(R(0, 9, "Spento"), does=("nothing", "stop", "closed")),
            R(10, 255, "Emissione di fumo"),
        ),
    ),
    *(
        P((word,), name, (at,), text="0-100%", spans=k.LEVEL)
        for at, word, name in ((2, "red", "ROSSO"), (3, "green", "VERDE"), (4, "blue", "BLU"))
    ),
    P(("amber",), "AMBRA", (5,), text="0-100%", spans=k.LEVEL),
    P(
        ("strobe", "shutter"),
        "STROBO",
        (6,),
        ranges=(k.out(0, 9, "Strobo spento"), k.flash(10, 255, "Da lento a veloce")),
    ),
    P(
        ("color-macro", "macro", "color-preset", "effect"),
        "CAMBIO COLORE",
        (7,),
        ranges=(
            k.nothing(0, 9, "Nessuna funzione"),
            k.runs(10, 130, "Cambio a scatti, da lento a veloce"),
            k.runs(131, 255, "Dissolvenza, da lenta a veloce"),
        ),
    ),
)


@chart(
    "fifth-paste-fumo", "CANALE and names in capitals, values below", "txt", "it", "Nebbiola", "Colonna V1"
)
def fog(seed: int) -> Made:
    out = ["CONTROLLO DMX A 7 CANALI", ""]
    for line in k.lines(FOG):
        out.append(f"CANALE {line.slot} {line.name}")
        out += [f"{lo:03}-{hi:03} {text}" for lo, hi, text in line.rows]
        out.append("")
    out += ["Usare solo liquido a base d'acqua. Serbatoio 2,5 litri, tempo di riscaldamento 5 minuti."]
    return k.made("Nebbiola", "Colonna V1", [k.mode(FOG)], "\n".join(out) + "\n")


PAR = (
    P(("dimmer", "intensity-master"), "Dimmer general", text="0-100 %", spans=k.LEVEL),
    *(
        P((word,), name, text="0-100 %", spans=k.LEVEL)
        for word, name in (("red", "Rojo"), ("green", "Verde"), ("blue", "Azul"), ("white", "Blanco"))
    ),
    P(
        ("strobe", "shutter"),
        "Estrobo",
        ranges=(k.out(0, 7, "Sin estrobo"), k.flash(8, 255, "Lento a rápido")),
    ),
    P(
        ("macro", "color-macro", "effect"),
        "Programas",
        ranges=(
            k.nothing(0, 15, "Sin función"),
            k.runs(16, 95, "Salto de colores"),
            k.runs(96, 175, "Fundido de colores"),
            k.maybe_runs(176, 255, "Modo audio"),
        ),
    ),
    P(("macro-speed", "effect-speed", "color-macro-speed"), "Velocidad", text="Lento a rápido"),
)
PAR_PLANS = (("4CH", "- 1 2 3 4 - - -"), ("8CH", "1 2 3 4 5 6 7 8"))


@chart(
    "fifth-paste-par", "single blanks, two slots before each name", "txt", "es", "Calandria Luz", "PAR 18Q"
)
def par(seed: int) -> Made:
    out = ["Tabla DMX", "4CH 8CH Función Valor Descripción"]
    rows = f.beside(PAR, [plan for _, plan in PAR_PLANS], "slots name value text")
    out += [" ".join(cell for cell in row if cell) for row in rows]
    out += ["", "Potencia 120 W", "Peso 2,8 kg"]
    modes = [f.named(k.seat(PAR, plan), name) for name, plan in PAR_PLANS]
    return k.made("Calandria Luz", "PAR 18Q", modes, "\n".join(out) + "\n")
