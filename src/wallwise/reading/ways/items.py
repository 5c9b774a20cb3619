"""Acts to items: each act with every way it can be danced."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

from wallwise.dance.model import Foot, Kind, Place
from wallwise.reading.clauses import Act, Turn
from wallwise.reading.moves import PERHAPS, Item, Move, Option, claiming, only
from wallwise.reading.ways.figures import figure_options
from wallwise.reading.ways.kinds import moves_both
from wallwise.reading.ways.turns import stepped_into, turn_options
from wallwise.reading.ways.verbs import verb_options

_OUT_OR_IN = frozenset({"out", "in"})
_SPREADING = ("fan", "split", "swivel")  # "fan R toe out, in, out, in"
_TO_AND_FRO = (*_SPREADING, "sway")
_ONE_FOOT = (Foot.LEFT, Foot.RIGHT)
_ON_THE_SPOT = (Kind.TURN, Kind.SPIN)
_TURN_ALONE = 0.05


def items_of(acts: list[Act], before: Act | None = None) -> list[Item]:
    """The items of a piece of the sheet, acts that only say "and on R" filled from the one before.

    `before` is the act told before the piece, where its first act leaves its verb to that.
    """
    items: list[Item] = []
    for act in acts:
        told = _filled(act, before)
        items.append(Item(told, _options(told, before)))
        if _tells_verb(told):
            before = told
    for item, after in pairwise(items):
        if item.act.verb == "rock" and after.act.verb == "recover":
            item.options = [o for o in item.options if not any(m.from_figure == "rock" for _, m in o.moves)]
    return items


def _tells_verb(act: Act) -> bool:
    """Whether an act tells what is done, so that one behind it may leave that unsaid."""
    return not act.aside and act.verb != "and" and bool(act.verb or act.figures or act.part)


def led_by(items: Sequence[Item], acts: Sequence[Act]) -> Act | None:
    """The last of the items, if it moves both feet and the first of the acts leaves its verb to it.

    "Swivel heels right (5), centre (6), left (7)": each of these has its count mark.
    """
    first = next((act for act in acts if act.verb != "and"), None)
    last = next((item.act for item in reversed(items) if _tells_verb(item.act)), None)
    if first is None or last is None or not (moves_both(last) or last.verb in _TO_AND_FRO):
        return None
    unsaid = _is_bare(first) or _is_out_or_in(first) or _is_centre(first, last)
    return last if unsaid and not first.unknown else None


def _filled(act: Act, before: Act | None) -> Act:
    """The act with what it leaves to the one before: a bare "L" or "R, L" takes its verb and place."""
    if before is not None and moves_both(before) and _is_centre(act, before):
        return replace(act, verb="swivel", both=True, place="", said_place=False)
    if act.both and not act.verb and (verb := _verb_of_both(act, before)):
        return replace(act, verb=verb)
    if act.verb == "drop" and act.both and (foot := act.foot or (before.foot if before else None)):
        return replace(act, both=False, foot=foot)  # "heel forward, drop toes"
    if before is not None and before.verb in _SPREADING and (_is_out_or_in(act) or _brings_back(act, before)):
        foot = act.foot or before.foot
        return replace(before, also=act.also, foot=foot, start=act.start, end=act.end, turn=None, times=1)
    if not _is_bare(act):
        return act
    if before is not None and before.figures and moves_both(before):
        return replace(act, verb="swivel", both=True)
    if before is None or before.verb in ("turn", "hold", "same", "recover") or act.unknown:
        return replace(act, verb="step") if act.foot is not None or act.feet else act
    return replace(
        act, verb=before.verb, figures=before.figures, part=before.part, place=before.place, both=before.both,
        said_place=before.said_place, diagonal=before.diagonal, filled=True,
    )  # fmt: skip


def _is_centre(act: Act, before: Act) -> bool:
    """Whether it only says that the feet come back: "swivel right, centre", "split heels, bring together"."""
    brought = act.verb in ("step", "close") and before.verb == "split"
    told = act.figures or act.part or act.foot or act.feet or act.turn
    back = act.place == "back" and before.verb == "swivel"
    return (act.place == "beside" or back) and (brought or not act.verb) and not told


def _is_out_or_in(act: Act) -> bool:
    """Whether it says no more than "out" or "in"."""
    told = act.verb or act.figures or act.part or act.foot or act.feet or act.both or act.turn
    return act.spread and not told


def _verb_of_both(act: Act, before: Act | None) -> str:
    """What both feet do where no verb says it: "swivel heels R, toes R"; "heels out"."""
    if before is not None and before.verb == "swivel":
        return "swivel"
    return "split" if set(act.also) & _OUT_OR_IN else ""


def _brings_back(act: Act, before: Act) -> bool:
    """Whether it is no step but the way back of a fan: "fan right toes out, bring right toes in"."""
    return act.verb == "step" and (act.spread or (act.foot is before.foot and not act.place and not act.turn))


def _is_bare(act: Act) -> bool:
    """Whether it tells feet or a side, and not what they do."""
    does = act.verb or act.figures or act.part or act.place or act.both or act.diagonal or act.same
    return not does and (act.foot is not None or bool(act.feet) or act.toward is not None)


def _options(act: Act, before: Act | None) -> list[Option]:
    if act.figures:
        stepped = before is not None and before.verb == "step" and not before.turn
        return [_sooner(option) if stepped else option for option in figure_options(act)]
    if act.verb == "hold":
        return [claiming(_hold(act), act)]
    if act.verb == "and":
        return [_quick_step(act)]
    if act.verb == "turn":
        # the word alone has its turn taken by what follows
        return _turned(act, act.turn, before) if act.turn is not None else []
    if act.verb == "same" or act.empty or _is_direction(act):
        return []
    return verb_options(act, before)


def _turned(act: Act, turn: Turn, before: Act | None) -> list[Option]:
    """A turn told alone, and a pivot with the step that it takes where none is told before it."""
    options = turn_options(act, _unwound(turn, before))
    if _steps_first(act):
        own = turn_options(replace(act, foot=None, foot_at=None), turn)
        return [*options, stepped_into(own[0], act.foot)]
    if not _lacks_step(act, before):
        return options
    # one may follow a step told elsewhere, several in a row turn one way only with their steps
    return [*(options if act.times == 1 else []), stepped_into(options[0])]


def _steps_first(act: Act) -> bool:
    """Whether the foot told before a pivot may be that of a step: "R 1/2 pivot L", "R pivot 1/4 L"."""
    turn, told = act.turn, act.foot_at
    if turn is None or told is None or act.foot is None or act.feet:
        return False
    return turn.own == "pivot" and told[0] < turn.start


def _lacks_step(act: Act, before: Act | None) -> bool:
    """Whether it is a pivot that no step is told before."""
    told = act.foot is not None or act.feet or (before is not None and before.verb == "step")
    return act.turn is not None and act.turn.own == "pivot" and not told


def _unwound(turn: Turn, before: Act | None) -> Turn:
    """An unwind of no told way goes away from the foot that crossed, towards the one that went behind."""
    if turn.own != "unwind" or turn.way is not None or before is None or before.foot not in _ONE_FOOT:
        return turn
    ways = {"across": -1, "behind": 1}
    way = ways.get(before.place, 0) * (1 if before.foot is Foot.RIGHT else -1)
    return replace(turn, way=way or None)


def _sooner(option: Option) -> Option:
    """After a step a figure of turning is likelier its turn alone: "step R forward, spiral turn left"."""
    kind = option.moves[0][1].kinds[0][0] if len(option.moves) == 1 else None
    return replace(option, cost=min(option.cost, _TURN_ALONE)) if kind in _ON_THE_SPOT else option


def _is_direction(act: Act) -> bool:
    """Whether it only says where the rest goes: "to the left"."""
    return act.toward is not None and not (
        act.verb or act.foot or act.place or act.part or act.both or act.feet
    )


def _hold(act: Act) -> Option:
    move = Move(only(Kind.HOLD), Foot.NONE, where=(act.start, act.end), also=tuple(act.also))
    times = max(act.times, 1)
    return Option(tuple((Fraction(i), move) for i in range(times)), Fraction(times), elastic=True)


def _quick_step(act: Act) -> Option:
    """A quick step of the free foot between the beats, or only the word: "heel & heel &"."""
    move = Move(
        ((Kind.HOLD, 0.0), (Kind.STEP, 0.4)), place=Place.BESIDE, where=(act.start, act.end),
        from_figure=PERHAPS,
    )  # fmt: skip
    return Option(((Fraction(-1, 2), move),), Fraction(0))
