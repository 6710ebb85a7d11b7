"""Draws a fade: what is sent as stairs, the light, the exposures, the stepping below; no color needed."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from modebook.documents.cases import Case
from modebook.render.plot_file import STYLE, as_bytes, drawable, without_screen
from modebook.shelf.errors import ShelfError
from modebook.shelf.writing import write_whole

if TYPE_CHECKING:
    from modebook.response.traces import Trace

MOST = 4
"""Cases beside each other, beyond which a drawing cannot be read."""


def draw(cases: Sequence[Case], title: str, path: Path) -> None:
    """Draw the cases whose length is known, side by side, into `path` (.svg, .png, .pdf).

    Raises ShelfError for another ending, for no such case, and where the extra `plot` is missing.
    """
    form = drawable(path)
    shown = [case for case in cases if case.known][:MOST]
    if not shown:
        raise ShelfError(
            path, "no length is known, so there is no one light to draw", remedy="name a --choice"
        )
    write_whole(path, picture(shown, title, form))


def picture(cases: Sequence[Case], title: str, form: str) -> bytes:
    """The drawing as bytes; the same cases give the same bytes."""
    plt = without_screen()

    from modebook.response.traces import trace

    snap = cases[0].fade.seconds_s == 0
    with plt.rc_context(STYLE):
        figure, axes = plt.subplots(
            1 if snap else 2,
            len(cases),
            figsize=(4.6 * len(cases) + 1.0, 4.0 if snap else 5.4),
            sharex=True,
            sharey="row",
            squeeze=False,
            height_ratios=(1,) if snap else (3, 1.6),
            layout="constrained",
        )
        handles: list[Any] = []
        traces = [trace(case.fade) for case in cases]
        top = max(10.0, *(1.5 * float(told.stepping_jnd.max(initial=0.0)) for told in traces))
        for column, (case, told) in enumerate(zip(cases, traces, strict=True)):
            handles = _levels(axes[0][column], told, case)
            if not snap:
                _stepping(axes[1][column], told, top)
            axes[-1][column].set_xlabel("seconds after the cue's first packet")
            axes[0][column].set_title(case.label, fontsize=10)
        axes[0][0].set_ylabel("percent of full")
        if not snap:
            axes[1][0].set_ylabel("stepping, JND")
        figure.legend(handles=handles, loc="outside lower center", ncols=len(handles), frameon=False)
        if title:
            figure.suptitle(title)
        return as_bytes(figure, form)


def _levels(axis: Any, told: Trace, case: Case) -> list[Any]:
    import numpy as np

    ends_s = told.light_s[-1]
    shown = told.heard_s <= ends_s
    before = case.fade.from_percent / 100
    (sent,) = axis.step(
        np.concatenate([[told.light_s[0]], told.heard_s[shown], [ends_s]]),
        100 * np.concatenate([[before], told.held[shown], told.held[shown][-1:]]),
        where="post",
        color="0.6",
        linewidth=1.0,
        label="sent, as heard",
    )
    handles = [sent]
    if case.fade.seconds_s > 0:
        (even,) = axis.plot(
            told.light_s,
            100 * told.ideal,
            color="0.25",
            linewidth=0.8,
            linestyle=(0, (1, 2)),
            label="even fade",
        )
        handles.append(even)
    (light,) = axis.plot(told.light_s, 100 * told.light, color="black", linewidth=1.4, label="light")
    handles.append(light)
    if case.fade.camera is not None:
        open_s = case.fade.camera.open_s
        middles_s = told.samples_s + open_s / 2
        inside = (middles_s >= told.light_s[0]) & (middles_s <= ends_s)
        marks = axis.errorbar(
            middles_s[inside],
            100 * told.sampled[inside],
            xerr=open_s / 2,
            fmt="o",
            markersize=3.5,
            color="black",
            markerfacecolor="white",
            linewidth=1.2,
            label="camera frames (open shutter)",
        )
        handles.append(marks)
    lost = told.lost & shown
    if lost.any():
        (gone,) = axis.plot(
            told.heard_s[lost], 100 * told.held[lost], "x", color="black", markersize=5, label="lost packet"
        )
        handles.append(gone)
    return handles


def _stepping(axis: Any, told: Trace, top: float) -> None:
    from modebook.response.seen import THRESHOLD_JND

    at_s = told.samples_s[1:]
    inside = at_s <= told.light_s[-1]
    axis.bar(at_s[inside], told.stepping_jnd[inside], width=0.6 * float(at_s[1] - at_s[0]), color="0.35")
    axis.axhline(THRESHOLD_JND, color="black", linewidth=0.8, linestyle="--")
    # Straight up to the threshold, by powers of ten above: both the faint and the gross stay visible.
    axis.set_yscale("symlog", linthresh=THRESHOLD_JND)
    axis.set_ylim(0, top)
    axis.set_yticks([tick for tick in (0, 0.5, 1, 10, 100, 1000) if tick <= top])
    axis.yaxis.set_major_formatter("{x:g}")
    axis.minorticks_off()
    axis.annotate(
        "above: begins to be seen (estimate)",
        (0.01, THRESHOLD_JND),
        xycoords=("axes fraction", "data"),
        xytext=(0, 2),
        textcoords="offset points",
        va="bottom",
        fontsize=7.5,
    )
