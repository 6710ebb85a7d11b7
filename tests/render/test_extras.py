"""A package that is not there is named once, with what to install."""

from __future__ import annotations

import pytest

from modebook.render.extras import needs
from modebook.shelf.errors import ShelfError


def test_a_missing_package_is_named_with_its_extra():
    """One line: what was asked for, the package, the extra; a package that is there says nothing."""
    needs("json", "none", "a word")
    with pytest.raises(ShelfError) as told:
        needs("no_such_package", "repatch", "a repatch")
    line = "a repatch: this needs the package no_such_package; "
    assert str(told.value) == f"{line}install the extra: pip install 'modebook[repatch]'"
