"""The pages around a chart: safety, menus, tables that are no charts, in five languages."""

# ruff: noqa: E501 - a table of texts

from __future__ import annotations

from random import Random
from typing import Any

from intake.corpus.grids import Break, C, Element, Grid, Heading, Look, Para, Table, cells

TEXTS: dict[str, dict[str, Any]] = {
    "en": {
        "cover": "User manual",
        "safety": "Safety",
        "safe": [
            "Read this manual before use and keep it. Disconnect the product from mains before opening it. Have work done by "
            "qualified people only, within local codes. Secure the product with a second fixing when it hangs above people.",
            "Flashing light can set off seizures in people who are prone to them. Keep at least 1.5 m from flammable objects. "
            "The surface can reach 65 °C. Operate between 0 °C and 40 °C.",
            "The head moves without warning after power on. Keep hands and cables clear while 1 to 3 resets run.",
        ],
        "menu": "Menu", "menuhead": ["Menu", "Option", "Values", "Explanation"],
        "menurows": [
            ["Address", "Start address", "001 – 512", "DMX start address of the product"],
            ["Mode", "DMX mode", "1, 2, 3", "Channel mode"],
            ["Display", "Backlight", "10 s, 30 s, on", "Time until the display goes dark"],
            ["Display", "Turn", "0° / 180°", "Turns the display"],
            ["Pan", "Invert", "on / off", "Inverts the pan movement"],
            ["Info", "Hours", "0 – 99999", "Total hours of use"],
        ],
        "errors": "Messages", "errhead": ["No.", "Message", "What to do"],
        "errrows": [
            ["1", "Pan not found", "Reset, check the sensor"], ["2", "Tilt not found", "Reset, check the sensor"],
            ["3", "Lamp cold", "Wait 10 minutes"], ["4", "Fan 2 stopped", "Clean the fan"], ["5", "Zoom not found", "Call service"],
        ],
        "spec": "Technical data", "specs": [["Voltage", "100 – 240 V, 50/60 Hz"], ["Power", "420 W"], ["Weight", "14.2 kg"], ["Pan", "540°"], ["Tilt", "270°"]],
        "link": "Setting the start address", "linkhead": ["Unit", "Start address"],
        "linktext": "Each product needs its own start address unless it is to act as its neighbor. Example for four products:",
        "care": "Cleaning", "clean": "Clean lenses every 30 days with a soft cloth. Check the fans every 200 hours. Never use solvents.",
        "dist": ["Distance (m)", "Illuminance (lx)", "Diameter (m)"],
    },
    "de": {
        "cover": "Bedienungsanleitung",
        "safety": "Sicherheitshinweise",
        "safe": [
            "Lesen Sie diese Anleitung vor dem Gebrauch und bewahren Sie sie auf. Trennen Sie das Gerät vor dem Öffnen vom Netz. "
            "Arbeiten nur durch Fachkräfte nach den örtlichen Vorschriften. Sichern Sie das Gerät über Personen mit einer zweiten Befestigung.",
            "Blitzendes Licht kann Anfälle auslösen. Halten Sie mindestens 1,5 m Abstand zu brennbaren Gegenständen. Oberfläche bis 65 °C, "
            "Betrieb von 0 °C bis 40 °C.",
            "Nach dem Einschalten bewegt sich der Kopf ohne Warnung. Hände und Kabel fernhalten.",
        ],
        "menu": "Menü", "menuhead": ["Menü", "Eintrag", "Werte", "Erläuterung"],
        "menurows": [
            ["Adresse", "Startadresse", "001 – 512", "DMX-Startadresse"], ["Modus", "DMX-Modus", "1, 2, 3", "Kanalmodus"],
            ["Anzeige", "Licht", "10 s, 30 s, ein", "Zeit bis zum Abschalten"], ["Anzeige", "Drehen", "0° / 180°", "Dreht die Anzeige"],
            ["Info", "Stunden", "0 – 99999", "Betriebsstunden"],
        ],
        "errors": "Meldungen", "errhead": ["Nr.", "Meldung", "Abhilfe"],
        "errrows": [["1", "Pan nicht gefunden", "Reset"], ["2", "Tilt nicht gefunden", "Reset"], ["3", "Lüfter 2 steht", "Reinigen"], ["4", "Zoom nicht gefunden", "Service rufen"]],
        "spec": "Technische Daten", "specs": [["Spannung", "100 – 240 V, 50/60 Hz"], ["Leistung", "420 W"], ["Gewicht", "14,2 kg"], ["Pan", "540°"]],
        "link": "Startadresse einstellen", "linkhead": ["Gerät", "Startadresse"],
        "linktext": "Jedes Gerät braucht eine eigene Startadresse. Beispiel für vier Geräte:",
        "care": "Reinigung", "clean": "Linsen alle 30 Tage mit einem weichen Tuch reinigen. Lüfter alle 200 Stunden prüfen.",
        "dist": ["Abstand (m)", "Beleuchtungsstärke (lx)", "Durchmesser (m)"],
    },
    "fr": {
        "cover": "Mode d'emploi",
        "safety": "Consignes de sécurité",
        "safe": [
            "Lisez ce mode d'emploi avant l'utilisation et conservez-le. Débranchez l'appareil avant de l'ouvrir. Travaux par des personnes "
            "qualifiées, selon les règles locales. Posez une seconde sécurité au-dessus du public.",
            "La lumière stroboscopique peut provoquer des crises. Distance minimale de 1,5 m. Surface jusqu'à 65 °C, emploi de 0 °C à 40 °C.",
            "La tête bouge sans prévenir après la mise sous tension. Écartez mains et câbles.",
        ],
        "menu": "Menu", "menuhead": ["Menu", "Option", "Valeurs", "Explication"],
        "menurows": [
            ["Adresse", "Adresse de départ", "001 – 512", "Adresse DMX"], ["Mode", "Mode DMX", "1, 2, 3", "Mode de canaux"],
            ["Écran", "Éclairage", "10 s, 30 s", "Délai avant extinction"], ["Info", "Heures", "0 – 99999", "Heures d'emploi"],
        ],
        "errors": "Messages", "errhead": ["N°", "Message", "Solution"],
        "errrows": [["1", "Pan introuvable", "Reset"], ["2", "Tilt introuvable", "Reset"], ["3", "Ventilateur 2 arrêté", "Nettoyer"], ["4", "Zoom introuvable", "Service"]],
        "spec": "Données techniques", "specs": [["Tension", "100 – 240 V, 50/60 Hz"], ["Puissance", "420 W"], ["Poids", "14,2 kg"], ["Pan", "540°"]],
        "link": "Régler l'adresse", "linkhead": ["Appareil", "Adresse"],
        "linktext": "Chaque appareil a besoin de sa propre adresse. Exemple pour quatre appareils :",
        "care": "Entretien", "clean": "Nettoyez les lentilles tous les 30 jours. Vérifiez les ventilateurs toutes les 200 heures.",
        "dist": ["Distance (m)", "Éclairement (lx)", "Diamètre (m)"],
    },
    "es": {
        "cover": "Manual de usuario",
        "safety": "Seguridad",
        "safe": [
            "Lea este manual antes del uso y guárdelo. Desconecte el aparato antes de abrirlo. Trabajos solo por personas cualificadas, según "
            "las normas locales. Asegure el aparato con una segunda fijación sobre personas.",
            "La luz intermitente puede provocar ataques. Distancia mínima de 1,5 m. Superficie hasta 65 °C, uso de 0 °C a 40 °C.",
            "El cabezal se mueve sin aviso al encender. Aparte manos y cables.",
        ],
        "menu": "Menú", "menuhead": ["Menú", "Opción", "Valores", "Explicación"],
        "menurows": [
            ["Dirección", "Dirección inicial", "001 – 512", "Dirección DMX"], ["Modo", "Modo DMX", "1, 2, 3", "Modo de canales"],
            ["Pantalla", "Luz", "10 s, 30 s", "Tiempo hasta apagarse"], ["Info", "Horas", "0 – 99999", "Horas de uso"],
        ],
        "errors": "Mensajes", "errhead": ["N.º", "Mensaje", "Solución"],
        "errrows": [["1", "Pan no encontrado", "Reset"], ["2", "Tilt no encontrado", "Reset"], ["3", "Ventilador 2 parado", "Limpiar"], ["4", "Zoom no encontrado", "Servicio"]],
        "spec": "Datos técnicos", "specs": [["Tensión", "100 – 240 V, 50/60 Hz"], ["Potencia", "420 W"], ["Peso", "14,2 kg"], ["Pan", "540°"]],
        "link": "Ajustar la dirección", "linkhead": ["Aparato", "Dirección"],
        "linktext": "Cada aparato necesita su propia dirección. Ejemplo para cuatro aparatos:",
        "care": "Limpieza", "clean": "Limpie las lentes cada 30 días. Revise los ventiladores cada 200 horas.",
        "dist": ["Distancia (m)", "Iluminancia (lx)", "Diámetro (m)"],
    },
    "it": {
        "cover": "Manuale d'uso",
        "safety": "Sicurezza",
        "safe": [
            "Leggere questo manuale prima dell'uso e conservarlo. Scollegare l'apparecchio prima di aprirlo. Lavori solo da persone qualificate, "
            "secondo le norme locali. Usare un secondo fissaggio sopra le persone.",
            "La luce lampeggiante può provocare crisi. Distanza minima 1,5 m. Superficie fino a 65 °C, uso da 0 °C a 40 °C.",
            "La testa si muove senza avviso all'accensione. Tenere lontani mani e cavi.",
        ],
        "menu": "Menu", "menuhead": ["Menu", "Voce", "Valori", "Spiegazione"],
        "menurows": [
            ["Indirizzo", "Indirizzo iniziale", "001 – 512", "Indirizzo DMX"], ["Modo", "Modo DMX", "1, 2, 3", "Modo dei canali"],
            ["Display", "Luce", "10 s, 30 s", "Tempo di spegnimento"], ["Info", "Ore", "0 – 99999", "Ore d'uso"],
        ],
        "errors": "Messaggi", "errhead": ["N.", "Messaggio", "Rimedio"],
        "errrows": [["1", "Pan non trovato", "Reset"], ["2", "Tilt non trovato", "Reset"], ["3", "Ventola 2 ferma", "Pulire"], ["4", "Zoom non trovato", "Assistenza"]],
        "spec": "Dati tecnici", "specs": [["Tensione", "100 – 240 V, 50/60 Hz"], ["Potenza", "420 W"], ["Peso", "14,2 kg"], ["Pan", "540°"]],
        "link": "Impostare l'indirizzo", "linkhead": ["Apparecchio", "Indirizzo"],
        "linktext": "Ogni apparecchio ha bisogno di un indirizzo proprio. Esempio per quattro apparecchi:",
        "care": "Pulizia", "clean": "Pulire le lenti ogni 30 giorni. Controllare le ventole ogni 200 ore.",
        "dist": ["Distanza (m)", "Illuminamento (lx)", "Diametro (m)"],
    },
}  # fmt: skip


def _table(head: list[str], rows: list[list[str]], widths: list[float], look: Look) -> Table:
    return Table(Grid([[C(text) for text in head]], [cells(*row) for row in rows], widths), look)


def before(language: str, maker: str, model: str, rng: Random, look: Look) -> list[Element]:
    """Two to four pages that come before the chart; the last element is a page break."""
    t = TEXTS[language]
    made: list[Element] = [
        Heading(f"{maker} {model}"),
        Para(str(t["cover"])),
        Para("Rev. " + rng.choice("ABCD")),
        Break(),
    ]
    made += [Heading(str(t["safety"])), *(Para(text) for text in t["safe"])]
    if rng.random() < 0.7:
        made.append(Break())
    made += [
        Heading(str(t["menu"])),
        _table(list(t["menuhead"]), list(t["menurows"]), [28, 34, 36, 66], look),
    ]
    if rng.random() < 0.6:
        step = rng.choice([12, 16, 24])
        rows = [[str(n + 1), str(1 + n * step)] for n in range(4)]
        made += [
            Heading(str(t["link"]), 2),
            Para(str(t["linktext"])),
            _table(list(t["linkhead"]), rows, [30, 40], look),
        ]
    return [*made, Break()]


def after(language: str, rng: Random, look: Look) -> list[Element]:
    """One to three pages that follow the chart; the first element is a page break."""
    t = TEXTS[language]
    made: list[Element] = [
        Break(),
        Heading(str(t["errors"])),
        _table(list(t["errhead"]), list(t["errrows"]), [14, 60, 60], look),
    ]
    if rng.random() < 0.5:
        rows = [[str(d), str(round(90000 / d**2)), f"{d * 0.31:.1f}"] for d in (2, 5, 10, 15)]
        made.append(_table(list(t["dist"]), rows, [34, 46, 34], look))
    made += [Heading(str(t["care"]), 2), Para(str(t["clean"]))]
    if rng.random() < 0.6:
        made.append(Break())
    specs = Grid([], [cells(*row) for row in t["specs"]], [40, 70])
    return [*made, Heading(str(t["spec"])), Table(specs, look)]
