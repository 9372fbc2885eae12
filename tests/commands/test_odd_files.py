"""Commands on names, places and kinds of file that nobody means to use, and what a command loads."""

import json
import os
import resource
import subprocess
import sys
from pathlib import Path

import pytest
from tests.build import document, gear

from bayboard.__main__ import main

SLOW = ("scipy", "reportlab", "PySide6", "bayboard.rules", "bayboard.routing")
LONG = "x" * 300  # letters; file systems take 255 bytes


@pytest.fixture
def here(tmp_path, monkeypatch):
    """A folder with plain.json and job.bay, of which revision 1 is kept; it is the one worked in."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "plain.json").write_text(json.dumps(document(gear=[gear("A", 100, 100)])), encoding="utf-8")
    assert main(["convert", "plain.json", "job.bay"]) == 0
    assert main(["keep", "job.bay", "--note", "one"]) == 0
    return tmp_path


def _refused(capsys, *words):
    """Return the one sentence that a command is refused with."""
    capsys.readouterr()
    assert main(list(words)) == 2
    told = capsys.readouterr()
    assert (told.out, told.err.count("\n")) == ("", 1)
    assert told.err.startswith("bayboard: ") and told.err.endswith(".\n")
    return told.err


def _names(folder):
    return sorted(path.name for path in folder.iterdir())


@pytest.mark.parametrize(
    "words",
    [
        ["check", f"{LONG}.json"],
        ["check", f"{LONG}.bay"],
        ["check", f"{LONG}.bay@3"],
        ["keep", f"{LONG}.bay", "--note", ""],
        ["revisions", f"{LONG}.bay"],
        ["compare", f"{LONG}.bay", "1", "draft"],
        ["restore", f"{LONG}.bay", "1"],
        ["convert", "plain.json", f"{LONG}.bay"],
        ["convert", "job.bay", f"{LONG}.json"],
        ["print", "plain.json", "--paper", "a4", "--out", f"{LONG}.pdf"],
    ],
)
def test_a_name_that_is_too_long_is_one_sentence(here, capsys, words):
    assert LONG in _refused(capsys, *words)
    assert _names(here) == ["job.bay", "plain.json"]


@pytest.mark.parametrize(
    "words",
    [
        ["check", "two\nlines.bay"],
        ["check", "job.bay@two\nlines"],
        ["keep", "job.bay", "--note", "one", "two\nlines"],
        ["convert", "job.bay", "two\nlines"],
        ["print", "two\nlines.json", "--paper", "a4", "--out", "two\nlines.json"],
    ],
)
def test_a_line_end_in_a_word_does_not_end_the_sentence(here, capsys, words):
    assert "lines" in _refused(capsys, *words)


@pytest.mark.parametrize("read", ["plain.json", "job.bay", "job.bay@1"])
def test_a_job_file_for_which_there_is_no_folder_is_spoken_of_by_its_own_name(here, capsys, read):
    out = str(Path("no", "new.bay"))
    assert _refused(capsys, "convert", read, out).startswith(f"bayboard: {out}: there is no such folder")


@pytest.mark.parametrize("read", ["plain.json", "job.bay", "job.bay@1"])
def test_a_folder_is_not_replaced_by_a_job_file(here, capsys, read):
    (here / "dir.bay").mkdir()
    assert "this is a folder" in _refused(capsys, "convert", read, "dir.bay")
    assert _names(here) == ["dir.bay", "job.bay", "plain.json"]


@pytest.mark.parametrize("out", ["pipe.bay", "pipe.json"])
def test_a_pipe_is_not_replaced(here, capsys, out):
    os.mkfifo(out)
    assert "this is not a plain file" in _refused(capsys, "convert", "job.bay", out)
    assert (here / out).is_fifo()


@pytest.mark.parametrize("ending", ["bay", "json"])
def test_a_link_is_followed_and_its_file_replaced(here, ending):
    target, link = here / f"target.{ending}", here / f"link.{ending}"
    target.write_bytes(b"")
    link.symlink_to(target)
    assert main(["convert", "plain.json", str(link)]) == 0
    assert link.is_symlink() and target.stat().st_size > 100


@pytest.mark.parametrize("read", ["job.bay", "job.bay@1", "plain.json"])
def test_where_there_is_no_room_it_is_the_copy_that_is_spoken_of(here, read):
    ran = subprocess.run(
        [sys.executable, "-m", "bayboard", "convert", read, "copy.bay"],
        preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, 20_000)),
        capture_output=True,
        text=True,
        check=False,
    )
    assert (ran.returncode, ran.stderr.count("\n")) == (2, 1)
    assert ran.stderr.startswith("bayboard: copy.bay: ")
    assert _names(here) == ["job.bay", "plain.json"]


def test_an_empty_file_is_replaced_without_a_word(here, capsys):
    (here / "new.bay").touch()
    capsys.readouterr()
    assert main(["convert", "plain.json", "new.bay"]) == 0
    assert (capsys.readouterr().out, _names(here)) == ("", ["job.bay", "new.bay", "plain.json"])


def test_sheets_and_map_are_not_one_file_by_way_of_a_linked_folder(here, capsys):
    (here / "round").symlink_to(".", target_is_directory=True)
    by_link = str(Path("round", "out.pdf"))
    words = ("print", "plain.json", "--paper", "a4", "--out", "out.pdf", "--map", by_link)
    assert "is the file of the sheets" in _refused(capsys, *words)


@pytest.mark.parametrize("words", [["--out", "job.bay"], ["--out", "new.pdf", "--map", "job.bay"]])
def test_sheets_do_not_replace_a_job_file(here, capsys, words):
    before = (here / "job.bay").read_bytes()
    told = _refused(capsys, "print", "plain.json", "--paper", "a4", *words)
    assert "job.bay is a job file, and would be lost" in told
    assert ((here / "job.bay").read_bytes(), _names(here)) == (before, ["job.bay", "plain.json"])


def test_a_note_that_is_too_long_is_refused_and_not_cut(here, capsys):
    assert "longer than 2000 letters" in _refused(capsys, "keep", "job.bay", "--note", "x" * 2001)
    assert main(["keep", "job.bay", "--note", "x" * 2000]) == 0


def test_a_job_file_is_known_by_what_is_in_it(here, capsys):
    (here / "job.bay").rename("job.json")
    capsys.readouterr()
    assert main(["revisions", "job.json", "--json"]) == 0
    assert [kept["note"] for kept in json.loads(capsys.readouterr().out)["revisions"]] == ["one"]


@pytest.mark.parametrize("words", [["keep", "--note", ""], ["revisions"], ["restore", "1"]])
def test_a_plain_layout_by_another_name_is_told_by_its_name(here, capsys, words):
    (here / "plain.json").rename("plain.bay")
    told = _refused(capsys, words[0], "plain.bay", *words[1:])
    assert told.startswith("bayboard: plain.bay: a plain .json layout holds no revisions")
    assert "bayboard convert plain.bay plain-job.bay" in told


@pytest.mark.parametrize("words", [["keep", "--note", ""], ["revisions"], ["restore", "1"]])
@pytest.mark.parametrize("name", ["", "van", "van.bay"])
def test_a_folder_is_no_job_file(here, capsys, words, name):
    if name:
        (here / name).mkdir()
    assert "this is a folder. Name a .bay file in it." in _refused(capsys, words[0], name, *words[1:])


@pytest.mark.parametrize(
    "words", [["keep", "--note", ""], ["revisions"], ["compare", "1", "1"], ["restore", "1"]]
)
def test_one_revision_is_not_the_job_file(here, capsys, words):
    told = _refused(capsys, words[0], "job.bay@1", *words[1:])
    assert told == "bayboard: job.bay@1: this is one revision, not the job file. Leave the @ off.\n"


@pytest.mark.parametrize(
    "words",
    [["keep", "job.bay", "--note", ""], ["revisions", "job.bay"], ["restore", "job.bay", "1"], ["--help"]],
)
def test_what_only_keeps_loads_neither_rules_nor_paper_nor_window(here, words):
    code = (
        "import sys; from bayboard.__main__ import main\n"
        f"try: main({words!r})\nexcept SystemExit: pass\n"
        f"print(*[name for name in {SLOW} if name in sys.modules], file=sys.stderr)"
    )
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, check=True, text=True)
    assert ran.stderr == "\n"
