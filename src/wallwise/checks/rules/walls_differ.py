"""The number of walls declared is not the number danced."""

from collections.abc import Iterator

from wallwise.checks.rule import Rule
from wallwise.checks.sight import clock
from wallwise.dance.clock import walls_of
from wallwise.dance.finding import Finding, Severity
from wallwise.dance.model import Dance
from wallwise.dance.walls import unroll, wall_count
from wallwise.reading import Reading


def _find(reading: Reading) -> Iterator[Finding]:
    dance, claim = reading.dance, reading.declared.walls
    if claim is None or not dance.parts:
        return
    if dance.sequence is not None:
        if claim.value not in _senses(dance):
            yield RULE.on(
                claim.span,
                f"The sheet declares {_walls(claim.value)}, but the parts of its sequence begin on "
                f"{_walls(wall_count(dance))}.",
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


def _senses(phrased: Dance) -> set[int]:
    """In how many walls a phrased dance can be said to be danced.

    The facings from which its parts begin, or its first part alone, or the walls of a part by itself
    that turns: a part that ends where it began makes no dance of one wall.
    """
    first = {wall.starts_facing for wall in unroll(phrased) if wall.part == phrased.parts[0].name}
    return {wall_count(phrased), len(first) or 1} | {
        walls_of(part.net_turn) for part in phrased.parts if part.net_turn
    }


def _walls(n: int) -> str:
    return "1 wall" if n == 1 else f"{n} walls"


RULE = Rule("walls-differ", Severity.WARNING, "The number of walls declared is not the number danced.", _find)
