"""Writes what the documents take from the program: rule pages, figures, terms, commands, outputs.

    python docs/generate.py            write them anew
    python docs/generate.py --check    exit 1 and name each that differs

Whole files are written under ``docs/reference``.  In any other page, and in the README, what
stands between ``<!-- run: COMMAND -->`` and ``<!-- end -->`` is the command's output, as a
terminal of 100 columns shows it; ``<!-- run: COMMAND as OTHER -->`` shows it under another name.
"""

from __future__ import annotations

import os
import re
import shlex
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path

from wallwise.dance.counts import label
from wallwise.desk import reference
from wallwise.give.words import action
from wallwise.glossary.entry import Figure, Term, Way

ROOT = Path(__file__).parent.parent
COMMANDS = ("check", "walls", "fit", "song", "mend", "explain", "glossary", "pack", "practice", "demo")

_RUN = re.compile(r"<!-- run: (?P<run>.+?)(?: as (?P<shown>.+?))? -->\n.*?<!-- end -->", re.DOTALL)
_ESCAPES = re.compile(r"\x1b\[[0-9;]*m")
_MADE = "<!-- Written by docs/generate.py; do not edit. -->\n\n"


def main(arguments: list[str]) -> int:
    """Write or check every page; the exit code."""
    stale = 0
    for path, text in pages():
        old = path.read_text(encoding="utf-8") if path.exists() else ""
        if old == text:
            continue
        if "--check" in arguments:
            print(f"{path.relative_to(ROOT)} is not what the program says; run make regen.")
            stale = 1
        else:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8")
            print(f"Wrote {path.relative_to(ROOT)}")
    for path in orphans():
        print(f"{path.relative_to(ROOT)} is the page of no rule; remove it.")
        stale = 1
    return stale


def pages() -> Iterator[tuple[Path, str]]:
    """Every page that holds something of the program's, with its text as it should be."""
    whole: dict[str, Callable[[], str]] = {
        "figures": figures,
        "terms": terms,
        "commands": commands,
        "rules": rules,
    }
    for name, maker in whole.items():
        yield ROOT / "docs" / "reference" / f"{name}.md", _MADE + maker()
    for rule in reference.rules():
        page = f"{rule.page.strip()}\n\n*Severity: {rule.severity.value}*\n"
        yield _rule_pages() / f"{rule.name}.md", _MADE + page
    for path in (ROOT / "README.md", *sorted((ROOT / "docs").glob("*.md"))):
        yield path, _RUN.sub(_output_block, path.read_text(encoding="utf-8"))


def orphans() -> list[Path]:
    """Pages of rules that are no more."""
    names = {rule.name for rule in reference.rules()}
    return [path for path in sorted(_rule_pages().glob("*.md")) if path.stem not in names]


def rules() -> str:
    """The list of the rules."""
    rows = (f"| [{r.name}](rules/{r.name}.md) | {r.severity.value} | {r.says} |\n" for r in reference.rules())
    return "# Rules\n\n| Rule | Severity | What it says |\n|---|---|---|\n" + "".join(rows)


def figures() -> str:
    """Every figure, family by family."""
    found = [entry for entry in reference.entries() if isinstance(entry, Figure)]
    families = sorted({figure.family for figure in found})
    text = f"# Figures\n\n{len(found)} figures, led by the right foot. The other foot is the mirror image.\n"
    for family in families:
        text += f"\n## {family.replace('_', ' ').capitalize()}\n"
        text += "".join(_figure(figure) for figure in found if figure.family == family)
    return text


def terms() -> str:
    """Every term."""
    found = [entry for entry in reference.entries() if isinstance(entry, Term)]
    return f"# Terms\n\n{len(found)} words of the trade.\n" + "".join(
        f"\n**{_named(term)}.** {term.says} *({term.source})*\n" for term in found
    )


def commands() -> str:
    """The help of every command."""
    text = "# Commands\n"
    for name in ("", *COMMANDS):
        title = f"wallwise {name}".strip()
        text += f"\n## {title}\n\n```text\n{_run(f'{title} --help', columns=80)}\n```\n"
    return text


def _figure(figure: Figure) -> str:
    text = f"\n### {_named(figure)}\n\n{figure.says}\n" if figure.says else f"\n### {_named(figure)}\n"
    for way in figure.ways:
        text += f"\n- {way.says + ': ' if way.says else ''}{_way(way)}"
    return f"{text}\n\nCalled “{figure.call}”. Source: {figure.source}\n"


def _way(way: Way) -> str:
    return "; ".join(f"**{label(step.at)}** {action(step)}" for step in way.steps)


def _named(entry: Figure | Term) -> str:
    return f"{entry.name} ({', '.join(entry.also)})" if entry.also else entry.name


def _rule_pages() -> Path:
    return ROOT / "docs" / "reference" / "rules"


def _output_block(match: re.Match[str]) -> str:
    shown = match["shown"] or match["run"]
    said = _run(match["run"], columns=100)
    head = match.group().split("\n", 1)[0]
    return f"{head}\n```console\n$ {shown}\n{said}\n```\n<!-- end -->"


@cache
def _run(command: str, *, columns: int) -> str:
    """What the command prints on a terminal this wide, beside the demo's folder."""
    env = {**os.environ, "COLUMNS": str(columns), "FORCE_COLOR": "1", "PYTHONIOENCODING": "utf-8"}
    env.pop("NO_COLOR", None)
    program, *arguments = shlex.split(command)
    done = subprocess.run(
        [sys.executable, "-m", program, *arguments],
        cwd=_demo_folder(),
        env=env,
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    said = _ESCAPES.sub("", done.stdout + done.stderr)
    return "\n".join(line.rstrip() for line in said.splitlines())


@cache
def _demo_folder() -> str:
    """A folder in which the demo has been run."""
    room = tempfile.TemporaryDirectory(prefix="wallwise-docs-")
    _ROOMS.append(room)
    subprocess.run([sys.executable, "-m", "wallwise", "demo"], cwd=room.name, check=True, capture_output=True)
    return room.name


_ROOMS: list[tempfile.TemporaryDirectory[str]] = []  # kept until the end, then removed


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
