"""A fade or snap answered in words: seen or not, late or not, by how much, and what would cure it."""

from __future__ import annotations

import textwrap
from collections.abc import Mapping, Sequence
from typing import Any

from modebook.documents.cases import Case, smoothing_told
from modebook.render.fade_cures import cure_lines
from modebook.render.terminal import paint, printed, table, width
from modebook.response.fade import Fade

Answer = Mapping[str, Any]


def fade_text(cases: Sequence[Case], answers: Sequence[Answer], title: str = "") -> str:
    """The answer for one case, or a comparison of several; then cures, and what was taken for granted."""
    fade = cases[0].fade
    snap = fade.seconds_s == 0
    out = [paint(title, "bold")] if title else []
    out += [_wrapped(_question(fade, one=len(cases) == 1)), ""]
    if len(cases) == 1:
        out += _snap_words(fade, answers[0]) if snap else _fade_words(fade, answers[0])
    else:
        out.append(_snap_table(cases, answers) if snap else _fade_table(cases, answers))
        out += _verdict(cases, answers, snap)
    lines = [] if snap else cure_lines(cases, answers)
    if lines:
        out += ["", paint("What would cure it (computed)", "bold"), *(_item(line) for line in lines)]
    out += ["", paint("Taken for granted", "bold")]
    said: dict[str, None] = {}
    for answer in answers:
        said.update(dict.fromkeys(answer["assumptions"]))
    out += [_item(sentence) for sentence in said]
    return "\n".join(out) + "\n"


def _question(fade: Fade, *, one: bool) -> str:
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


def _fade_words(fade: Fade, answer: Answer) -> list[str]:
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
        f"{paint(verdict, style)} (an estimate): "
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
    return [_wrapped(line) for line in lines]


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


def _snap_words(fade: Fade, answer: Answer) -> list[str]:
    lines = [
        f"After the cue the light {paint('starts', 'bold')} within {milliseconds(answer['starts_s'])}, is "
        f"{paint('half done', 'bold')} within {milliseconds(answer['half_s'])} and "
        f"{paint('done', 'bold')} within "
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
    return [_wrapped(line) for line in lines]


def _fade_table(cases: Sequence[Case], answers: Sequence[Answer]) -> str:
    rows = []
    for case, answer in zip(cases, answers, strict=True):
        rows.append(
            (
                case.label,
                seen_words(answer),
                figure(answer["worst_stepping_jnd"], ".2g"),
                figure(answer["largest_step_percent"], ".3g"),
                figure(answer["distinct_values"], "d"),
                f"{figure(answer['repeated_packets'], 'd')} of {figure(answer['packets_sent'], 'd')}",
                figure(answer["settles_s"], ".2f"),
                milliseconds(answer["added_s"]),
            )
        )
    columns = ["seen?", "stepping JND", "largest step %", "values", "repeats", "done s", "added"]
    return printed(table([("", "left"), *((title, "right") for title in columns)], rows))


def _snap_table(cases: Sequence[Case], answers: Sequence[Answer]) -> str:
    columns = ["starts", "half done", "done", "added"]
    camera = cases[0].fade.camera is not None
    rows = []
    for case, answer in zip(cases, answers, strict=True):
        row = [
            case.label,
            *(milliseconds(answer[key]) for key in ("starts_s", "half_s", "settles_s", "added_s")),
        ]
        if camera:
            row.append(figure(answer["frames_partly_exposed_most"], "d"))
        rows.append(row)
    titles = [*columns, "frames in part"] if camera else columns
    return printed(table([("", "left"), *((title, "right") for title in titles)], rows))


def _verdict(cases: Sequence[Case], answers: Sequence[Answer], snap: bool) -> list[str]:
    """One sentence that picks out what a programmer would."""
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
        return [_wrapped(line) for line in lines]
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
    return [_wrapped("; ".join(verdicts) + " (an estimate; see below).")]


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


def _wrapped(words: str) -> str:
    return textwrap.fill(words, width=width(), break_on_hyphens=False)


def _item(words: str) -> str:
    sentence = words[:1].upper() + words[1:] + ("" if words.endswith(".") else ".")
    return textwrap.fill(
        sentence, width=width(), initial_indent="- ", subsequent_indent="  ", break_on_hyphens=False
    )
