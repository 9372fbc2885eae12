"""The shelf: what is found is what is on the disk, however it came there."""

import os
import shutil
import sqlite3
import subprocess
import sys
import time

import pytest
from tests.build import layout
from tests.store.vehicles import PNG, age, names, rename_in, vehicle

from bayboard.store.files import save_layout
from bayboard.store.header import journal_of
from bayboard.store.job_file import open_job_file
from bayboard.store.shelf import Shelf


@pytest.fixture
def folder(tmp_path):
    made = tmp_path / "shop"
    made.mkdir()
    return made


@pytest.fixture
def shelf(tmp_path):
    opened = Shelf(tmp_path / "data" / "shelf.sqlite3")
    yield opened
    opened.close()


def test_a_vehicle_tells_its_name_notes_and_revisions(folder, shelf):
    path = vehicle(folder, "pickup", "Ostrel pickup", "for the club", ("first mock-up", "relay added"))
    (one,) = shelf.find("", [folder])
    facts = one.facts
    assert (one.path, facts.name, facts.note, facts.revisions) == (path, "Ostrel pickup", "for the club", 2)
    assert [(n.number, n.note) for n in facts.notes] == [(2, "relay added"), (1, "first mock-up")]
    assert (facts.printed, facts.trouble, one.holder) == ("", "", None)
    with open_job_file(path, look=True) as file:
        assert one.changed == file.draft().changed


@pytest.mark.parametrize(
    ("text", "there"),
    [
        ("ostrel", ["Ostrel pickup"]),
        ("PICKUP mock", ["Ostrel pickup"]),
        ("club", ["Ostrel pickup"]),
        ("menagere", ["Fourgon"]),
        ("van-7", ["Fourgon"]),
        ("nothing of this", []),
    ],
)
def test_words_find_by_name_vehicle_note_revision_note_and_file(folder, shelf, text, there):
    vehicle(folder, "pickup", "Ostrel pickup", "for the club", ("first mock-up",))
    vehicle(folder, "van-7", "Fourgon", "", ("câblage ménagère",))
    assert names(shelf.find(text, [folder])) == there


def test_what_is_changed_added_renamed_and_deleted_is_seen_at_the_next_search(folder, shelf):
    one, two = vehicle(folder, "a", "Alder"), vehicle(folder, "b", "Birch")
    assert set(names(shelf.find("", [folder]))) == {"Alder", "Birch"}
    rename_in(one, "Cedar")
    two.unlink()
    vehicle(folder, "d", "Damson")
    assert set(names(shelf.find("", [folder]))) == {"Cedar", "Damson"}
    one.rename(folder / "e.bay")
    assert {f.path.name for f in shelf.find("", [folder])} == {"d.bay", "e.bay"}


def test_a_change_within_the_same_tick_of_the_clock_is_seen(folder, shelf):
    path = vehicle(folder, "a", "Alder", aged=False)
    before = path.stat()
    assert names(shelf.find("", [folder])) == ["Alder"]
    rename_in(path, "Cedar")
    with path.open("rb") as file:
        same_size = len(file.read()) == before.st_size
    os.utime(path, ns=(before.st_atime_ns, before.st_mtime_ns))
    assert names(shelf.find("", [folder])) == ["Cedar"]
    assert same_size or path.stat().st_mtime_ns == before.st_mtime_ns


def test_only_what_changed_is_read_again(folder, shelf, monkeypatch):
    for stem in "abc":
        vehicle(folder, stem)
    shelf.find("", [folder])
    read = []
    from bayboard.store import shelf as module

    look_at = module.look_at
    monkeypatch.setattr(module, "look_at", lambda path, draw: read.append(path.name) or look_at(path, draw))
    shelf.find("", [folder])
    age(folder / "b.bay", 7200)
    shelf.find("", [folder])
    assert read == ["b.bay"]


def test_the_newest_worked_on_comes_first(folder, shelf):
    for stem, stamp in (
        ("a", "2026-03-01T10:00:00Z"),
        ("b", "2026-05-01T10:00:00Z"),
        ("c", "2026-04-01T10:00:00Z"),
    ):
        path = vehicle(folder, stem)
        _set_changed(path, stamp)
    assert names(shelf.find("", [folder])) == ["b", "c", "a"]


def _set_changed(path, changed):
    from bayboard.store import drafts
    from bayboard.store.sealed import seal

    conn = sqlite3.connect(path)
    facts = "parent, changed, sha256, at, picture_sha256"
    row = list(conn.execute(f"SELECT {facts} FROM draft").fetchone())
    row[1] = changed
    conn.execute("UPDATE draft SET changed = ?, seal = ?", (changed, seal("draft", *row)))
    conn.commit()
    conn.close()
    assert drafts
    age(path)


def test_the_picture_is_the_drafts_own_or_drawn(folder, tmp_path):
    vehicle(folder, "a")
    vehicle(folder, "b", picture=None)
    shelf = Shelf(tmp_path / "index", draw=lambda layout: b"drawn " + layout.vehicle.name.encode())
    found = {f.path.stem: shelf.picture(f.file) for f in shelf.find("", [folder])}
    shelf.close()
    assert found == {"a": PNG, "b": b"drawn b"}


def test_look_over_yields_its_share_up_to_the_whole(folder, shelf):
    for stem in "abcd":
        vehicle(folder, stem)
    shares = list(shelf.look_over([folder]))
    assert shares[0] == 0.0 and shares[-1] == 1.0
    assert shares == sorted(shares) and len(shares) >= 5
    assert len(shelf.known([folder])) == 4


def test_what_was_known_is_told_without_a_look_at_the_disk(folder, shelf, tmp_path):
    vehicle(folder, "a", "Alder")
    list(shelf.look_over([folder]))
    away = folder.rename(tmp_path / "away")
    assert names(shelf.known([folder])) == ["Alder"]
    assert shelf.find("", [folder]) == ()
    away.rename(folder)
    assert names(shelf.find("", [folder])) == ["Alder"]


def test_a_folder_that_is_not_there_has_no_vehicles(shelf, tmp_path):
    assert shelf.find("", [tmp_path / "nowhere", tmp_path / "no\0where"]) == ()


def test_vehicles_anywhere_are_found_too_and_once(folder, shelf, tmp_path):
    inside, outside = vehicle(folder, "a", "Alder"), vehicle(tmp_path, "b", "Birch")
    plain = tmp_path / "plain.json"
    save_layout(plain, layout(vehicle={"name": "Plain van", "note": "on a stick"}))
    asked = ([folder], [inside, outside, plain, tmp_path / "gone.bay"])
    assert sorted(names(shelf.find("", *asked))) == ["Alder", "Birch", "Plain van"]
    assert names(shelf.find("stick", *asked)) == ["Plain van"]
    assert sorted(names(shelf.known(*asked))) == ["Alder", "Birch", "Plain van"]


def test_a_job_file_under_another_name_is_known_by_what_is_in_it(folder, shelf, tmp_path):
    path = vehicle(tmp_path, "van", "Tarn van").rename(tmp_path / "van.old")
    (one,) = shelf.find("tarn", [folder], [path])
    assert one.facts.trouble == ""


def test_other_files_and_folders_are_not_vehicles(folder, shelf):
    (folder / "notes.txt").write_text("a", encoding="utf-8")
    (folder / "inner.bay").mkdir()
    (folder / ".a.bay").write_bytes(b"")
    assert shelf.find("", [folder]) == ()


# --- trouble ---


def _text(path):
    path.write_text("hello", encoding="utf-8")


def _empty(path):
    path.write_bytes(b"")


def _cut(path):
    path.write_bytes(path.read_bytes()[:3000])


def _flip(path):
    data = bytearray(path.read_bytes())
    data[data.index(b'"bayboard"') + 2] ^= 1
    path.write_bytes(bytes(data))


def _newer(path):
    _pragma(path, "PRAGMA user_version = 99")


def _foreign(path):
    _pragma(path, "PRAGMA application_id = 7")


def _view(path):
    endless = "WITH RECURSIVE n(x) AS (SELECT 1 UNION ALL SELECT x + 1 FROM n) SELECT x FROM n"
    _pragma(path, f"CREATE VIEW more AS {endless}")


def _pragma(path, statement):
    conn = sqlite3.connect(path)
    conn.execute(statement)
    conn.commit()
    conn.close()


@pytest.mark.parametrize(
    ("harm", "said"),
    [
        (_text, "this is not a job file"),
        (_empty, "this file is empty"),
        (_cut, "damaged"),
        (_flip, "damaged"),
        (_newer, "this was made by a newer Bayboard"),
        (_foreign, "this is not a job file"),
        (_view, "something that Bayboard does not write"),
    ],
)
def test_a_file_that_cannot_be_read_is_listed_with_its_sentence(folder, shelf, harm, said):
    path = vehicle(folder, "pickup", "Plain bay")
    vehicle(folder, "other")
    harm(path)
    found = {f.path.stem: f.facts for f in shelf.find("", [folder])}
    assert said in found["pickup"].trouble
    assert found["other"].trouble == ""


def test_what_was_known_of_a_file_stays_when_it_breaks(folder, shelf):
    path = vehicle(folder, "a", "Alder", notes=("wired",))
    shelf.find("", [folder])
    _text(path)
    (one,) = shelf.find("wired", [folder])
    assert one.facts.name == "Alder" and one.facts.trouble == "this is not a job file"
    assert shelf.picture(one.file) == PNG


def test_a_file_that_is_whole_again_is_told_so(folder, shelf):
    path = vehicle(folder, "a", "Alder")
    whole = path.read_bytes()
    _text(path)
    assert shelf.find("", [folder])[0].facts.trouble
    path.write_bytes(whole)
    assert shelf.find("", [folder])[0].facts.trouble == ""


def test_the_notes_of_a_newer_file_are_found(folder, shelf):
    _newer(vehicle(folder, "a", notes=("relay added",)))
    (one,) = shelf.find("relay", [folder])
    assert one.facts.revisions == 1


def test_a_file_that_may_not_be_read_is_read_once_it_may(folder, shelf, monkeypatch):
    from bayboard.model.refused import Refused
    from bayboard.store import shelf_reader

    vehicle(folder, "a", "Alder")
    header = shelf_reader.read_header

    def refuse(path):
        raise Refused(str(path), "this file may not be read")

    monkeypatch.setattr(shelf_reader, "read_header", refuse)
    assert shelf.find("", [folder])[0].facts.trouble == "this file may not be read"
    monkeypatch.setattr(shelf_reader, "read_header", header)
    assert shelf.find("", [folder])[0].facts == shelf.find("alder", [folder])[0].facts


def test_a_change_that_was_cut_short_is_said(folder, shelf):
    path = vehicle(folder, "a", "Alder")
    journal_of(path).write_bytes(bytes.fromhex("d9d505f920a163d7") + bytes(2000))
    age(path)
    assert "cut short" in shelf.find("", [folder])[0].facts.trouble
    journal_of(path).unlink()
    assert shelf.find("", [folder])[0].facts.trouble == ""


def test_listing_leaves_files_as_they_are(folder, shelf):
    paths = [vehicle(folder, "a"), vehicle(folder, "b")]
    _cut(paths[1])
    before = [(p.read_bytes(), p.stat().st_mtime_ns) for p in paths]
    shelf.find("", [folder])
    assert [(p.read_bytes(), p.stat().st_mtime_ns) for p in paths] == before
    assert sorted(p.name for p in folder.iterdir()) == ["a.bay", "b.bay"]


def test_an_endless_question_in_a_file_is_ended(folder, shelf, monkeypatch):
    """A file's own tables may be views that never end; the clock stops them."""
    from bayboard.store import shelf_reader

    path = vehicle(folder, "a")
    conn = sqlite3.connect(path)
    endless = (
        "WITH RECURSIVE n(x) AS (SELECT 1 UNION ALL SELECT x + 1 FROM n) SELECT 1, x, 'a' FROM n WHERE x < 0"
    )
    conn.execute("ALTER TABLE print RENAME TO was")
    conn.execute(f"CREATE VIEW print (number, at, revision) AS {endless}")
    conn.commit()
    found = conn.execute(
        "SELECT type, name, tbl_name, sql FROM sqlite_master ORDER BY name, type, sql"
    ).fetchall()
    conn.close()
    monkeypatch.setattr(shelf_reader, "LONGEST", 0.2)
    monkeypatch.setattr(shelf_reader.schema, "expected", lambda: tuple(found))
    start = time.monotonic()
    assert shelf.find("", [folder])[0].facts.trouble
    assert time.monotonic() - start < 5.0


# --- who has it open ---


def test_a_file_that_is_open_here_is_held(folder, shelf):
    path = vehicle(folder, "a")
    with open_job_file(path):
        (one,) = shelf.find("", [folder])
        assert one.holder is not None and one.holder.since
    (one,) = shelf.find("", [folder])
    assert one.holder is None


def test_a_program_that_is_gone_holds_nothing(folder, shelf):
    path = vehicle(folder, "a")
    code = (
        "import os, sys; from pathlib import Path; from bayboard.store.job_file import open_job_file;"
        "open_job_file(Path(sys.argv[1])); os._exit(1)"
    )
    subprocess.run([sys.executable, "-c", code, str(path)], check=False)
    (one,) = shelf.find("", [folder])
    assert one.facts.hold is not None and one.holder is None


# --- where it lies does not matter ---


def test_a_copied_folder_is_another_folder(folder, shelf, tmp_path):
    vehicle(folder, "a", "Alder")
    other = tmp_path / "other"
    shutil.copytree(folder, other)
    assert {f.path.parent for f in shelf.find("alder", [folder, other])} == {folder, other}
    assert [f.path.parent for f in shelf.find("alder", [other])] == [other]


def test_a_file_whose_name_is_no_text_is_listed_with_its_sentence(folder, shelf, monkeypatch):
    """A disk written on another system may give such a name; Python spells it with lone halves of letters."""
    from bayboard.store import shelf as module

    vehicle(folder, "a", "Alder")
    odd = str(folder / "gr\udcfcn.bay")
    listed = module._job_files
    monkeypatch.setattr(module, "_job_files", lambda entries: [*listed(entries), (odd, (10**18, 5))])
    found = shelf.find("", [folder])
    assert names(found) == ["Alder", "gr?n"]
    assert "letters that are no text" in found[1].facts.trouble
    assert shelf.picture(odd) is None
    assert names(shelf.find("gr?n", [folder])) == ["gr?n"]
    assert names(shelf.find("", [folder], [folder / "gr\udcfcn.bay"])) == ["Alder", "gr?n"]


def test_files_made_to_harm_are_listed_and_harm_nobody(tmp_path):
    """The mutants of the job file's own tests: any of them gives a card, in good time."""
    from tests.store.mutating import mutants

    from bayboard.store.found import Found, told, words_of
    from bayboard.store.shelf_reader import look_at

    for seed, kind, path in mutants(tmp_path, 30, seed=1040):
        start = time.process_time()
        look = look_at(path)
        found = Found(str(path), look.changed, words_of(path, look.facts), told(look.facts))
        assert found.facts == look.facts, (seed, kind)
        assert time.process_time() - start < 3.0, (seed, kind)
