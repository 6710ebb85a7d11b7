"""past-universe-end: a unit's slots run past slot 512 of its universe."""

from __future__ import annotations

from collections.abc import Iterable

from modebook.checks.finding import Fault
from modebook.checks.rule import Example, Rule
from modebook.documents.address import SLOTS_PER_UNIVERSE
from modebook.rig.reading import RigReading
from modebook.rig.rules._text import about

_PAR = {"model": "Par", "modes": [{"name": "Wide", "number": 1, "footprint": 8, "parameters": []}]}


def check(reading: RigReading) -> Iterable[Fault]:
    """A fault for each row of which slots fall off the end."""
    for row in reading.rows:
        address, block = row.unit.address, row.block
        if not row.beyond or address is None or block is None:
            continue
        fits = SLOTS_PER_UNIVERSE - block.footprint + 1
        remedy = (
            f"{fits} is the last address at which its {block.footprint} slots fit, and a move costs no more"
            if fits >= 1
            else "no address in one universe holds it: choose another mode"
        )
        yield Fault(
            "address",
            f"its last {row.beyond} of {block.footprint} slots lie past the end of universe "
            f"{address.universe}",
            {
                **about(row),
                "universe": address.universe,
                "address": address.address,
                "footprint": block.footprint,
                "slots_beyond": row.beyond,
                "last_address_that_fits": max(fits, 0),
                "cost_slots": 0 if fits >= 1 else None,
            },
            remedy,
            unit=row.unit.number,
            row=row.unit.row,
        )


RULE = Rule(
    name="past-universe-end",
    severity="error",
    summary="A unit's slots run past slot 512.",
    checks=(
        "Address plus footprint minus 1 against 512, for each start address of the mode. Modes that "
        "continue into the next universe are judged only at the last universe that there is."
    ),
    why="A packet has 512 slots: what lies beyond is never sent, and the unit's last parameters stay dead.",
    bad=Example(
        "Eight slots from 506 on end at 513.",
        {"fixtures": [_PAR], "patch": "unit,fixture,mode,address\n1,Par,Wide,1/506\n"},
    ),
    good=Example(
        "Eight slots from 505 on end at 512.",
        {"fixtures": [_PAR], "patch": "unit,fixture,mode,address\n1,Par,Wide,1/505\n"},
    ),
    references=("ANSI E1.11: at most 512 data slots in a packet", "ANSI E1.31: universes 1 to 63999"),
    check=check,
)
