"""Forms of the job file: older ones are brought up to date on a copy, newer ones show what they can."""

import importlib.util
from pathlib import Path

import pytest
from tests.store.bench import PNG, asked, by_hand, kept_job, moved, names, refusal

from bayboard.store import upgrade
from bayboard.store.base import Base
from bayboard.store.job_file import Damaged, Held, Newer, copy_job_file, is_job_file, open_job_file, rescue
from bayboard.store.schema import FORM

GOLDEN = Path(__file__).with_name("golden")
_spec = importlib.util.spec_from_file_location("golden_make", GOLDEN / "make.py")
golden = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(golden)


@pytest.fixture
def path(tmp_path):
    return kept_job(tmp_path / "van.bay")


@pytest.fixture
def old(tmp_path):
    """A copy of the file of form 1, which was made once and for all."""
    path = tmp_path / "old.bay"
    path.write_bytes((GOLDEN / "form-1.bay").read_bytes())
    return path


def test_every_form_that_ever_was_has_a_golden_file():
    assert [path.name for path in sorted(GOLDEN.glob("*.bay"))] == [
        f"form-{form}.bay" for form in range(1, FORM + 1)
    ]


def test_the_golden_file_opens_with_all_that_is_in_it(old):
    _, first, second, third = golden.layouts()
    with open_job_file(old) as file:
        assert file.check_whole() == ()
        draft = file.draft()
        assert (draft.layout, draft.parent, draft.at) == (third, 1, 4)
        labels = ["", "Move 0.5", "Move 1", "Move 1.5", "Go back to revision 1"]
        assert [mark.label for mark in draft.states] == labels
        assert [file.revision(number) for number in (1, 2, 3)] == [first, second, third]
        assert [r.note for r in file.revisions()] == ["as measured", "as printed", "before going back"]
        assert [r.parent for r in file.revisions()] == [None, 1, 2]
        assert [file.picture(n) for n in (1, 2)] == [golden.PNG, golden.PNG + b" 2"]
        assert [file.photo(name) for name in file.photos()] == [golden.JPEG]
        (line,) = file.prints()
        assert (line.revision, line.sheets, line.words) == ("2", ("drill", "wall"), "oak tin")
        assert file.meta("view") == {"stage": "fix", "zoom": 1.5}


def test_the_golden_file_can_be_worked_on(old):
    with open_job_file(old) as file:
        assert file.keep("two years later").number == 4


def more_notes(base: Base) -> None:
    """Make form 2 of form 1, for this test only: a table more."""
    base.do("CREATE TABLE more (note TEXT) STRICT")
    base.do("INSERT INTO more SELECT note FROM revision")


def test_an_older_form_is_brought_up_to_date_and_the_old_file_stays(old, tmp_path):
    before = old.read_bytes()
    said = upgrade.upgraded(old, 1, {1: more_notes, 2: lambda base: None}, to=3)
    assert said.endswith("brought up to date; the old one is old-form-1.bay.")
    assert asked(old, "PRAGMA user_version") == [(3,)]
    assert asked(old, "SELECT note FROM more")[0] == ("as measured",)
    assert (tmp_path / "old-form-1.bay").read_bytes() == before
    assert names(tmp_path) == ["old-form-1.bay", "old.bay"]


def test_an_old_file_that_stayed_is_never_replaced(old, tmp_path):
    (tmp_path / "old-form-1.bay").write_bytes(b"precious")
    assert "old-form-1-2.bay" in upgrade.upgraded(old, 1, {1: more_notes}, to=2)
    assert (tmp_path / "old-form-1.bay").read_bytes() == b"precious"


@pytest.mark.parametrize("statement", ["nonsense", "UPDATE revision SET note = ''", "DELETE FROM revision"])
def test_a_step_that_fails_leaves_the_file_as_it_was(old, tmp_path, statement):
    before = old.read_bytes()
    refusal(upgrade.upgraded, old, 1, {1: lambda base: base.do(statement)}, to=2)
    assert old.read_bytes() == before
    assert names(tmp_path) == ["old.bay"]


def test_an_older_file_that_is_worked_in_is_not_brought_up_to_date(old):
    with open_job_file(old):
        assert isinstance(refusal(upgrade.upgraded, old, 1, {1: more_notes}, to=2), Held)


def test_a_form_that_never_was_is_damage(path):
    by_hand(path, "PRAGMA user_version = 0")
    assert isinstance(refusal(open_job_file, path), Damaged)


def test_a_newer_file_shows_its_notes_times_and_pictures(path):
    by_hand(path, "PRAGMA user_version = 2", "ALTER TABLE revision ADD COLUMN more TEXT", "DROP TABLE draft")
    newer = refusal(open_job_file, path)
    assert isinstance(newer, Newer)
    assert str(newer).endswith("made by a newer Bayboard. It can be looked at, not changed.")
    assert [(kept.number, kept.note, kept.picture) for kept in newer.kept] == [
        (number, f"note {number}", PNG + bytes([number])) for number in (1, 2, 3)
    ]
    assert all(kept.kept.endswith("Z") for kept in newer.kept)


def test_a_newer_file_without_the_columns_shows_what_there_is(path):
    by_hand(
        path,
        "PRAGMA user_version = 7",
        "PRAGMA foreign_keys = OFF",
        "DROP TABLE revision",
        "CREATE TABLE revision (number, note)",
        "INSERT INTO revision VALUES (1, 'first'), ('x', 'no number'), (2, x'00')",
    )
    kept = refusal(open_job_file, path, look=True).kept
    assert [(one.number, one.note, one.kept, one.picture) for one in kept] == [
        (1, "first", "", None),
        (2, "", "", None),
    ]


def test_a_newer_file_is_left_as_it_is(path):
    by_hand(path, "PRAGMA user_version = 2")
    before = path.read_bytes()
    refusal(open_job_file, path)
    refusal(open_job_file, path, take=True)
    assert path.read_bytes() == before
    assert is_job_file(path)


def test_a_newer_file_is_not_copied_by_halves(path, tmp_path):
    by_hand(path, "PRAGMA user_version = 2")
    assert isinstance(refusal(copy_job_file, path, tmp_path / "copy.bay"), Newer)
    assert names(tmp_path) == ["van.bay"]


def test_a_newer_file_is_not_rescued_but_one_whose_number_is_damaged_is(path, tmp_path):
    by_hand(path, "PRAGMA user_version = 257")
    assert "3 revisions" in rescue(path, tmp_path / "out.bay")[0]
    by_hand(path, "CREATE TABLE more (a)")
    assert isinstance(refusal(rescue, path, tmp_path / "other.bay"), Newer)


def test_today_there_is_a_way_from_every_older_form():
    assert sorted(upgrade.STEPS) == list(range(1, FORM))


def test_what_is_looked_at_is_as_it_was_kept(path):
    with open_job_file(path, look=True) as file:
        assert file.draft().layout == moved(3)
