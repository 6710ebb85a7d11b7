"""What all rigs were asked, as one JSON object: its keys stay."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.rig.across import RigDemands, UsingMode
from modebook.rig.remote import RigRemote


def rigs_json(
    answers: Sequence[tuple[RigRemote, RigDemands, Sequence[UsingMode]]], identity: str | None = None
) -> dict[str, object]:
    """Each rig's answers; with `identity` (``maker/model``) also in which modes and units it is used."""
    rigs = []
    for remote, left, modes in answers:
        told = remote.to_json() | left.to_json()
        which = told.pop("which")
        told["which"] = {**(which if isinstance(which, dict) else {}), **left.which_json()}
        if identity is not None:
            told["using"] = [mode.to_json() for mode in modes]
        rigs.append(told)
    return {"rigs": rigs} if identity is None else {"using": identity, "rigs": rigs}
