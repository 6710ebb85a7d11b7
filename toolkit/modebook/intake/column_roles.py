"""Says what each column of a grid holds: titles and contents of all columns together, contents first."""

from __future__ import annotations

from modebook.intake.column_stats import Stats
from modebook.intake.folding import fold
from modebook.intake.headings import read_mode_head
from modebook.intake.titles import Role, title_languages, title_roles

_TEXTS = ("function", "meaning")
_NUMBERS = frozenset(
    (
        *("no", "nr", "n°", "n", "#", "num", "number", "nummer", "numero", "pos", "position", "item", "row"),
        *("lfd nr", "lfd", "zeile", "ligne", "fila", "riga", "index"),
    )
)
"""Titles, folded, that say only that a column counts, and not what."""


def roles_of(titles: list[str], stats: list[Stats]) -> list[Role]:
    """A role for each column. A title that its column contradicts does not count."""
    roles = [_alone(title, stat) for title, stat in zip(titles, stats, strict=True)]
    _slots(roles, titles, stats)
    _values(roles, stats)
    _measures(roles, titles, stats)
    _texts(roles, titles, stats)
    _translations(roles, titles, stats)
    _classes(roles, stats)
    return roles


def _classes(roles: list[Role], stats: list[Stats]) -> None:
    """A column that says of each range but how it is run is no part of what the ranges mean."""
    for c, s in enumerate(stats):
        others = any(n != c and stats[n].text and role in _TEXTS for n, role in enumerate(roles))
        few = s.text >= 3 and s.distinct <= 4
        if roles[c] in (*_TEXTS, "none", "group") and few and others and s.classes >= 0.9 * s.filled:
            roles[c] = "foreign"


def _translations(roles: list[Role], titles: list[str], stats: list[Stats]) -> None:
    """A column whose title says in another language what one before it says repeats that one's texts."""
    seen: list[tuple[Role, frozenset[str], int]] = []
    for c, title in enumerate(titles):
        said, languages = title_roles(title)[:1], title_languages(title)
        if not said or said[0] not in _TEXTS or not languages or roles[c] == "slot":
            continue
        # Names stand where slots do.
        slots = [n for n, role in enumerate(roles) if role in ("slot", "coarse")]
        if said[0] == "function" and _beside(stats[c], stats, slots) < 0.9:
            continue
        if any(
            role == said[0] and not languages & others and _same_rows(stats[c], stats[first])
            for role, others, first in seen
        ):
            roles[c] = "foreign"
        else:
            seen.append((said[0], languages, c))


def _same_rows(one: Stats, other: Stats) -> bool:
    """Whether two columns are filled in nearly the same rows."""
    same = sum(a == b for a, b in zip(one.rows, other.rows, strict=True))
    return same >= 0.9 * len(one.rows)


def _alone(title: str, stats: Stats) -> Role:
    """A column's role by its title where the contents allow it, else by the contents."""
    roles = title_roles(title)
    if stats.bytes > 1 and stats.bytes >= 0.4 * stats.filled and stats.distinct <= 4:
        return "bits"
    if not stats.filled:
        return roles[0] if roles else "none"
    if roles[:1] == ("foreign",) and stats.distinct == 1 < stats.filled and stats.text:
        return "foreign"  # the same in every row: it tells of no slot
    for role in roles:
        if role != "foreign" and _fits(role, roles, stats):
            return role
    return _by_contents(title, stats, known=bool(roles))


def _fits(role: Role, roles: tuple[Role, ...], stats: Stats) -> bool:
    """Whether a column's contents are what a title of the role promises."""
    told = stats.share(stats.text)
    numeric = stats.share(stats.values)
    if role == "slot":
        if stats.share(stats.ranges) > 0.6 and not stats.continuing >= 0.8 * stats.slots:
            return False
        if "value" in roles:
            return (
                stats.slotlike and (stats.sequence or stats.spread < 2) and stats.ranges < 0.4 * stats.filled
            )
        return stats.slotlike or (stats.slots > 0 and told <= 0.5)
    if role in ("coarse", "fine"):
        return stats.slotlike
    if role in ("value", "percent"):
        if "slot" in roles and stats.sequence and stats.ranges < 0.4 * stats.filled:
            return False
        if "bits" in roles and not stats.ranges and stats.distinct <= 3:
            # 8 and 16, over and over.
            return False
        return numeric > 0.2 or stats.hexes > 0 or (told < 0.5 and not stats.slotlike)
    if role == "hex":
        return stats.hexes + stats.values > 0.3 * stats.filled
    if role in ("from", "to"):
        return max(numeric, stats.share(stats.figures)) > 0.7 and stats.ranges < 0.3 * stats.filled
    if role == "default":
        return numeric > 0.6 or (told < 0.5 and not stats.names)
    if role in _TEXTS or role == "mode":
        return told > 0 or numeric < 0.8 or stats.percent > 0
    if role == "group":
        return not (stats.text > 0 and stats.names > 0.7 * stats.text and not stats.grouping)
    return True


def _by_contents(title: str, stats: Stats, *, known: bool) -> Role:
    if stats.sequence and stats.ranges <= 0.4 * stats.filled and not stats.percent:
        return "slot"
    if stats.slotlike and title and read_mode_head(title):
        return "slot"
    if stats.share(stats.values) > 0.7 and (stats.ranges or known):
        return "percent" if stats.percent > stats.values / 2 else "value"
    return "none"


def _slots(roles: list[Role], titles: list[str], stats: list[Stats]) -> None:
    """Columns of slots side by side: what stands among them and counts as they do is one of them."""
    slots = [c for c, role in enumerate(roles) if role in ("slot", "coarse", "fine")]
    for c, role in enumerate(roles):
        s = stats[c]
        # A number of cells says itself again in row after row; a mode called Pixel has each slot once.
        once = role == "group" and s.distinct - (s.absent > 0) == s.slots
        if role not in ("default", "from", "to", "none", "percent", "value", "bits", "hex") and not once:
            continue
        beside = any(abs(c - other) == 1 for other in slots if roles[other] in ("slot", "coarse"))
        lone = not slots and role in ("default", "none")
        plain = s.slotlike and not s.ranges and not s.percent and s.filled >= 1
        titled = bool(titles[c])
        others = any(n != c and stats[n].ranges and one == "value" for n, one in enumerate(roles))
        # Pairs that go on as slots do (1-2, 3-4, 5), beside slots and apart from the values, are slots.
        pairs = role == "value" and beside and titled and others and s.sequence and s.starts == 1
        if (
            (pairs and s.spread >= 3)
            or (s.sequence and plain and (lone or (beside and titled and s.spread >= 3)))
            or (
                plain
                and beside
                and titled
                and (role == "none" or (once and s.absent > 0))
                and _agrees(s, [stats[o] for o in slots])
            )
        ):
            roles[c] = "slot"
            slots.append(c)
    if "slot" in roles and roles.count("slot") > 1:
        # Numbers that only count rows or units beside real slots never begin again where those do; a column
        # of one number over and over is none.
        for c in [c for c, role in enumerate(roles) if role == "slot"]:
            if not stats[c].slotlike:
                roles[c] = "none"
        _row_numbers(roles, titles, stats)


def _row_numbers(roles: list[Role], titles: list[str], stats: list[Stats]) -> None:
    """A column titled as nothing but numbers, beside slots that count as far, numbers the rows."""
    slots = [c for c, role in enumerate(roles) if role == "slot"]
    told = [c for c in slots if titles[c] and fold(titles[c]) not in _NUMBERS]
    for c in slots:
        if fold(titles[c]) in _NUMBERS and any(stats[o].spread >= stats[c].spread for o in told):
            roles[c] = "foreign"


def _agrees(mine: Stats, others: list[Stats]) -> bool:
    """Whether a short column of numbers stands only in rows in which slots stand."""
    return any(
        sum(a and b for a, b in zip(mine.rows, other.rows, strict=True)) >= 0.8 * mine.filled
        for other in others
    )


def _values(roles: list[Role], stats: list[Stats]) -> None:
    """Several columns of values: which is decimal, which percent, which hex."""
    values = [c for c, role in enumerate(roles) if role == "value"]
    for c in values:
        others = [roles[o] for o in values if o != c]
        if stats[c].percent > stats[c].values / 2 and stats[c].percent:
            if "value" in others and (stats[c].percent == stats[c].whole_percent or stats[c].text):
                # Percents that restate values run in steps as they do, and no words stand among them; these
                # say what a whole slot measures.
                roles[c] = "meaning"
                continue
            roles[c] = "percent" if "value" in others or stats[c].percent == stats[c].values else "value"
        elif stats[c].hexes > 0.3 * stats[c].filled and "value" in others:
            roles[c] = "hex"
    values = [c for c, role in enumerate(roles) if role == "value"]
    if len(values) > 1:
        # Of two decimal columns the one that covers the bytes counts; a column of single numbers beside it
        # is no range.
        best = max(values, key=lambda c: (stats[c].ranges > 0, stats[c].chained, stats[c].values, -c))
        for c in values:
            if c != best and not stats[c].ranges and stats[best].ranges:
                roles[c] = "none"
            elif (
                c != best and stats[best].tops > 1 and not stats[c].tops and stats[c].filled > stats[c].values
            ):
                # Figures that never reach the top of a slot, words among them: what the values mean.
                roles[c] = "meaning"
    for c, role in enumerate(roles):
        # A column that counts nothing up is no column of ranges.
        if role == "value" and stats[c].values and not stats[c].ranges and stats[c].spread < 2:
            roles[c] = "none"
    if ("from" in roles) != ("to" in roles):
        for c, role in enumerate(roles):
            if role in ("from", "to"):
                roles[c] = "value" if "value" not in roles else "none"


def _measures(roles: list[Role], titles: list[str], stats: list[Stats]) -> None:
    """A column of percents under `Range` says what the values beside it mean, not once more where they lie,
    where words and other units stand among them.
    """
    if not {"value", "from"} & set(roles) or "meaning" in roles:
        return
    values = [c for c, role in enumerate(roles) if role == "value"]
    if len(values) == 2 and roles[values[1] + 1 : values[1] + 2] == ["unit"]:
        # Figures with their unit beside them (`0..100 | %`) are measures, and no values.
        roles[values[1]] = "meaning"
    for c, role in enumerate(roles):
        s = stats[c]
        told = title_roles(titles[c])[:1]
        if role not in ("percent", "none") or told == ("percent",) or not s.filled:
            continue
        if role == "percent" and told and s.filled > s.values:
            roles[c] = "meaning"
        elif s.measured >= 0.8 * s.filled and (s.filled > s.values or s.percent == s.whole_percent):
            # Percents that restate values run in steps as they do; these say what a whole slot measures.
            roles[c] = "meaning"


def _texts(roles: list[Role], titles: list[str], stats: list[Stats]) -> None:
    """Columns of words: names stand where slots stand, meanings where values stand, groups over several."""
    slots = [c for c, role in enumerate(roles) if role in ("slot", "coarse")]
    texts = [
        c
        for c, role in enumerate(roles)
        if role in _TEXTS or (role in ("none", "group") and stats[c].text > 0.5 * max(1, stats[c].filled))
    ]
    for c in list(texts):
        s = stats[c]
        others = [o for o in texts if o != c and roles[o] != "group"]
        unnamed = not titles[c] or roles[c] == "group" or not title_roles(titles[c])
        left = bool(slots) and c < slots[0]
        grouping = s.grouping >= 0.6 * max(1, s.text)
        named_too = [o for o in others if title_roles(titles[o])[:1] == ("function",)]
        said = title_roles(titles[c])[:1] == ("group",) and (
            _fewer(s, stats, slots, others) or (left and _at_each(stats, slots, named_too))
        )
        if others and (
            (unnamed and (grouping or (left and _sparse(s, stats[slots[0]])))) or said or roles[c] == "group"
        ):
            roles[c] = "group"
            texts.remove(c)
    functions = [c for c in texts if roles[c] == "function"]
    meanings = [c for c in texts if roles[c] == "meaning"]
    rest = [c for c in texts if roles[c] in ("none", "group")]

    def named(c: int) -> float:
        return stats[c].share(stats[c].names)

    if len(functions) > 1:
        best = max(
            functions, key=lambda c: (named(c) > 0.5, _beside(stats[c], stats, slots), stats[c].kinds, -c)
        )
        for c in functions:
            if c != best:
                roles[c] = "meaning"
    elif not functions:
        pool = [*rest, *meanings]
        if pool:
            best = max(pool, key=lambda c: (round(named(c), 1), c in rest, -c))
            if pool != meanings[:1] and (len(pool) == 1 or named(best) > 0.2 or best in rest):
                roles[best] = "function"
    elif rest and functions and named(functions[0]) < 0.2:
        better = [c for c in rest if named(c) > 0.6]
        if better:
            roles[functions[0]], roles[better[0]] = "meaning", "function"
    for c in texts:
        if roles[c] in ("none", "group"):
            roles[c] = "meaning" if "meaning" not in roles or not titles[c] else "none"


def _beside(mine: Stats, stats: list[Stats], slots: list[int]) -> float:
    """In which share of its rows a slot stands, in tenths: names stand beside slots, meanings everywhere."""
    if not slots or not mine.filled:
        return 0.0
    both = sum(a and any(stats[c].rows[n] for c in slots) for n, a in enumerate(mine.rows))
    return round(both / mine.filled, 1)


def _fewer(mine: Stats, stats: list[Stats], slots: list[int], others: list[int]) -> bool:
    """Whether a column stands in fewer rows than slots do, and another has a text for each of them: though
    its texts may be names as well (Color, Dimmer), they are those of groups.
    """
    few = bool(slots) and 0 < mine.filled < 0.6 * stats[slots[0]].filled
    return few and _at_each(stats, slots, others)


def _at_each(stats: list[Stats], slots: list[int], others: list[int]) -> bool:
    """Whether one of some columns has a text for each slot."""
    if not slots:
        return False
    rows = stats[slots[0]].rows
    both = (sum(a and b for a, b in zip(rows, stats[o].rows, strict=True)) for o in others)
    return any(count >= 0.9 * sum(rows) for count in both)


def _sparse(mine: Stats, slots: Stats) -> bool:
    """Whether a column stands in fewer rows than slots do, as the label of a group does."""
    return 0 < mine.filled < 0.6 * max(1, slots.filled) and mine.names < 0.5 * mine.filled


def matrix_columns(roles: list[Role], titles: list[str], stats: list[Stats]) -> list[int]:
    """The columns of a slot by mode matrix: names under mode titles, beside one slot column."""
    if roles.count("slot") != 1 or "value" in roles or "from" in roles:
        return []
    slot = roles.index("slot")
    found = []
    for c, title in enumerate(titles):
        s = stats[c]
        if c == slot or not title or not s.filled:
            continue
        words = s.filled - s.absent
        if words and s.text >= 0.5 * words and s.names >= 0.5 * s.text:
            found.append(c)
    titled = [c for c in found if title_roles(titles[c])[:1] in (("function",), ("meaning",))]
    if len(found) - len(titled) >= 2 or (
        found and not titled and all(read_mode_head(titles[c]) for c in found)
    ):
        return [c for c in found if c not in titled]
    return []
