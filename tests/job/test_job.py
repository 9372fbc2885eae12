"""One open job: what is kept, what is shown, what is told."""

import json

import numpy as np
import pytest
from tests.build import card, gear, layout

import bayboard.rules.check as room
from bayboard.edits.move_gear import MoveGear
from bayboard.edits.place_gear import PlaceGear
from bayboard.edits.set_units import SetUnits
from bayboard.edits.turn_gear import TurnGear
from bayboard.job.job import Job, new_job, open_job
from bayboard.model.read import read
from bayboard.model.refused import Refused
from bayboard.routing.route import routes
from bayboard.rules.check import check
from bayboard.store.files import save_layout

PORT = {"id": "P", "kind": "power", "at": [50, 0], "z": 10, "towards": 0, "plug": 20}
RIGHT = MoveGear(("A1",), 10, 0)


def _lay():
    return layout(
        cards={"amp": card(100, 60, ports=[PORT])},
        bay={"entries": [{"id": "E1", "name": "e", "at": [10, 10], "carries": ["power"], "run": 100}]},
        gear=[gear("A1", 200, 150, "amp"), gear("A2", 500, 150, "amp")],
        leads=[{"id": "C1", "from": "E1", "to": "A1.P", "size": "4 AWG"}],
    )


@pytest.fixture
def job():
    return Job(_lay())


@pytest.fixture
def told(job):
    news = []
    job.on_change(news.append)
    return news


def _agrees(job):
    fresh = check(job.shown)
    assert (job.verdict.findings, job.verdict.unchecked) == (fresh.findings, fresh.unchecked)
    anew = routes(job.shown)
    assert list(job.routes) == list(anew)
    assert all(np.array_equal(job.routes[lead].points, anew[lead].points) for lead in anew)


def test_what_is_shown_has_the_verdict_and_routes_of_a_fresh_look(job):
    for act in (
        lambda: job.do(RIGHT),
        lambda: job.preview(MoveGear(("A1",), 250, 0)),
        lambda: job.preview(TurnGear(("A2",), 45)),
        job.undo,
        job.redo,
        lambda: job.do(SetUnits("in")),
        lambda: job.do(PlaceGear("A1", (990, 390))),
        job.drop_preview,
    ):
        act()
        _agrees(job)


def test_a_preview_is_shown_but_not_kept(job):
    before = job.layout
    job.preview(RIGHT)
    assert job.layout is before
    assert job.shown == RIGHT.apply(before)
    assert (job.dirty, job.undo_label) == (False, None)
    job.preview(TurnGear(("A1",), 90))
    assert job.shown == TurnGear(("A1",), 90).apply(before)
    job.drop_preview()
    assert job.shown is before


def test_doing_undoing_and_redoing_walk_the_same_layouts(job):
    first = job.layout
    job.do(RIGHT)
    second = job.layout
    assert (job.undo_label, job.redo_label) == ("Move A1 right 10 mm", None)
    assert job.undo() == "Move A1 right 10 mm"
    assert (job.layout, job.redo_label) == (first, "Move A1 right 10 mm")
    assert job.redo() == "Move A1 right 10 mm"
    assert job.layout is second
    assert (job.redo(), job.layout) == (None, second)


def test_a_preview_ends_when_anything_is_done(job):
    for act in (lambda: job.do(SetUnits("in")), job.undo, job.redo):
        job.preview(RIGHT)
        act()
        assert job.shown is job.layout


def test_key_presses_that_fold_are_undone_together(job):
    first = job.layout
    for _ in range(5):
        job.do(MoveGear(("A1",), 1, 0), folds=True)
    assert job.undo_label == "Move A1 right 5 mm"
    job.undo()
    assert job.layout is first


def test_callbacks_are_told_what_changed_by_id(job, told):
    job.do(MoveGear(("A2",), 0, 5))
    job.do(RIGHT)
    job.do(SetUnits("in"))
    (far, near, units) = told
    assert (far.ids, far.members, far.draft) == ({"A2"}, {"gear"}, True)
    assert near.ids == {"A1", "C1"}  # the lead's path goes with its end
    assert (units.ids & {"A1", "A2"}, units.members) == (set(), {"units"})


def test_a_preview_tells_that_the_draft_is_as_it_was(job, told):
    job.preview(MoveGear(("A2",), -300, 0))
    assert [(news.draft, news.verdict) for news in told] == [(False, True)]
    job.drop_preview()
    job.drop_preview()
    assert len(told) == 2


def test_an_edit_that_changes_nothing_is_not_told(job, told):
    job.do(MoveGear(("A1",), 0, 0))
    job.undo()
    assert told == []


def test_a_callback_can_be_taken_off(job):
    news = []
    end = job.on_change(news.append)
    job.do(RIGHT)
    end()
    end()
    job.undo()
    assert len(news) == 1


def test_a_callback_that_raises_leaves_job_and_other_callbacks_whole(job):
    news = []

    def broken(_):
        raise ValueError("painted upside down")

    job.on_change(broken)
    job.on_change(news.append)
    with pytest.raises(ValueError, match="upside down"):
        job.do(RIGHT)
    assert (len(news), job.undo_label) == (1, "Move A1 right 10 mm")
    job.on_change(broken)
    with pytest.raises(ExceptionGroup):
        job.undo()
    assert len(news) == 2
    _agrees(job)


def test_what_a_callback_does_is_told_after_what_it_was_told(job):
    seen = []

    def answer(news):
        if not seen:
            seen.append(("first", news.members))
            job.do(SetUnits("in"))
        else:
            seen.append(("then", news.members))

    other = []
    job.on_change(answer)
    job.on_change(lambda news: other.append(news.members))
    job.do(RIGHT)
    assert seen == [("first", {"gear"}), ("then", {"units"})]
    assert other == [{"gear"}, {"units"}]


def test_an_edit_that_raises_leaves_everything_as_it_was(job, told):
    job.preview(RIGHT)
    shown, told[:] = job.shown, []
    for edit in (MoveGear(("Z",), 1, 1), PlaceGear("A1", (1e6, 0))):
        with pytest.raises((KeyError, Refused)):
            job.do(edit)
        with pytest.raises((KeyError, Refused)):
            job.preview(edit)
    assert (job.shown, job.undo_label, told) == (shown, None, [])


def test_a_rule_that_fails_leaves_the_draft_and_the_next_edit_works(job, monkeypatch):
    before, verdict = job.layout, job.verdict

    def failing(self, layout):
        raise ZeroDivisionError

    with monkeypatch.context() as patched:
        patched.setattr(room.Checker, "begin", failing)
        with pytest.raises(ZeroDivisionError):
            job.do(RIGHT)
    assert (job.layout, job.shown, job.verdict, job.undo_label) == (before, before, verdict, None)
    job.do(RIGHT)
    _agrees(job)


def test_dirty_tells_the_draft_from_what_is_in_the_file(job, tmp_path):
    path = tmp_path / "a.json"
    assert not job.dirty
    job.do(RIGHT)
    assert job.dirty
    job.save(path)
    assert (job.dirty, job.path) == (False, path)
    job.do(RIGHT)
    job.undo()
    assert not job.dirty
    job.undo()
    assert job.dirty
    job.redo()
    assert not job.dirty


def test_a_saved_job_opens_as_it_was(job, tmp_path):
    job.do(RIGHT)
    job.save(tmp_path / "a.json")
    again = open_job(tmp_path / "a.json")
    assert (again.layout, again.dirty, again.path) == (job.layout, False, tmp_path / "a.json")


def test_saving_tells_that_the_draft_is_in_a_file(job, told, tmp_path):
    job.save(tmp_path / "a.json")
    assert [(news.ids, news.draft) for news in told] == [(frozenset(), True)]


def test_saving_without_a_file_or_where_none_can_be_is_refused_and_changes_nothing(job, tmp_path):
    job.do(RIGHT)
    with pytest.raises(Refused, match="no file yet"):
        job.save()
    with pytest.raises(Refused):
        job.save(tmp_path / "nowhere" / "a.json")
    assert (job.path, job.dirty) == (None, True)


def test_what_cannot_be_opened_is_refused(tmp_path):
    (tmp_path / "bad.json").write_text("{}", encoding="utf-8")
    for path in (tmp_path / "bad.json", tmp_path / "none.json"):
        with pytest.raises(Refused):
            open_job(path)


def test_a_new_job_is_a_layout_that_can_be_saved_and_read(tmp_path):
    job = new_job("Ostrel", "in")
    assert not job.dirty
    job.save(tmp_path / "new.json")
    assert json.loads((tmp_path / "new.json").read_text(encoding="utf-8"))["vehicle"] == {"name": "Ostrel"}
    assert (job.layout.units, job.layout.boards, job.layout.bay.wall) == ("in", (), ())


def test_setting_aside_writes_the_draft_next_to_all_others(tmp_path):
    save_layout(tmp_path / "ostrel.json", _lay())
    job = open_job(tmp_path / "ostrel.json")
    job.do(RIGHT)
    job.preview(TurnGear(("A1",), 90))
    first, second = job.set_aside(tmp_path / "aside" / "deep"), job.set_aside(tmp_path / "aside" / "deep")
    assert first != second
    for path in (first, second):
        assert path.parent == tmp_path / "aside" / "deep"
        assert path.name.startswith("ostrel-")
        assert read(path.read_bytes()) == job.layout
    assert (job.dirty, open_job(tmp_path / "ostrel.json").layout) == (True, _lay())


def test_setting_aside_finds_a_plain_name_for_any_vehicle(tmp_path):
    names = []
    for vehicle in ("../../etc", "Ørstel « 3 »", "   x   "):
        names.append(new_job(vehicle).set_aside(tmp_path).name)
    assert all(name.isascii() and "/" not in name and name.endswith(".json") for name in names)
