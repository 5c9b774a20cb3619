"""Footnotes: an order that begins with a sign stands where the steps bear that sign.

"7-8 Step R forward, pivot 1/2 left  *" and, below the dance, "* Restart here on wall 3".
The signs are looked for in the sheet as it came, since tidying takes bullets and stars for ornament.
"""

import re

from wallwise.reading.outline import Group, Outline, Remark
from wallwise.reading.wording import ORDER_WORDS

_ANY_SIGN = r"""
    (?: [*\[(<](?P<name>\w{1,2})[*\])>] | \(?(?P<sign>(?P<one>[*\#+†‡§~^°@])(?P=one){0,3}(?:\d(?!\w))?)\)? )
"""
_SIGN = re.compile(rf"[ \t]*(?:{_ANY_SIGN}|(?P<bare>R\d(?=[ \t]*[=:-])))[ \t]*[=:]?[ \t]*(?=\S)", re.VERBOSE)
_POINTED_AT = re.compile(
    rf"\b(?:(?i:at|by|marked)[ ](?:(?i:the|with)[ ])*{_ANY_SIGN}|(?i:restart)[ ](?P<bare>R\d)\b)", re.VERBOSE
)


def place_footnotes(out: Outline, text: str) -> None:
    """Let each order that begins with a sign, or points at it, stand behind the steps that end with it.

    Only where that is one place.

    `text` is the sheet as it came.
    """
    for remark in out.remarks:
        span = remark.line.span(remark.start, remark.end)
        begin = text.rfind("\n", 0, span.start) + 1
        sign = _SIGN.match(text, begin) or _POINTED_AT.search(text, span.start, span.end)
        if sign is None or not ORDER_WORDS.search(remark.text):
            continue
        places = _borne(text, _anywhere(sign), but=begin)
        group = _last_before(out, places[0].start()) if len(places) == 1 else None
        if group is not None:
            _stand_behind(remark, group, places[0].group().strip())


def _anywhere(sign: re.Match[str]) -> str:
    """A pattern for the sign where steps bear it: in brackets or not, but a letter only in such."""
    if sign["sign"] is None:
        return rf"[*\[(<]{re.escape(sign['name'] or sign['bare'])}[*\])>]"
    return rf"(?<!{re.escape(sign['sign'][0])})\(?{re.escape(sign['sign'])}\)?"


def _borne(text: str, sign: str, *, but: int) -> list[re.Match[str]]:
    """Where lines end with the sign, but for the line that begins at `but` and for those set in signs."""
    places = []
    for found in re.finditer(rf"{sign}[ \t\r]*$", text, re.MULTILINE):
        begin = text.rfind("\n", 0, found.start()) + 1
        alone = not text[begin : found.start()].strip()
        if begin != but and (alone or not re.match(rf"[ \t]*{sign}", text[begin:])):
            places.append(found)
    return places


def _last_before(out: Outline, place: int) -> Group | None:
    """The last steps of the dance that begin before a place of the sheet."""
    groups = [g for part in out.parts if not part.extra for s in part.sections for g in s.groups]
    before = [g for g in groups if g.line.span(g.start, g.end).start < place]
    return before[-1] if before else None


def _stand_behind(remark: Remark, group: Group, sign: str) -> None:
    """Move the remark behind the group, whose words the sign is none of."""
    remark.group = group
    words = group.text.rstrip()
    if words.endswith(sign):
        group.end = group.start + len(words) - len(sign)
