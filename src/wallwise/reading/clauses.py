"""Tokens to acts: what each piece of a line says, and no more than it says.

An `Act` is one thing told: a verb with its foot, place and turn, a figure's name with
what qualifies it, a turn, a hold, a "same again".  What is left unsaid stays None; the
body and the rest of the sheet decide it later.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from fractions import Fraction

from wallwise.dance.model import Foot
from wallwise.glossary.entry import Figure
from wallwise.glossary.lexicon import Word
from wallwise.reading.tokens import Token


@dataclass(slots=True)
class Turn:
    """A turn as told: eighths (None: "turn left" alone), way +1 right, -1 left, None unsaid.

    `own` names the word that makes it an event of its own (pivot, unwind, spin).
    """

    eighths: Fraction | None
    way: int | None
    own: str
    start: int
    end: int


@dataclass(slots=True)
class Act:
    """One thing told.  Places in the line are `start` and `end`; see the module's words."""

    verb: str = ""
    start: int = -1
    end: int = -1
    foot: Foot | None = None
    foot_at: tuple[int, int] | None = None
    sure: bool = False  # the foot was called a foot, or stands where only a foot can
    part: str = ""  # heel, toe, ball, knee
    place: str = ""
    diagonal: bool = False
    said_place: bool = False
    against: Foot | None = None  # the other foot named: "beside L", "over R"
    against_at: tuple[int, int] | None = None
    toward: Foot | None = None
    toward_at: tuple[int, int] | None = None
    both: bool = False
    long: bool = False
    turn: Turn | None = None
    weight: Foot | str | None = None  # L, R, both; "take", "none"
    weight_at: tuple[int, int] | None = None
    faces: int | None = None
    faces_at: tuple[int, int] | None = None
    figures: tuple[Figure, ...] = ()
    feet: tuple[Foot, ...] = ()
    feet_at: tuple[int, int] | None = None
    times: int = 1
    number: int | None = None
    also: list[str] = field(default_factory=list)
    label: bool = False  # stands before a colon: a name for what follows
    aside: bool = False  # stands in brackets
    parted: bool = False  # the place stood right before the verb: "side touch" may be a step and a touch
    fresh: bool = False  # a comma or another stop stands before it
    closed: bool = False  # a figure's name that is a sentence of its own: perhaps a name for what follows
    joined: bool = False  # came in by "and" or "&", not by a stop
    ing: bool = False
    unknown: list[Token] = field(default_factory=list)
    same: str = ""
    counts: tuple[int, int] | None = None
    of_section: bool = False  # `counts` are numbers of sections

    @property
    def empty(self) -> bool:
        """Whether nothing was told that moves or holds a foot."""
        return not (
            self.verb or self.foot or self.part or self.place or self.diagonal or self.turn or self.figures
            or self.feet or self.both or self.toward or self.same
        )  # fmt: skip


_STOPS = frozenset({",", ";", ".", "|", ">", "->", "...", "\u2022", "*", "=", "<", "~", "!", "?", '"', "/"})
_WITH = frozenset({"sweep", "hitch", "drag", "flick", "kick", "hook", "brush", "bump", "roll", "sway", "point", "touch"})


class Clauses:
    """One pass over the tokens of a piece of a line; `acts` holds what was told, in order."""

    def __init__(self, tokens: list[Token]) -> None:
        self.tokens = tokens
        self.acts: list[Act] = []
        self.act = Act()
        self.depth = 0
        self._joined = False
        self._fresh = True
        self._lead: Token | None = None
        self._opened = self._shut = 0  # acts before the bracket last opened, and at its end
        self._cell_starts = [0]
        i = 0
        while i < len(tokens):
            i = self._take(i)
        self._flush()
        self._name_cells()
        self.acts = _with_feet(self.acts)

    # -- moving along -----------------------------------------------------------------

    def _peek(self, i: int) -> Token | None:
        return self.tokens[i] if i < len(self.tokens) else None

    def _word(self, i: int) -> Word | str:
        return self.tokens[i].word if i < len(self.tokens) else ""

    def _solid(self, i: int) -> Word | str:
        """The class of the first token from `i` on that is not to be ignored."""
        while self._word(i) is Word.IGNORE:
            i += 1
        return self._word(i)

    def _touch(self, token: Token) -> None:
        if self.act.start < 0:
            self.act.start = token.start
            self._open_act()
        self.act.end = max(self.act.end, token.end)

    def _open_act(self) -> None:
        self.act.joined, self.act.fresh = self._joined, self._fresh
        self._joined = self._fresh = False

    def _flush(self, *, joined: bool = False) -> None:
        act = self.act
        self.act = Act(aside=self.depth > 0)
        if act.start >= 0 and (not act.empty or act.unknown or act.faces is not None or act.weight is not None or act.times > 1):
            act.aside = act.aside or self.depth > 0
            self._land(act)
        self._joined = joined

    def _land(self, act: Act) -> None:
        """Put a finished act down, or hang what only qualifies on the act before it."""
        last = next((a for a in reversed(self.acts) if a.verb != "and"), None)
        if last is not None and act.place and act.against is not None and not (act.verb or act.foot or act.turn) and last.foot is act.against.other:
            last.against, last.against_at = act.against, act.against_at  # says more of the step before
            return
        if act.empty and not act.unknown and last is not None:
            if act.faces is not None and last.faces is None:
                last.faces, last.faces_at = act.faces, act.faces_at
            if act.weight is not None and last.weight is None:
                last.weight, last.weight_at = act.weight, act.weight_at
            if act.times > 1:
                last.times = act.times
            return
        if self._lead is not None and act.foot is None and not act.feet and not act.both and act.verb not in ("hold", "turn"):
            act.foot, act.foot_at = self._lead.value, (self._lead.start, self._lead.end)
            self._lead = None
        self.acts.append(act)

    def _name_cells(self) -> None:
        """Of the cells of a table row, the one that tells most is the steps; the others name them."""
        bounds = [*self._cell_starts, len(self.acts)]
        cells = [self.acts[a:b] for a, b in zip(bounds, bounds[1:], strict=False) if a < b]
        if len(cells) < 2:
            return
        for i, cell in enumerate(cells[:-1]):
            # a column that holds only the foot
            if len(cell) == 1 and _bare(cell[0]) and cell[0].foot is not None and cells[i + 1][0].foot is None:
                cells[i + 1][0].foot, cells[i + 1][0].foot_at = cell[0].foot, cell[0].foot_at
                for act in cells[i + 1][1:2]:
                    if cells[i + 1][0].verb == "turn" and act.foot is None:
                        act.foot, act.foot_at = cell[0].foot, cell[0].foot_at
                        cells[i + 1][0].foot = cells[i + 1][0].foot_at = None
            elif len(cell) == 1 and _bare(cell[0]) and cell[0].foot is not None:
                act = cells[i + 1][0]
                if act.foot is cell[0].foot.other and act.place in ("behind", "across", "beside") and act.against is None:
                    # "L | step behind R": R is what it goes behind
                    act.against, act.against_at = act.foot, act.foot_at
                    act.foot, act.foot_at = cell[0].foot, cell[0].foot_at
        told = max(cells, key=lambda cell: sum(2 * bool(a.foot or a.feet) + (not a.empty) for a in cell))
        for cell in cells:
            if cell is not told:
                for act in cell:
                    act.label = True

    # -- one token --------------------------------------------------------------------

    def _take(self, i: int) -> int:
        token = self.tokens[i]
        word = token.word
        if isinstance(word, str):
            return self._take_stop(i, token)
        handler = _HANDLERS.get(word)
        if handler is not None:
            return handler(self, i, token)
        return i + 1

    def _take_stop(self, i: int, token: Token) -> int:
        kind = token.word
        if kind == "clock":
            return self._take_clock(i, token)
        if kind == "feet":
            return self._take_feet(i, token)
        if kind == "number":
            return self._take_number(i, token)
        if kind == "unknown":
            self._touch(token)
            self.act.unknown.append(token)
        elif kind in "([":
            if not self._bracket_goes_on(i + 1):
                self._flush()
                self._fresh = True
                self._opened = len(self.acts)
                self.depth += 1
                self.act = Act(aside=True)
            else:
                self.depth += 1
        elif kind in ")]":
            if self.depth:
                self._shut = len(self.acts) + (not self.act.empty)
                if self.act.aside:
                    self._flush()
                    self.act = Act(aside=self.depth > 1)
                self.depth -= 1
                self.act.aside = self.depth > 0
        elif kind == "cell":
            self._flush()
            self._fresh = True
            if self.acts and self._cell_starts[-1] != len(self.acts):
                self._cell_starts.append(len(self.acts))
        elif kind == "lead":
            self._lead = token
        elif kind == ":":
            self._flush()
            self._fresh = True
            if self.acts:
                self.acts[-1].label = True
        elif kind in _STOPS:
            self._flush()
            self._fresh = True
            if kind == "." and self.acts and self.acts[-1].figures:
                self.acts[-1].closed = True
        return i + 1

    def _bracket_goes_on(self, i: int) -> bool:
        """Whether a bracket only qualifies the act it stands in: a facing, a weight, feet, a turn's amount."""
        token = self._peek(i)
        return token is not None and (
            token.word in ("clock", "feet", Word.WEIGHT, Word.AGAIN, Word.AMOUNT, Word.SIDE, Word.FOOT)
            or (token.word in (Word.IGNORE, Word.RELATION) and self._word(i + 1) == "clock")
            or (token.word is Word.THEN and self._word(i + 1) == "clock")
        ) and self.act.start >= 0

    def _take_clock(self, i: int, token: Token) -> int:
        self._touch(token)
        self.act.faces, self.act.faces_at = token.value, (token.start, token.end)
        return i + 1

    def _take_feet(self, i: int, token: Token) -> int:
        self._touch(token)
        if self.act.feet:
            self._flush()
            self._touch(token)
        self.act.feet, self.act.feet_at = token.value, (token.start, token.end)
        return i + 1

    def _take_number(self, i: int, token: Token) -> int:
        nxt = self._peek(i + 1)
        if nxt is not None and nxt.word is Word.VERB and not self.act.verb:
            self._touch(token)
            self.act.number = token.value  # "3 walks forward"
            return i + 1
        if self.act.verb == "same" or self.act.same:
            self.act.of_section = bool(i and self.tokens[i - 1].text in ("section", "sections", "s", "sec", "set", "part", "line"))
            last = self._peek(i + 2)
            if nxt is not None and nxt.word in ("-", Word.RELATION, ",", Word.AND) and last is not None and last.word == "number":
                self.act.counts = (token.value, last.value)
                self._touch(last)
                return i + 3
            self.act.counts = (token.value, token.value)
            return i + 1
        if self.act.verb and 1 < token.value <= 8 and self.act.number is None:
            self.act.number = token.value
            self._touch(token)
        return i + 1

    # -- words that join ----------------------------------------------------------------

    def _take_and(self, i: int, token: Token) -> int:
        nxt = self._peek(i + 1)
        before = self.tokens[i - 1] if i else None
        if nxt is None:
            self._flush(joined=True)
            if token.text == "&":
                self.acts.append(Act(verb="and", start=token.start, end=token.end))
            return i + 1
        if before is not None and before.word is Word.PLACE and nxt.word is Word.PLACE and nxt.value in ("out", "in", "across", "diagonal", "back", "forward") and before.value in ("forward", "back", "out", "in", "diagonal") and not self._starts_step(i + 1):
            return i + 1  # "forward and out"
        if before is not None and before.word in (Word.SIDE, Word.FOOT) and nxt.word in (Word.SIDE, Word.FOOT) and self._solid(i + 2) not in (Word.PLACE, Word.PART, Word.VERB, Word.FIGURE):
            return i + 1  # "right and left"
        if nxt.word is Word.WEIGHT or nxt.word == "clock":
            return i + 1
        self._flush(joined=True)
        if token.text == "&" and not (self.acts and self.acts[-1].verb == "turn"):
            self.acts.append(Act(verb="and", start=token.start, end=token.end))
        return i + 1

    def _starts_step(self, i: int) -> bool:
        """Whether a place word at `i` opens a step of its own: a foot and no more follows it."""
        return self._word(i + 1) in (Word.SIDE, Word.FOOT) and self._word(i + 2) not in (Word.PLACE,)

    def _take_then(self, i: int, token: Token) -> int:
        if self.act.start >= 0 and not self.act.empty:
            self._flush()
        return i + 1

    # -- verbs and figures ----------------------------------------------------------------

    def _take_verb(self, i: int, token: Token) -> int:
        act = self.act
        if act.verb == "turn" and token.ing and token.value in ("hitch", "sweep", "kick", "flick", "hook", "touch", "point", "brush", "drag"):
            act.foot, act.foot_at = None, None  # "turn 1/2 left on L hitching R": L only stands
        if act.verb == "turn" and (token.ing or act.turn is None or act.turn.own in ("", "turn")):
            # "turn 1/4 right stepping R": the turn is done with the step
            if not token.ing and act.turn is not None and not act.joined and act.turn.own == "turn" and act.turn.eighths is None:
                self._flush()
            else:
                act.verb = ""
        elif act.verb == "turn" and token.ing:
            act.verb = ""  # "pivot 1/2 right stepping back on L"
        elif token.ing and not act.verb and not act.figures and act.foot is not None and act.said_place and token.value in _WITH:
            act.verb = "step"  # "L behind R sweeping R": a step, and what goes with it
            return self._take_with(i, token)
        elif act.verb or act.figures:
            if token.ing and act.verb != "same":
                return self._take_with(i, token)
            if token.value == "ball" and act.verb == "step" and not act.foot:
                act.part = "ball"
                return i + 1
            if token.value == "step" and token.place == "long" and act.verb == "step" and not act.said_place:
                act.long = True  # "step right a long step to the side"
                self._touch(token)
                return i + 1
            self._flush(joined=False)
        elif act.part and act.part != "ball" and act.start >= 0 and not act.feet:
            if token.value in ("touch", "point", "kick", "dig", "drop", "fan", "swivel", "hook", "flick") or act.foot is not None:
                pass  # "heel touch", "toe drop", "RF toe cross over LF"
            else:
                self._flush()
        elif act.place and act.said_place and act.foot is None and token.value not in ("rock", "step", "touch", "point", "kick", "close", "lock", "ball", "stomp", "drag", "sway"):
            self._flush()
        self._set_verb(token)
        return i + 1

    def _set_verb(self, token: Token) -> None:
        act = self.act
        act.parted = act.said_place and not act.verb and not act.part
        self._touch(token)
        kind, _, second = str(token.value).partition("+")
        if kind == "ball" and second:  # "ball cross": two acts in two words
            act.verb = "ball"
            self._flush()
            self._touch(token)
            act = self.act
            if second in ("side", "forward", "back", "beside"):
                act.verb, act.place, act.said_place = "step", second, True
            else:
                act.verb, act.place = second, "across" if second == "cross" else ""
            return
        act.verb = kind
        act.ing = token.ing
        if token.place == "long":
            act.long = True
        elif token.place and not (act.place and act.said_place):
            act.place = token.place
            act.said_place = act.said_place or token.text.split()[0].startswith(("cross", "x"))

    def _take_with(self, i: int, token: Token) -> int:
        """An -ing form after a verb: what goes with the act ("sweeping L"), or how it is done ("stepping")."""
        act = self.act
        if token.value in ("step", "close", "cross", "recover", "rock", "ball", "stomp", "lock") and (act.figures or act.verb in ("turn", "same", "hold")):
            act.verb = act.verb if act.figures else token.value
            if token.place and not act.place:
                act.place = token.place
            self._touch(token)
            return i + 1
        if token.value in ("step", "close", "cross", "recover", "rock", "stomp"):
            self._flush()
            self._set_verb(token)
            return i + 1
        if token.value == "sway" and act.verb == "step":
            act.verb = "sway"
            self._touch(token)
            return i + 1
        if token.value in ("point", "touch", "kick", "dig") and act.verb in ("turn",):
            act.verb = token.value
            return i + 1
        words = []
        j = i
        while j < len(self.tokens) and self.tokens[j].word not in _STOPS and self.tokens[j].word not in ("clock", Word.THEN, Word.AND, "(", ")", Word.TURN, Word.WEIGHT, "[", "]", ":"):
            words.append(self.tokens[j].text)
            self._touch(self.tokens[j])
            j += 1
        act.also.append(" ".join(words))
        return j

    def _take_figure(self, i: int, token: Token) -> int:
        act = self.act
        if act.verb and act.verb != "turn" and not (act.verb in ("step", "cross", "close") and act.ing):
            if act.verb == "step" and act.foot is None and not act.place and not act.turn:
                act.verb = ""  # "step a shuffle"
            else:
                foot, turn = None, None
                self._flush(joined=False)
                del foot, turn
                act = self.act
        elif act.figures:
            self._flush()
            act = self.act
        elif act.part:
            self._flush()
            act = self.act
        act.verb = ""
        act.figures = token.value
        self._touch(token)
        return i + 1

    # -- feet, places -----------------------------------------------------------------------

    def _take_foot(self, i: int, token: Token) -> int:
        return self._give_foot(i, token, sure=True)

    def _take_side(self, i: int, token: Token) -> int:
        nxt = self._word(i + 1)
        before = self.tokens[i - 1].word if i else ""
        after = self._peek(i + 1)
        if nxt is Word.PLACE and after is not None and after.value in ("side", "diagonal") and (before is Word.RELATION or self.act.foot is not None or before is Word.PLACE):
            self.act.toward, self.act.toward_at = token.value, (token.start, token.end)
            self._touch(token)
            return i + 1
        far = self._peek(i + 2)
        if nxt is Word.PLACE and after is not None and after.value in ("forward", "back") and far is not None and far.word is Word.PLACE and far.value == "diagonal" and (before is Word.RELATION or self.act.foot is not None):
            self.act.toward, self.act.toward_at = token.value, (token.start, token.end)
            self._touch(token)
            return i + 1
        if nxt is Word.PLACE and after is not None and after.value == "diagonal" and self.act.foot is None and before is Word.PLACE:
            self.act.toward, self.act.toward_at = token.value, (token.start, token.end)
            self._touch(token)
            return i + 1
        if before is Word.RELATION and self.tokens[i - 1].value == "to" and self.act.verb not in ("recover", "close", "drag"):
            if self.act.verb in ("step", "touch") and self.act.foot is not None and self.act.place == "beside":
                return i + 1
            self.act.toward, self.act.toward_at = token.value, (token.start, token.end)
            self._touch(token)
            if not self.act.place and self.act.verb not in ("", "turn") or self.act.foot is not None and not self.act.verb and not self.act.place:
                self.act.place, self.act.said_place = "side", True
            return i + 1
        if self.act.turn is not None and self.act.turn.way is None and (self.act.verb == "turn" or before is Word.TURN) and before is not Word.RELATION:
            self.act.turn.way = 1 if token.value is Foot.RIGHT else -1
            self.act.turn.end = token.end
            self._touch(token)
            return i + 1
        return self._give_foot(i, token, sure=False)

    def _give_foot(self, i: int, token: Token, *, sure: bool) -> int:
        act = self.act
        before = self.tokens[i - 1] if i else None
        nxt = self._word(i + 1)
        if before is not None and before.word is Word.PLACE and before.value in ("beside", "across", "behind") and act.foot is not None:
            return self._place_against(i, token)
        if before is not None and before.word is Word.RELATION and before.value in ("to", "of") and act.foot is not None:
            return self._place_against(i, token) if act.verb in ("close", "drag", "touch") else i + 1
        if before is not None and before.word is Word.PLACE and before.value in ("across", "behind", "beside") and act.verb and act.foot is None and sure is False and nxt not in (Word.PLACE, Word.FOOT, Word.SIDE, Word.PART) and act.verb in ("cross", "close", "lock", "touch", "point", "hook") and before.text not in ("together", "tog"):
            return self._place_against(i, token)  # "cross over L": L is what is crossed
        if act.foot is None and not act.verb and act.place in ("across", "behind", "beside") and before is not None and before.text.endswith((" of", " to")):
            return self._place_against(i, token)  # "R forward, across in front of L"
        if act.foot is None:
            act.foot, act.foot_at = token.value, (token.start, token.end)
            act.sure = sure or bool(act.verb)
            self._touch(token)
            if nxt is Word.PART:
                return i + 1
            return i + 1
        if act.verb == "sway" and token.value == act.foot:
            return i + 1
        if act.verb in ("bump", "sway", "swivel", "roll") or act.both:
            self._again_on(token)
            return i + 1
        if before is not None and before.word in (Word.SIDE, Word.FOOT, Word.AND) and (act.verb or act.place) and not act.figures:
            if before.word is Word.SIDE and before.value == token.value:
                act.toward = token.value  # "step left left"
                return i + 1
            self._again_on(token)
            return i + 1
        if act.place and act.said_place and (nxt in (Word.PLACE, Word.PART) or nxt is Word.VERB):
            self._flush()  # "R side L behind": the next foot opens the next step
            self._touch(token)
            self.act.foot, self.act.foot_at, self.act.sure = token.value, (token.start, token.end), sure
            return i + 1
        if act.figures and nxt in (Word.FIGURE, Word.VERB, Word.PLACE, Word.PART):
            self._flush()
            return self._give_foot(i, token, sure=sure)
        if not act.toward and not sure:
            act.toward, act.toward_at = token.value, (token.start, token.end)
            if act.verb in ("step", "rock", "point", "stomp") and not act.place and act.sure:
                act.place, act.said_place = "side", True  # "RF step left"
            self._touch(token)
        return i + 1

    def _place_against(self, i: int, token: Token) -> int:
        if self.act.against is None:
            self.act.against, self.act.against_at = token.value, (token.start, token.end)
        self._touch(token)
        return i + 1

    def _again_on(self, token: Token) -> None:
        """The same act once more on another foot: "walk right, left"."""
        act = self.act
        again = Act(verb=act.verb, place=act.place, said_place=act.said_place, diagonal=act.diagonal, both=act.both, aside=act.aside, part=act.part)
        self._flush()
        self.act = again
        self._touch(token)
        again.foot, again.foot_at, again.sure = token.value, (token.start, token.end), True

    def _take_place(self, i: int, token: Token) -> int:
        act = self.act
        value = token.value
        if value == "diagonal":
            act.diagonal = True
            self._touch(token)
            return i + 1
        if value in ("out", "in"):
            if not act.verb and not act.place and not act.figures and not act.both and not act.part:
                if act.foot is None and act.start >= 0 and (act.turn is not None):
                    self._flush()
                self._touch(token)
                self.act.place, self.act.said_place = ("side" if value == "out" else "beside"), True
                return i + 1
            if act.both or act.verb in ("swivel", "fan", "split", "jump") or act.part:
                self._touch(token)
                if act.also and act.also[-1] in ("in", "out"):
                    again = replace(act, also=[value], start=token.start, end=token.end)
                    self._flush()
                    self.act = again
                    return i + 1
                act.also.append(value)
                return i + 1
            if act.verb and not act.place:
                act.place, act.said_place = ("side" if value == "out" else "beside"), True
            elif act.verb and act.place in ("side", "beside") and act.said_place and act.verb == "step" and self.tokens[i - 1].word is Word.PLACE and self.tokens[i - 1].value in ("in", "out"):
                again = Act(verb=act.verb, place="side" if value == "out" else "beside", said_place=True)
                self._flush()
                self.act = again
            elif not act.verb and act.place and self.tokens[i - 1].word is Word.PLACE and self.tokens[i - 1].value in ("in", "out"):
                again = Act(place="side" if value == "out" else "beside", said_place=True)
                self._flush()
                self.act = again
            self._touch(token)
            return i + 1
        if value == "beside" and self._word(i - 1) is Word.RELATION and token.text == "by":
            return i + 1
        if act.verb == "turn" and act.turn is not None and act.turn.own in ("", "turn") and token.text not in ("in place", "on the spot"):
            # "1/4 turn left, forward": the place opens a step that the turn goes with
            act.verb = ""
        if act.place and act.said_place and not self._goes_with(act.place, value, token):
            if act.verb in ("touch", "kick", "point", "dig", "hook", "flick") or act.part:
                again = Act(verb=act.verb, part=act.part, foot=None)
            else:
                again = Act()
            self._flush()
            self.act = again
            act = self.act
        elif act.place and act.said_place:
            self._touch(token)
            return i + 1
        self._touch(token)
        if value == "across" and act.verb == "lock":
            act.place = "lock front"
        elif value == "behind" and act.verb == "lock":
            act.place = "lock behind"
        elif not (act.place.startswith("lock") and value == "beside"):
            act.place = value
        act.said_place = True
        return i + 1

    def _goes_with(self, place: str, value: str, token: Token) -> bool:
        """Whether a second place word only says more of the first ("side ... together" does not)."""
        if value == place or token.text in ("in front", "centre", "center", "to centre", "home", "ahead", "to center", "to place", "back to place"):
            return True
        if place == "across" and value in ("behind",) and self.act.verb == "cross":
            self.act.place = "behind"
            return True
        if place == "across" and self.act.verb == "cross" and value in ("across", "forward"):
            return True
        if place in ("across", "behind") and value in ("side",):
            return self.act.verb in ("touch", "point", "sweep") and self.act.foot is not None
        if {place, value} <= {"forward", "back", "side"} and self.act.toward is None:
            return self.act.verb in ("rock", "sway") and False
        return value == "place"

    def _take_part(self, i: int, token: Token) -> int:
        act = self.act
        if act.part and not act.verb and (act.start >= 0):
            foot = act.foot
            again = Act()
            self._flush()
            self.act = again
            del foot
            act = self.act
        elif act.figures:
            if self._word(i - 1) not in (Word.SIDE, Word.FIGURE):
                return i + 1
            self._flush()
            act = self.act
        elif act.foot is not None and self._word(i - 1) not in (Word.SIDE, Word.FOOT, Word.RELATION) and act.verb and token.value in ("heel", "toe") and act.part == "":
            if self.tokens[i - 1].word is Word.PLACE and act.said_place:
                self._flush()
                act = self.act
        before = self.tokens[i - 1] if i else None
        if act.foot is not None and before is not None and before.word in (Word.SIDE, Word.FOOT) and act.foot_at is not None and before.start != act.foot_at[0]:
            return i + 1  # the part of the foot it is placed against: "beside L heel"
        self._touch(token)
        if not act.part:
            act.part = token.value
        return i + 1

    def _take_both(self, i: int, token: Token) -> int:
        act = self.act
        if token.text in ("feet", "hips", "hip", "both", "knees", "shoulders", "shoulder") and act.figures:
            return i + 1
        if act.both and act.verb and token.text in ("heels", "toes") and (act.toward or act.also):
            verb = act.verb
            self._flush()
            self.act = Act(verb=verb)
            act = self.act
        self._touch(token)
        if token.text == "toes" and act.foot is not None:
            act.part = "toe"
            return i + 1
        act.both = True
        if token.text in ("hips", "hip") and not act.verb:
            act.verb = "bump"
        return i + 1

    # -- turns ----------------------------------------------------------------------------------

    def _take_amount(self, i: int, token: Token) -> int:
        return self._turn_from(i)

    def _take_turn(self, i: int, token: Token) -> int:
        return self._turn_from(i)

    def _turn_from(self, i: int) -> int:
        """Read a turn phrase from token `i`: an amount, a word of turning and a way, in any order."""
        eighths: Fraction | None = None
        way: int | None = None
        own, start, j = "", self.tokens[i].start, i
        end = self.tokens[i].end
        while j < len(self.tokens):
            token = self.tokens[j]
            nxt = self._word(j + 1)
            if token.word is Word.AMOUNT and eighths is None:
                eighths = Fraction(token.value)
            elif token.word is Word.TURN and token.value == "turn" and own not in ("", "turn") and j > i:
                pass  # "pivot 1/2 turn left"
            elif token.word is Word.TURN and (own in ("", "turn")) and not (own == "turn" and token.value == "turn" and j > i and eighths is not None and way is not None):
                own = token.value if token.value != "turn" else (own or "turn")
            elif token.word is Word.SIDE and way is None and nxt is not Word.PART and not (nxt is Word.PLACE and self.tokens[j + 1].value in ("side", "diagonal")) and not (own == "" and self._foot_follows_amount(j)):
                way = 1 if token.value is Foot.RIGHT else -1
            elif token.word is Word.RELATION and token.value == "to" and self._word(j + 1) is Word.SIDE and way is None and self._word(j + 2) is not Word.PLACE:
                pass
            elif token.word is Word.IGNORE and token.text in ("a", "the", "another", "your") and nxt in (Word.TURN, Word.AMOUNT, Word.SIDE) and j > i:
                pass
            else:
                break
            if token.word is not Word.IGNORE:
                end = token.end
            j += 1
        if own == "" and eighths is None:
            return j
        if eighths == 8 and own == "" and self._word(j) not in (Word.SIDE, Word.TURN):
            if way is None:
                return i + 1  # "full", "complete" with nothing turning
        self._place_turn(Turn(eighths, way, own, start, end))
        return j

    def _foot_follows_amount(self, j: int) -> bool:
        """Whether R or L right after a bare fraction is the foot of the verb that follows: never in practice."""
        return False

    def _place_turn(self, turn: Turn) -> None:
        act = self.act
        token_end = turn.end
        if act.both and not act.verb and not act.part:
            act.both = False  # "RF+LF pivot": on both feet it turns, as pivots do
        if turn.own in ("pivot", "unwind", "spin") and (act.verb or act.part or act.both or (act.foot is not None and act.place)):
            self._flush()
            act = self.act
        if act.verb == "turn" and act.turn is not None or act.turn is not None:
            if act.turn is not None and act.turn.eighths is None and turn.eighths is not None:
                turn.way = turn.way if turn.way is not None else act.turn.way
            else:
                self._flush()
                act = self.act
        if act.start < 0:
            act.start = turn.start
            self._open_act()
        act.end = max(act.end, token_end)
        act.turn = turn
        if not act.verb and not act.figures and not (act.foot is not None and act.place) and not act.feet:
            act.verb = "turn"

    # -- the rest ----------------------------------------------------------------------------------

    def _take_hold(self, i: int, token: Token) -> int:
        if not self.act.empty:
            self._flush()
        self._touch(token)
        self.act.verb = "hold"
        self.act.also.append(token.text)
        return i + 1

    def _take_again(self, i: int, token: Token) -> int:
        if self.act.start < 0 and self.acts:
            before = self.tokens[i - 1].word if i else ""
            if before in (")", "]") and len(self.acts) - self._opened > 1:
                # "(step R, pivot 1/4 left) x2": the whole bracket again
                told = self.acts[self._opened :]
                for act in told:
                    act.aside = False
                for _ in range(token.value - 1):
                    self.acts += [replace(act, fresh=True) for act in told]
                return i + 1
            self.acts[-1].times = token.value
            return i + 1
        self._touch(token)
        self.act.times = token.value
        return i + 1

    def _take_same(self, i: int, token: Token) -> int:
        if self.act.same:
            self.act.same = token.value if token.value != "same" else self.act.same
            self._touch(token)
            return i + 1
        if token.text == "same" and self._word(i + 1) in (Word.IGNORE, Word.VERB, Word.FIGURE):
            return i + 1
        if token.value in ("other", "opposite") and not self.act.empty and self.act.verb != "same":
            return i + 1
        if not self.act.empty:
            self._flush()
        self._touch(token)
        self.act.verb = "same"
        self.act.same = token.value
        return i + 1

    def _take_relation(self, i: int, token: Token) -> int:
        return i + 1

    def _take_weight(self, i: int, token: Token) -> int:
        """ "weight on L", "taking weight", "no weight": who bears it after this act."""
        if token.value == "moves":
            # "and change weight to L": an event of its own where a count waits for it
            self._flush(joined=True)
            self.act.verb = "recover"
            self._touch(token)
            self.act.both = False
            self.act.also.append("change weight")
            return i + 1
        if token.value != "none" and self._fresh and self.act.start < 0 and self.acts and self._word(i + 1) in (Word.SIDE, Word.FOOT, Word.RELATION, Word.PLACE):
            # "- weight back on R": told like a step of its own, and where a count waits for it, it is one
            self.act.verb = "recover"
            self._touch(token)
            self.act.also.append("weight")
            return i + 1
        j = i + 1
        value: Foot | str = "none" if token.value == "none" else "take"
        end = token.end
        while j < len(self.tokens):
            nxt = self.tokens[j]
            if nxt.word in (Word.FOOT, Word.SIDE):
                value, end = nxt.value, nxt.end
                j += 1
                break
            if nxt.word is Word.BOTH:
                value, end = Foot.BOTH, nxt.end
                j += 1
                break
            if nxt.word in (Word.RELATION, Word.IGNORE, Word.WEIGHT) or nxt.word in ("-", "=") or (nxt.word is Word.PLACE and nxt.text in ("forward", "back", "over")):
                j += 1
                continue
            break
        target = self.act if not self.act.empty else (self.acts[-1] if self.acts else self.act)
        if target is self.act:
            self._touch(token)
        target.weight, target.weight_at = value, (token.start, end)
        return j

    def _take_ignore(self, i: int, token: Token) -> int:
        if token.text in ("long", "big", "large") and self._word(i + 1) is not Word.IGNORE:
            self.act.long = True
        if token.text == "it" and self.act.verb and self.act.foot is None and self.acts:
            self.act.foot = self.acts[-1].foot
            self.act.foot_at = None
        return i + 1


def _with_feet(acts: list[Act]) -> list[Act]:
    """Feet told behind what they do, in pieces of their own: "shuffle forward, right, left, right"."""
    joined: list[Act] = []
    i = 0
    while i < len(acts):
        act = acts[i]
        i += 1
        joined.append(act)
        if act.feet or act.verb not in ("", "step") or not (act.figures or (act.verb == "step" and act.foot is None)):
            continue
        j, feet = i, [act.foot] if act.foot is not None else []
        while j < len(acts) and _bare(acts[j]) and (not feet or acts[j].aside == acts[i].aside):
            feet += acts[j].feet or ((acts[j].foot,) if acts[j].foot is not None else ())
            j += 1
        alternate = all(a is not b for a, b in zip(feet, feet[1:], strict=False))
        if j > i and not alternate and act.foot is not None and acts[i].feet and acts[i].feet[0] is act.foot:
            feet = list(acts[i].feet)  # "right shuffle, R-L-R": the lead is told twice
            j, alternate = i + 1, True
        if j > i and alternate and len(feet) >= (3 if act.figures else 2):
            act.feet = tuple(f for f in feet if f is not None)
            act.feet_at = acts[i].feet_at or acts[i].foot_at
            act.faces, act.faces_at = acts[j - 1].faces, acts[j - 1].faces_at
            act.end = acts[j - 1].end
            i = j
    return joined


def _bare(act: Act) -> bool:
    """Whether an act tells feet and nothing else."""
    return bool(act.feet or act.foot) and not (
        act.verb or act.figures or act.part or act.place or act.both or act.turn or act.unknown or act.weight or act.label
    )  # fmt: skip


_HANDLERS = {
    Word.VERB: Clauses._take_verb,
    Word.FIGURE: Clauses._take_figure,
    Word.FOOT: Clauses._take_foot,
    Word.SIDE: Clauses._take_side,
    Word.BOTH: Clauses._take_both,
    Word.PLACE: Clauses._take_place,
    Word.TURN: Clauses._take_turn,
    Word.AMOUNT: Clauses._take_amount,
    Word.PART: Clauses._take_part,
    Word.HOLD: Clauses._take_hold,
    Word.AGAIN: Clauses._take_again,
    Word.SAME: Clauses._take_same,
    Word.RELATION: Clauses._take_relation,
    Word.WEIGHT: Clauses._take_weight,
    Word.AND: Clauses._take_and,
    Word.THEN: Clauses._take_then,
    Word.IGNORE: Clauses._take_ignore,
}


def read_acts(tokens: list[Token]) -> list[Act]:
    """What the tokens tell, in order; empty for no tokens."""
    return Clauses(tokens).acts
