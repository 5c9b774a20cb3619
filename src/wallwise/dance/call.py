"""A call: the words by which a teacher calls what comes next."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Call:
    """The words that call the step on beat `at` of its part (from 1), and what follows it.

    `words` says the same ever shorter, the fullest first; there is at least one.
    """

    at: Fraction
    words: tuple[str, ...]
