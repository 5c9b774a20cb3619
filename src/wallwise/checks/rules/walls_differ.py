"""The number of walls declared is not the number danced."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import clock, whole_sheet
from wallwise.dance.clock import walls_of
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.walls import wall_count
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    claim = reading.declared.walls
    if claim is None or not reading.dance.parts:
        return
    if reading.dance.sequence is not None:
        # "Walls" of a phrased dance is said in more than one sense: only a flat contradiction counts.
        facings = {walls_of(p.net_turn) for p in reading.dance.parts}
        if (claim.value == 1 and facings != {1} and wall_count(reading.dance) > 1) or (
            claim.value > 1 and facings == {1}
        ):
            yield whole_sheet(
                RULE.name,
                Severity.NOTE,
                claim.span,
                f"The sheet declares {_walls(claim.value)}, but its parts turn otherwise.",
            )
        return
    danced = walls_of(reading.dance.parts[0].net_turn)
    if danced != claim.value:
        main = next(iter(reading.parts.values()))
        yield whole_sheet(
            RULE.name, RULE.severity, claim.span,
            f"The sheet declares {_walls(claim.value)}, but one repetition ends facing {clock(main.solution.facing)}, which makes {_walls(danced)}.",
        )  # fmt: skip


def _walls(n: int) -> str:
    return "1 wall" if n == 1 else f"{n} walls"


RULE = Rule("walls-differ", Severity.WARNING, "The number of walls declared is not the number danced.", _find)
