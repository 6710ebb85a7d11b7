"""Where each parameter of a patched unit sits: every byte's address, cells and parts included."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from modebook.documents.address import Address, AddressError
from modebook.documents.control_values import byte_values
from modebook.documents.layout import Placed
from modebook.documents.modes import Parameter, Range
from modebook.rig.reading import PatchedRow
from modebook.shots.route import Byte


@dataclass(frozen=True, slots=True)
class Located:
    """A parameter of a unit with the addresses of its bytes; several times where cells repeat it."""

    parameter: Parameter
    part: str | None
    slots: tuple[tuple[Address, ...], ...]
    ranges: tuple[Range, ...]
    """All ranges that its slots have, those of parameters that share them included."""

    def bytes(self, value: int) -> tuple[Byte, ...]:
        """What is sent for a value, to all of them."""
        told = byte_values(self.parameter, value)
        return tuple(
            Byte(at.universe, at.address, byte)
            for slots in self.slots
            for at, byte in zip(slots, told, strict=True)
        )


@dataclass
class Places:
    """All parameters of a unit that have slots."""

    all: dict[int, Located] = field(default_factory=dict)
    """By the identity of the parameter."""

    def of(self, parameter: Parameter) -> Located | None:
        """Where one parameter sits; None where its part is not patched, or it has no slot."""
        return self.all.get(id(parameter))

    def named(self, name: str, part: str | None) -> Located | None:
        """The parameter of a key or word, of the same part before others; keys before words."""
        found = [one for one in self.all.values() if name in (one.parameter.name, one.parameter.parameter)]
        return min(found, key=lambda one: (one.part != part, one.parameter.name != name), default=None)

    def leave_alone(self, setting: str, sent: Mapping[tuple[int, int], int]) -> bool:
        """Whether values (by universe and address) are known to set nothing of a setting."""
        for one in self:
            acting = [piece for piece in one.ranges if setting in (piece.sets or {})]
            for slots in one.slots if acting else ():
                bytes_ = [sent.get((at.universe, at.address)) for at in slots]
                if all(byte is None for byte in bytes_):
                    continue
                if None in bytes_:
                    return False
                value = int.from_bytes([byte or 0 for byte in bytes_], "big")
                if any(piece.from_ <= value <= piece.to for piece in acting):
                    return False
        return True

    def __iter__(self) -> Iterator[Located]:
        return iter(self.all.values())


def places(rows: Sequence[PatchedRow]) -> Places:
    """Where a unit's parameters sit; `rows` are its start addresses.

    Parameters of a part that is not patched, and those that would lie past the last universe, are left out.
    """
    found: dict[int, tuple[Parameter, str | None, list[tuple[Address, ...]]]] = {}
    sharing: dict[tuple[Address, ...], dict[int, Parameter]] = {}
    for row in rows:
        if row.block is None or row.unit.address is None:
            continue
        for placed in row.block.placed:
            at = _addresses(row.unit.address, placed)
            if at:
                found.setdefault(id(placed.parameter), (placed.parameter, row.block.key, []))[2].append(at)
                sharing.setdefault(at, {})[id(placed.parameter)] = placed.parameter
    return Places(
        {
            key: Located(parameter, part, tuple(slots), _ranges(sharing[slots[0]]))
            for key, (parameter, part, slots) in found.items()
        }
    )


def _ranges(parameters: dict[int, Parameter]) -> tuple[Range, ...]:
    return tuple(piece for parameter in parameters.values() for piece in parameter.ranges)


def _addresses(start: Address, placed: Placed) -> tuple[Address, ...]:
    try:
        return tuple(start.slot(slot) for slot in placed.slots)
    except AddressError:
        return ()
