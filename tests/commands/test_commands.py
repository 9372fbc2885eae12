"""The commands as a person runs them: words in, exit code, stdout and stderr out."""

import json

import pytest
from tests.build import document, gear

from bayboard.__main__ import main
from bayboard.commands import check_command

FAR = [gear("A", 100, 100), gear("B", 400, 100)]
NEAR = [gear("A", 100, 100), gear("B", 203, 100)]  # boxes 100 wide: 3 mm apart, 6 needed


@pytest.fixture
def saved(tmp_path):
    """Return a function that saves a document and gives its path as text."""

    def save(name="bay.json", **members):
        path = tmp_path / name
        path.write_text(json.dumps(document(**members)), encoding="utf-8")
        return str(path)

    return save


def test_check_of_a_sound_layout_exits_0(saved, capsys):
    assert main(["check", saved(gear=FAR)]) == 0
    assert "0 must" in capsys.readouterr().out


def test_check_of_a_must_exits_1_and_says_it(saved, capsys):
    assert main(["check", saved(gear=NEAR)]) == 1
    assert "3 mm" in capsys.readouterr().out


def test_strict_exits_1_when_something_is_unchecked(saved):
    file = saved(gear=FAR, cards={"box": document()["cards"]["box"] | {"height": None}})
    assert (main(["check", file]), main(["check", file, "--strict"])) == (0, 1)


def test_check_json_has_the_members_of_the_contract(saved, capsys):
    main(["check", saved(gear=NEAR), "--json"])
    told = json.loads(capsys.readouterr().out)
    assert list(told) == ["bayboard", "findings", "unchecked", "counts"]
    assert list(told["counts"]) == ["must", "should", "note", "let_be", "unchecked"]
    members = ["rule", "severity", "subjects", "measure", "limit", "unit", "at", "says", "let_be", "nudge"]
    assert all(list(finding) == members for finding in told["findings"])


def test_figures_in_json_are_rounded(saved, capsys):
    main(["check", saved(gear=[gear("A", 100, 100), gear("B", 203.123456, 100)]), "--json"])
    gap = next(f for f in json.loads(capsys.readouterr().out)["findings"] if f["rule"] == "gap")
    assert gap["measure"] == 3.1235


@pytest.mark.parametrize(("units", "by"), [("mm", -12), ("in", -31 * 25.4 / 64)])
def test_check_json_tells_the_shortest_move_that_cures(units, by, saved, capsys):
    # 3 apart, 15 asked: 12 more, which is 30.2 steps of 1/64 in
    main(["check", saved(gear=NEAR, units=units), "--json"])
    gap = next(f for f in json.loads(capsys.readouterr().out)["findings"] if f["rule"] == "gap")
    assert gap["nudge"] == {"gear": "A", "by": [by, 0]}


@pytest.mark.parametrize(("findings", "looks"), [(0, None), (40, None), (41, 249), (160, 64), (5000, 64)])
def test_places_are_shared_out_where_many_findings_ask(findings, looks):
    assert check_command._looks(findings) == looks


def test_convert_writes_the_normal_form_and_converts_it_to_itself(saved, tmp_path):
    once, twice = tmp_path / "once.json", tmp_path / "twice.json"
    assert main(["convert", saved(gear=FAR), str(once)]) == 0
    assert main(["convert", str(once), str(twice)]) == 0
    assert once.read_bytes() == twice.read_bytes()


def test_print_writes_a_pdf_and_a_map(saved, tmp_path):
    out, where = tmp_path / "out.pdf", tmp_path / "map.json"
    words = ["print", saved(gear=FAR), "--paper", "a4", "--out", str(out), "--map", str(where)]
    assert main(words) == 0
    assert out.read_bytes().startswith(b"%PDF")
    assert {page["sheet"] for page in json.loads(where.read_text("utf-8"))["pages"]} == {"drill", "cards"}


def test_print_of_only_one_kind_prints_only_that(saved, tmp_path):
    where = tmp_path / "map.json"
    words = [
        "print",
        saved(gear=FAR),
        "--paper",
        "letter",
        "--out",
        str(tmp_path / "o.pdf"),
        "--map",
        str(where),
    ]
    assert main([*words, "--only", "drill"]) == 0
    assert {page["sheet"] for page in json.loads(where.read_text("utf-8"))["pages"]} == {"drill"}


BAD = {
    "no such file": (["check", "nowhere.json"], "nowhere.json"),
    "a word too many": (["check", "FILE", "more"], "more"),
    "an unknown option": (["check", "FILE", "--loud"], "--loud"),
    "no paper": (["print", "FILE", "--out", "o.pdf"], "--paper"),
    "an unknown paper": (["print", "FILE", "--paper", "a9", "--out", "o.pdf"], "a9"),
    "an unknown kind of sheet": (
        ["print", "FILE", "--paper", "a4", "--out", "o.pdf", "--only", "drill,x"],
        "x",
    ),
    "out is the file": (["convert", "FILE", "FILE"], "is the file that is read"),
    "print over the file": (["print", "FILE", "--paper", "a4", "--out", "FILE"], "is the file that is read"),
    "a margin without room": (["print", "FILE", "--paper", "a4", "--out", "o.pdf", "--margin", "200"], "200"),
    "a map over the sheets": (
        ["print", "FILE", "--paper", "a4", "--out", "o.pdf", "--map", "o.pdf"],
        "is the file of the sheets",
    ),
    "a map folder that is not there": (
        ["print", "FILE", "--paper", "a4", "--out", "o.pdf", "--map", "no/such/map.json"],
        "map.json",
    ),
    "an out folder that is not there": (["convert", "FILE", "no/such/out.json"], "out.json"),
}


@pytest.mark.parametrize(("words", "named"), BAD.values(), ids=BAD)
def test_a_mistake_is_one_sentence_and_exit_2(words, named, saved, capsys, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    file = saved(gear=FAR)
    before = sorted(tmp_path.iterdir())
    assert main([file if word == "FILE" else word for word in words]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert named in told.err
    assert told.err.count("\n") == 1
    assert sorted(tmp_path.iterdir()) == before


def test_a_layout_that_cannot_be_read_leaves_the_old_pdf(saved, tmp_path, capsys):
    out = tmp_path / "out.pdf"
    out.write_bytes(b"old")
    assert (
        main(["print", saved(gear=[gear("A", 1, 1, card="none")]), "--paper", "a4", "--out", str(out)]) == 2
    )
    assert out.read_bytes() == b"old"
    assert "A › card" in capsys.readouterr().err
