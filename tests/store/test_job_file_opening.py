"""Opening: a job file, or one sentence that says why not."""

import sqlite3
from pathlib import Path, PureWindowsPath

import pytest
from tests.store.bench import JPEG, PLAIN, asked, by_hand, flipped, kept_job, moved, names, refusal

from bayboard.store import drafts, making
from bayboard.store.base import uri_of
from bayboard.store.job_file import Damaged, Held, PrintLine, is_job_file, make_job_file, open_job_file
from bayboard.store.schema import APPLICATION, FORM

LINE = PrintLine(revision="1", paper="a4", face="front", sheets=(), words="oak tin", pages=1)


@pytest.fixture
def path(tmp_path):
    return kept_job(tmp_path / "van.bay", photos=[JPEG])


def test_a_file_says_what_it_is(path):
    assert asked(path, "PRAGMA application_id") == [(APPLICATION,)] == [(0x42617942,)]
    assert asked(path, "PRAGMA user_version") == [(FORM,)]
    assert path.read_bytes()[68:72] == b"BayB"


@pytest.mark.parametrize(
    "name", ["Größe 車 №1.bay", "100% #1 a?b=c&d.bay", "it's a 'van'.bay", " space .bay", "%41.bay"]
)
def test_a_name_in_any_letters_is_a_fine_name(tmp_path, name):
    kept_job(tmp_path / name, revisions=1)
    with open_job_file(tmp_path / name) as file, open_job_file(tmp_path / name, look=True) as looked:
        assert file.draft().layout == looked.draft().layout == moved(1)
    assert names(tmp_path) == [name]


@pytest.mark.parametrize(
    "path, address",
    [
        ("C:/My jobs/100% #1?.bay", "file:///C:/My%20jobs/100%25%20%231%3F.bay?mode=ro"),
        ("//shop/jobs/van.bay", "file:////shop/jobs/van.bay?mode=ro"),
    ],
)
def test_windows_names_are_spelled_so_that_sqlite_finds_them(path, address):
    # the forms are those of https://www.sqlite.org/uri.html, sections 3.1 and 3.2
    assert uri_of(PureWindowsPath(path), look=True) == address


def test_a_link_leads_to_its_file_and_nothing_is_left_beside_either(path, tmp_path):
    link = tmp_path / "elsewhere" / "link.bay"
    link.parent.mkdir()
    link.symlink_to(path)
    with open_job_file(link) as file:
        file.keep("through the link")
    with open_job_file(path) as file:
        assert file.revisions()[-1].note == "through the link"
    assert names(link.parent) == ["link.bay"]


@pytest.mark.parametrize(
    "content, says",
    [
        (b"", "this file is empty"),
        (b"SQLite form", "cut short"),
        (b'{"bayboard": 1}', "not a job file"),
        (b"\x00" * 5000, "not a job file"),
    ],
)
def test_what_is_not_a_job_file_is_refused_in_a_sentence(tmp_path, content, says):
    (tmp_path / "no.bay").write_bytes(content)
    assert says in str(refusal(open_job_file, tmp_path / "no.bay"))


def test_a_database_of_another_program_is_refused(tmp_path):
    by_hand(tmp_path / "other.bay", "CREATE TABLE revision (number)")
    assert "not a job file" in str(refusal(open_job_file, tmp_path / "other.bay"))


def test_a_folder_and_a_missing_file_are_refused(tmp_path):
    assert "this is a folder. Name a .bay file in it" in str(refusal(open_job_file, tmp_path))
    assert "there is no such file" in str(refusal(open_job_file, tmp_path / "none.bay"))
    assert "there is no such file" in str(refusal(open_job_file, tmp_path / "no\0ne.bay"))


def test_a_python_with_an_old_sqlite_is_told_so(path, tmp_path, monkeypatch):
    monkeypatch.setattr(sqlite3, "sqlite_version_info", (3, 36, 0))
    assert "job files need 3.37 or later" in str(refusal(open_job_file, path))
    assert "job files need 3.37 or later" in str(refusal(make_job_file, tmp_path / "new.bay", PLAIN))
    assert names(tmp_path) == ["van.bay"]


def test_a_draft_that_changes_while_it_is_opened_is_not_taken(path, monkeypatch):
    monkeypatch.setattr(drafts, "read_sha", lambda base: "another")
    assert "another program is writing this file" in str(refusal(open_job_file, path))
    assert asked(path, "SELECT token FROM holder") == [(None,)]


def test_nothing_is_made_by_opening_what_is_not_there(tmp_path):
    refusal(open_job_file, tmp_path / "none.bay")
    assert names(tmp_path) == []


@pytest.mark.parametrize("share", [0.02, 0.5, 0.97])
def test_a_truncated_file_is_damaged(path, share):
    content = path.read_bytes()
    path.write_bytes(content[: int(len(content) * share)])
    assert isinstance(refusal(open_job_file, path), Damaged)


def test_a_damaged_draft_is_replaced_by_its_step_and_said(path):
    flipped(path, b'"Plain bay"', nth=_draft_place(path))
    with open_job_file(path) as file:
        assert file.said == ("The draft is damaged; this is the last step before it that is whole.",)
        assert file.draft().layout == moved(3)
        file.write(moved(4), upto=4, add=[("Move", moved(4))], at=5)
    with open_job_file(path) as file:
        assert (file.said, file.draft().layout) == ((), moved(4))


def test_without_a_whole_step_the_newest_whole_revision_is_the_draft(path):
    flipped(path, b'"Plain bay"', nth=_draft_place(path))
    by_hand(path, "UPDATE state SET sha256 = ''")
    with open_job_file(path) as file:
        assert file.said == ("The draft is damaged; this is revision 3, the newest that is whole.",)
        draft = file.draft()
        assert (draft.layout, draft.parent, draft.states, draft.at) == (moved(3), 3, (), 0)


@pytest.mark.parametrize("act", [lambda file: file.keep("kept"), lambda file: file.log_print(LINE, moved(9))])
def test_what_stood_in_for_the_draft_is_the_draft_once_it_is_written(path, act):
    flipped(path, b'"Plain bay"', nth=_draft_place(path))
    with open_job_file(path) as file:
        act(file)
        seen = file.draft()
    with open_job_file(path) as file:
        assert (file.said, file.draft()) == ((), seen)


def test_a_file_without_anything_whole_is_damaged(path):
    by_hand(
        path,
        "DELETE FROM draft",
        "DELETE FROM state",
        "DROP TRIGGER revision_is_kept",
        "UPDATE revision SET sha256 = ''",
        *[sql for (sql,) in asked(path, "SELECT sql FROM sqlite_master WHERE name = 'revision_is_kept'")],
    )
    assert isinstance(refusal(open_job_file, path), Damaged)


def test_a_damaged_newest_revision_is_said_and_nothing_is_written_over_it(path):
    flipped(path, b'"Plain bay"', nth=_places(path) - 1)
    with open_job_file(path) as file:
        assert "The newest revision is damaged" in file.said[0]
        assert file.draft().layout == moved(3)
        assert isinstance(refusal(file.keep, "over it"), Damaged)
        assert isinstance(refusal(file.revision, 3), Damaged)
        assert file.revision(2) == moved(2)


def test_a_damaged_note_is_told_in_the_list(path):
    flipped(path, b"note 2", bit=2)
    with open_job_file(path) as file:
        assert [revision.note for revision in file.revisions()] == ["note 1", "(damaged) lote 2", "note 3"]
        assert any("revision 2 is damaged" in said for said in file.check_whole())


def test_a_whole_file_is_found_whole(path):
    with open_job_file(path) as file:
        assert file.said == ()
        assert file.check_whole() == ()


def test_a_check_is_due_once_a_day(path):
    by_hand(path, "UPDATE holder SET checked = '2026-01-01'")
    with open_job_file(path) as file:
        assert file.check_due
        file.check_whole()
        assert not file.check_due
    with open_job_file(path) as file:
        assert not file.check_due


def test_what_is_a_job_file_is_told_by_what_is_in_it(path, tmp_path):
    other = path.rename(tmp_path / "van.json")
    assert is_job_file(other)
    (tmp_path / "layout.bay").write_text('{"bayboard": 1}', encoding="utf-8")
    assert not is_job_file(tmp_path / "layout.bay")
    assert is_job_file(tmp_path / "gone.bay")
    assert not is_job_file(tmp_path / "gone.json")


def test_a_new_file_is_made_whole_or_not_at_all(tmp_path):
    refusal(make_job_file, tmp_path / "van.bay", PLAIN, photos=[b"no picture"])
    assert names(tmp_path) == []
    assert "no such folder" in str(refusal(make_job_file, tmp_path / "none" / "van.bay", PLAIN))


def test_a_new_file_takes_no_other_files_place(path):
    before = path.read_bytes()
    assert "of that name already" in str(refusal(make_job_file, path, PLAIN))
    assert path.read_bytes() == before


def test_a_file_that_comes_at_the_last_moment_is_not_replaced(tmp_path, monkeypatch):
    flush = making.flushed

    def meanwhile(part):
        flush(part)
        (tmp_path / "van.bay").write_bytes(b"precious")

    monkeypatch.setattr(making, "flushed", meanwhile)
    assert "of that name already" in str(refusal(make_job_file, tmp_path / "van.bay", PLAIN))
    assert (tmp_path / "van.bay").read_bytes() == b"precious"
    assert names(tmp_path) == ["van.bay"]


@pytest.mark.parametrize("there", [False, True])
def test_a_disk_without_links_takes_a_new_file_too(tmp_path, monkeypatch, there):
    def no_links(target, part):
        if there:
            target.write_bytes(b"precious")
        raise OSError(95, "not supported")

    monkeypatch.setattr(Path, "hardlink_to", no_links)
    if there:
        assert "of that name already" in str(refusal(make_job_file, tmp_path / "van.bay", PLAIN))
    else:
        make_job_file(tmp_path / "van.bay", PLAIN).close()
    assert names(tmp_path) == ["van.bay"]


def test_a_new_file_is_not_made_beside_what_another_left(tmp_path):
    (tmp_path / "van.bay-journal").write_bytes(b"x")
    assert "Move it away" in str(refusal(make_job_file, tmp_path / "van.bay", PLAIN))
    assert names(tmp_path) == ["van.bay-journal"]


def test_a_new_file_is_held(tmp_path):
    with make_job_file(tmp_path / "van.bay", PLAIN):
        assert isinstance(refusal(open_job_file, tmp_path / "van.bay"), Held)


def _places(path):
    return path.read_bytes().count(b'"Plain bay"')


def _draft_place(path):
    """Return which of the layouts in the file is the draft: that whose page its table names."""
    draft = asked(path, "SELECT layout FROM draft")[0][0]
    content = path.read_bytes()
    for nth in range(_places(path)):
        copy = path.with_suffix(".copy")
        copy.write_bytes(content)
        flipped(copy, b'"Plain bay"', nth=nth)
        changed = asked(copy, "SELECT layout FROM draft")[0][0] != draft
        copy.unlink()
        if changed:
            return nth
    raise AssertionError("the draft is nowhere")
