"""The index is never the only copy: broken, locked, newer or gone, it is begun again without a word."""

import contextlib
import sqlite3
import subprocess
import sys
import threading

import pytest
from tests.store.vehicles import names, vehicle

from bayboard.store import shelf_index
from bayboard.store.shelf import Shelf


@pytest.fixture
def folder(tmp_path):
    made = tmp_path / "shop"
    made.mkdir()
    for stem in ("alder", "birch"):
        vehicle(made, stem)
    return made


@pytest.fixture
def index(tmp_path, folder):
    path = tmp_path / "data" / "shelf.sqlite3"
    found(path, folder)
    return path


def found(index, folder, text=""):
    shelf = Shelf(index)
    try:
        return sorted(names(shelf.find(text, [folder])))
    finally:
        shelf.close()


def _garbage(path):
    path.write_bytes(b"this is not a database" * 400)


def _cut(path):
    path.write_bytes(path.read_bytes()[:5000])


def _zeros(path):
    data = path.read_bytes()
    path.write_bytes(data[:4096] + bytes(len(data) - 4096))


def _newer(path):
    _run(path, f"PRAGMA user_version = {shelf_index.FORM + 1}")


def _foreign(path):
    _run(path, "PRAGMA application_id = 1")


def _no_table(path):
    _run(path, "DROP TABLE vehicle")


def _other_columns(path):
    _run(path, "ALTER TABLE vehicle DROP COLUMN words")


def _empty(path):
    path.write_bytes(b"")


def _gone(path):
    path.unlink()


def _folder(path):
    path.unlink()
    path.mkdir()


def _run(path, statement):
    conn = sqlite3.connect(path)
    conn.execute(statement)
    conn.commit()
    conn.close()


HARMS = (
    _garbage, _cut, _zeros, _newer, _foreign, _no_table, _other_columns, _empty, _gone, _folder,
)  # fmt: skip


@pytest.mark.parametrize("harm", HARMS, ids=lambda harm: harm.__name__.strip("_"))
def test_a_bad_index_is_begun_again(index, folder, harm):
    harm(index)
    assert found(index, folder) == ["alder", "birch"]
    assert found(index, folder, "birch") == ["birch"]


def test_a_flipped_byte_never_hides_or_adds_a_vehicle(index, folder):
    whole = index.read_bytes()
    for at in range(0, len(whole), 97):
        harmed = bytearray(whole)
        harmed[at] ^= 0x10
        index.write_bytes(bytes(harmed))
        shelf = Shelf(index)
        try:
            there = shelf.find("", [folder])
            assert sorted(f.path.stem for f in there) == ["alder", "birch"]
            assert all(f.facts.name for f in there)
        finally:
            shelf.close()


def test_an_index_that_somebody_keeps_locked_is_done_without(index, folder, monkeypatch):
    monkeypatch.setattr(shelf_index, "PATIENCE", 0.05)
    vehicle(folder, "cedar")
    conn = sqlite3.connect(index)
    conn.execute("BEGIN EXCLUSIVE")
    assert found(index, folder) == ["alder", "birch", "cedar"]
    conn.rollback()
    conn.close()
    assert found(index, folder) == ["alder", "birch", "cedar"]


def test_a_disk_without_room_for_the_index_is_done_without(index, folder):
    shelf = Shelf(index)
    (pages,) = shelf._index._conn.execute("PRAGMA page_count").fetchone()
    shelf._index._conn.execute(f"PRAGMA max_page_count = {pages}")
    for number in range(12):
        vehicle(folder, f"more-{number}", notes=("a note that takes room " * 60,))
    assert len(shelf.find("", [folder])) == 14
    shelf.close()


def test_a_folder_that_cannot_be_written_is_done_without(tmp_path, folder):
    (tmp_path / "file").write_text("in the way", encoding="utf-8")
    assert found(tmp_path / "file" / "shelf.sqlite3", folder) == ["alder", "birch"]


def test_the_index_is_used_again_where_it_is_whole(index, folder, monkeypatch):
    from bayboard.store import shelf

    monkeypatch.setattr(shelf, "look_at", None)
    assert found(index, folder) == ["alder", "birch"]


def test_two_shelves_at_once_do_not_break_each_other(index, folder):
    broken = []

    def search():
        """Search and let the files be read anew, over and over."""
        try:
            for _ in range(8):
                shelf = Shelf(index)
                with contextlib.closing(shelf):
                    shelf._index.forget([str(folder / "alder.bay")])
                    assert sorted(names(shelf.find("", [folder]))) == ["alder", "birch"]
        except BaseException as error:
            broken.append(error)

    threads = [threading.Thread(target=search) for _ in range(3)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert broken == []


def test_two_programs_that_begin_the_index_at_once_both_find_all(tmp_path, folder):
    code = (
        "import sys; from pathlib import Path; from bayboard.store.shelf import Shelf;"
        "print(len(Shelf(Path(sys.argv[1])).find('', [Path(sys.argv[2])])))"
    )
    words = [sys.executable, "-c", code, str(tmp_path / "new" / "index"), str(folder)]
    running = [subprocess.Popen(words, stdout=subprocess.PIPE, text=True) for _ in range(2)]
    assert [child.communicate()[0].strip() for child in running] == ["2", "2"]


def test_the_index_passes_sqlites_own_check(index):
    """SQLite documentation, PRAGMA integrity_check."""
    conn = sqlite3.connect(index)
    assert conn.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
    conn.close()
