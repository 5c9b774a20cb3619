"""Facings as clock times, turns as fractions of a full turn.

12:00 is the wall the dance starts on; a turn to the right is clockwise seen
from above and positive.  A facing is a `Fraction` of a full turn in [0, 1).
"""

from fractions import Fraction

FRONT = Fraction(0)


def facing_name(facing: Fraction) -> str:
    """The clock time of a facing: ``"3:00"`` for a quarter turn to the right of the front.

    >>> facing_name(Fraction(1, 4)), facing_name(Fraction(-1, 8)), facing_name(Fraction(2))
    ('3:00', '10:30', '12:00')
    """
    minutes = facing % 1 * 720
    hour, minute = divmod(minutes.numerator // minutes.denominator, 60)
    return f"{hour or 12}:{minute:02d}"


def parse_facing(text: str) -> Fraction:
    """The facing that a clock time names, in [0, 1); ValueError for anything else.

    >>> parse_facing("9:00"), parse_facing("12:00")
    (Fraction(3, 4), Fraction(0, 1))
    """
    hour, _, minute = text.partition(":")
    if not (hour.isdigit() and minute.isdigit() and 1 <= int(hour) <= 12 and int(minute) < 60):
        raise ValueError(f"not a clock time: {text!r} (12:00, 3:00, 7:30 …)")
    return Fraction(int(hour) % 12 * 60 + int(minute), 720)


def turn_name(turn: Fraction) -> str:
    """A turn in words: ``"1/4 right"``, ``"full turn left"``, ``"1 1/2 left"``, ``"no turn"``.

    >>> turn_name(Fraction(1, 4)), turn_name(Fraction(-1)), turn_name(Fraction(0))
    ('1/4 right', 'full turn left', 'no turn')
    """
    if not turn:
        return "no turn"
    way = "right" if turn > 0 else "left"
    size = abs(turn)
    whole, rest = divmod(size, 1)
    if not rest:
        return f"full turn {way}" if whole == 1 else f"{whole} full turns {way}"
    return f"{whole} {rest} {way}" if whole else f"{size} {way}"


def walls_of(net_turn: Fraction) -> int:
    """How many repetitions bring a dance with this net turn back to the front.

    360 / gcd(360, net turn), the wall law; 1 for a dance that does not turn.

    >>> walls_of(Fraction(1, 4)), walls_of(Fraction(1, 2)), walls_of(Fraction(3, 8))
    (4, 2, 8)
    """
    # A fraction is kept in lowest terms, so its denominator is 1 / gcd(1, net turn).
    return (net_turn % 1).denominator
