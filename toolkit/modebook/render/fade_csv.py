"""The packets of a fade and the light they make, as CSV: one row a packet that the line carries."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence

from modebook.documents.cases import Case


def fade_csv(cases: Sequence[Case]) -> str:
    """Columns: case, packet, arrives_s, value, level_percent, lost, light_percent (as the next one arrives).

    A case whose smoothing has an unknown length has no row: its light is not known.
    """
    import numpy as np

    from modebook.response.traces import trace

    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(["case", "packet", "arrives_s", "value", "level_percent", "lost", "light_percent"])
    for case in cases:
        if not case.known:
            continue
        told = trace(case.fade)
        ends_s = np.append(told.heard_s[1:], told.heard_s[-1] + case.fade.link.period_s) - 1e-9
        light = 100 * np.interp(ends_s, told.light_s, told.light)
        for number, arrives_s in enumerate(told.heard_s):
            writer.writerow(
                [
                    case.label,
                    number,
                    f"{arrives_s:.6f}",
                    int(told.values[number]),
                    f"{100 * told.held[number]:.4f}",
                    "yes" if told.lost[number] else "no",
                    f"{light[number]:.4f}",
                ]
            )
    return out.getvalue()
