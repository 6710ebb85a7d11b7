"""The grayscale standard display function against NEMA PS3.14 and colour-science."""

from __future__ import annotations

import warnings
from typing import Any

import numpy as np
import pytest

from modebook.response import visibility

# NEMA PS3.14, table B-1 (JND index, luminance in cd/m2), from memory.
PS3_14_TABLE = {
    1: 0.0500,
    2: 0.0547,
    3: 0.0594,
    4: 0.0643,
    5: 0.0696,
    6: 0.0750,
    7: 0.0807,
    8: 0.0866,
    9: 0.0927,
    10: 0.0991,
}


@pytest.fixture(scope="module")
def gsdf() -> Any:
    """Load colour-science's DICOM module, whose package warns of plotting parts that are not installed."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        from colour.models.rgb.transfer_functions import dicom_gsdf

        return dicom_gsdf


@pytest.mark.parametrize(("jnd", "cd_m2"), PS3_14_TABLE.items())
def test_the_first_rows_of_the_standards_table(jnd: int, cd_m2: float) -> None:
    """NEMA PS3.14 table B-1, printed to four decimals, from memory."""
    assert float(visibility.luminance(jnd)) == pytest.approx(cd_m2, abs=6e-5)


def test_the_last_row_and_the_middle_of_the_standards_table() -> None:
    """NEMA PS3.14 table B-1, from memory: index 1023 is 3993.4 cd/m2, index 512 130.07 cd/m2."""
    assert float(visibility.luminance(1023)) == pytest.approx(3993.4, rel=1e-4)
    assert float(visibility.luminance(512)) == pytest.approx(130.066, rel=1e-4)


def test_luminance_of_every_index(gsdf: Any) -> None:
    """colour-science, eotf_DICOMGSDF."""
    jnd = np.arange(1, 1024)
    assert visibility.luminance(jnd) == pytest.approx(gsdf.eotf_DICOMGSDF(jnd, in_int=True), rel=1e-10)


def test_index_of_luminance(gsdf: Any) -> None:
    """colour-science, eotf_inverse_DICOMGSDF, which gives the index over 1023."""
    cd_m2 = np.geomspace(0.05, 3993, 500)
    assert visibility.jnd_index(cd_m2) == pytest.approx(gsdf.eotf_inverse_DICOMGSDF(cd_m2) * 1023, abs=1e-9)
