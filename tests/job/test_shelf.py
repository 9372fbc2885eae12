"""Where new vehicles go, and what their files are called on every system."""

from pathlib import Path

import platformdirs
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.build import gear, layout

from bayboard.job.shelf import fresh_path, open_shelf, plain_name, shelf_folder
from bayboard.store.files import save_layout


@pytest.mark.parametrize(
    ("name", "file"),
    [
        ("Ostrel crew pickup · rear wall", "Ostrel-crew-pickup-rear-wall"),
        ("  ", "vehicle"),
        ("../../etc", "etc"),
        ("C:\\van", "C-van"),
        ("Überländer", "Überländer"),
        ("CON", "CON-vehicle"),
        ("lpt1", "lpt1-vehicle"),
        (".hidden", "hidden"),
        ("van.", "van"),
        ("-o", "o"),
        ("a" * 300, "a" * 60),
    ],
)
def test_a_file_is_called_plainly_after_its_vehicle(name, file):
    assert plain_name(name) == file


@settings(derandomize=True, max_examples=150, deadline=None)
@given(st.text(max_size=90))
def test_any_name_makes_a_file_name_that_every_system_takes(name):
    """Windows, "Naming Files, Paths, and Namespaces": reserved letters and names, how a name may end."""
    made = plain_name(name)
    assert made and len(f"{made}.bay".encode()) <= 200
    assert not set(made) & set('<>:"/\\|?*.\0') and made.strip() == made
    assert made.lower() not in {"con", "prn", "aux", "nul", "com1", "lpt9"}
    assert not made.startswith("-")
    assert Path(f"{made}.bay").name == f"{made}.bay"


def test_each_new_vehicle_has_a_path_of_its_own_in_a_folder_that_is_made(tmp_path):
    folder = tmp_path / "new" / "shelf"
    one = fresh_path(folder, "Van")
    one.touch()
    two = fresh_path(folder, "Van")
    two.touch()
    assert [p.name for p in (one, two, fresh_path(folder, "Van"))] == ["Van.bay", "Van-2.bay", "Van-3.bay"]


def test_a_folder_that_cannot_be_made_is_an_error_of_the_system(tmp_path):
    (tmp_path / "file").touch()
    with pytest.raises(OSError):
        fresh_path(tmp_path / "file" / "shelf", "Van")


def test_the_shelf_lies_in_the_documents_and_elsewhere_when_asked(tmp_path, monkeypatch):
    monkeypatch.delenv("BAYBOARD_SHELF", raising=False)
    monkeypatch.setattr(platformdirs, "user_documents_dir", lambda: str(tmp_path / "Documents"))
    assert shelf_folder() == tmp_path / "Documents" / "Bayboard"
    monkeypatch.setenv("BAYBOARD_SHELF", str(tmp_path / "demo"))
    assert shelf_folder() == tmp_path / "demo"
    assert not list(tmp_path.iterdir())


def test_a_plain_layout_on_the_shelf_has_its_picture_drawn(tmp_path):
    path = tmp_path / "van.json"
    save_layout(path, layout(gear=[gear("A1", 200, 200)]))
    shelf = open_shelf(tmp_path / "data")
    (one,) = shelf.find("", [], [path])
    assert (shelf.picture(one.file) or b"").startswith(b"\x89PNG")
    shelf.close()
