"""Step changes: what a restart or a wall dances instead of the steps as written."""

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from typing import NamedTuple

from wallwise.glossary.lexicon import Word
from wallwise.reading.marked import split_marks
from wallwise.reading.marks import Mark, leading_mark
from wallwise.reading.stepwords import actions_in, known_share, tokens_of

_CHANGES = re.compile(
    r"\b(?:chang|replac|substitut|swap|exchang|becom)\w*|\binstead\b|\bin\s+place\s+of\b", re.IGNORECASE
)
# "A change for wall 5: …" does not say yet what it changes to.
_OF_WHAT = r"\s+(?:the\s+|this\s+)?(?:re-?start|tag|bridge|wall|\d|last|first|final|count)"
_INSTEAD_OF = r"\b(?:instead|in\s+place)\s+of\s+"
_WAYS = (
    re.compile(
        rf"""
        \b(?:chang|replac|substitut|swap|exchang)\w*\b[^:]*?
        (?:\b(?:to|with|by|for(?!{_OF_WHAT}))\b\s*:?|:(?!\d))\s*(?P<new>\S.*)
        """,
        re.IGNORECASE | re.VERBOSE,
    ),
    re.compile(r"\bbecom\w*\s*:?\s*(?P<new>\S.*)", re.IGNORECASE),
    re.compile(r"\binstead\b[^:]*:(?!\d)\s*(?P<new>\S.*)", re.IGNORECASE),
    re.compile(
        rf"{_INSTEAD_OF}(?:the\s+)?(?:counts?\s+|beats?\s+)?\d[\d\s&,-]*(?:of\s+\w+\.?(?:\s+\d+)?\s*)?[,:-]?\s*"
        r"(?:(?:do|dance)\b[\s:,]*(?P<new>\S.*)|(?P<plain>[A-Za-z].*))",
        re.IGNORECASE,
    ),
    # "with this change 7-8 touch R …"
    re.compile(
        r"\bchanges?\s+(?P<new>\d[\d&-]*\s+(?!(?:to|with|by|for|of|in|on|and|into|become|are|is)\b)[A-Za-z].*)",
        re.IGNORECASE,
    ),
)
# "…, then instead of the kick ball cross step L beside R": what is left out ends with its name
_OPENS_INSTEAD = re.compile(
    rf"(?:^|[.,;:(]|\b(?:then|and|but))\s*{_INSTEAD_OF}(?:the|this|that|an?)\s+", re.IGNORECASE
)
_STOP = re.compile(r"[.;:]")
# "… but touch L beside R instead", "dance 24 counts, touch L on count 8 instead of stepping"
_BEFORE_INSTEAD = re.compile(
    r"(?:^\s*|\(|(?:[,;:.]|\s-|\bbut|\bdo|\bdance|\bthen|\band|\bwith)\s+)(?P<new>(?:(?!\bthen\b|\bbut\b)[^;:.(])+?)\s+\(?(?:instead\b|in\s+place\s+of\b)",
    re.IGNORECASE,
)
_COUNTS = re.compile(
    r"\b(?:counts?|cts?|beats?|dance|do|(?:replac|chang|swap|exchang)\w*|instead\s+of)\s+(?P<mark>\d[\d\s&ae,-]*)(?!\w)",
    re.IGNORECASE,
)
_DANCED_AS = re.compile(  # "dance 15-16 as: touch L behind R, unwind 1/4"
    r"\b(?:dance|do)\s+(?:counts?\s+)?\d[\d\s&,-]*(?:as\b(?!\s+far)|like\s+this\b)[\s:,-]*(?P<new>[A-Za-z].*)",
    re.IGNORECASE,
)
_ON_COUNTS = re.compile(  # "for 15 and 16 do touch R forward, touch R beside L"
    r"\b(?:for|on)\s+(?:counts?\s+)?(?P<mark>\d[\d\s&,-]*(?:and\s+\d{1,2})?)[\s,]*(?:you\s+)?(?:do|dance)\b[\s:]*"
    r"(?P<new>[A-Za-z].*)",
    re.IGNORECASE,
)
_MARKED = re.compile(  # "do: 7-8 step R forward", "counts 13-16 are: walk R, L, R, L"
    r"(?:^|[:,.(;-]|\b(?:do|dance|then|on|but|only|counts?|cts?|beats?))\s*(?P<mark>(?:counts?\s+)?\d[\d&-]*)"
    r"\s*(?:[:=-]|\b(?:is|are|becomes?)\b:?)?\s+(?P<new>(?!(?:of|or|and|counts?)\b)[A-Za-z][^:;.]*)",
    re.IGNORECASE,
)
_MARK_BEHIND = re.compile(r"\s*\((?:on\s+)?(?P<mark>(?:counts?\s+)?\d[\d&-]*)\)$", re.IGNORECASE)
_SPOKEN_FIRST = re.compile(r"(?:on|for)\s+(?:counts?\s+)?(?=\d)", re.IGNORECASE)  # "on count 16 touch R"
_SPOKEN = re.compile(r"\s+(?:on|for)\s+(?:counts?\s+)?(?=\d)", re.IGNORECASE)
# "dance 22 counts, then hold for 23-24 and restart"
_THEN = re.compile(
    r"\bthen\s+(?P<new>(?!re-?start|start|begin|go|carry)[^;:.]*?)[\s,]*(?:(?:and|then)\s+)*"
    r"(?=\b(?:re-?start|(?:start|begin|go)\s+(?:the\s+dance\s+)?(?:again|over))\b)",
    re.IGNORECASE,
)
# Steps on the last count before the restart: "touch R beside L on 8 and restart".
_ON_COUNT = re.compile(
    r"(?:[:,;(]|\b(?:then|but|and))\s*(?P<new>(?P<words>[^:;,.()\d]+?)\s+on\s+(?:counts?\s+)?\d{1,2})[\s,.]+"
    r"(?:(?:and|then)\s+)*(?=re-?start\b|(?:start|begin)\s+(?:again|over|from)\b)",
    re.IGNORECASE,
)
_NOT = re.compile(r"(?:\b(?:no|not|never|without)|n't)\b[^.;:,]{0,20}$", re.IGNORECASE)
_COUNTS_FIRST = re.compile(r"(?:counts?|cts?|beats?)\s+(?=\d)", re.IGNORECASE)
_END = re.compile(
    r"\.\s+[A-Z]|,\s+(?:no|not|without|rather)\b|[\s,]+(?:and\s+)?(?:then\s+)?(?:re-?start|"
    r"(?:start|begin|go)\s+(?:(?:the\s+dance\s+)?again|over|anew|afresh|from))\b"
)
_HOW_FAR = re.compile(
    r"(?:you\s+)?(?:only\s+)?(?:dance|do|after|up\s+to)\b[^,;.]*\d", re.IGNORECASE
)  # "dance to count 22"
_OF_WALL = re.compile(r"\bw(?:alls?\b|\d)", re.IGNORECASE)
# "… and begin again: the 1 is your step to the side": the dance's own first step is no change of it.
_BEHIND_COLON = re.compile(r"[:;(](?!\s*(?:(?:the|your|count)\s+)*(?:1|one|first)\b)\s*(?P<words>[^:;().]+)")
_WITH_FOOT = re.compile(r"\b(?:R|L|right|left)\b")
_OTHER_COUNT = re.compile(r"(?<![/\d])\d{1,2}(?![/\d])")
_SURELY_STEPS = 0.85
_STEPS = 0.6  # the share of step language of words that tell a step without a verb


_SAYS_SO = re.compile(
    r"(?<!\bno )\bsteps?\s+changes?\b"
    r"|\bchang(?:e|es|ing)\s+(?:of\s+)?(?:the\s+)?(?:(?:last|final)\s+)?(?:steps?|counts?|\d)"
    r"|\b(?:do\s+not|don't)\s+(?:do|dance|step|turn|pivot|touch)\b[^.;:]*\bbut\b"
    r"|\b(?:replac|substitut|swap|exchang)\w*",
    re.IGNORECASE,
)


class Change(NamedTuple):
    """The steps that a step change brings, as told, and the counts that it names; no words for no steps."""

    words: str
    counts: Mark | None = None


@lru_cache(maxsize=256)  # an order's words are looked at again for each of its walls
def change_at(text: str) -> int | None:
    """Where a text begins to tell of a step change; None where it tells of none."""
    found = next(_changes_in(text), None)
    return found.start() if found else None


def _changes_in(text: str) -> Iterator[re.Match[str]]:
    """The words of a text that tell of a change, but for those that deny it ("no steps are changed")."""
    return (found for found in _CHANGES.finditer(text) if not _NOT.search(text, 0, found.start()))


def tells_steps(text: str) -> bool:
    """Whether a text is surely of steps, perhaps with their counts."""
    return actions_in(text) > 0 and known_share(text) >= _SURELY_STEPS and _OF_WALL.search(text) is None


def tells_steps_with_feet(text: str) -> bool:
    """Whether a text is surely of steps, and says with which foot or to which side."""
    return tells_steps(text) and _WITH_FOOT.search(text) is not None


def says_it_changes(text: str) -> int | None:
    """Where a text says for certain that steps are changed, even if not to which; None where it does not."""
    found = _SAYS_SO.search(text) or _then_steps(text)
    return found.start() if found else None


def steps_behind_colon(text: str) -> int | None:
    """Where a text tells steps with their feet behind a colon or in brackets; None where it tells none."""
    behind = _BEHIND_COLON.finditer(text)
    return next((found.start() for found in behind if tells_steps_with_feet(found["words"])), None)


@lru_cache(maxsize=256)
def changed_to(text: str) -> Change:
    """What a step change brings ("… count 8 to: step L beside R")."""
    told = _told_behind(text)
    if told is not None:
        return told
    found = _BEFORE_INSTEAD.search(text) or _DANCED_AS.search(text) or _then_steps(text) or _on_count(text)
    return _under_mark(text) if found is None else _told_in(text, found)


def _told_behind(text: str) -> Change | None:
    """The steps told behind the words of a change, or behind the counts they are danced on."""
    for verb in reversed(list(_changes_in(text))):
        for way in _WAYS:
            found = way.match(text, verb.start())
            begin = _begin_of_new(found) if found is not None else len(text)
            if begin == len(text) or _HOW_FAR.match(text, begin):
                continue
            if new := _steps(text[begin:]):
                return Change(new, _counts_named(text, begin) or _only_mark(new))
    left_out = _behind_what_is_left_out(text)
    if left_out is not None and (new := _steps(text[left_out:])):
        return Change(new, _counts_named(text, left_out))
    found = _ON_COUNTS.search(text)
    if found is not None and (new := _steps(found["new"])):
        return Change(new, leading_mark(f"counts {found['mark']}"))
    return None


def _told_in(text: str, found: re.Match[str]) -> Change:
    """The steps that a way of telling them has found, on the counts told with them."""
    first = _SPOKEN_FIRST.match(text, found.start("new"))
    mark = leading_mark(text, first.end()) if first is not None else None
    if mark is not None:
        return _counted(text, mark, found.end("new"))
    new = _steps(found["new"])
    spoken = _SPOKEN.search(new)
    if spoken is not None and (mark := leading_mark(new, spoken.end())) is not None:
        return Change(new[: spoken.start()], mark)
    behind = _MARK_BEHIND.search(new)
    if behind is not None and (mark := leading_mark(behind["mark"])) is not None:
        return Change(new[: behind.start()], mark)
    if found.re is _THEN:
        return Change("")  # on which counts is not told
    return Change(new, _counts_named(text, found.start("new")) if new else None)


def _begin_of_new(found: re.Match[str]) -> int:
    """Where the new steps begin that a way of telling them has found."""
    plain = "plain" in found.re.groupindex and found["plain"] is not None
    return found.start("plain" if plain else "new")


def _behind_what_is_left_out(text: str) -> int | None:
    """Where steps begin behind a figure that they stand for: "instead of the pivot touch R forward"."""
    found = _OPENS_INSTEAD.search(text)
    if found is None:
        return None
    told = tokens_of(text[found.end() :])
    named = next((i for i, token in enumerate(told) if token.word in (Word.FIGURE, Word.TURN)), None)
    if named is None or any(token.word is Word.VERB for token in told[:named]):
        return None
    steps = next((token for token in told[named + 1 :] if token.word in (Word.FIGURE, Word.VERB)), None)
    if steps is None or _STOP.search(text, found.end(), found.end() + steps.start):
        return None
    return found.end() + steps.start


def _only_mark(words: str) -> Mark | None:
    """The count mark that leads steps, where these have no other; else None."""
    mark = leading_mark(words)
    return mark if mark is not None and _OTHER_COUNT.search(words, mark.end) is None else None


def _under_mark(text: str) -> Change:
    """Steps told under a count mark of their own, in words that tell of no change; no words for none."""
    found = _MARKED.search(text)
    while found is not None:
        new, mark = _steps(found["new"]), leading_mark(found["mark"])
        if mark is not None and tells_steps(new):
            return _counted(
                text, replace(mark, start=found.start("mark"), end=found.start("new")), found.end("new")
            )
        found = _MARKED.search(text, found.start("mark") + 1)
    return Change("")


def _counted(text: str, mark: Mark, end: int) -> Change:
    """The steps behind a mark, with the marks that stand among them."""
    words = text[mark.start : end].strip()
    several = sum(piece.mark is not None for piece in split_marks(words, leading_mark(words))) > 1
    return Change(words) if several else Change(_steps(text[mark.end : end]), mark)


def _on_count(text: str) -> re.Match[str] | None:
    """Steps that a text tells on the last count before the restart: "touch R beside L on 8 and restart"."""
    found = _ON_COUNT.search(text)
    return found if found is not None and tells_steps_with_feet(found["words"]) else None


def _then_steps(text: str) -> re.Match[str] | None:
    """Steps that a text tells between how far a wall is danced and its restart."""
    found = _THEN.search(text)
    return found if found is not None and _steps(found["new"]) else None


def _steps(words: str) -> str:
    """The words up to where the steps end; empty where they tell of none."""
    words = _COUNTS_FIRST.sub("", _END.split(words)[0].strip(" -.;\"'"), count=1)
    return words if actions_in(words) or known_share(words) >= _STEPS else ""


def _counts_named(text: str, end: int) -> Mark | None:
    """The counts that are said to change, told last before `end`."""
    marks = [leading_mark(found["mark"].strip()) for found in _COUNTS.finditer(text, 0, end)]
    return marks[-1] if marks else None
