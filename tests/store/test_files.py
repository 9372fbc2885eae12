"""Layouts on disk: opened, or one sentence; saved whole, or the old file left as it was."""

import os
from pathlib import Path

import pytest
from tests.build import document, gear, layout
from tests.model.rich import rich

from bayboard.model.read import from_document
from bayboard.model.refused import Refused
from bayboard.model.write import write
from bayboard.store.files import open_layout, save_layout, write_whole


def refusal(act, *words):
    with pytest.raises(Refused) as caught:
        act(*words)
    return caught.value


def test_what_is_saved_opens_the_same(tmp_path):
    whole = from_document(rich())
    save_layout(tmp_path / "van.json", whole)
    assert open_layout(tmp_path / "van.json") == whole


def test_the_file_holds_the_normal_form_in_utf_8_with_plain_line_feeds(tmp_path):
    whole = from_document(rich())
    save_layout(tmp_path / "van.json", whole)
    assert (tmp_path / "van.json").read_bytes() == write(whole).encode("utf-8")


def test_a_name_in_any_script_is_a_fine_name(tmp_path):
    path = tmp_path / "Größe 車 №1.json"
    save_layout(path, layout())
    assert open_layout(path) == layout()


def test_saving_replaces_the_file_whole_and_leaves_nothing_beside_it(tmp_path):
    path = tmp_path / "van.json"
    path.write_text("x" * 100_000, encoding="utf-8")
    save_layout(path, layout())
    assert open_layout(path) == layout()
    assert list(tmp_path.iterdir()) == [path]


def test_a_text_may_be_given_as_a_plain_string_path(tmp_path):
    save_layout(str(tmp_path / "van.json"), layout())
    assert open_layout(str(tmp_path / "van.json")) == layout()


def test_a_fault_in_the_document_names_file_and_place(tmp_path):
    path = tmp_path / "van.json"
    path.write_text('{"bayboard": 1, "gear": [{"id": "A2", "at": [NaN, 0]}]}', encoding="utf-8")
    assert refusal(open_layout, path).place == "van.json › gear A2 › at"


def test_a_newer_file_is_named(tmp_path):
    path = tmp_path / "van.json"
    path.write_text('{"bayboard": 2}', encoding="utf-8")
    assert str(refusal(open_layout, path)).startswith("van.json: this file was made by a newer Bayboard.")


def test_a_file_of_other_bytes_is_refused_by_name(tmp_path):
    path = tmp_path / "van.json"
    path.write_bytes(b"\x89PNG\r\n\x1a\n")
    assert "van.json: byte 1 is not UTF-8" in str(refusal(open_layout, path))


def test_more_than_20_mb_are_refused_unread(tmp_path):
    path = tmp_path / "van.json"
    with path.open("wb") as file:
        file.truncate(3_000_000_000)  # sparse: takes no room, but would if it were read
    assert "20 MB" in str(refusal(open_layout, path))


def test_what_is_no_file_is_said(tmp_path):
    assert "no such file" in str(refusal(open_layout, tmp_path / "gone.json"))
    assert "this is a folder" in str(refusal(open_layout, tmp_path))
    assert "no such file" in str(refusal(open_layout, Path("a\0b.json")))


def test_a_folder_that_is_not_there_is_said_when_saving(tmp_path):
    assert "no such folder" in str(refusal(save_layout, tmp_path / "gone" / "van.json", layout()))
    assert "this is a folder" in str(refusal(save_layout, tmp_path, layout()))
    assert "no such folder" in str(refusal(save_layout, Path("a\0b.json"), layout()))
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("call", "error", "says"),
    [
        ("fsync", OSError(28, "No space left on device"), "no space left on device"),
        ("replace", PermissionError(13, "Permission denied"), "nothing may be written there"),
        ("replace", OSError(5, "Input/output error"), "input/output error"),
    ],
)
def test_a_save_that_fails_leaves_the_old_file_and_no_half_one(tmp_path, monkeypatch, call, error, says):
    path = tmp_path / "van.json"
    save_layout(path, layout())

    def fail(*_):
        raise error

    monkeypatch.setattr(os, call, fail)
    monkeypatch.setattr(Path, "replace", fail) if call == "replace" else None
    refused = refusal(save_layout, path, layout(gear=[gear("A1", 1, 2)]))
    assert says in str(refused)
    assert refused.place == str(path)
    monkeypatch.undo()
    assert open_layout(path) == layout()
    assert list(tmp_path.iterdir()) == [path]


def test_a_crash_in_the_middle_of_writing_leaves_the_old_file(tmp_path, monkeypatch):
    path = tmp_path / "van.json"
    save_layout(path, layout())

    def crash(_):
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", crash)
    with pytest.raises(KeyboardInterrupt):
        save_layout(path, from_document(document(gear=[gear("A1", 1, 2)])))
    monkeypatch.undo()
    assert open_layout(path) == layout()
    assert list(tmp_path.iterdir()) == [path]


def test_half_a_letter_typed_somewhere_does_not_lose_the_work(tmp_path):
    from msgspec.structs import replace

    path = tmp_path / "van.json"
    plain = layout()
    save_layout(path, replace(plain, vehicle=replace(plain.vehicle, name="van \ud83d")))
    assert open_layout(path).vehicle.name == "van ?"


def test_a_link_stays_a_link_to_the_file_that_is_replaced(tmp_path):
    path, link = tmp_path / "van.json", tmp_path / "link.json"
    save_layout(path, layout())
    try:
        link.symlink_to(path)
    except OSError:
        return  # a Windows account without the right to make links has nothing to lose here
    save_layout(link, layout(gear=[gear("A1", 1, 2)]))
    assert link.is_symlink()
    assert len(open_layout(path).gear) == 1


def test_a_file_that_may_only_be_read_is_not_replaced(tmp_path, monkeypatch):
    path = tmp_path / "van.json"
    save_layout(path, layout())
    monkeypatch.setattr(os, "access", lambda *_: False)  # a test may run as one who may do anything
    assert "may only be read" in str(refusal(write_whole, path, b"x"))
    assert open_layout(path) == layout()


def test_a_new_file_is_open_to_whom_any_new_file_is(tmp_path):
    (tmp_path / "plain").write_bytes(b"")
    save_layout(tmp_path / "van.json", layout())
    assert (tmp_path / "van.json").stat().st_mode == (tmp_path / "plain").stat().st_mode
