"""The number of walls declared is not the number danced."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import clock
from wallwise.dance.clock import walls_of
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Dance
from wallwise.dance.walls import wall_count
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    dance, claim = reading.dance, reading.declared.walls
    if claim is None or not dance.parts:
        return
    if dance.sequence is not None:
        if _flatly_contradicts(claim.value, dance):
            yield RULE.on(
                claim.span,
                f"The sheet declares {_walls(claim.value)}, but its parts turn otherwise.",
                severity=Severity.NOTE,
            )
        return
    danced = walls_of(dance.parts[0].net_turn)
    if danced != claim.value:
        faced = clock(next(iter(reading.parts.values())).solution.facing)
        yield RULE.on(
            claim.span,
            f"The sheet declares {_walls(claim.value)}, but one repetition ends facing {faced}, "
            f"which makes {_walls(danced)}.",
        )


def _flatly_contradicts(declared: int, phrased: Dance) -> bool:
    """Whether every sense is contradicted in which a phrased dance is said to have so many walls."""
    of_parts = {walls_of(part.net_turn) for part in phrased.parts}
    if declared == 1:
        return of_parts != {1} and wall_count(phrased) > 1
    return declared > 1 and of_parts == {1}


def _walls(n: int) -> str:
    return "1 wall" if n == 1 else f"{n} walls"


RULE = Rule("walls-differ", Severity.WARNING, "The number of walls declared is not the number danced.", _find)
