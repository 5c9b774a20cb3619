"""What a rule is: a name for a fault, how grave it is, one sentence, a page, and where to look."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from importlib import resources

from wallwise.dance.finding import Finding, Severity
from wallwise.reading import Reading


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule.  `find` yields its findings, without mends; `aliases` are names it had before."""

    name: str
    severity: Severity
    says: str
    find: Callable[[Reading], Iterator[Finding]]
    aliases: tuple[str, ...] = ()

    @property
    def page(self) -> str:
        """The rule's page in Markdown: what, why, an example, what to do."""
        return (
            resources.files("wallwise.checks").joinpath(f"pages/{self.name}.md").read_text(encoding="utf-8")
        )
