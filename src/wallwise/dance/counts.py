"""Counts: beats of one repetition, from 1, as exact fractions.

``&`` is half a beat after the count, ``e`` a quarter, ``a`` three quarters
(Common Glossary of Round Dance Terms, Roundalab & URDC, 2001: "1a2" is 3/4,
1/4, 1 beats).  In swung rhythm a caller may pass another share for ``a``.
"""

from fractions import Fraction

SHARES: dict[str, Fraction] = {
    "e": Fraction(1, 4),
    "&": Fraction(1, 2),
    "a": Fraction(3, 4),
}

_LETTERS = {share: letter for letter, share in SHARES.items()} | {Fraction(2, 3): "a"}


def label(at: Fraction) -> str:
    """The word counted aloud at beat `at`: ``"3"`` on the beat, ``"&"`` half a beat later.

    A share of the beat that has no letter of its own is written as a fraction.

    >>> label(Fraction(3)), label(Fraction(7, 2)), label(Fraction(13, 4))
    ('3', '&', 'e')
    """
    whole, share = divmod(at, 1)
    if not share:
        return str(whole)
    return _LETTERS.get(share, str(at))


def full_label(at: Fraction) -> str:
    """Like `label`, with the number of the beat it follows: ``"3&"``.

    >>> full_label(Fraction(7, 2))
    '3&'
    """
    whole, share = divmod(at, 1)
    return str(whole) if not share else f"{whole}{_LETTERS.get(share, '+' + str(share))}"


def parse_label(text: str) -> Fraction:
    """The beat that `full_label` writes as `text`; ValueError for anything else.

    >>> parse_label("3&")
    Fraction(7, 2)
    """
    head = text.rstrip("".join(SHARES))
    share = text[len(head) :]
    if not head.isdigit() or len(share) > 1:
        raise ValueError(f"not a count: {text!r} (a count is a number, then &, e or a)")
    return Fraction(int(head)) + (SHARES[share] if share else 0)
