"""Step changes: what a restart or a wall dances instead of the steps as written."""

import re

_CHANGES = re.compile(r"\b(?:chang|replac|substitut)\w*|\binstead\b", re.IGNORECASE)
# "A change for wall 5: …" does not say yet what it changes to.
_OF_WHAT = r"\s+(?:the\s+|this\s+)?(?:re-?start|tag|bridge|wall|\d|last|first|final|count)"
_CHANGED_TO = re.compile(
    rf"""
    \b(?:chang|replac|substitut)\w*\b[^:]*?(?:\b(?:to|with|by|for(?!{_OF_WHAT}))\b\s*:?|:(?!\d))\s*(?P<new>\S.*)
    | \binstead\b[^:]*:(?!\d)\s*(?P<instead>\S.*)
    """,
    re.IGNORECASE | re.VERBOSE,
)
_WORDS = re.compile(r"[A-Za-z]{4}")
_END = re.compile(r"\.\s+[A-Z]|[\s,]+(?:and\s+)?(?:then\s+)?restart\b")


def change_at(text: str) -> int | None:
    """Where a text begins to tell of a step change; None where it tells of none."""
    found = _CHANGES.search(text)
    return found.start() if found else None


def changed_to(text: str) -> str:
    """The steps that a step change brings, as told ("… count 8 to: step L beside R"); empty for none."""
    told = [found for verb in _CHANGES.finditer(text) if (found := _CHANGED_TO.match(text, verb.start()))]
    new = [steps for found in told if _WORDS.search(steps := found["new"] or found["instead"])]
    return _END.split(new[-1])[0].strip(" -.;)\"'") if new else ""
