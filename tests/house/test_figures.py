"""The long runs' figures are kept, meet their goals and are not older than the code they measured."""

import importlib.util
from pathlib import Path

import pytest

LONG = Path(__file__).resolve().parents[1] / "long"
_spec = importlib.util.spec_from_file_location("figures", LONG / "figures.py")
figures = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(figures)

KEPT = figures.read()


@pytest.mark.parametrize("name", KEPT)
def test_a_figure_meets_its_goal(name):
    kept = KEPT[name]
    if kept.get("goal") is not None:
        assert kept["value"] <= kept["goal"], f"{name}: {kept['value']} against a goal of {kept['goal']}"


@pytest.mark.parametrize("name", KEPT)
def test_a_figure_is_not_older_than_its_room(name):
    kept = KEPT[name]
    assert kept["code"] == figures.code_hash(kept["rooms"]), f"run tests/long/all.py: {name} is stale"


def test_a_changed_line_makes_a_figure_stale(tmp_path, monkeypatch):
    monkeypatch.setattr(figures, "SOURCE", tmp_path)
    room = tmp_path / "room"
    room.mkdir()
    (room / "a.py").write_text('"""Words."""\nx = 1\n', encoding="utf-8")
    first = figures.code_hash(["room"])
    (room / "a.py").write_text('"""Other words."""\n\n# why\nx = 1\n', encoding="utf-8")
    assert figures.code_hash(["room"]) == first
    (room / "a.py").write_text('"""Other words."""\nx = 2\n', encoding="utf-8")
    assert figures.code_hash(["room"]) != first
