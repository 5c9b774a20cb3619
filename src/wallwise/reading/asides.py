"""Asides: where in a line the steps stop and an order, an option or plain talk begins."""

import re
from collections.abc import Sequence

from wallwise.glossary.lexicon import Word
from wallwise.glossary.load import words
from wallwise.reading.clauses import Act, read_acts
from wallwise.reading.marks import leading_mark
from wallwise.reading.stepwords import actions_in, known_share, tokens_of
from wallwise.reading.tokens import Token
from wallwise.reading.wording import AFTER_TIMES, NTH, OPTION_LEAD, ORDER_WORDS, RESTART, any_of

_HEADER_LINE = re.compile(
    r"""
    \W*(?:rhythm|timing)\b[^:=]{0,20}[:=] | .*\bthe[ ]timing\b[^:=]{0,20}[:=]
    | \W*(?:start(?:s|ing)?|intro\w*|notes?|music|song|choreo\w*|type|level|description|counts?|dance)
        \s*[:=]
    | \W*start(?:s|ing)?\s+(?:on|after|at|with)\s+(?:the\s+)?(?:\w+\s+)?
        (?:vox|vocals?|lyrics?|words?|singing|beat|\d+)\b
    | \W*(?:count[ ])?in[ ](?:on|after)[ ]\d | \W*\d{1,3}[ ](?:counts?[ ])?(?:in|intro)\b
    | .*\bcha[ ]cha[ ]count\b
    | \W*(?:counted|count(?:ed)?[ ]in)\b
    | (?:.*[,;(|/-]|\W*)\s*\d{2,3}[ -]*c(?:oun)?ts?\b.*\b(?:\d|one|two|four)[ -]*walls?\b
    | .*\brolling[ ](?:8|eight|count)
    """,
    re.IGNORECASE | re.VERBOSE,
)
_BEARS = re.compile(r"\b(?:weight|wt)\s+(?:on\s+)?(?:the\s+)?(?:left|right|[lr]f?)\b", re.IGNORECASE)
_COUNTED = re.compile(r"\bcounted\b|\bcount it\b", re.IGNORECASE)
_ASIDE = re.compile(
    rf"""
    [\[(*\u2022>\s~-]*\b(?:
        (?:(?:two|one|first|second|2nd|1st|w\d{{1,2}}:?)[ ])?{RESTART}\b(?![ ]of)
      | (?:no|without|neither)[ ](?:re-?starts?|tags?|bridges?)\b
      | (?:easy|easier|non-turning|no[- ]turn|alternative|alternate|optional?|opt|alt)\b(?!ly)[^,;]{{0,25}}?:?
      | option\b | tag\b | bridge\b
      | ending\b(?![ ](?:up[ ])?(?:with\b|(?:on[ ])?(?:(?:the|your)[ ])?(?:weight|wt|[lr]|left|right|both)\b))
      | start[ ]again | begin[ ]again | for[ ]the[ ]ending
      | (?:on|in|during)[ ](?:the[ ])?{NTH}(?:\s*(?:and|&|,)\s*(?:the\s+)?{NTH})*[ ]walls?\b
      | on[ ]walls?\s+\d | during[ ]walls?\s | wall[ ]\d(?!\d?[:.]\d)
    )
    | [\[(]\s*(?:or|if)\b
    | [\[(*\s]*\b{OPTION_LEAD}
    | [\[(]\s*(?:note|nb|styling)\b
    """,
    re.IGNORECASE | re.VERBOSE,
)
_OPTION_LINE = re.compile(rf"[\[(*\u2022>\s~-]*{OPTION_LEAD}", re.IGNORECASE)
_ABOUT_A_WALL = re.compile(
    rf"\b(?:after|end of|during|on|when|once)\s+(?:the\s+)?(?:walls?|{NTH}\s+wall|repetition)\b"
    r"|^\W*wall\s+\d|\b(?:each|every|next) wall\b"
    rf"|{AFTER_TIMES}",
    re.IGNORECASE,
)
_PROSE = re.compile(r"\b(?:you|should|this|your|we|please|dance is|repeat|facing)\b", re.IGNORECASE)
_WHOLE_DANCE = re.compile(rf"\b{any_of(words()['repeat']['never'])}\b", re.IGNORECASE)
_ABOUT_MUSIC = re.compile(rf"\b{any_of(words()['song']['words'])}\b", re.IGNORECASE)
_SENTENCE = re.compile(
    r"[\s.,;]*(?P<words>[A-Z].*?[.!?]|\([^()]*\)[.!?]?|\[[^\[\]]*\][.!?]?)\s+(?=[A-Z])", re.DOTALL
)
_OF_STEPS = frozenset(
    {Word.VERB, Word.FIGURE, Word.FOOT, Word.SIDE, Word.PART, Word.TURN, Word.AMOUNT, Word.HOLD, "feet"}
)
_FEW_KNOWN = 0.5  # the share of step language that no sentence about music has
_SENTENCE_BEHIND = re.compile(r"[.:;]\s|\s-\s")
_EXPLAINING = ("", "same", "turn")  # what a sentence about a repeat speaks of: none of it is a step
_LEADING_IN = 1  # words nobody knows before "repeat"; with more it is a sentence about something else
_BETWEEN_STEPS = re.compile(r"[,;/]|\s-\s|\band\b|&|\bthen\b")
_BEFORE_STEPS = re.compile(r"[:,(\u2022]|\s-\s|\b(?:add|dance|do)\b|\)|\.\s", re.IGNORECASE)
_LEAD_IN = re.compile(r".*?(?::(?!\d)|\s-\s)")
_BRACKETED_FACING = re.compile(
    r"""
    [(\[][^()\[\]]*\b(?:on|facing|face)\s+(?:the\s+)?
    (?:(?:12|3|6|9)\b(?:\s*o'?\s?c\w*)?|front|back)[^()\[\]]*[)\]]\s*[:-]?
    """,
    re.IGNORECASE | re.VERBOSE,
)
_WALLS_LISTED = re.compile(
    r"\bwalls?\s*\(?\d{1,2}(?:\s*(?:,\s*and|,|and|&|\+)\s*\d{1,2}\b(?!\s*[-&]\s*\d))+", re.IGNORECASE
)
_BEHIND_STEPS = re.compile(
    r"""
    \.\s
    | ,?\s*\b(?:(?:at\s+)?(?:the\s+)?end\s+of|after|following)\s+(?:the\s+)?
        (?:walls?|\d(?:st|nd|rd|th)(?:\s+\w+){0,4}\s+walls?)\b
    | ,?\s*\b(?:(?:and\s+)?then|and)\s+(?:continue|carry\s+on|go\s+on|resume|on\s+with)\b
    | ,\s*(?:continue|carry\s+on|go\s+on)\b
    | \bas\s+(?:an?|the)\s[^.;:,]*?\b(?:tag|bridge)\b
    | \bbefore\ (?:starting|beginning|wall)\b
    | ,?\s*\band\s+(?:then\s+)?(?:begin|start)\s+wall\b
    | \bthen\ (?:start|begin|restart) | \bstart\ again | \brestart
    | \bfacing\b | \(facing
    """,
    re.IGNORECASE | re.VERBOSE,
)
_LASTS = re.compile(r"(?<!after )\b(\d{1,2})\s*[- ]?\s*(?:counts?|beats?|cts?)\b", re.IGNORECASE)
_SIZE = re.compile(r"\bcounts?\b|\bsteps?\b")
_OF_WALLS = re.compile(r"\btags?\b|\bbridges?\b|\bwalls?\b|\bof\b|after|facing", re.IGNORECASE)
_WORD = re.compile(r"[A-Za-z]{2,}")


def is_header_line(text: str) -> bool:
    """Whether a line tells of the dance by its first word or of how it is counted, and so is no step."""
    if _HEADER_LINE.match(text) or _COUNTED.search(text):
        return True
    return _BEARS.search(text) is not None and not actions_in(text)


def is_about_a_wall(text: str) -> bool:
    """Whether a line tells what is done on or after one of the walls."""
    return _ABOUT_A_WALL.search(text) is not None


def is_prose(text: str) -> bool:
    """Whether a text reads as a sentence rather than as a heading."""
    return _PROSE.search(text) is not None


def repeat_told(text: str) -> Act | None:
    """What a line says is danced again of the steps before it; None where it says nothing but that.

    "Repeat section 1", "repeat counts 1-8 on the other foot", "same to the left" are such lines;
    "repeat and enjoy", "repeat to the end of the song" mean the whole dance.
    """
    if all(token.word is not Word.SAME for token in tokens_of(text)):
        return None
    stop = repeat_end(text)
    if ORDER_WORDS.search(text) or is_about_a_wall(text) or _WHOLE_DANCE.search(text, 0, stop):
        return None
    acts = read_acts(list(tokens_of(text[:stop])))
    told = [act for act in acts if not act.empty]
    if not told or told[0].verb != "same" or any(act.verb or act.figures for act in told[1:]):
        return None
    strange = sum(len(act.unknown) for act in acts[: acts.index(told[0])])
    return told[0] if strange <= _LEADING_IN else None


def is_option(text: str) -> bool:
    """Whether a line begins by saying for whom or when another way is danced."""
    return _OPTION_LINE.match(text) is not None


def repeat_end(text: str) -> int:
    """Where in a line what is danced again ends and a sentence without a step of its own explains it."""
    found = _SENTENCE_BEHIND.search(text)
    if found is None:
        return len(text)
    explains = read_acts(list(tokens_of(text[found.end() :])))
    if any(act.figures or act.verb not in _EXPLAINING for act in explains):
        return len(text)
    return found.start()


def step_count(text: str) -> int:
    """About how many steps a text names, by what stands between them; at least 1."""
    return len(_BETWEEN_STEPS.split(text))


def aside_at(text: str, start: int, end: int) -> int:
    """Where in ``text[start:end]`` the steps stop and an order or option begins; `end` where none does."""
    found = _ASIDE.search(text[start:end])
    return start + found.start() if found is not None else end


def talk_end(text: str, start: int, end: int) -> int:
    """Where in ``text[start:end]`` the steps begin behind sentences that tell none; `start` without any.

    They are about the music, or an order, or tell another way for some of the dancers.
    """
    while (found := _SENTENCE.match(text, start, end)) and _is_talk(found["words"]):
        start = found.end()
    return start


def _is_talk(sentence: str) -> bool:
    if _ASIDE.match(sentence):
        return True
    about_music = _ABOUT_MUSIC.search(sentence) is not None
    return about_music and known_share(sentence) < _FEW_KNOWN and not actions_in(sentence)


def facing_end(text: str, start: int, end: int) -> int:
    """Where words end that open ``text[start:end]`` and tell a facing and no step; `start` without any.

    Behind a count mark that follows its steps it is the facing of these: "… (1-2), now facing 9 o'clock."
    """
    reached = start
    told = tokens_of(text[start:end])
    for i, token in enumerate(told):
        if token.word in _OF_STEPS or (token.word is Word.PLACE and not _is_of_the_room(told, i)):
            break
        if token.word == "clock":
            reached = start + token.end
    return reached


def _is_of_the_room(tokens: Sequence[Token], i: int) -> bool:
    """Whether a place is a wall, not where a foot goes: "now at the back, 6:00", "back at 6:00", "home"."""
    beside = [*tokens[max(0, i - 1) : i], *tokens[i + 1 : i + 2]]
    return tokens[i].text == "home" or any(token.word in (Word.IGNORE, Word.RELATION) for token in beside)


def steps_at(text: str) -> int | None:
    """Where steps begin in a tag's heading ("end of wall 2: sway R, L, R, L"); None where it has none."""
    text = _BRACKETED_FACING.sub(lambda told: ")".rjust(len(told.group())), text)
    text = _WALLS_LISTED.sub(lambda told: "walls".ljust(len(told.group())), text)
    for start in sorted({0, *(found.end() for found in _BEFORE_STEPS.finditer(text))}):
        told = _SIZE.sub(" ", text[start : steps_end(text, start)])
        if (
            known_share(told) >= 0.75
            and _WORD.search(told)
            and actions_in(told) >= 1
            and not _OF_WALLS.search(told)
            and not _leads_in(text, start)
        ):
            return start + len(told) - len(told.lstrip(" )"))  # behind a facing in brackets
    return None


def _leads_in(text: str, start: int) -> bool:
    """Whether words without a step or a count lead in to the steps: "4 cts: …", "both on 6 o'c - …"."""
    lead = _LEAD_IN.match(text, start)
    return lead is not None and leading_mark(text, start) is None and not actions_in(lead.group())


def counts_told(text: str) -> int | None:
    """How many counts a text says something lasts ("4 counts", "a 2-count tag"); None where it does not."""
    found = _LASTS.search(text)
    return int(found[1]) if found and int(found[1]) > 1 else None


def counts_of_all(text: str) -> int | None:
    """How many counts a line of steps says that it lasts; what is told between steps is said of some."""
    found = _LASTS.search(text)
    if found is None or (known_share(text[: found.start()]) and known_share(text[found.end() :])):
        return None
    return counts_told(text)


def steps_end(text: str, start: int) -> int:
    """Where the steps of a tag that begin at `start` end: at a full stop, or where the dance goes on."""
    found = _BEHIND_STEPS.search(text[start:])
    return start + found.start() if found else len(text)
