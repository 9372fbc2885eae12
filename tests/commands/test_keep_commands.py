"""keep, revisions, compare, restore, convert and FILE@3, as a person runs them."""

import hashlib
import json

import pytest
from tests.build import document, gear
from tests.model.rich import rich

from bayboard.__main__ import main
from bayboard.edits.move_gear import MoveGear
from bayboard.job.job import open_job

FAR = [gear("A", 100, 100), gear("B", 400, 100)]


@pytest.fixture
def bay(tmp_path):
    """The path of a job file made of a plain layout."""
    plain = tmp_path / "pickup.json"
    plain.write_text(json.dumps(document(gear=FAR)), encoding="utf-8")
    assert main(["convert", str(plain), str(tmp_path / "pickup.bay")]) == 0
    return tmp_path / "pickup.bay"


@pytest.fixture
def screwed(tmp_path):
    """The path of a job file whose gear has a screw each."""
    members = document(gear=FAR)
    members["cards"]["box"]["screws"] = [{"at": [40, 20], "thread": "M5"}]
    (tmp_path / "plain.json").write_text(json.dumps(members), encoding="utf-8")
    assert main(["convert", str(tmp_path / "plain.json"), str(tmp_path / "screwed.bay")]) == 0
    return tmp_path / "screwed.bay"


def _move(bay, dx, dy=0.0):
    job = open_job(bay)
    job.do(MoveGear(("A",), dx, dy))
    job.close()


def _json(capsys, *words):
    capsys.readouterr()
    assert main(list(words)) == 0
    return json.loads(capsys.readouterr().out)


def test_json_to_job_file_and_back_is_the_same_bytes(tmp_path):
    once, bay, back = tmp_path / "once.json", tmp_path / "rich.bay", tmp_path / "back.json"
    raw = tmp_path / "raw.json"
    raw.write_text(json.dumps(rich()), encoding="utf-8")
    for words in ((raw, once), (once, bay), (bay, back)):
        assert main(["convert", *map(str, words)]) == 0
    assert back.read_bytes() == once.read_bytes()


def test_keep_says_the_number(bay, capsys):
    assert main(["keep", str(bay), "--note", "first mock-up"]) == 0
    assert main(["keep", str(bay), "--note", "again"]) == 0
    assert capsys.readouterr().out == "Kept as revision 1.\nKept as revision 2.\n"


def test_revisions_lists_numbers_notes_and_hashes(bay, capsys):
    main(["keep", str(bay), "--note", "first mock-up"])
    told = _json(capsys, "revisions", str(bay), "--json")
    (kept,) = told["revisions"]
    assert (kept["number"], kept["parent"], kept["note"]) == (1, None, "first mock-up")
    assert (told["draft"]["parent"], told["draft"]["sha256"]) == (1, kept["sha256"])


def test_the_hash_of_a_revision_is_that_of_its_exported_file(bay, capsys, tmp_path):
    main(["keep", str(bay), "--note", ""])
    _move(bay, 7.0)
    told = _json(capsys, "revisions", str(bay), "--json")
    assert main(["convert", f"{bay}@1", str(tmp_path / "one.json")]) == 0
    digest = hashlib.sha256((tmp_path / "one.json").read_bytes()).hexdigest()
    assert digest == told["revisions"][0]["sha256"]


def test_compare_says_what_moved(bay, capsys):
    main(["keep", str(bay), "--note", ""])
    _move(bay, 12.5, -3.0)
    told = _json(capsys, "compare", str(bay), "1", "draft", "--json")
    assert told == {
        "moved": [{"id": "A", "by": [12.5, -3.0], "turned": 0.0}],
        "added": [],
        "removed": [],
        "changed": [],
    }


def test_compare_reads_as_sentences(bay, capsys):
    main(["keep", str(bay), "--note", ""])
    _move(bay, 12.5)
    capsys.readouterr()
    assert main(["compare", str(bay), "1", "draft"]) == 0
    assert "A" in (out := capsys.readouterr().out) and "right 12.5 mm" in out


def test_restore_brings_a_revision_back_and_keeps_the_draft(bay, capsys, tmp_path):
    main(["keep", str(bay), "--note", "one"])
    _move(bay, 12.5)
    capsys.readouterr()
    assert main(["restore", str(bay), "1"]) == 0
    assert capsys.readouterr().out == "The draft was kept as revision 2.\nThe draft is revision 1 again.\n"
    for word, name in ((f"{bay}@1", "one"), (str(bay), "draft"), (f"{bay}@2", "two")):
        assert main(["convert", word, str(tmp_path / f"{name}.json")]) == 0
    one, draft, two = ((tmp_path / f"{n}.json").read_bytes() for n in ("one", "draft", "two"))
    assert one == draft != two


def test_check_reads_the_draft_and_any_revision(bay):
    main(["keep", str(bay), "--note", "sound"])
    _move(bay, 205.0)  # 5 mm off B, 6 needed
    assert main(["check", str(bay)]) == 1
    assert main(["check", f"{bay}@1"]) == 0
    assert main(["check", f"{bay}@draft"]) == 1


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["check", "{bay}@7"], "7"),
        (["check", "{bay}@x"], "'x' is no revision"),
        (["compare", "{bay}", "1", "9"], "9"),
        (["restore", "{bay}", "draft"], "the draft is what one works on already"),
        (["restore", "{bay}", "5"], "5"),
        (["keep", "{json}", "--note", "x"], "holds no revisions"),
        (["revisions", "{json}"], "holds no revisions"),
        (["keep", "{gone}", "--note", "x"], "there is no such file"),
        (["revisions", "{gone}"], "there is no such file"),
        (["convert", "{bay}", "{bay}"], "is the file that is read"),
        (["convert", "{bay}@1", "{bay}"], "is the file that is read"),
        (["convert", "{bay}", "{folder}/x.txt"], "neither in .json nor in .bay"),
    ],
)
def test_bad_words_are_one_sentence_and_exit_2(bay, tmp_path, capsys, words, says):
    main(["keep", str(bay), "--note", ""])
    before = _json(capsys, "revisions", str(bay), "--json")
    names = {"bay": bay, "json": tmp_path / "pickup.json", "gone": tmp_path / "gone.bay", "folder": tmp_path}
    assert main([word.format(**names) for word in words]) == 2
    told = capsys.readouterr()
    assert (told.out, told.err.count("\n")) == ("", 1)
    assert says in told.err
    assert _json(capsys, "revisions", str(bay), "--json") == before


def test_a_file_that_is_called_so_wins_over_a_revision(bay, tmp_path):
    odd = tmp_path / "pickup.bay@3"
    odd.write_bytes((tmp_path / "pickup.json").read_bytes())
    assert main(["check", str(odd)]) == 0


def test_a_job_file_copies_with_every_revision(bay, tmp_path, capsys):
    main(["keep", str(bay), "--note", "one"])
    assert main(["convert", str(bay), str(tmp_path / "copy.bay")]) == 0
    told = _json(capsys, "revisions", str(tmp_path / "copy.bay"), "--json")
    assert [kept["note"] for kept in told["revisions"]] == ["one"]


def test_a_job_file_that_is_replaced_is_renamed_with_its_revisions(bay, tmp_path, capsys):
    main(["keep", str(bay), "--note", "one"])
    assert main(["convert", str(tmp_path / "pickup.json"), str(bay)]) == 0
    (old,) = tmp_path.glob("pickup-until-*.bay")
    assert f"The old pickup.bay, with its 1 revision, is now {old.name}." in capsys.readouterr().out
    assert len(_json(capsys, "revisions", str(old), "--json")["revisions"]) == 1
    assert _json(capsys, "revisions", str(bay), "--json")["revisions"] == []


def test_a_job_file_without_revisions_is_simply_replaced(bay, tmp_path):
    assert main(["convert", str(tmp_path / "pickup.json"), str(bay)]) == 0
    assert sorted(p.name for p in tmp_path.iterdir()) == ["pickup.bay", "pickup.json"]


def test_what_a_json_cannot_hold_is_said(bay, tmp_path, capsys):
    main(["keep", str(bay), "--note", "one"])
    capsys.readouterr()
    assert main(["convert", str(bay), str(tmp_path / "out.json")]) == 0
    assert capsys.readouterr().out == "1 revision stays behind in pickup.bay: a .json holds one layout.\n"


def test_photos_of_a_json_come_without_their_pictures_and_that_is_said(tmp_path, capsys):
    (tmp_path / "rich.json").write_text(json.dumps(rich()), encoding="utf-8")
    count = len(rich()["photos"])
    assert main(["convert", str(tmp_path / "rich.json"), str(tmp_path / "rich.bay")]) == 0
    have = "1 photo has" if count == 1 else f"{count} photos have"
    assert capsys.readouterr().out == f"{have} no picture in the job file: rich.json holds none.\n"


def test_a_job_somebody_holds_is_not_written_but_may_be_read(bay, capsys):
    job = open_job(bay)
    try:
        assert main(["check", str(bay)]) == 0
        assert main(["keep", str(bay), "--note", ""]) == 2
        assert "since" in capsys.readouterr().err
    finally:
        job.close()
    assert main(["keep", str(bay), "--note", ""]) == 0


def _print(bay, *words):
    out = bay.parent / "sheets.pdf"
    return main(["print", str(bay), "--paper", "a4", "--out", str(out), *words])


def test_print_of_a_job_file_keeps_logs_and_sets_printed(screwed, capsys):
    assert _print(screwed) == 0
    assert capsys.readouterr().out == "Printed as revision 1.\n"
    told = _json(capsys, "revisions", str(screwed), "--json")
    assert [kept["note"] for kept in told["revisions"]] == ["for printing"]
    (line,) = told["prints"]
    assert (line["revision"], line["paper"], line["face"]) == ("1", "a4", "front")
    assert "drill" in line["sheets"]
    job = open_job(screwed, look=True)
    assert job.layout.printed.revision == "1"
    assert [hole.id for hole in job.layout.printed.holes] == ["A#1", "B#1"]
    job.close()


def test_printing_twice_makes_the_same_pages_and_no_second_revision(screwed, capsys, tmp_path):
    assert _print(screwed) == 0
    first = (tmp_path / "sheets.pdf").read_bytes()
    assert _print(screwed) == 0
    assert (tmp_path / "sheets.pdf").read_bytes() == first
    told = _json(capsys, "revisions", str(screwed), "--json")
    assert (len(told["revisions"]), len(told["prints"])) == (1, 2)


def test_a_hole_that_moves_after_the_print_is_a_reprint_finding(screwed, capsys):
    _print(screwed)
    _move(screwed, 5.0)
    told = _json(capsys, "check", str(screwed), "--json")
    (found,) = [f for f in told["findings"] if f["rule"] == "reprint"]
    assert (found["severity"], found["measure"], found["subjects"]) == ("should", 1, ["BD"])


def test_printing_only_stand_ins_leaves_the_drill_sheets_as_they_are_known(screwed, capsys):
    _print(screwed)
    _move(screwed, 5.0)
    assert _print(screwed, "--only", "cards") == 0
    told = _json(capsys, "check", str(screwed), "--json")
    assert any(f["rule"] == "reprint" for f in told["findings"])


def test_a_print_that_cannot_be_written_is_not_logged(screwed, capsys):
    assert main(["print", str(screwed), "--paper", "a4", "--out", str(screwed.parent / "no" / "x.pdf")]) == 2
    assert _json(capsys, "revisions", str(screwed), "--json")["prints"] == []


def test_an_old_revision_prints_under_its_own_number(screwed, capsys):
    main(["keep", str(screwed), "--note", "one"])
    _move(screwed, 5.0)
    main(["keep", str(screwed), "--note", "two"])
    capsys.readouterr()
    out = screwed.parent / "sheets.pdf"
    assert main(["print", f"{screwed}@1", "--paper", "a4", "--out", str(out)]) == 0
    assert capsys.readouterr().out == "Printed as revision 1.\n"
    told = _json(capsys, "check", str(screwed), "--json")
    assert any(f["rule"] == "reprint" for f in told["findings"])
