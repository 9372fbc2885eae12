"""K keeps a revision in a line at the Wall's foot; a plain layout gets a job file by it."""

import pytest
from PySide6.QtCore import QPointF
from tests.build import gear
from tests.window.hands import CTRL
from tests.window.keeping.bench import in_file, job_file, shelf, small, state, window_on

from bayboard.model.write import write


@pytest.fixture
def van(tmp_path):
    return job_file(tmp_path / "van.bay", ("first", "second"))


@pytest.fixture
def hands(open_window, van):
    return window_on(open_window, van)


def notes(hands):
    return [revision.note for revision in hands.place.job.revisions()]


@pytest.mark.parametrize("key", [("K",), ("S", CTRL)])
def test_a_note_is_asked_for_in_a_line_and_enter_keeps(hands, key):
    hands.drag_mm((201, 200), (300, 200))
    assert state(hands) == "draft after revision 2"
    hands.key(*key)
    line = hands.window.note_line
    assert line.isVisible()
    assert line.field.hasFocus()
    assert line.button.text() == "Keep as revision 3"
    hands.type("wired, K drawn")  # letters are letters here
    hands.key("Return")
    assert not line.isVisible()
    assert notes(hands) == ["first", "second", "wired, K drawn"]
    assert hands.line() == "Kept as revision 3."
    assert state(hands) == "revision 3"
    assert hands.wall.hasFocus()


@pytest.mark.parametrize("end", ["Return", "Escape"])
def test_what_is_selected_stays_selected_when_the_line_goes(open_window, tmp_path, end):
    two = [gear("A", 200, 200), gear("B", 700, 200)]
    hands = window_on(open_window, job_file(tmp_path / "van.bay", gear=two))
    hands.click_mm(700, 200)
    cut = hands.place.chalk_x
    hands.key("K")
    hands.key(end)
    assert hands.place.selected == ("B",) and hands.place.chalk_x == cut
    assert hands.wall.hasFocus()


def test_an_empty_note_is_allowed(hands):
    hands.drag_mm((201, 200), (300, 200))
    hands.key("K")
    hands.key("Return")
    assert notes(hands)[-1] == ""
    assert hands.place.job.revision(3) == hands.layout


def test_the_mouse_keeps_and_leaves_too(hands):
    hands.key("K")
    line = hands.window.note_line
    hands.click(line.leave.mapTo(hands.window, QPointF(line.leave.rect().center())))
    assert not line.isVisible()
    hands.key("K")
    hands.click(line.button.mapTo(hands.window, QPointF(line.button.rect().center())))
    assert len(notes(hands)) == 3


def test_escape_leaves_with_nothing_kept(hands):
    hands.key("K")
    hands.type("not this")
    hands.key("Escape")
    assert not hands.window.note_line.isVisible()
    assert notes(hands) == ["first", "second"]
    assert hands.wall.hasFocus()
    hands.key("K")
    assert hands.window.note_line.field.text() == ""


def test_escape_leaves_it_from_the_wall_as_well(hands):
    hands.key("K")
    hands.click_mm(500, 300)
    hands.key("Escape")
    assert not hands.window.note_line.isVisible()


def test_with_nothing_changed_it_says_so_and_keeps_all_the_same(hands):
    hands.key("K")
    assert "Nothing changed since revision 2" in hands.window.note_line.helper
    hands.key("Return")
    assert len(notes(hands)) == 3


def test_keeping_leaves_undo_as_it_was(hands):
    hands.drag_mm((201, 200), (300, 200))
    moved = hands.layout
    hands.key("K")
    hands.key("Return")
    hands.key("Z", CTRL)
    assert hands.layout != moved
    assert state(hands) == "draft after revision 3"
    hands.key("Y", CTRL)
    assert hands.layout == moved
    assert state(hands) == "revision 3"


def test_going_to_another_stage_leaves_the_line(hands):
    from bayboard.window.stages import Panes, Stage

    hands.window.add_stage(Panes(Stage("Other", 0)), lath=False)
    hands.key("K")
    hands.window.show_stage("Other")
    assert not hands.window.note_line.isVisible()


def test_a_revision_that_cannot_be_written_is_told(hands):
    connection = hands.place.job.file._base.conn
    pages = connection.execute("PRAGMA page_count").fetchone()[0]
    connection.execute(f"PRAGMA max_page_count = {pages}")
    for _ in range(4):
        hands.key("K")
        hands.type("a long note " * 20)
        hands.key("Return")
        if hands.window.notice.isVisible():
            break
    assert "the disk is full" in hands.window.notice.text
    assert hands.place.job.layout == hands.layout


# --- a plain layout ---


@pytest.fixture
def plain(open_window, tmp_path):
    path = tmp_path / "crew pickup.json"
    path.write_text(write(small()), encoding="utf-8")
    hands = window_on(open_window, path)
    hands.json = path
    return hands


def test_k_makes_a_job_file_beside_a_plain_layout_and_goes_on_in_it(plain):
    before = plain.json.read_text(encoding="utf-8")
    plain.drag_mm((200, 200), (300, 200))
    plain.key("K")
    assert "crew pickup.bay" in plain.window.note_line.helper
    plain.type("mock-up")
    plain.key("Return")
    path = plain.json.with_suffix(".bay")
    assert plain.place.job.path == path
    assert notes(plain) == ["mock-up"]
    assert in_file(path) == plain.layout
    assert plain.line() == (
        "Kept as revision 1 in crew pickup.bay. Work goes on there; crew pickup.json stays as it was saved."
    )
    assert plain.json.read_text(encoding="utf-8") == before
    plain.key("Z", CTRL)
    assert plain.gear("A").at == (200, 200)


def test_control_s_saves_a_plain_layout_and_makes_no_job_file(plain):
    plain.drag_mm((200, 200), (300, 200))
    plain.key("S", CTRL)
    assert plain.json.read_text(encoding="utf-8") == write(plain.layout)
    assert not plain.json.with_suffix(".bay").exists()
    assert not plain.window.note_line.isVisible()


def test_a_job_file_that_is_there_already_is_left_alone(plain):
    there = job_file(plain.json.with_suffix(".bay"))
    before = there.read_bytes()
    plain.key("K")
    plain.key("Return")
    assert plain.place.job.path == plain.json.with_name("crew pickup-2.bay")
    assert there.read_bytes() == before


def test_where_nothing_can_be_made_beside_it_the_shelf_takes_it(plain, monkeypatch):
    from bayboard.model.refused import Refused

    house = plain.place.job.house

    def only_on_the_shelf(path):
        if path.parent == plain.json.parent:
            raise Refused(str(path), "nothing may be written there", "Save in another folder")
        house(path)

    monkeypatch.setattr(plain.place.job, "house", only_on_the_shelf)
    plain.key("K")
    plain.key("Return")
    assert shelf() == [plain.place.job.path]
    assert notes(plain) == [""]


def test_k_gives_a_vehicle_without_a_file_one(open_window):
    hands = open_window(small())
    hands.key("K")
    hands.key("Return")
    assert shelf() == [hands.place.job.path]
    assert notes(hands) == [""]


def test_with_nothing_open_there_is_nothing_to_keep(open_window):
    hands = open_window(first_start=True)
    hands.key("K")
    assert not hands.window.note_line.isVisible()
    assert "Nothing is open" in hands.line()


def test_on_drill_day_the_line_lies_over_the_list(hands):
    from bayboard.window.drill_day.stage import add_drill_day

    day = add_drill_day(hands.window)
    hands.window.show_stage("Drill day")
    hands.key("K")
    line = hands.window.note_line
    assert hands.window.childAt(line.geometry().center()) in (line, line.field)
    hands.type("six holes made")
    hands.key("Return")
    assert notes(hands)[-1] == "six holes made"
    assert day.view.hasFocus()
    hands.window.leave_mode()


def test_going_back_is_told_by_the_strip_and_undone(hands):
    hands.place.job.restore(1)
    hands.app.processEvents()
    assert state(hands) == "revision 1"
    hands.key("Z", CTRL)
    assert state(hands) == "revision 2"
    hands.window.files.keeper.write()
    assert in_file(hands.place.job.path) == hands.layout
