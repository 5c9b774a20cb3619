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
    """Phrases by their words; `longest` is the number of words of the longest one, `short` the words cut short."""

    phrases: dict[tuple[str, ...], Meaning] = field(default_factory=dict)
    longest: int = 1
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
    return Lexicon(phrases, max(map(len, phrases)), words()["short"])


def _key(phrase: str) -> tuple[str, ...]:
    return tuple(phrase.replace("-", " ").split())


def _plurals(key: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    yield key
    last = key[-1]
    yield (*key[:-1], last + ("es" if last.endswith(("ch", "x", "sh", "s")) else "s"))
    if last.endswith("y"):
        yield (*key[:-1], last[:-1] + "ies")


def _small_words() -> Iterator[tuple[str, Meaning]]:
    data = words()
    places = data["default_place"]
    # What a verb is wins over what a body part is, a fraction over a number to be ignored.
    for kind, names in data["verb"].items():
        for name in names:
            place = places.get(name, "")
            yield name, Meaning(Word.VERB, kind, place)
            for form, ing in _inflected(name):
                yield form, Meaning(Word.VERB, kind, place, ing)
    for form, base in data["form"].items():
        yield form, Meaning(Word.VERB, _verb_of(base), places.get(base, ""))
    for phrase, meaning in data["compound"].items():
        kind, _, place = meaning.partition(" ")
        yield phrase, Meaning(Word.VERB, kind, place)
        first, _, rest = phrase.partition(" ")
        for form, ing in _inflected(first):
            yield f"{form} {rest}".strip(), Meaning(Word.VERB, kind, place, ing)
        for form, ing in _inflected(rest):
            yield f"{first} {form}", Meaning(Word.VERB, kind, place, ing)
    for section, word in (
        ("place", Word.PLACE), ("turn", Word.TURN), ("foot", Word.FOOT), ("side", Word.SIDE),
        ("both", Word.BOTH), ("bodypart", Word.PART), ("hold", Word.HOLD), ("same", Word.SAME),
        ("relation", Word.RELATION), ("weight", Word.WEIGHT),
    ):  # fmt: skip
        for value, names in data[section].items():
            for name in names:
                shown = Foot(value) if word in (Word.FOOT, Word.SIDE) else value
                yield name, Meaning(word, shown, ing=name.endswith("ing"))
    for eighths, names in data["amount"].items():
        for name in names:
            yield name, Meaning(Word.AMOUNT, int(eighths))
    for times, names in data["again"].items():
        for name in names:
            yield name, Meaning(Word.AGAIN, int(times))
    for name in data["join"]["and"]:
        yield name, Meaning(Word.AND, name)
    for name in data["join"]["then"]:
        yield name, Meaning(Word.THEN, name)
    for name in data["ignore"]["words"]:
        yield name, Meaning(Word.IGNORE, name)


def _verb_of(base: str) -> str:
    return next(kind for kind, names in words()["verb"].items() if base in names)


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
