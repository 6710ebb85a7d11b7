"""Reads what a description says besides its meaning: what it does, hold, keeping, hazard, default, raw."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from functools import cache, lru_cache

from modebook.intake.folding import fold
from modebook.intake.lexicon import keyed, phrases

_SECONDS = "|".join(sorted((re.escape(p) for p in phrases("phrases", "seconds")), key=len, reverse=True))
_FIGURE = rf"(?P<figure>\d{{1,3}}(?:[.,]\d{{1,2}})?)\s*\+?\s*(?:{_SECONDS})\b"
_BRACKET_HOLD = re.compile(rf"^\(?\s*(?:[>≥~]|min\.?|≥=?)?\s*{_FIGURE}\.?\s*\)?$", re.IGNORECASE)
_BRACKETS = re.compile(r"[(\[]([^()\[\]]*)[)\]]")
_PARTS = re.compile(r"[,;:()\[\]]|\.(?:\s|$)|\s[-–—]\s")


@dataclass(frozen=True, slots=True)
class Said:
    """What was read from a description. `meaning` is all of it as printed, on one line."""

    meaning: str
    does: str | None = None
    hold_s: float | None = None
    kept: str | None = None
    hazard: str | None = None
    default: int | None = None
    default_at: tuple[int, int] | None = None
    raw: bool = False
    why: tuple[str, ...] = field(default=())


@cache
def _holds() -> tuple[re.Pattern[str], re.Pattern[str]]:
    words = "|".join(sorted((re.escape(p) for p in phrases("phrases", "hold")), key=len, reverse=True))
    before = re.compile(
        rf"\b(?P<word>{words})\b\.?"
        r"(?:\s*(?:>|≥|:|=|ca\.?|approx\.?|about|the|value|de|di|du|für|for|min\.?|at least))*"
        rf"\s*{_FIGURE}",
        re.IGNORECASE,
    )
    behind = re.compile(rf"{_FIGURE}\.?\s*(?:long\s+|lang\s+)?\b(?P<word>{words})\b", re.IGNORECASE)
    return before, behind


_WEAK_HOLD = frozenset(
    {
        "for",
        "fur",
        "after",
        "nach",
        "pendant",
        "apres",
        "durante",
        "per",
        "por",
        "dopo",
        "tras",
        "min",
        "minimum",
        "wait",
        "wait for",
        "needs",
        "warten",
        "lang",
        "duree",
        "delay",
        "mindestens",
        "minimo",
        "keep",
        "halten fur",
    }
)
"""Words of time that mean a hold only where something is triggered."""


@cache
def _default() -> re.Pattern[str]:
    words = "|".join(sorted((re.escape(p) for p in phrases("phrases", "default")), key=len, reverse=True))
    return re.compile(
        rf"[(\[]?\s*(?:(?P<a>\d{{1,5}})\s*(?:=|:|is|ist|est|es|è|\()\s*(?:{words})\b|\b(?:{words})\b\s*(?:=|:|is|ist|est|es|è|\s)\s*(?P<b>\d{{1,5}})(?!\s*[-–.…%°\dK]))\s*[)\]]?",
        re.IGNORECASE,
    )


@lru_cache(maxsize=8_000)
def read_description(text: str, *, triggers: bool = False) -> Said:
    """What a description says. `triggers`: the slot is one of settings and actions, where a bare time is a
    hold.
    """
    flat = " ".join(text.split())
    why: list[str] = []
    hold = _hold(flat, triggers, why)
    default = _default().search(flat)
    number = int(default["a"] or default["b"]) if default else None
    return Said(
        flat,
        _does(flat),
        hold,
        _kept(flat),
        _hazard(flat),
        number,
        default.span() if default else None,
        any(f" {phrase} " in f" {fold(flat)} " for phrase in phrases("phrases", "raw") if phrase),
        tuple(why),
    )


def _hold(text: str, triggers: bool, why: list[str]) -> float | None:
    figures: list[float] = []
    flat = _plain(text)
    before, behind = _holds()
    for pattern in (before, behind):
        for found in pattern.finditer(flat):
            word = fold(found.groupdict().get("word") or "hold")
            if word in _WEAK_HOLD and not triggers:
                continue
            figures.append(float(found["figure"].replace(",", ".")))
        if figures:
            break
    if not figures and triggers:
        behind_name = re.split(r"[,;]|\s[-–—]\s", _BRACKETS.sub(" ", text))[1:]
        for inner in (*_BRACKETS.findall(text), *behind_name):
            for part in re.split(r"[,;]", inner):
                bare = _BRACKET_HOLD.match(part.strip())
                if bare:
                    figures.append(float(bare["figure"].replace(",", ".")))
    if len(set(figures)) > 1:
        why.append("several times are printed; which of them is the hold is not certain")
    return figures[0] if figures else None


def is_bare_hold(text: str) -> bool:
    """Whether a text is a time in seconds and nothing else."""
    return bool(_BRACKET_HOLD.match(text.strip()))


def _plain(text: str) -> str:
    import unicodedata

    flat = unicodedata.normalize("NFKD", text)
    return "".join(letter for letter in flat if not unicodedata.combining(letter))


@cache
def _by_length(prefix: str) -> tuple[tuple[str, str], ...]:
    return tuple(sorted(keyed("phrases", prefix).items(), key=lambda pair: (-len(pair[0]), pair[0])))


def _kept(text: str) -> str | None:
    parts = [fold(part) for part in _PARTS.split(text)]
    form = fold(text)
    for phrase, kept in _by_length("kept."):
        if " " in phrase:
            if f" {phrase} " in f" {form} ":
                return kept
        elif phrase in parts:
            # One word alone ("stored") counts where it is a remark of its own.
            return kept
    return None


_NEGATED = re.compile(
    r" (?:no|without|kein|keine|ohne|sans|pas de|aucun|aucune|sin|ningun|senza|nessun|nessuna) "
)
_SWITCHED_OFF = re.compile(
    r" (?:off|aus|arret|arretee?|arrete|eteinte?|desactivee?|desactivad[oa]|apagad[oa]|detenid[oa]|spent[oa]|"
    r"disattivat[oa]|ferm[oa]|disabled|deaktiviert|gestoppt|stopped|inactive|inaktiv) $"
)
_EITHER = re.compile(r" (?:on|an|ein|allume|encendido|acceso)(?: (?:or|oder|ou|o))? \w+ $")
_NUMBERED = re.compile(r"(?:rotating|rotierendes?|rotatif|giratorio|rotante) [^\W\d]+ \d{1,2}")


def denied(text: str) -> str:
    """What a text says is not there: `strobe` of `No strobe`; nothing if it denies nothing."""
    found = _NEGATED.match(f" {fold(text)} ")
    return f" {fold(text)} "[found.end() :].strip() if found else ""


def affirmed(text: str) -> str:
    """A text without its parts that say what is not (`Open, no strobe`)."""
    parts = [part for part in re.split(r"[,;]", text) if not _NEGATED.match(f" {fold(part)} ")]
    return ",".join(parts)


_STOPPED = re.compile(
    r"^ (?:[^\W\d]+ ){0,2}(?:stop|stopp|stopped|arret|parada|detenida|parado|halt|angehalten|fermo|ferma) $"
)
"""`Rainbow stop`; a turn that slows down to a stop says more words."""


def _does(text: str) -> str | None:
    said = affirmed(text)
    if said.strip() and said != text:
        return _does(said)
    heads = {fold(_BRACKETS.sub(" ", text)), fold(text)}
    whole = keyed("phrases", "does.")
    for head in heads:
        if head in whole:
            remarks = [whole.get(fold(inner)) for inner in _BRACKETS.findall(text)]
            if whole[head] == "nothing" and any(said in ("open", "closed", "stop") for said in remarks):
                # `No function (shutter open)`: what the light does there is said all the same.
                return next(said for said in remarks if said)
            return whole[head]
    alike = {whole.get(fold(part)) for part in re.split(r"[/,]", text)}
    if len(alike) == 1 and None not in alike:
        return alike.pop()  # said in two words: `White / open`
    for part in re.split(r"[:,;]|\s[-–—]\s", _BRACKETS.sub(" ", text)):
        form = fold(part)
        if whole.get(form) in ("as-menu", "unchanged") and form not in (
            "menu",
            "hold",
            "halten",
            "maintenir",
            "mantener",
        ):
            return whole[form]
    tail = fold(re.split(r"[:]|\s[-–—]\s", _BRACKETS.sub(" ", text))[-1])
    if tail in whole and tail != fold(text) and whole[tail] in ("as-menu", "unchanged"):
        return whole[tail]
    form = f" {fold(text)} "
    negated = _NEGATED.match(form)
    if negated:
        # What is not done: no spin is a stop, no show is nothing.
        rest = f" {form[negated.end() :].strip()} "
        turning = any(f" {phrase} " in rest for phrase in phrases("phrases", "does~rotate"))
        return "stop" if turning else ("nothing" if runs(rest) else None)
    if _NUMBERED.fullmatch(form.strip()):
        return None  # one of several by its name: Rotating gobo 1
    off = bool(_SWITCHED_OFF.search(form)) and not _EITHER.search(form)
    for does in ("random", "bounce", "rotate", "index"):
        for phrase in phrases("phrases", f"does~{does}"):
            if f" {phrase} " in form:
                if does == "rotate" and _STOPPED.search(form):
                    return "stop"
                # `Rotation off` is a stop; what else is off does nothing of its kind.
                return ("stop" if does in ("bounce", "rotate") else None) if off else does
    return None


def runs(text: str) -> bool:
    """Whether a description names a program that moves by itself."""
    form = f" {fold(text)} "
    if _NEGATED.match(form) or _SWITCHED_OFF.search(form):
        return False
    return any(
        f" {phrase} " in form or form.startswith(f" {phrase}") for phrase in phrases("phrases", "does~runs")
    )


_LAMP = re.compile(r"\b(?:lamp|lampe|lampen|lampara|lampada|bulb|burner|leuchtmittel)\b")
_OFF = re.compile(
    r"\b(?:off|out|shut(?: ?down)?|extinguish\w*|aus|ausschalten|abschalten|loschen|coup\w+|arret\w*|"
    r"etein\w*|extinction|apag\w+|desconect\w+|desactiv\w+|spegn\w+|spent[ao]|spegni\w+)\b"
)
_ON = re.compile(
    r"\b(?:on|ignit\w+|strik\w+|ein|an|einschalten|zund\w+|allum\w+|amorc\w+|encend\w+|conect\w+|"
    r"accend\w+|accension\w*|acces[ao])\b"
)


def _hazard(text: str) -> str | None:
    form = f" {fold(text)} "
    for phrase, hazard in _by_length("hazard."):
        if f" {phrase} " in form:
            return hazard
    if _LAMP.search(form):
        # A lamp is switched by many verbs.
        off, on = bool(_OFF.search(form)), bool(_ON.search(form))
        if off != on:
            return "lamp off" if off else "lamp on"
    return None


_SLOW = frozenset(["slow", "langsam", "langsamer", "lent", "lente", "lento", "lenta"])
_FAST = frozenset(["fast", "schnell", "schneller", "rapide", "rapido", "rapida", "veloce"])


def turns_round(text: str) -> bool:
    """Whether two languages of one text, a colon between, run in opposite directions: slow to fast in one,
    fast to slow in the other.
    """
    ways = []
    for part in text.split(":"):
        words = fold(part).split()
        slow = next((i for i, word in enumerate(words) if word in _SLOW), None)
        fast = next((i for i, word in enumerate(words) if word in _FAST), None)
        if slow is not None and fast is not None:
            ways.append(slow < fast)
    return len(set(ways)) > 1
