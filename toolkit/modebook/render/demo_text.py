"""The demo's page of terminal: what was found, in a shape that one reads from top to bottom."""

from __future__ import annotations

import textwrap
from collections import Counter
from collections.abc import Sequence

from modebook.checks.bulk import CheckResult
from modebook.checks.finding import SEVERITIES, Finding
from modebook.render.findings_text import SEVERITY_STYLE, sentence, summary
from modebook.render.remote_text import counts
from modebook.render.terminal import paint, printed, table, width, wrapped
from modebook.rig.audit import Audit
from modebook.rig.grouping import by_cause
from modebook.rig.remote import RigRemote
from modebook.store.build import Built

CAUTION = (
    "Control ranges can reset a fixture, change its address or put out its lamp; heads move without warning. "
    "Try a value on the fixture first, with people clear of it. Local rules and qualified people come first."
)
NEXT = (
    ("modebook find --min-bits pan=16 --smoothing-by remote", "which modes do both"),
    ("modebook audit ossilby-pier", "the whole audit, with what to do"),
    ("modebook rigs --smoothing-by remote", "which units, over all rigs"),
    ("modebook fade --seconds 1 --bits 8 --bits 16", "will a fade to black be seen to step?"),
    ("modebook fade --snap --smoothing 0 --smoothing 2 --smoothing 5 --camera 24", "how late is a kill?"),
    ("modebook check --explain coarse-angle", "what a rule checks, and why"),
    ("modebook plan ossilby-pier", "each setup's settings, and what to change between them"),
    ("modebook sheets ossilby-pier -o paper", "the rig on paper: lists, universe maps, control cards"),
    ("modebook chart pelluwick/torvane-40 --mode Standard", "what each slot of a mode does"),
    ("modebook serve", "the catalog as pages"),
)
SHOWN = 6


def demo_text(built: Built, checked: CheckResult, audit: Audit, remote: RigRemote, about: str) -> str:
    """Build, check, audit, the answer to one question, and what to run next."""
    out = [paint("Modebook: the demo catalog and its rig", "bold")]
    if about:
        out.append(wrapped(about))
    out += ["", paint("1. The catalog", "bold")]
    out.append(wrapped(f"{built.documents} fixture documents of invented makers, in one SQLite file."))
    out += ["", paint("2. modebook check: are the records in order?", "bold")]
    out.append(_rules(checked.findings))
    out.append(wrapped(summary(checked.findings, f"{checked.documents} documents checked")))
    out += ["", paint(f"3. modebook audit {audit.rig}: is the patch?", "bold")]
    out += _audited(audit)
    out += ["", paint("4. Which units can change smoothing remotely?", "bold"), counts([remote]).rstrip("\n")]
    out.append(wrapped(_answer(remote)))
    out += ["", paint("Next", "bold")]
    for command, why in NEXT:
        told = f"  {command}  {paint('# ' + why, 'dim')}"
        fits = len(command) + len(why) + 6 <= width()
        out.append(told if fits else f"  {paint('# ' + why, 'dim')}\n  {command}")
    out += ["", wrapped(CAUTION)]
    return "\n".join(out) + "\n"


def _rules(findings: Sequence[Finding]) -> str:
    """How often each rule fired, a paragraph for each severity, the worst first."""
    told: list[str] = []
    for severity in SEVERITIES:
        count = Counter(finding.rule for finding in findings if finding.severity == severity)
        words = ", ".join(f"{rule} {number}" for rule, number in sorted(count.items()))
        if words:
            filled = textwrap.fill(f"{severity}: {words}", width(), break_on_hyphens=False)
            told.append(filled.replace(severity, paint(severity, SEVERITY_STYLE[severity]), 1))
    return "\n".join(told)


def _audited(audit: Audit) -> list[str]:
    """The worst findings, one line a cause, a rule at most twice, so that many kinds are shown."""
    shown: list[tuple[str, ...]] = []
    often: Counter[str] = Counter()
    for cause in by_cause(audit.findings):
        often[cause.rule] += 1
        if often[cause.rule] > 1 or len(shown) >= SHOWN:
            continue
        shown.append((cause.severity, cause.units, cause.rule, sentence(cause.message)))
    columns = [("", "left"), ("unit", "left"), ("rule", "left"), ("what is wrong", "left")]
    rest = len(by_cause(audit.findings)) - len(shown)
    return [
        printed(table(columns, shown)).rstrip("\n"),  # type: ignore[arg-type]
        wrapped(f"and {rest} more causes. " + summary(audit.findings, f"{audit.units} units audited")),
    ]


def _answer(remote: RigRemote) -> str:
    slot, rdm, reaches = len(remote.of("slot")), len(remote.of("rdm")), remote.rdm_reaches
    return (
        f"{slot} of {len(remote.units)} units by a slot of the mode they are patched in; "
        f"{rdm} only over RDM, which reaches {reaches['yes']} of these, does not reach {reaches['no']}, "
        f"and may or may not reach {reaches['unknown']}; "
        f"{len(remote.of('hand'))} only with a hand on the fixture."
    )
