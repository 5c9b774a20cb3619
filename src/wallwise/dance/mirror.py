"""The same dance on the other foot: left for right, right for left."""

from dataclasses import replace

from wallwise.dance.model import Dance, Option, Part, Restart, Section, Step, Tag


def mirror_step(step: Step) -> Step:
    """`step` on the other foot, turning the other way."""
    return replace(
        step,
        foot=step.foot.other,
        turn=-step.turn,
        toward=step.toward.other if step.toward else None,
        ends_on=step.ends_on.other if step.ends_on else None,
        also=tuple(_mirror_words(words) for words in step.also),
    )


def mirror(dance: Dance) -> Dance:
    """The dance seen in a looking glass; mirroring twice gives the dance back."""
    return replace(
        dance,
        parts=tuple(mirror_part(p) for p in dance.parts),
        starts_on=dance.starts_on.other,
        restarts=tuple(_mirror_restart(r) for r in dance.restarts),
        tags=tuple(_mirror_tag(t) for t in dance.tags),
        ending=mirror_part(dance.ending) if dance.ending else None,
        options=tuple(_mirror_option(o) for o in dance.options),
    )


def mirror_part(part: Part) -> Part:
    """Every section of `part` on the other foot."""
    return replace(part, sections=tuple(_mirror_section(s) for s in part.sections))


def _mirror_section(section: Section) -> Section:
    return replace(section, steps=tuple(mirror_step(s) for s in section.steps))


def _mirror_restart(restart: Restart) -> Restart:
    return replace(restart, change=tuple(mirror_step(s) for s in restart.change))


def _mirror_tag(tag: Tag) -> Tag:
    return replace(tag, part=mirror_part(tag.part))


def _mirror_option(option: Option) -> Option:
    return replace(option, steps=tuple(mirror_step(s) for s in option.steps))


def _mirror_words(words: str) -> str:
    swap = {"L": "R", "R": "L", "left": "right", "right": "left"}
    return " ".join(swap.get(word, word) for word in words.split(" "))
