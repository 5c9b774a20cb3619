"""The documents agree with the program and with each other."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import wallwise
from wallwise.cli.app import app

ROOT = Path(__file__).parent.parent.parent
PAGES = [*ROOT.glob("*.md"), *ROOT.glob("docs/**/*.md")]
COMMANDS = sorted(command.callback.__name__ for command in app.registered_commands if command.callback)


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_every_link_leads_somewhere(page: Path) -> None:
    """A relative link names a file that is there."""
    for link in re.findall(r"\]\(([^)#\s]+)", page.read_text(encoding="utf-8")):
        if "://" not in link:
            assert (page.parent / link).exists(), link


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_is_in_the_readme_and_the_reference(command: str) -> None:
    """Nothing the program can do is left out."""
    assert f"`wallwise {command}" in (ROOT / "README.md").read_text(encoding="utf-8")
    reference = (ROOT / "docs" / "reference" / "commands.md").read_text(encoding="utf-8")
    assert f"## wallwise {command}\n" in reference


def test_every_command_in_a_document_exists() -> None:
    """No document names a command that is not there."""
    for page in PAGES:
        for command in re.findall(
            r"(?:`|^|\$ )wallwise ([a-z]+)", page.read_text(encoding="utf-8"), re.MULTILINE
        ):
            assert command in COMMANDS, f"{page.name}: {command}"


def test_the_changes_begin_with_this_version() -> None:
    """The newest entry is the version of the package, here and in its metadata."""
    newest = re.search(r"^## ([\d.]+)", (ROOT / "CHANGELOG.md").read_text(encoding="utf-8"), re.MULTILINE)
    assert newest
    assert newest[1] == wallwise.__version__
    assert f'version = "{newest[1]}"' in (ROOT / "pyproject.toml").read_text(encoding="utf-8")
