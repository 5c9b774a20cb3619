"""Restarts between figures and inside them."""

from __future__ import annotations

import pytest

from wallwise.checks.catalogue import findings_of
from wallwise.reading import read

CROSSING = """SNAIL POST
16 counts, 1 wall
S1
1    Step R to right side
2&3  Rock L back, recover onto R, step L to left side
4&5  Rock R back, recover onto L, step R to right side
6&7  Rock L back, recover onto R, step L to left side
8&1  Rock R back, recover onto L, step R to right side
S2
2&3  Rock L back, recover onto R, step L to left side
4&5  Rock R back, recover onto L, step R to right side
6&7  Rock L back, recover onto R, step L to left side
8&   Rock R back, recover onto L
"""


def found(order: str) -> list[str]:
    """The rules that find something in the sheet with this restart."""
    return [finding.rule for finding in findings_of(read(CROSSING + order)) if finding.loud]


def test_a_restart_may_fall_where_a_line_runs_over_into_the_next_section() -> None:
    """The 1 of an 8&1 is the next section's; the dance's own takes its place (common practice, no source)."""
    assert found("Restart on wall 3 after 8 counts\n") == []


@pytest.mark.parametrize("after", [4, 12])
def test_a_restart_may_not_cut_a_line_within_its_section(after: int) -> None:
    """After count 4 the rock of a 4&5 has not been stepped out of."""
    assert "restart-inside-figure" in found(f"Restart on wall 3 after {after} counts\n")


@pytest.mark.parametrize("after", [16, 20])
def test_a_restart_lies_within_the_dance(after: int) -> None:
    """After its last count a dance begins again by itself."""
    assert "restart-inside-figure" in found(f"Restart on wall 3 after {after} counts\n")
