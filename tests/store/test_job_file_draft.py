"""The draft: every write reaches the file, with what belongs to it."""

import sqlite3

import pytest
from tests.model.rich import rich
from tests.store.bench import JPEG, PLAIN, PNG, asked, moved, names, refusal, write_moves

from bayboard.model.read import from_document
from bayboard.store.job_file import PrintLine, make_job_file, open_job_file

LINE = PrintLine(revision="1", paper="a4", face="front", sheets=("drill", "cards"), words="oak tin", pages=7)


@pytest.fixture
def file(tmp_path):
    with make_job_file(tmp_path / "van.bay", PLAIN) as made:
        yield made


def test_a_new_file_holds_the_layout_and_nothing_kept(file):
    draft = file.draft()
    assert (draft.layout, draft.parent, draft.at) == (PLAIN, None, 1)
    assert [(mark.number, mark.label) for mark in draft.states] == [(1, "")]
    assert file.revisions() == ()


def test_a_layout_with_everything_in_it_comes_back_the_same(tmp_path):
    whole = from_document(rich())
    make_job_file(tmp_path / "rich.bay", whole).close()
    with open_job_file(tmp_path / "rich.bay") as file:
        assert file.draft().layout == whole


def test_what_was_written_is_there_when_the_file_is_opened_again(file):
    write_moves(file, 3)
    file.close()
    with open_job_file(file.path) as again:
        draft = again.draft()
        assert draft.layout == moved(3)
        assert [mark.label for mark in draft.states] == ["", "Move 1", "Move 2", "Move 3"]
        assert [again.state(mark.number) for mark in draft.states] == [moved(n) for n in range(4)]


def test_undo_moves_along_the_steps_and_keeps_them(file):
    write_moves(file, 3)
    file.write(moved(1), upto=4, add=(), at=2)
    draft = file.draft()
    assert (draft.layout, draft.at, len(draft.states)) == (moved(1), 2, 4)


def test_an_edit_after_undo_drops_what_was_undone(file):
    write_moves(file, 3)
    file.write(moved(9), upto=2, add=[("Move 9", moved(9))], at=3)
    assert [mark.label for mark in file.draft().states] == ["", "Move 1", "Move 9"]


def test_a_write_may_replace_the_last_step(file):
    write_moves(file, 2)
    file.write(moved(5), upto=2, add=[("Move 5", moved(5))], at=3)
    assert [file.state(mark.number) for mark in file.draft().states] == [PLAIN, moved(1), moved(5)]


def test_a_write_that_stands_at_no_step_is_a_mistake_and_writes_nothing(file):
    with pytest.raises(ValueError, match="no step 7"):
        file.write(moved(1), upto=1, add=(), at=7)
    assert file.draft().layout == PLAIN


def test_a_write_keeps_parent_and_picture_unless_told_others(file):
    file.write(moved(1), upto=1, add=[("Move", moved(1))], at=2, picture=PNG)
    file.keep("first")
    write_moves(file, 1, 2)
    file.keep("second")
    assert file.draft().parent == 2
    assert file.picture(2) == PNG
    file.write(moved(1), upto=3, add=(), at=2, parent=1)
    assert file.draft().parent == 1


def test_the_hash_is_that_of_the_normal_form(file):
    (row,) = asked(file.path, "SELECT sha256, layout FROM draft")
    assert file.draft().sha256 == row[0]


def test_a_vehicle_renamed_is_known_by_its_new_name(file):
    renamed = from_document(rich())
    file.write(renamed, upto=1, add=[("Rename", renamed)], at=2)
    assert file.meta("vehicle") == renamed.vehicle.name


def test_a_print_is_logged_with_the_draft_that_knows_of_it(file):
    file.keep("as printed")
    file.log_print(LINE, moved(1))
    (line,) = file.prints()
    assert (line.number, line.sheets, line.words, line.pages) == (1, ("drill", "cards"), "oak tin", 7)
    assert line.at.endswith("Z")
    assert (file.draft().layout, file.draft().parent, file.draft().at) == (moved(1), 1, 1)


def test_small_values_are_stored_under_names(file):
    assert file.meta("view") is None
    file.set_meta("view", {"zoom": 1.5, "middle": [1, 2], "name": "größer"})
    file.close()
    with open_job_file(file.path) as again:
        assert again.meta("view") == {"zoom": 1.5, "middle": [1, 2], "name": "größer"}


def test_a_file_that_is_only_looked_at_is_not_written(file):
    file.close()
    before = file.path.read_bytes()
    with open_job_file(file.path, look=True) as looked:
        assert "only looked at" in str(refusal(looked.keep, "no"))
        assert "only looked at" in str(refusal(looked.set_meta, "view", 1))
        assert looked.check_whole() == ()
    assert file.path.read_bytes() == before


def test_a_file_that_was_closed_is_used_no_more(file):
    file.close()
    with pytest.raises(sqlite3.ProgrammingError):
        file.draft()


def test_a_draft_that_was_written_is_given_back_as_it_is_without_reading(file):
    write_moves(file, 1)
    given = moved(2)
    file.write(given, upto=2, add=[("Move 2", given)], at=3)
    assert file.draft().layout is given


def test_nothing_is_left_beside_the_file(file, tmp_path):
    write_moves(file, 2)
    file.add_photo(JPEG)
    file.close()
    assert names(tmp_path) == ["van.bay"]


def test_closing_twice_and_closing_a_file_that_is_gone_are_nothing(file):
    file.path.unlink()
    file.close()
    file.close()
