"""`See list below` is not what a value does: the reader is told that it stands elsewhere."""

from __future__ import annotations

import pytest

from intake.drafted import drafted, whys

TABLE = "Slot\tFunction\tValue\tDescription\n1\tDimmer\t0-255\t0-100%\n2\tColor preset\t0-255\t"


@pytest.mark.parametrize(
    "words", ["See list below", "Siehe Tabelle auf Seite 9", "Voir le tableau ci-dessous"]
)
def test_words_that_lead_elsewhere_are_doubted(words):
    assert whys(drafted(TABLE + words), "/modes/0/parameters/1") == ["what these values do is told elsewhere"]


def test_words_that_lead_nowhere_are_not():
    assert whys(drafted(TABLE + "Seven colors below each other")) == []
