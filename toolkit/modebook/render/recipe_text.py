"""The recipe for a measurement, for people."""

from __future__ import annotations

from typing import TYPE_CHECKING

from modebook.render.terminal import paint, printed, table

if TYPE_CHECKING:
    from modebook.measure.recipe import CueValue, Recipe


def recipe_text(recipe: Recipe) -> str:
    """The cautions first, then what to send and how to film it, then the values for each choice."""
    lines = [paint(f"{recipe.fixture}, {recipe.mode}: how to measure its smoothing", "bold"), ""]
    lines += [f"! {caution}" for caution in recipe.cautions]
    for title, steps in (("Send", recipe.send), ("Film", recipe.film)):
        lines += ["", paint(title, "bold")]
        lines += [f"{n}. {step}" for n, step in enumerate(steps, 1)]
    lines += ["", paint("Choices", "bold")]
    if not recipe.choices:
        return "\n".join([*lines, "No smoothing choice is recorded: measure the fixture as it comes.", ""])
    rows = [
        (
            one.setting,
            one.choice,
            _slots(one),
            "; ".join(one.by) or "-",
            f"{one.hold_level_s:g} s",
            _notes(one),
        )
        for one in recipe.choices
    ]
    made = table(
        (
            ("Setting", "left"),
            ("Choice", "left"),
            ("Send", "left"),
            ("Or by", "left"),
            ("Hold levels", "right"),
            ("Mind", "left"),
        ),
        rows,
    )
    return "\n".join(lines) + "\n" + printed(made)


def _slots(one: CueValue) -> str:
    told = ", ".join(f"slot {slot} at {value}" for slot, value in one.slots)
    if told and one.hold_s:
        told += f" for {one.hold_s:g} s"
    return told or "-"


def _notes(one: CueValue) -> str:
    return "; ".join([*(f"needs {need}" for need in one.needs), *one.cautions])
