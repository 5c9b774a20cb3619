"""The acts of a piece of a line while they are being gathered, token by token."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from wallwise.dance.model import Foot
from wallwise.glossary.lexicon import Word
from wallwise.reading.clauses.act import Act, Turn
from wallwise.reading.tokens import Token

EDGE = Token("", None, -1, -1, "")  # what stands outside the line
_ARTICLES = ("the", "your")


class Telling:
    """The tokens of a piece of a line, the acts told so far and the one that is open.

    Whatever reads a token changes the open `act` or closes it with `flush`.  The fields are
    open to the handlers in this package; nobody else sees a telling.
    """

    def __init__(self, tokens: Sequence[Token]) -> None:
        self.tokens = tokens
        self.acts: list[Act] = []
        self.act = Act()
        self.depth = 0  # brackets open
        self.opened = 0  # acts told before the bracket last opened
        self.joined = False  # the next act comes in by "and"
        self.fresh = True  # the next act stands after a stop
        self.lead: Token | None = None  # "starting with right": the foot of the next act that has none
        self.cells = [0]  # acts told before each cell of a table row

    # -- looking along the line ---------------------------------------------------------

    def at(self, i: int) -> Token:
        """The token at `i`, `EDGE` outside the line."""
        return self.tokens[i] if 0 <= i < len(self.tokens) else EDGE

    def word(self, i: int) -> Word | str:
        """The class of the token at `i`, "" outside the line."""
        return self.tokens[i].word if 0 <= i < len(self.tokens) else ""

    def before(self, i: int) -> Token:
        """The token before `i`, an article between them left out: "beside the left"."""
        return self.at(i - 2 if self.at(i - 1).text in _ARTICLES else i - 1)

    def solid(self, i: int) -> Word | str:
        """The class of the first token from `i` on that is not to be ignored."""
        while self.word(i) is Word.IGNORE:
            i += 1
        return self.word(i)

    def led_into(self, i: int) -> bool:
        """Whether the token at `i` is what something before leads into: "turn into a shuffle"."""
        before = self.before(i) if self.at(i - 1).text != "a" else self.at(i - 2)
        return before.text == "into"

    # -- the open act -------------------------------------------------------------------

    def touch(self, piece: Token | Turn) -> None:
        """Let the open act reach over `piece` of the line."""
        if self.act.start < 0:
            self.act.start = piece.start
            self.act.joined, self.act.fresh = self.joined, self.fresh
            self.joined = self.fresh = False
        self.act.end = max(self.act.end, piece.end)

    def give_foot(self, token: Token, *, sure: bool) -> None:
        """Let the foot of `token` do the open act."""
        self.act.foot, self.act.foot_at, self.act.sure = token.value, (token.start, token.end), sure
        self.touch(token)

    def flush(self, *, joined: bool = False, then: Act | None = None) -> None:
        """Close the open act and open the next, `then` where its beginning is known already."""
        act, self.act = self.act, Act(aside=self.depth > 0)
        if act.start >= 0 and not act.idle:
            act.aside = act.aside or self.depth > 0
            self._land(act)
        self.joined = joined
        if then is not None:
            self.act = then

    def stop(self) -> None:
        """Close the open act at a stop."""
        self.flush()
        self.fresh = True

    # -- acts told ----------------------------------------------------------------------

    def _land(self, act: Act) -> None:
        """Put a finished act down, or hang what only qualifies on the act before it."""
        last = next((a for a in reversed(self.acts) if a.verb != "and"), None)
        if last is not None and _places_against(act, last):
            last.against, last.against_at = act.against, act.against_at
            return
        if last is not None and act.empty and not act.unknown:
            _qualify(last, act)
            return
        if self.lead is not None and _wants_foot(act):
            act.foot, act.foot_at = self.lead.value, (self.lead.start, self.lead.end)
            self.lead = None
        self.acts.append(act)


Handler = Callable[[Telling, int, Token], int]  # reads the token at that index; the index to go on from


def side_of(foot: Foot) -> int:
    """The way of a turn to that side: +1 right, -1 left."""
    return 1 if foot is Foot.RIGHT else -1


def _places_against(act: Act, last: Act) -> bool:
    """Whether the act only says against which foot the one before it was placed."""
    return bool(
        act.place
        and act.against is not None
        and not (act.verb or act.foot or act.turn)
        and last.foot is act.against.other
    )


def _qualify(last: Act, act: Act) -> None:
    """Let the facing, the weight and the times told in `act` be those of the act before it."""
    if act.faces is not None and last.faces is None:
        last.faces, last.faces_at = act.faces, act.faces_at
    if act.weight is not None and last.weight is None:
        last.weight, last.weight_at = act.weight, act.weight_at
    if act.times > 1:
        last.times = act.times


def _wants_foot(act: Act) -> bool:
    return act.foot is None and not act.feet and not act.both and act.verb not in ("hold", "turn")
