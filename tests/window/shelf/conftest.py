"""A shelf with some vehicles, and a window that has it."""

import pytest
from msgspec.structs import replace
from tests.build import gear, layout
from tests.store.vehicles import age

from bayboard.job.picture import picture
from bayboard.job.shelf import fresh_path
from bayboard.store.job_file import make_job_file
from bayboard.window.shelf.stage import add_shelf


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """Return the folder of the shelf, empty."""
    path = tmp_path / "shelf"
    path.mkdir()
    monkeypatch.setenv("BAYBOARD_SHELF", str(path))
    return path


@pytest.fixture
def put(folder):
    """Return a function that puts a vehicle on the shelf, each newer than the one before."""
    made = []

    def vehicle(name, *notes, at=None):
        plain = layout(gear=[gear("A1", 200, 200)])
        named = replace(plain, vehicle=replace(plain.vehicle, name=name))
        path = fresh_path(at or folder, name)
        with make_job_file(path, named, picture=picture(named)) as file:
            for note in notes:
                file.keep(note)
        made.append(path)
        _set_changed(path, f"2026-01-01T00:{len(made):02}:00Z")
        return path

    return vehicle


def _set_changed(path, changed):
    """Write into a job file when it was worked on."""
    import sqlite3

    from bayboard.store.sealed import seal

    conn = sqlite3.connect(path)
    row = list(conn.execute("SELECT parent, changed, sha256, at, picture_sha256 FROM draft").fetchone())
    row[1] = changed
    conn.execute("UPDATE draft SET changed = ?, seal = ?", (changed, seal("draft", *row)))
    conn.commit()
    conn.close()
    age(path)


@pytest.fixture
def shelf(open_window, qtbot):
    """Return a function that opens a window with the shelf open and looked over: (hands, stage)."""
    stages = []

    def opened(*args, **members):
        hands = open_window(*args, **members)
        stage = add_shelf(hands.window)
        stages.append(stage)
        stage.open()
        qtbot.waitUntil(lambda: stage.desk.share == 1.0, timeout=10_000)
        hands.app.processEvents()
        return hands, stage

    yield opened
    for stage in stages:
        stage.desk.end()
