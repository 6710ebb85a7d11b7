"""A fade's or snap's answer in sentences, for the terminal and for pages: no layout, no colors of its own."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from modebook.documents.cases import Case, smoothing_told
from modebook.response.fade import Fade

Answer = Mapping[str, Any]
Mark = Callable[[str, str], str]
"""Sets words off in a style such as ``bold red``."""


def plain(words: str, style: str) -> str:
    """Words as they are."""
    return words


def question(fade: Fade, *, one: bool) -> str:
    """What is asked, in one sentence; `one`: the only case, so bits and smoothing belong to it."""
    link = fade.link
    what = f"{fade.from_percent:g} to {fade.to_percent:g} %"
    what += " in a snap" if fade.seconds_s == 0 else f" in {fade.seconds_s:g} s"
    told = [what]
    if one:
        told.append(f"{fade.bits} bits")
        told.append(smoothing_told(fade.smoothing))
    told.append(f"{fade.curve.name} curve")
    rate = f"{link.refresh_hz:g} packets a second"
    if link.gateway_hz is not None:
        rate += f" through a gateway's {link.gateway_hz:g}"
    told.append(rate)
    if link.losses is not None:
        told.append("with losses")
    if fade.camera is None:
        told.append("seen by eye")
    else:
        angle = fade.camera.open_s * fade.camera.fps * 360
        told.append(f"seen by a camera at {fade.camera.fps:g} fps, {angle:.4g} degrees")
    return ", ".join(told) + "."


def seen_words(answer: Answer) -> str:
    """``seen``, ``not seen``, ``perhaps`` where the estimate is too near its threshold, ``depends``."""
    if answer["seen"] is None:
        return "depends"
    if answer["undecided"] is not False:
        return "perhaps"
    return "seen" if answer["seen"] else "not seen"


def fade_sentences(fade: Fade, answer: Answer, mark: Mark = plain) -> list[str]:
    """A fade's answer: seen or not, what is sent, how it steps, when it is done, what losses do."""
    stepping = figure(answer["worst_stepping_jnd"], ".2g")
    verdict = {
        "seen": "It will be seen to step",
        "not seen": "It will not be seen to step",
        "perhaps": "It may be seen to step",
        "depends": "Whether it is seen to step depends on the smoothing's length, which is unknown",
    }[seen_words(answer)]
    style = {"seen": "bold red", "not seen": "bold green"}.get(seen_words(answer), "bold yellow")
    at = figure(answer["worst_stepping_at_s"], ".2f")
    lines = [
        f"{mark(verdict, style)} (an estimate): "
        f"the worst stepping is {stepping} JND, {at} s after the cue; "
        f"{figure(answer['threshold_jnd'], 'g')} is where it begins to be seen, and a figure "
        "within a factor of two of that is undecided."
    ]
    percentiles = answer.get("worst_stepping_jnd_percentiles")
    if percentiles:
        told = ", ".join(f"{value:.2g} in {p} %" for p, value in percentiles.items())
        lines.append(f"Of {fade.trials} trials of the losses the worst stepping stays below: {told} (JND).")
    lines.append(_sent(fade, answer))
    lines.append(_steps(fade, answer))
    lines.append(
        f"The light is done {figure(answer['settles_s'], '.2f')} s after the cue at the latest; "
        f"the smoothing adds {milliseconds(answer['added_s'])} of that."
    )
    if figure(answer["losses_add_s"], ".3f") != "0.000":
        lines.append(f"Losses can hold the last level back by {milliseconds(answer['losses_add_s'])} more.")
    if answer["signal_lost"]:
        lines.append(
            "A gap of more than 1.25 s comes up: from there on the fixture's fail mode rules, and this "
            "answer does not go there."
        )
    return lines


def _sent(fade: Fade, answer: Answer) -> str:
    packets, values = answer["packets_sent"], answer["distinct_values"]
    repeats = answer["repeated_packets"]
    told = f"{figure(packets, 'd')} packets carry {figure(values, 'd')} different values"
    told += (
        f", {figure(repeats, 'd')} of them a repeat"
        if figure(repeats, "d") != "0"
        else ", none of them a repeat"
    )
    longest = figure(answer["longest_fade_without_repeats_s"], ".3g")
    return f"{told}; at {fade.bits} bits a full fade repeats values once it is longer than {longest} s."


def _steps(fade: Fade, answer: Answer) -> str:
    ideal = figure(answer["ideal_step_percent"], ".3g")
    largest = figure(answer["largest_step_percent"], ".3g")
    told = (
        f"The fade asks for {ideal} % a packet; the light's largest step from packet to packet is {largest} %"
    )
    if figure(answer["packets_lost"], "d") != "0":
        told += " (with the losses)"
    between = "packet to packet" if fade.camera is None else "frame to frame"
    step = figure(answer["worst_step_jnd"], ".3g")
    stops = figure(answer["worst_step_stops"], ".2g")
    return (
        f"{told}. From {between}, the fade itself included, it moves at most {step} JND ({stops} stops), "
        f"{figure(answer['worst_step_at_s'], '.2f')} s after the cue."
    )


def snap_sentences(answer: Answer, mark: Mark = plain) -> list[str]:
    """A snap's answer: when the light starts, is half done and done, and what the smoothing adds."""
    lines = [
        f"After the cue the light {mark('starts', 'bold')} within {milliseconds(answer['starts_s'])}, is "
        f"{mark('half done', 'bold')} within {milliseconds(answer['half_s'])} and "
        f"{mark('done', 'bold')} within "
        f"{milliseconds(answer['settles_s'])} (at the worst phase of cue against packets; at the best "
        f"{milliseconds(answer['starts_best_s'])}, {milliseconds(answer['half_best_s'])} and "
        f"{milliseconds(answer['settles_best_s'])}).",
        f"The smoothing adds {milliseconds(answer['added_s'])}.",
    ]
    frames = answer["frames_partly_exposed_most"]
    if frames is not None:
        told = figure(frames, "d")
        lines.append(f"Up to {told} camera frame{'s' * (told != '1')} see it only in part.")
    if figure(answer["losses_add_s"], ".3f") != "0.000":
        lines.append(f"Losses can make it later by {milliseconds(answer['losses_add_s'])}.")
    return lines


def verdict(cases: Sequence[Case], answers: Sequence[Answer], snap: bool) -> list[str]:
    """What a programmer would pick out of a comparison, in a sentence or two."""
    if snap:
        frame_s = None if cases[0].fade.camera is None else cases[0].fade.camera.frame_s
        lines = ["Times count from the cue, at the worst phase of cue against packets."]
        if frame_s is not None:
            late = [
                case.label
                for case, answer in zip(cases, answers, strict=True)
                if _most(answer["added_s"]) > frame_s + 1e-9
            ]
            told = f"One camera frame is {1000 * frame_s:.1f} ms: "
            told += (
                f"{_listed(late)} adds more than that to the kill." if late else "none adds more than that."
            )
            lines.append(told.replace(" adds", " add") if len(late) > 1 else told)
        return lines
    good = [
        case.label for case, answer in zip(cases, answers, strict=True) if seen_words(answer) == "not seen"
    ]
    bad = [case.label for case, answer in zip(cases, answers, strict=True) if seen_words(answer) == "seen"]
    verdicts: list[str] = []
    if good:
        verdicts.append(f"{_listed(good)}: not seen to step")
    if bad:
        verdicts.append(f"{_listed(bad)}: seen to step")
    unsure = [case.label for case in cases if case.label not in (*good, *bad)]
    if unsure:
        verdicts.append(f"{_listed(unsure)}: too near the threshold to say, or of unknown length")
    return ["; ".join(verdicts) + " (an estimate; see below)."]


def figure(value: Any, form: str) -> str:
    """A figure, or ``a to b`` where an unknown length makes it a range."""
    if isinstance(value, Mapping):
        least, most = figure(value["least"], form), figure(value["most"], form)
        return least if least == most else f"{least} to {most}"
    if value is None:
        return "-"
    if form == "d":
        return f"{round(value)}"
    return f"{value:{form}}"


def milliseconds(value: Any) -> str:
    """Seconds as whole milliseconds, or a range of them."""
    if isinstance(value, Mapping):
        return figure({"least": 1000 * value["least"], "most": 1000 * value["most"]}, "d") + " ms"
    return f"{1000 * value:.0f} ms"


def _most(value: Any) -> float:
    return float(value["most"] if isinstance(value, Mapping) else value)


def _listed(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
