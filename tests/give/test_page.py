"""The page: whole, readable, self-contained, and the same every time."""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from playwright.sync_api import Browser, Page, sync_playwright
from tests.strategies import dances

from wallwise.dance.finding import Finding, Mend, Severity
from wallwise.dance.model import Dance, Foot, Kind, Part, Section, Span, Step
from wallwise.floor.trace import trace_part
from wallwise.give.page import page
from wallwise.give.words import action
from wallwise.song.danced import lay
from wallwise.song.grid import BeatGrid

CHROMIUM = next(filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome"))), None)
FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
VOID = {"meta", "br", "col"}
WARNING = Finding(
    "facing-differs",
    Severity.WARNING,
    Span(0, 4),
    "Count 6: the sheet says 9:00 & the steps before it end facing 6:00.",
    1,
    "6",
    (Mend(Span(0, 4), "6:00", "write 6:00 for <9:00>"),),
)


class Outline(HTMLParser):
    """The tags of a page, every one closed in its turn."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.feed(html)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


def test_every_tag_is_closed_and_nothing_comes_from_elsewhere(ladder: Dance) -> None:
    """The page is well formed and asks for no other file, script or address."""
    html = page(ladder, findings=[(14, WARNING)])
    outline = Outline(html)
    assert outline.open == []
    assert not [tag for tag, _ in outline.tags if tag in ("script", "link", "img", "iframe", "object")]
    assert not [a for _, a in outline.tags if a.keys() & {"src", "href", "srcset"}]
    assert not re.search(r"url\(|@import", html)


def test_the_same_dance_gives_the_same_bytes(ladder: Dance) -> None:
    """A page holds no time, no path and no order that changes."""
    assert page(ladder) == page(ladder)


def test_every_event_has_its_row(ladder: Dance) -> None:
    """Each count's words stand in the table with its facing, and each row has its drawing."""
    html = page(ladder)
    rows = trace_part(ladder.parts[0]).rows
    for row in rows:
        assert action(row.step) in html
    tables = html[html.index('<section class="counts">') :]
    assert tables.count("<svg") == len(rows) + len(ladder.tags[0].part.steps)


def test_what_the_sheet_says_is_text_and_never_markup(ladder: Dance) -> None:
    """Angle brackets and ampersands of a sheet come out as they were written."""
    html = page(ladder, findings=[(14, WARNING)])
    assert "VINE &lt;LEFT&gt; &amp; MONTEREY" in html
    assert "write 6:00 for &lt;9:00&gt;" in html
    assert "line 14 of the sheet" in html


def test_turns_carry_their_caution(ladder: Dance) -> None:
    """A dance with half turns says what to mind; one without still defers to the hall's rules."""
    sections = ladder.parts[0].sections
    still = tuple(
        replace(s, steps=tuple(replace(step, turn=Fraction(0)) for step in s.steps)) for s in sections
    )
    calm = replace(ladder, parts=(replace(ladder.parts[0], sections=still),))
    assert "twists the knee" in page(ladder)
    assert "twists the knee" not in page(calm)
    assert "The hall's own rules and local codes come first" in page(calm).replace("&#39;", "'")


def test_a_dance_without_steps_has_a_page() -> None:
    """Even an empty dance gives a page that says so."""
    assert Outline(page(Dance("", ()))).open == []


@given(dances)
def test_any_dance_has_a_page(dance: Dance) -> None:
    """Sound or not, whatever its restarts, tags and options, a dance gives a well-formed page."""
    html = page(dance)
    assert Outline(html).open == []
    assert html.count("<tbody>") >= sum(len(part.sections) for part in dance.parts)


def luminance(colour: str) -> float:
    """Relative luminance after WCAG 2.2, "relative luminance"."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def test_colours_can_be_told_apart(ladder: Dance) -> None:
    """Text stands out from white by 4.5 to 1 and lines by 3 to 1 (WCAG 2.2, 1.4.3 and 1.4.11)."""
    html = page(ladder)
    for text in set(re.findall(r"[; {]color: (#\w{6})", html)) - {"#ffffff"}:
        assert 1.05 / (luminance(text) + 0.05) >= 4.5, text
    for line in set(re.findall(r'stroke="(#\w{6})"', html)) | set(
        re.findall(r"border[\w-]*:[^;]*(#\w{6})", html)
    ):
        assert 1.05 / (luminance(line) + 0.05) >= 3, line


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """A headless Chromium of this machine."""
    assert CHROMIUM, "install chromium: the page has to be seen in a real browser"
    with sync_playwright() as play:
        opened = play.chromium.launch(executable_path=CHROMIUM, args=list(FLAGS))
        yield opened
        opened.close()


@pytest.fixture
def shown(browser: Browser, ladder: Dance, tmp_path: Path) -> Iterator[Page]:
    """The page opened from a file, offline, anything it asks for refused."""
    path = tmp_path / "page.html"
    path.write_text(page(ladder, findings=[(14, WARNING)]), encoding="utf-8")
    context = browser.new_context(offline=True, viewport={"width": 1000, "height": 800})
    tab = context.new_page()
    tab.goto(path.as_uri())
    yield tab
    context.close()


def numbers(shown: Page, script: str) -> Any:
    """What the script finds on the page."""
    return shown.evaluate(script)


def test_the_browser_shows_large_type_and_no_sideways_scrolling(shown: Page) -> None:
    """No words under 18 pixels, and the page fits its window."""
    smallest = numbers(
        shown,
        """() => Math.min(...[...document.querySelectorAll('body *')]
        .filter(e => !e.closest('svg') && [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim()))
        .map(e => parseFloat(getComputedStyle(e).fontSize)))""",
    )
    assert smallest >= 18
    assert numbers(shown, "document.documentElement.scrollWidth <= innerWidth")


def test_a_narrow_screen_scrolls_only_its_tables(shown: Page) -> None:
    """At the width of a telephone the text wraps and a table scrolls in its own box."""
    shown.set_viewport_size({"width": 360, "height": 700})
    assert numbers(shown, "document.documentElement.scrollWidth <= innerWidth")


def test_the_page_has_headings_and_tables_that_can_be_read_aloud(shown: Page) -> None:
    """One first heading, a name and headed columns for every table, each row headed by its count."""
    assert shown.locator("h1").count() == 1
    tables = shown.locator("table")
    assert tables.count() == 3
    for index in range(tables.count()):
        table = tables.nth(index)
        assert table.locator('thead th[scope="col"]').count() == 6
        name = table.get_attribute("aria-labelledby")
        assert "counts" in shown.locator(f"#{name}").inner_text()
        assert table.locator('tbody th[scope="row"]').count() == table.locator("tbody tr").count()
    assert numbers(shown, "[...document.querySelectorAll('svg')].every(s => s.ariaHidden === 'true')")


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_print_cuts_no_row(shown: Page, tmp_path: Path, paper: str) -> None:
    """On paper each table row is whole: its words and its count are on one sheet of paper."""
    import pypdf

    path = tmp_path / "page.pdf"
    shown.pdf(path=path, format=paper, prefer_css_page_size=False)
    pages = [p.extract_text() for p in pypdf.PdfReader(path).pages]
    assert 2 <= len(pages) <= 5
    assert (
        sum("Step left foot behind" in text or "Step right foot behind the left" in text for text in pages)
        == 1
    )
    assert all(text.strip() for text in pages)
    assert numbers(shown, "matchMedia('screen').matches")
    shown.emulate_media(media="print")
    styles = "[...document.querySelectorAll('tr')].map(r => getComputedStyle(r).breakInside)"
    assert set(numbers(shown, styles)) == {"avoid"}


@pytest.mark.parametrize(("length_sec", "ends"), [(40.2, "0:40"), (33.2, "0:33")])
def test_on_a_song_the_walls_are_those_of_the_song(length_sec: float, ends: str) -> None:
    """Each has the time it starts at, the last one ends with the song, and without a song none has a time."""
    turn = Step(Fraction(1), Foot.RIGHT, Kind.STEP, turn=Fraction(1, 2))
    dance = Dance("Half", (Part("main", (Section(1, Fraction(1), Fraction(32), (turn,)),)),))
    told = page(dance, danced=lay(dance, BeatGrid.steady_at(120, length_sec=length_sec)))
    assert ["at 0:00", "at 0:16", "at 0:32"] == re.findall(r"<span>(at \d:\d\d)</span>", told)
    assert f"The song ends at {ends}, the room facing 6:00." in told
    assert 1 == told.count("then the song ends")
    assert "The song ends" not in page(dance)
