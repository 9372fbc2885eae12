"""What Kept says, as tables: ways, turns, rows, findings, dates, cards, going back."""

from copy import deepcopy
from datetime import UTC, datetime, timedelta, timezone

import pytest
from tests.build import card, document, gear, layout, rectangle

from bayboard.edits.drill_hole import DrillHole
from bayboard.edits.move_gear import MoveGear
from bayboard.job.member_words import limit_change, member_change
from bayboard.job.row_words import (
    LOOKING,
    NOTHING,
    Rows,
    findings_words,
    moved_words,
    turn_words,
    way_words,
)
from bayboard.model.compare import Moved, compare
from bayboard.model.layout import Layout
from bayboard.model.read import from_document
from bayboard.rules.check import Verdict
from bayboard.rules.finding import Finding, Unchecked
from bayboard.store.job_file import PrintLine, Revision
from bayboard.window import lettering
from bayboard.window.compare import words
from bayboard.window.compare.stage import KEYS
from bayboard.window.note import quoted
from bayboard.window.when import day_words, moment_words

INCH = 25.4
CARDS = {"box": card(screws=[{"at": [40, 20], "thread": "M5"}]), "slab": card(200, 100, 40, name="Slab")}
FIXINGS = [{"id": f"H{n}", "at": [50 * n, 20], "thread": "M6"} for n in (1, 2, 3, 4)]
LEADS = [{"id": "C1", "from": "BAT", "to": "CH", "size": "4 AWG"}]
ENTRIES = [
    {"id": "BAT", "name": "battery", "at": [10, 10], "carries": ["power"], "run": 300, "to": "battery"},
    {"id": "CH", "name": "chassis", "at": [90, 10], "carries": ["power"], "run": 300, "to": "chassis"},
]
PLAIN = {
    "cards": CARDS,
    "gear": [gear("A1", 200, 150), gear("A2", 600, 150, "slab")],
    "fixings": FIXINGS,
    "leads": LEADS,
    "bay": {"entries": ENTRIES},
}


def base(units: str = "in") -> Layout:
    return layout(units=units, **deepcopy(PLAIN))


def changed(change, units: str = "in") -> Layout:
    """Return the base with its document changed by a function."""
    doc = document(units=units, **deepcopy(PLAIN))
    change(doc)
    return from_document(doc)


def rows(new: Layout, old: Layout | None = None) -> dict[str, str]:
    old = old or base(new.units)
    return {row.label: row.words for row in Rows(old, new, compare(old, new)).all()}


WAYS = [
    ((1.75 * INCH, 4.125 * INCH), "in", "right 1 3/4, up 4 1/8 in"),
    ((-0.6875 * INCH, 0.0), "in", "left 11/16 in"),
    ((0.0, -55.5625), "in", "down 2 3/16 in"),
    ((12.5, -3.0), "mm", "right 12.5, down 3 mm"),
    ((12.5, -0.01), "mm", "right 12.5 mm"),
    ((0.0, 0.01), "mm", "up less than 0.1 mm"),
    ((-0.01, 0.0), "in", "left less than 1/64 in"),
]


@pytest.mark.parametrize(("by", "units", "said"), WAYS)
def test_a_way_is_said_by_its_sides_with_the_unit_once(by, units, said):
    assert way_words(by, units) == said


@pytest.mark.parametrize(
    ("turned", "said"),
    [(90.0, "turned 90° left"), (-45.5, "turned 45.5° right"), (180.0, "turned 180°")],
)
def test_a_turn_is_said_by_its_side(turned, said):
    assert turn_words(turned) == said


def test_a_move_with_a_turn_is_one_line():
    assert moved_words(Moved("A1", (25.4, 0.0), 90.0), "in") == "right 1 in, turned 90° left"
    assert moved_words(Moved("A1", (0.0, 0.0), -90.0), "in") == "turned 90° right"


def _set(*path, to):
    """Return a change of a document: the member at a path is set."""

    def change(doc):
        here = doc
        for step in path[:-1]:
            here = here[step]
        here[path[-1]] = to

    return change


ROWS = [
    (_set("gear", 0, "at", to=[225.4, 175.4]), "A1", "moved right 1, up 1 in"),
    (_set("gear", 0, "turn", to=90), "A1", "turned 90° left"),
    (_set("gear", 0, "at", to=None), "A1", "back to the bench"),
    (_set("gear", 0, "taped", to=True), "A1", "taped down"),
    (_set("gear", 0, "lift", to=12.7), "A1", "lift 1/2 in, was 0 in"),
    (_set("gear", 0, "card", to="slab"), "A1", "is a Slab, was a Plain box"),
    (lambda doc: doc["gear"].append(gear("A3", 800, 300)), "A3", "is new"),
    (
        lambda doc: doc["gear"].append({"id": "A3", "card": "box", "at": None}),
        "A3",
        "is new, on the bench",
    ),
    (lambda doc: doc["gear"].pop(0), "A1", "went"),
    (_set("cards", "slab", "height", to=57.15), "Slab", "changed: height 2 1/4 in, was 1 37/64 in"),
    (_set("cards", "slab", "mass", to=None), "Slab", "changed: mass not measured, was 2.2 lb"),
    (
        _set("cards", "slab", "screws", to=[{"at": [0, 0], "thread": "M5"}]),
        "Slab",
        "changed: screws 1, was 0",
    ),
    (_set("leads", 0, "size", to="8 AWG"), "C1", "changed: size 8 AWG, was 4 AWG"),
    (_set("leads", 0, "via", to=[[50, 50]]), "C1", "changed: way"),
    (lambda doc: doc["leads"].pop(), "C1", "went"),
    (_set("boards", 0, "thickness", to=12.7), "BD", "changed: thickness 1/2 in, was 25/64 in"),
    (_set("boards", 0, "outline", to=rectangle(0, 0, 1000, 390)), "BD", "changed: outline"),
    (_set("boards", 0, "outline", to=rectangle(25.4, 0, 1025.4, 400)), "BD", "moved right 1 in"),
    (_set("bay", "wall", to=rectangle(-100, -100, 1100, 600)), "Wall", "outline changed"),
    (_set("bay", "tape", to=6.35), "Bay", "tape 1/4 in, was 1/8 in"),
    (_set("bay", "entries", 0, "run", to=None), "BAT", "changed: run not measured, was 11 13/16 in"),
    (_set("vehicle", "name", to="Other"), "Vehicle", "name Other, was Plain bay"),
    (_set("limits", to={"gap_must": 12.7}), "Limits", "gap must 1/2 in, was 15/64 in as usual"),
    (_set("x", to={"other": 1}), "Extras", "what other programs keep here changed"),
    (_set("fixings", 0, "at", to=[60, 20]), "Holes", "H1 moved"),
    (lambda doc: doc["fixings"].pop(), "Holes", "H4 went"),
    (_set("fixings", 1, "thread", to="M8"), "Holes", "H2: thread M8, was M6"),
    (_set("fixings", 1, "taped", to=True), "Holes", "H2 taped"),
    (
        _set("fixings", 1, "metal", to=[100, 20]),
        "Holes",
        "H2 was drilled in the metal",
    ),
]


@pytest.mark.parametrize(("change", "label", "said"), ROWS)
def test_each_thing_that_differs_has_a_row_in_plain_words(change, label, said):
    told = rows(changed(change))
    assert told[label] == said
    assert len(told) == 1


def test_what_came_up_from_the_bench_is_said_so():
    benched = changed(_set("gear", 0, "at", to=None))
    assert rows(base(), benched) == {"A1": "came up from the bench"}


def test_what_moves_on_drilled_holes_is_said_so():
    drilled = DrillHole("A1#1").apply(base())
    moved = MoveGear(("A1",), INCH, 0.0).apply(drilled)
    assert rows(moved, drilled)["A1"] == "moved right 1 in; its holes are drilled already"


def test_holes_are_told_in_one_row():
    drilled = DrillHole("H4").apply(DrillHole("H3").apply(base()))
    old = drilled
    new = from_document(_moved_fixings(old))
    assert rows(new, old)["Holes"] == "H1 and H2 moved; 2 are drilled and did not"


def _moved_fixings(old):
    import json

    from bayboard.model.write import write

    doc = json.loads(write(old))
    for fixing in doc["fixings"][:2]:
        fixing["at"] = [fixing["at"][0], fixing["at"][1] + 10]
    return doc


def test_many_holes_are_counted():
    many = [{"id": f"H{n}", "at": [50 * n, 20], "thread": "M6"} for n in range(1, 8)]
    higher = [fixing | {"at": [fixing["at"][0], 30]} for fixing in many]
    old, new = layout(fixings=many), layout(fixings=higher)
    assert rows(new, old)["Holes"] == "7 of them moved"


def test_drilling_is_told_of_fixings_and_screws():
    new = DrillHole("A1#1").apply(DrillHole("H3").apply(base()))
    told = rows(new)
    assert told["Holes"] == "H3 and A1#1 were drilled since"
    assert told["A1"] == "its holes were drilled"


def test_going_back_in_time_holes_are_not_drilled():
    drilled = DrillHole("H4").apply(DrillHole("H3").apply(base()))
    assert rows(base(), drilled) == {"Holes": "H3 and H4 are not drilled"}


def test_nothing_changed_is_said_once():
    assert rows(base()) == {"": NOTHING}


def _finding(severity, name):
    return Finding(
        rule="gap",
        severity=severity,
        subjects=(name,),
        measure=1.0,
        limit=6.0,
        unit="mm",
        at=None,
        says="It is near.",
    )


def _verdict(*severities, blind=0):
    found = tuple(_finding(severity, f"A{n}") for n, severity in enumerate(severities))
    return Verdict(found, tuple(Unchecked(rule="gap", subjects=(f"B{n}",), says="?") for n in range(blind)))


FOUND = [
    (_verdict("should", blind=9), _verdict(blind=9), "1 should then, none now; 9 could not look"),
    (_verdict(), _verdict(), "none, as then"),
    (_verdict("must"), _verdict("must"), "1 must, as then"),
    (
        _verdict("must", "should", "note", "note"),
        _verdict("should", blind=2),
        "1 must, 1 should, 2 notes then; 1 should now; 2 could not look, none then",
    ),
    (_verdict(blind=1), _verdict("must"), "none then, 1 must now; none could not look, 1 then"),
    (None, _verdict("must"), LOOKING),
]


@pytest.mark.parametrize(("then", "now", "said"), FOUND)
def test_findings_are_counted_then_and_now(then, now, said):
    assert findings_words(then, now) == said


MEMBERS = [
    ("height", 50.0, 57.15, "in", "height 2 1/4 in, was 1 31/32 in"),
    ("height", 50.0, 50.001, "in", "height 1.96854 in, was 1.9685 in"),
    ("height", None, 50.0, "mm", "height 50 mm, was not measured"),
    ("heat", 41.0, 62.5, "mm", "heat 62.5 W, was 41 W"),
    ("fuse", None, 80.0, "mm", "fuse 80 A, was not measured"),
    ("material", "hdpe", "abs", "mm", "material abs, was hdpe"),
    ("size", None, "4 AWG", "mm", "size 4 AWG, was none"),
    ("lean", 0.0, 12.5, "mm", "lean 12.5°, was 0°"),
    ("outline", [[0, 0]], [[1, 1]], "mm", "outline changed"),
    ("new_member", 1, 2, "mm", "new member changed"),
]


@pytest.mark.parametrize(("member", "before", "after", "units", "said"), MEMBERS)
def test_a_member_is_read_out_in_its_unit(member, before, after, units, said):
    assert member_change(member, before, after, units) == said


def test_a_limit_that_goes_back_reads_its_usual_value():
    assert limit_change("gap_must", 8.0, None, "mm") == "gap must 6 mm, was 8 mm"
    assert limit_change("sight_angle", None, 45.0, "mm") == "sight angle 45°, was 60° as usual"
    assert limit_change("edge_d", None, 2.0, "mm") == "edge d 2 x drill, was 1.5 x drill as usual"


# --- dates and cards ---

EAST = timezone(timedelta(hours=10))
NOW = datetime(2026, 11, 25, 20, 0, tzinfo=EAST)
DAYS = [
    ("2026-11-25T04:20:00Z", "14:20"),
    ("2026-11-24T15:20:00Z", "01:20"),  # the 25th in the east already
    ("2026-11-24T13:20:00Z", "24 Nov"),
    ("2026-02-03T00:00:00Z", "3 Feb"),
    ("2024-11-04T00:00:00Z", "Nov 2024"),
    ("nonsense", ""),
]


@pytest.mark.parametrize(("stored", "said"), DAYS)
def test_a_day_is_said_as_short_as_it_can_be_here(stored, said):
    assert day_words(stored, NOW, EAST) == said


def test_a_moment_is_said_in_full():
    assert moment_words("2026-11-04T15:43:41Z", UTC) == "4 Nov 2026, 15:43"


FEET = [(False, 0, ""), (True, 0, "printed"), (False, 2, "2 drilled"), (True, 1, "printed, 1 drilled")]


@pytest.mark.parametrize(("printed", "drilled", "said"), FEET)
def test_a_card_says_what_was_printed_and_drilled(printed, drilled, said):
    assert words.foot_words(printed, drilled) == said


def test_drilled_holes_are_counted_once():
    made = DrillHole("A1#1").apply(DrillHole("H3").apply(base()))
    assert words.drilled_count(base()) == 0
    assert words.drilled_count(made) == 2


PHRASES = [
    (4, words.DRAFT, "the draft; revision 4 shows as chalk"),
    (words.DRAFT, 4, "revision 4; the draft shows as chalk"),
    (None, words.DRAFT, "the draft; nothing else is kept yet"),
]


@pytest.mark.parametrize(("then", "now", "said"), PHRASES)
def test_the_wall_says_which_is_chalk(then, now, said):
    assert words.wall_phrases(then, now)[0] == said


def test_the_middle_says_from_which_to_which():
    assert words.pair_words(4, words.DRAFT) == "revision 4 to the draft"


BACK = [
    (None, 7, False, "Going back keeps today's draft as revision 7, so nothing is lost."),
    (6, 7, False, "The draft is kept already as revision 6, so nothing is lost."),
    (
        None,
        7,
        True,
        "Going back keeps today's draft as revision 7, so nothing is lost. What is drilled stays drilled.",
    ),
]


@pytest.mark.parametrize(("kept_as", "coming", "drilled", "said"), BACK)
def test_going_back_says_what_becomes_of_the_draft(kept_as, coming, drilled, said):
    assert words.back_words(kept_as, coming, drilled) == said


def test_a_print_is_told_with_its_day_sheets_pages_and_code():
    line = PrintLine(
        number=1,
        at="2026-11-05T10:12:00Z",
        revision="4",
        paper="letter",
        face="back",
        sheets=("drill",),
        words="walnut harbour",
        pages=1,
    )
    said = "Printed 5 Nov 2026, 10:12: drill template, 1 page of letter, from the back, walnut harbour."
    assert words.print_words(line, UTC) == said


def test_what_a_revision_went_on_from_is_told_where_it_is_not_the_one_before():
    revision = Revision(number=5, parent=2, kept="", note="", sha256="")
    assert words.parent_words(revision, 4) == "Goes on from revision 2."
    assert words.parent_words(revision, 2) == ""


def test_every_word_can_be_lettered(qapp):
    told = [said for *_, said in (*WAYS, *ROWS, *FOUND, *MEMBERS, *DAYS, *PHRASES, *BACK)]
    told += [text for pair in KEYS for text in pair]
    told += [quoted("note"), words.EMPTY, words.CHOOSE, words.ONLY_LOOKED_AT, words.PLAIN_FILE]
    told += [words.strip_words(4, words.DRAFT), "then →", "← now", "Save revision 4 as a file of its own…"]
    assert lettering.missing("".join(told)) == ""
