"""How many syllables words have, so that a voice is never hurried.

By spelling, with the exceptions that the floor needs; made for the trade's words in English,
not for prose.  The pace that people follow: `MOST_PER_SEC`.
"""

from __future__ import annotations

import re

# Adults talk at 3.5 to 5 syllables a second (Jacewicz and others, 2009, as cited), and a recogniser
# loses words from about 5 on (measured with this voice).
MOST_PER_SEC = 5.0

_WORD = re.compile(r"[a-z']+")
_GROUPS = re.compile(r"[aeiouy]+")
_KNOWN = {
    "bachata": 3, "botafogo": 4, "cha": 1, "chaine": 2, "chasse": 2, "cumbia": 3, "lindy": 2, "merengue": 3,
    "monterey": 3, "rhumba": 2, "sidewalk": 2, "suzie": 2, "together": 3, "twinkle": 2, "seven": 2,
    "shuffle": 2, "swivel": 2, "swivels": 2, "applejack": 3, "scissor": 2, "pigeon": 2, "mashed": 1,
    "fallaway": 3, "diagonal": 4, "serpiente": 4, "dorothy": 3, "paddle": 2, "forward": 2,
    "recover": 3, "reverse": 2, "rolling": 2, "waltz": 1, "walked": 1, "hesitate": 3, "triple": 2,
    "potato": 3, "sugarfoot": 3, "knee": 1, "eight": 1, "eighth": 1, "eighths": 1, "quarter": 2,
    "three": 1, "tumbao": 3, "toes": 1, "heels": 1,
}  # fmt: skip


def syllables(words: str) -> int:
    """The syllables of `words`; at least one for each word, none for no words.

    >>> syllables("jazz box quarter right"), syllables("together"), syllables("")
    (5, 3, 0)
    """
    return sum(_of_word(word) for word in _WORD.findall(words.casefold()))


def _of_word(word: str) -> int:
    if word in _KNOWN:
        return _KNOWN[word]
    groups = len(_GROUPS.findall(word))
    # A last e is silent ("side", "close"), but not after a consonant and l ("shuffle", "double").
    if re.search(r"[^aeiouyl]e$|[aeiouy]le$|[^td]ed$|[^sxzcgh]es$", word) and groups > 1:
        groups -= 1
    return max(1, groups)
