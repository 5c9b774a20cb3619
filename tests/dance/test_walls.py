"""The dance unrolled, against orders worked out by hand."""

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.strategies import EIGHTHS, danceable, dances, part_of

from wallwise.dance.clock import FRONT, facing_name
from wallwise.dance.model import Dance, Foot, Kind, Part, Restart, Step, Tag
from wallwise.dance.walls import (
    LONGEST,
    Wall,
    WallKind,
    back_at_front,
    events_of,
    part_named,
    unroll,
    wall_count,
)
from wallwise.glossary.notation import parse_steps


def _walks(counts: int, *, name: str = "main", turns: dict[int, str] | None = None) -> Part:
    """Walks R, L, R … with the turns that the counts say."""
    feet = (Foot.LEFT, Foot.RIGHT)
    steps = tuple(
        Step(Fraction(n), feet[n % 2], Kind.STEP, turn=Fraction((turns or {}).get(n, "0")))
        for n in range(1, counts + 1)
    )
    return part_of(steps, counts=counts, name=name)


def _line(wall: Wall) -> tuple[str, int, str, str, int, str, str | None]:
    return (
        wall.kind.value,
        wall.number,
        wall.part,
        facing_name(wall.starts_facing),
        int(wall.counts),
        facing_name(wall.ends_facing),
        wall.cut_by,
    )


# Half of it right by count 16, the other quarter by count 32.
FOUR_WALLS = Dance("Four Walls", (_walks(32, turns={8: "1/4", 16: "1/4", 32: "-1/4"}),))


def test_without_restart_or_tag_the_wall_law_says_when_it_is_over() -> None:
    """A quarter right faces 12:00, 3:00, 6:00, 9:00 and is at the front again."""
    assert [
        ("wall", 1, "main", "12:00", 32, "3:00", None),
        ("wall", 2, "main", "3:00", 32, "6:00", None),
        ("wall", 3, "main", "6:00", 32, "9:00", None),
        ("wall", 4, "main", "9:00", 32, "12:00", None),
    ] == [_line(wall) for wall in unroll(FOUR_WALLS)]


def test_restart_cuts_the_wall_and_turns_the_room() -> None:
    """Wall 3 cut after 16 counts has turned a half instead of a quarter."""
    dance = replace(FOUR_WALLS, restarts=(Restart(3, Fraction(16)),))

    assert [
        ("wall", 1, "main", "12:00", 32, "3:00", None),
        ("wall", 2, "main", "3:00", 32, "6:00", None),
        ("wall", 3, "main", "6:00", 16, "12:00", "restart"),
    ] == [_line(wall) for wall in unroll(dance)]
    assert 3 == back_at_front(dance)
    assert 7 == back_at_front(dance, after=3)


def test_restart_keeps_the_and_after_its_last_count() -> None:
    """The "&" after count 2 belongs to count 2 and is danced before the restart."""
    part = part_of(parse_steps(["1 step R", "2 step L", "& ball R", "3 step L", "4 step R"]), counts=4)
    wall = unroll(Dance("And", (part,), restarts=(Restart(1, Fraction(2)),)), walls=1)[0]

    assert [Fraction(1), Fraction(2), Fraction(5, 2)] == [step.at for step in wall.steps]


def test_restart_with_a_step_change() -> None:
    """The change takes the place of every step from its count on."""
    part = part_of(parse_steps(["1 step R", "2 step L", "& step R", "3 step L"]), counts=3)
    change = parse_steps(["2 touch L beside"])
    dance = Dance("Changed", (part,), restarts=(Restart(2, Fraction(2), change, Fraction(2)),))
    first, second, third = unroll(dance, walls=3)

    assert part.steps == first.steps == third.steps
    assert (part.steps[0], *change) == second.steps
    assert Foot.RIGHT is second.ends_weight
    assert second.cut_by == "restart"
    assert Fraction(2) == second.counts


def test_step_change_without_a_cut() -> None:
    """A wall danced to its last count may still end on changed steps."""
    change = parse_steps(["32 touch L beside"])
    dance = replace(FOUR_WALLS, restarts=(Restart(2, Fraction(32), change),))
    wall = unroll(dance, walls=2)[1]

    assert wall.cut_by is None
    assert Fraction(32) == wall.counts
    assert (Foot.RIGHT, "3:00", "9:00") == (
        wall.ends_weight,
        facing_name(wall.starts_facing),
        facing_name(wall.ends_facing),
    )


def test_tag_after_a_wall_is_part_of_its_number() -> None:
    """The tag stands between its wall and the next, and its turn counts."""
    dance = replace(FOUR_WALLS, tags=(Tag(2, _walks(4, name="tag", turns={4: "1/2"})),))

    assert [
        ("wall", 2, "main", "3:00", 32, "6:00", None),
        ("tag", 2, "tag", "6:00", 4, "12:00", None),
        ("wall", 3, "main", "12:00", 32, "3:00", None),
    ] == [_line(wall) for wall in unroll(dance, walls=3)[1:]]
    assert 2 == back_at_front(dance)


def test_tag_inside_a_wall_splits_it() -> None:
    """After 8 counts and a tag the wall goes on at count 9; absolute counts run through."""
    dance = replace(FOUR_WALLS, tags=(Tag(1, _walks(2, name="tag"), Fraction(8)),))
    first, tag, rest = unroll(dance, walls=1)

    assert ("wall", 1, "main", "12:00", 8, "3:00", "tag") == _line(first)
    assert ("tag", 1, "tag", "3:00", 2, "3:00", None) == _line(tag)
    assert ("wall", 1, "main", "3:00", 24, "3:00", None) == _line(rest)
    assert Fraction(8) == rest.skipped
    counts = [event.count for wall in (first, tag, rest) for event in events_of(wall)]
    assert list(range(1, 35)) == counts


def test_tag_at_the_cut_follows_it() -> None:
    """A tag after the count of a restart is danced before the room begins again."""
    dance = replace(
        FOUR_WALLS, restarts=(Restart(1, Fraction(16)),), tags=(Tag(1, _walks(4, name="tag"), Fraction(16)),)
    )

    assert [
        ("wall", 1, "main", "12:00", 16, "6:00", "restart"),
        ("tag", 1, "tag", "6:00", 4, "6:00", None),
        ("wall", 2, "main", "6:00", 32, "9:00", None),
    ] == [_line(wall) for wall in unroll(dance, walls=2)]


def test_tag_beyond_the_cut_is_never_reached() -> None:
    """A restart after 16 counts leaves no place for a tag after 24."""
    dance = replace(
        FOUR_WALLS, restarts=(Restart(1, Fraction(16)),), tags=(Tag(1, _walks(4, name="tag"), Fraction(24)),)
    )

    assert [WallKind.WALL] == [wall.kind for wall in unroll(dance, walls=1)]


def test_phrased_dance_follows_its_sequence() -> None:
    """Parts, tags and shortened parts come as the sequence calls them; tags take no number."""
    dance = Dance(
        "Phrased",
        (_walks(32, name="A", turns={32: "1/2"}), _walks(16, name="B")),
        tags=(Tag(0, _walks(4, name="Tag")),),
        sequence=("A", "a", "B", "TAG", "A(16)", "A-"),
    )

    assert [
        ("wall", 1, "A", "12:00", 32, "6:00", None),
        ("wall", 2, "A", "6:00", 32, "12:00", None),
        ("wall", 3, "B", "12:00", 16, "12:00", None),
        ("tag", 3, "Tag", "12:00", 4, "12:00", None),
        ("wall", 4, "A", "12:00", 16, "12:00", "sequence"),
        ("wall", 5, "A", "12:00", 32, "6:00", None),
    ] == [_line(wall) for wall in unroll(dance)]
    assert 2 == wall_count(dance)
    assert 2 == back_at_front(dance)
    assert 4 == back_at_front(dance, after=3)
    assert back_at_front(dance, after=4) is None


def test_restart_in_a_phrased_dance_cuts_the_part_of_that_number() -> None:
    """Wall 2 of a phrased dance is the second part danced."""
    dance = Dance(
        "Phrased", (_walks(32, name="A"),), sequence=("A", "A-", "A"), restarts=(Restart(2, Fraction(8)),)
    )

    assert [32, 8, 32] == [wall.counts for wall in unroll(dance)]
    assert "restart" == unroll(dance)[1].cut_by


def test_name_that_names_nothing_is_kept_as_unknown() -> None:
    """The checks can point at it, and the rest of the sequence is danced."""
    dance = Dance("Phrased", (_walks(8, name="A"),), sequence=("A", "C", "A"))

    assert [WallKind.WALL, WallKind.UNKNOWN, WallKind.WALL] == [wall.kind for wall in unroll(dance)]
    assert ("C", Fraction(0)) == (unroll(dance)[1].part, unroll(dance)[1].counts)


@pytest.mark.parametrize(
    ("name", "means"),
    [("A", "A"), ("a", "A"), ("A-", "A"), ("A*", "A"), ("A (16)", "A"),
     ("A(first 8 counts)", "A"), ("A (9-16)", None), ("A16", "A"), ("A2", None),
     ("A+", "A+"), ("B", None), ("", None), ("-", None)],
)  # fmt: skip
def test_part_named(name: str, means: str | None) -> None:
    """A shortened name means its part unless a part is called just that."""
    dance = Dance("Phrased", (Part("A", ()), Part("A+", ())))
    part = part_named(dance, name)

    assert means == (part.name if part else None)


def test_ending_closes_when_asked_for() -> None:
    """The ending goes on from where the last wall faces."""
    dance = replace(FOUR_WALLS, ending=_walks(4, name="ending", turns={1: "-1/4"}))

    assert 1 == len(unroll(dance, walls=1))
    assert ("ending", 1, "ending", "3:00", 4, "12:00", None) == _line(unroll(dance, walls=1, ending=True)[-1])


def test_room_that_never_comes_back() -> None:
    """A restart that leaves a two-wall dance a quarter out is never at the front again."""
    dance = Dance("Out", (_walks(16, turns={4: "1/4", 12: "1/4"}),), restarts=(Restart(2, Fraction(8)),))

    assert back_at_front(dance, after=1) is None
    assert 4 == len(unroll(dance))


def test_restart_beyond_any_song_is_not_waited_for() -> None:
    """A misprinted wall number does not unroll the dance for ever."""
    dance = replace(FOUR_WALLS, restarts=(Restart(10**12, Fraction(16)),), tags=(Tag(10**12, _walks(4)),))

    assert 4 == len(unroll(dance))
    assert 4 == back_at_front(dance)


def test_dance_without_parts_gives_nothing() -> None:
    """An empty dance has one wall by the law and none to dance."""
    empty = Dance("Empty", ())

    assert () == unroll(empty) == unroll(empty, walls=3)
    assert 1 == wall_count(empty)
    assert back_at_front(empty) is None


def test_wall_starts_on_the_first_foot_that_moves() -> None:
    """A hold first is no foot; a wall without steps starts on none."""
    wall, _ = unroll(Dance("Held", (part_of(parse_steps(["1 hold", "2 step R"]), counts=2),)), walls=2)

    assert Foot.RIGHT is wall.starts_on
    assert unroll(Dance("Still", (Part("main", ()),)))[0].starts_on is None


@given(danceable())
def test_after_all_its_walls_a_dance_faces_the_front(dance: Dance) -> None:
    """Whatever it turns, the room is back at the front after the wall law's walls, not before."""
    walls = unroll(dance)

    assert FRONT == walls[-1].ends_facing
    assert wall_count(dance) == len(walls) == walls[-1].number == back_at_front(dance)
    assert FRONT not in [wall.ends_facing for wall in walls[:-1]]


@given(danceable(), st.integers(1, 6), st.integers(1, 7), EIGHTHS)
def test_every_wall_begins_as_the_one_before_ended(
    dance: Dance, number: int, after_counts: int, turn: Fraction
) -> None:
    """Facing, weight and counts run on through restarts and tags without a break."""
    tag = Part("tag", _walks(2, turns={1: str(turn)}).sections)
    changed = replace(dance, restarts=(Restart(number, Fraction(after_counts)),), tags=(Tag(number, tag),))
    walls = unroll(changed, walls=7)

    for before, after in pairwise(walls):
        assert before.ends_facing == after.starts_facing
        assert before.ends_weight is after.starts_weight
        assert before.begins_after + before.counts == after.begins_after
    assert sum(wall.counts for wall in walls) == 7 * 8 - (8 - after_counts) + 2
    for wall in walls:
        events = list(events_of(wall))
        assert not events or events[-1].facing == wall.ends_facing


@settings(max_examples=25)
@given(dances)
def test_any_dance_unrolls(dance: Dance) -> None:
    """However strange the dance, unrolling ends and raises nothing."""
    walls = unroll(dance, ending=True)

    assert all(wall.number <= LONGEST + 720 for wall in walls)
    assert wall_count(dance) >= 1
