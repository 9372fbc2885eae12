"""Rescue and copies: what has its hash comes into a new file, and it is said what did not."""

import pytest
from tests.store.bench import JPEG, PNG, by_hand, flipped, kept_job, moved, names, refusal

from bayboard.store.job_file import Damaged, Held, copy_job_file, make_job_file, open_job_file, rescue


@pytest.fixture
def path(tmp_path):
    return kept_job(tmp_path / "van.bay", photos=[JPEG, PNG])


def test_of_a_whole_file_everything_comes(path, tmp_path):
    assert rescue(path, tmp_path / "out.bay") == (
        "Rescued: the draft, 3 revisions, 4 undo steps and 2 photos.",
    )
    with open_job_file(path) as old, open_job_file(tmp_path / "out.bay") as new:
        assert new.revisions() == old.revisions()
        assert [new.picture(n) for n in (1, 2, 3)] == [old.picture(n) for n in (1, 2, 3)]
        assert new.draft() == old.draft()
        assert [new.state(n) for n in (1, 2, 3, 4)] == [old.state(n) for n in (1, 2, 3, 4)]
        assert [new.photo(name) for name in new.photos()] == [JPEG, PNG]
        assert new.check_whole() == ()


def test_a_revision_whose_note_is_damaged_comes_and_says_so(path, tmp_path):
    flipped(path, b"note 2")
    said = rescue(path, tmp_path / "out.bay")[1]
    assert said == "Damaged, and not rescued: what was noted of revision 2."
    with open_job_file(tmp_path / "out.bay") as file:
        assert [(r.number, r.parent) for r in file.revisions()] == [(1, None), (2, None), (3, 2)]
        assert file.revisions()[1].note.startswith("(damaged) ")
        assert file.revision(2) == moved(2)
        assert file.check_whole() == ()


def test_a_damaged_revision_is_left_out_and_named(path, tmp_path):
    flipped(path, b"102, 100")
    assert rescue(path, tmp_path / "out.bay")[1] == "Damaged, and not rescued: revision 2."
    with open_job_file(tmp_path / "out.bay") as file:
        assert [(r.number, r.parent) for r in file.revisions()] == [(1, None), (3, None)]
        assert file.keep("goes on").number == 4
        assert file.check_whole() == ()


def test_a_damaged_photo_is_left_out(path, tmp_path):
    flipped(path, b"a small photo", nth=2)
    rescue(path, tmp_path / "out.bay")
    with open_job_file(tmp_path / "out.bay") as file:
        assert [file.photo(name) for name in file.photos()] == [PNG]


def test_where_nothing_can_be_read_no_file_is_made(path, tmp_path):
    path.write_bytes(path.read_bytes()[:4096] + bytes(200_000))
    assert isinstance(refusal(rescue, path, tmp_path / "out.bay"), Damaged)
    assert names(tmp_path) == ["van.bay"]


def test_a_rescue_takes_no_other_files_place(path):
    assert "of that name already" in str(refusal(rescue, path, path))


def test_a_file_that_is_not_there_is_not_rescued(tmp_path):
    assert "there is no such file" in str(refusal(rescue, tmp_path / "none.bay", tmp_path / "out.bay"))
    assert names(tmp_path) == []


def test_a_copy_holds_every_revision_and_is_held_by_nobody(path, tmp_path):
    with open_job_file(path) as file:
        copy_job_file(path, tmp_path / "copy.bay")
        with open_job_file(tmp_path / "copy.bay") as copy:
            assert copy.revisions() == file.revisions()
            assert copy.draft() == file.draft()
            copy.keep("in the copy")
        file.keep("in the file")
    assert names(tmp_path) == ["copy.bay", "van.bay"]


def test_a_copy_replaces_a_file_whole(path, tmp_path):
    (tmp_path / "copy.bay").write_bytes(b"x" * 500_000)
    copy_job_file(path, tmp_path / "copy.bay")
    with open_job_file(tmp_path / "copy.bay") as copy:
        assert copy.check_whole() == ()


def test_a_copy_is_not_put_in_the_place_of_a_file_that_is_worked_in(path, tmp_path):
    with make_job_file(tmp_path / "other.bay", moved(1)) as other:
        assert isinstance(refusal(copy_job_file, path, other.path), Held)
        other.keep("still mine")


def test_a_copy_onto_itself_is_refused(path, tmp_path):
    (tmp_path / "link.bay").symlink_to(path)
    assert "this is the same file" in str(refusal(copy_job_file, path, tmp_path / "link.bay"))


def test_what_is_no_job_file_is_not_copied(tmp_path):
    by_hand(tmp_path / "other.bay", "CREATE TABLE revision (number)")
    assert "not a job file" in str(refusal(copy_job_file, tmp_path / "other.bay", tmp_path / "out.bay"))
    assert names(tmp_path) == ["other.bay"]
