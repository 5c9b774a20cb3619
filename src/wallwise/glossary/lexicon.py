"""Words and phrases to what they can mean: the longest phrase that fits wins.

Built once from ``words.toml`` and the figures.  A phrase is a tuple of lower-case words;
its meaning is a `Meaning`: a class (which part of speech of the trade it is) and a value.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from enum import Enum
from functools import cache
from typing import Any

from wallwise.dance.model import Foot
from wallwise.glossary.entry import Figure
from wallwise.glossary.load import figures, words


class Word(Enum):
    """The parts of speech of a step sheet."""

    VERB = "verb"
    FOOT = "foot"  # a foot for certain
    SIDE = "side"  # R or L: a foot or a direction
    BOTH = "both"
    PLACE = "place"
    TURN = "turn"
    AMOUNT = "amount"
    PART = "body part"
    HOLD = "hold"
    AGAIN = "again"
    SAME = "same"
    RELATION = "relation"
    WEIGHT = "weight"
    FIGURE = "figure"
    AND = "and"
    THEN = "then"
    IGNORE = "ignore"


_TABLES = {
    "place": Word.PLACE, "turn": Word.TURN, "foot": Word.FOOT, "side": Word.SIDE, "both": Word.BOTH,
    "bodypart": Word.PART, "hold": Word.HOLD, "same": Word.SAME, "relation": Word.RELATION,
    "weight": Word.WEIGHT,
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Meaning:
    """What a phrase means: its class, its value, and whether it is an -ing form.

    `value` is a verb's key, a foot letter, a place key, eighths of a turn, a number of
    times, or the tuple of figures of that name; `place` a verb's place where it has one.
    """

    word: Word
    value: Any
    place: str = ""
    ing: bool = False


@dataclass(frozen=True)
class Lexicon:
    """Phrases by their words; `openings` are what longer phrases begin with, `short` the words cut short."""

    phrases: dict[tuple[str, ...], Meaning] = field(default_factory=dict)
    openings: frozenset[tuple[str, ...]] = frozenset()
    short: Mapping[str, str] = field(default_factory=dict)


@cache
def lexicon() -> Lexicon:
    """The lexicon of the glossary that comes with Wallwise."""
    return build(figures())


def build(known: Iterable[Figure]) -> Lexicon:
    """A lexicon of the small words and these figures; of two figures, the earlier is tried first."""
    phrases: dict[tuple[str, ...], Meaning] = {}
    for phrase, meaning in _small_words():
        phrases.setdefault(_key(phrase), meaning)
    named: dict[tuple[str, ...], list[Figure]] = {}
    for figure in known:
        for name in figure.names:
            for form in _plurals(_key(name)):
                if figure not in named.setdefault(form, []):
                    named[form].append(figure)
    for key, group in named.items():
        held = phrases.get(key)
        if held is None or (held.word in (Word.IGNORE, Word.PLACE) and len(key) == 1):
            phrases[key] = Meaning(Word.FIGURE, tuple(group))
    openings = frozenset(key[:size] for key in phrases for size in range(1, len(key)))
    return Lexicon(phrases, openings, words()["short"])


def _key(phrase: str) -> tuple[str, ...]:
    return tuple(phrase.replace("-", " ").split())


def _plurals(key: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    yield key
    last = key[-1]
    yield (*key[:-1], last + ("es" if last.endswith(("ch", "x", "sh", "s")) else "s"))
    if last.endswith("y"):
        yield (*key[:-1], last[:-1] + "ies")


def _small_words() -> Iterator[tuple[str, Meaning]]:
    """The phrases of ``words.toml``; of two meanings of one phrase the first holds.

    So what a verb is wins over what a body part is, and a fraction over a number to be ignored.
    """
    yield from _verbs()
    yield from _compounds()
    yield from _named_things()
    for table, word in (("amount", Word.AMOUNT), ("again", Word.AGAIN)):
        for number, names in words()[table].items():
            for name in names:
                yield name, Meaning(word, int(number))
    for names, word in (
        (words()["join"]["and"], Word.AND),
        (words()["join"]["then"], Word.THEN),
        (words()["ignore"]["words"], Word.IGNORE),
    ):
        for name in names:
            yield name, Meaning(word, name)


def _verbs() -> Iterator[tuple[str, Meaning]]:
    """Verbs in all their forms, with the place where they go unless the sheet says otherwise."""
    places = words()["default_place"]
    kinds: dict[str, str] = {}
    for kind, names in words()["verb"].items():
        for name in names:
            kinds.setdefault(name, kind)
            place = places.get(name, "")
            yield name, Meaning(Word.VERB, kind, place)
            for form, ing in _inflected(name):
                yield form, Meaning(Word.VERB, kind, place, ing)
    for form, base in words()["form"].items():
        yield form, Meaning(Word.VERB, kinds[base], places.get(base, ""))


def _compounds() -> Iterator[tuple[str, Meaning]]:
    """Two words that are one action, with either of them inflected."""
    for phrase, meaning in words()["compound"].items():
        kind, _, place = meaning.partition(" ")
        yield phrase, Meaning(Word.VERB, kind, place)
        first, _, rest = phrase.partition(" ")
        for form, ing in _inflected(first):
            yield f"{form} {rest}".strip(), Meaning(Word.VERB, kind, place, ing)
        for form, ing in _inflected(rest):
            yield f"{first} {form}", Meaning(Word.VERB, kind, place, ing)


def _named_things() -> Iterator[tuple[str, Meaning]]:
    for table, word in _TABLES.items():
        for value, names in words()[table].items():
            shown = Foot(value) if word in (Word.FOOT, Word.SIDE) else value
            for name in names:
                yield name, Meaning(word, shown, ing=name.endswith("ing"))


def _inflected(verb: str) -> Iterator[tuple[str, bool]]:
    """The forms of a regular verb, each with whether it is the -ing form."""
    stem = verb.removesuffix("e")
    doubled = stem + stem[-1] if len(stem) > 2 and _doubles(stem) else stem
    yield verb + ("es" if verb.endswith(("s", "sh", "ch", "x")) else "s"), False
    yield doubled + "ing", True
    yield doubled + "ed", False
    if doubled != stem:
        yield stem + "ing", True
        yield stem + "ed", False


def _doubles(stem: str) -> bool:
    vowels = "aeiou"
    return stem[-1] not in vowels + "wxyk" and stem[-2] in vowels and stem[-3] not in vowels
