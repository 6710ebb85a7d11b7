"""A document cut down to some of its modes: by name or number, or by the firmware of its sources."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from modebook.intake.errors import PickError

if TYPE_CHECKING:
    from modebook.documents.fixture import Fixture

_MODE = re.compile(r"/modes/(\d+)(.*)")


def modes_named(fixture: Fixture, told: str) -> list[int]:
    """The places (from 0) of the modes that a name or number means. Raises PickError where none is meant.

    One number may be two modes, where a menu state decides between them.
    """
    from modebook.rig.mode_names import modes_meant, nearest_modes

    found = modes_meant(told, fixture.modes)
    if not found:
        near = nearest_modes(told, fixture.modes, 5)
        raise PickError(f"{fixture.id}: there is no mode {told!r}; is {' or '.join(near)} meant?")
    return found


def one_mode(fixture: Fixture, told: str) -> int:
    """The place of the one mode that is meant. Raises PickError where several are."""
    found = modes_named(fixture, told)
    if len(found) > 1:
        names = ", ".join(
            f"{fixture.modes[i].name!r}"
            + (f" (given {fixture.modes[i].given})" if fixture.modes[i].given else "")
            for i in found
        )
        raise PickError(f"{fixture.id}: {told!r} may be {names}; tell them apart by name")
    return found[0]


@dataclass(frozen=True, slots=True)
class Cut:
    """A document cut down, and where its modes stood in the whole one."""

    fixture: Fixture
    modes: tuple[int, ...]

    def pointer(self, pointer: str) -> str:
        """A pointer into what was cut as one into the whole document."""
        found = _MODE.fullmatch(pointer)
        return f"/modes/{self.modes[int(found[1])]}{found[2]}" if found else pointer


def of_firmware(fixture: Fixture, firmware: str) -> Cut:
    """The document as the sources for one firmware tell it: modes read from them or from no source, and all
    settings, but for ways of another firmware (a later manual rarely repeats what has stayed).

    Raises PickError where no source describes that firmware, or no mode was read from one.
    """
    wanted = firmware.strip().casefold()
    others = {s.key for s in fixture.sources if s.firmware is None or s.firmware.casefold() != wanted}
    known = sorted({s.firmware for s in fixture.sources if s.firmware})
    if not any(s.key not in others for s in fixture.sources):
        raise PickError(
            f"{fixture.id}: no source describes firmware {firmware}; "
            f"{'there are ' + ', '.join(known) if known else 'none names a firmware'}"
        )
    modes = tuple(i for i, mode in enumerate(fixture.modes) if mode.source not in others)
    if not modes:
        raise PickError(f"{fixture.id}: no mode was read from a source for firmware {firmware}")
    settings = [
        setting.model_copy(
            update={"ways": [w for w in setting.ways if (w.firmware or wanted).casefold() == wanted]}
        )
        for setting in fixture.settings
    ]
    return Cut(with_modes(fixture, modes).model_copy(update={"settings": settings}), modes)


def with_modes(fixture: Fixture, modes: Sequence[int]) -> Fixture:
    """The document with some of its modes; doubts and acceptances about others are left out."""
    places = {old: new for new, old in enumerate(modes)}
    update: dict[str, object] = {"modes": [fixture.modes[index] for index in modes]}
    for key in ("doubts", "accepted"):
        if key in fixture.model_fields_set:
            entries = []
            for entry in getattr(fixture, key):
                found = _MODE.fullmatch(entry.pointer)
                if found is None:
                    entries.append(entry)
                elif int(found[1]) in places:
                    pointer = f"/modes/{places[int(found[1])]}{found[2]}"
                    entries.append(entry.model_copy(update={"pointer": pointer}))
            update[key] = entries
    return fixture.model_copy(update=update)
