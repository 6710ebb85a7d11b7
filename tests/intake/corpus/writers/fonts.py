"""Finds fonts that other packages carry, so that the corpus needs none of the machine's."""

from __future__ import annotations

from importlib.util import find_spec
from pathlib import Path

FACES = {
    "dejavu": ("DejaVuSans.ttf", "DejaVuSans-Bold.ttf"),
    "serif": ("DejaVuSerif.ttf", "DejaVuSerif-Bold.ttf"),
    "stix": ("STIXGeneral.ttf", "STIXGeneralBol.ttf"),
    "vera": ("Vera.ttf", "VeraBd.ttf"),
}


def face(name: str) -> tuple[Path, Path]:
    """The regular and the bold file of a face: matplotlib's, or reportlab's for vera."""
    package, inside = ("reportlab", "fonts") if name == "vera" else ("matplotlib", "mpl-data/fonts/ttf")
    spec = find_spec(package)
    if spec is None or spec.origin is None:
        raise ModuleNotFoundError(f"the corpus takes its fonts from {package}: install it")
    folder = Path(spec.origin).parent / inside
    regular, bold = FACES[name]
    return folder / regular, folder / bold
