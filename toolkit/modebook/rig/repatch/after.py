"""The rig as it stands once a plan is carried out, read like any other."""

from __future__ import annotations

from dataclasses import replace

from modebook.rig.reading import RigReading
from modebook.rig.repatch.plan import Plan


def patched_after(reading: RigReading, plan: Plan) -> RigReading:
    """The same rig with the plan's modes and addresses in its patch; the file on disk is left alone."""
    changes = {change.row: change for change in plan.changes}
    units = tuple(
        replace(unit, mode=changes[unit.row].mode_to, address=changes[unit.row].address_to)
        if unit.row in changes
        else unit
        for unit in reading.patch.units
    )
    patch = replace(reading.patch, units=units)
    return RigReading(reading.name, reading.rig, patch, reading.fixtures, reading.policy)
