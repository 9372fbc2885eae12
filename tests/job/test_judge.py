"""A preview shows the moved piece at once; what the rules say follows, and is never an older answer."""

import pytest
from tests.bays import bay

from bayboard.edits.move_gear import MoveGear
from bayboard.job.job import Job
from bayboard.model.read import from_document
from bayboard.rules.check import check
from bayboard.rules.finding import heads

START = from_document(bay(6, across=3))
MOVE = MoveGear(("A1",), 40.0, -9.0)
AFTER = MOVE.apply(START)
MOVED = {"A1", "P1", "G1", "S1", "S2"}


@pytest.fixture
def job():
    """Return a job whose preview has only begun to be judged."""
    job = Job(START)
    assert job.verdict
    job.preview(MOVE, within=0.0)
    return job


def test_the_piece_is_shown_where_it_is_before_the_rules_are_done(job):
    assert not job.judged
    assert job.shown == AFTER
    assert job.scene.placed["A1"].at == AFTER.gear[1].at


def test_nothing_is_heard_of_what_moved_until_the_rules_are_done(job):
    about = {head for finding in job.heard.findings for head in heads(finding)}
    assert about
    assert not about & MOVED
    before = check(START)
    assert all(job.heard.number(f) == before.number(f) for f in job.heard.findings)


def test_its_leads_go_along_until_their_way_is_found(job):
    old, shown = Job(START).routes, job.scene.carried
    end = job.scene.placed["A1"]
    plug = next(port for port in end.card.ports if port.id == "P")
    assert shown["P1"].points[-1].tolist() == pytest.approx(end.port_at(plug)[:2])
    assert shown["P1"].points[0].tolist() == old["P1"].points[0].tolist()
    assert shown["P4"].points.tolist() == old["P4"].points.tolist()


def test_judged_bit_by_bit_it_says_what_a_fresh_check_says(job):
    news = []
    job.on_change(news.append)
    parts = 0
    while not job.judge(0.0):
        parts += 1
    assert parts > 10
    assert job.heard == job.verdict == check(AFTER)
    assert [(one.verdict, one.draft) for one in news] == [(True, False)]


def test_who_asks_for_the_verdict_gets_the_true_one_at_once(job):
    assert job.verdict == check(AFTER)
    assert job.routes["P1"].points.tolist() == Job(AFTER).routes["P1"].points.tolist()


@pytest.mark.parametrize("parts", [0, 3, 12])
def test_a_newer_place_takes_over_whatever_was_begun(job, parts):
    for _ in range(parts):
        job.judge(0.0)
    other = MoveGear(("A1",), -20.0, 15.0)
    job.preview(other, within=0.0)
    assert not job.judged
    assert job.verdict == check(other.apply(START))


def test_what_is_done_is_judged_before_it_is_kept(job):
    job.do(MOVE)
    assert job.judged
    assert job.shown is job.layout
    assert job.verdict == check(AFTER)


def test_a_dropped_preview_leaves_the_draft_as_judged(job):
    job.drop_preview()
    assert job.judged
    assert job.verdict == check(START)


def test_a_rule_that_fails_half_way_is_asked_again_from_nothing(job, monkeypatch):
    import bayboard.rules.check as room

    with monkeypatch.context() as patched:
        patched.setattr(room, "judged", lambda *_: 1 / 0)
        with pytest.raises(ZeroDivisionError):
            job.judge()
    assert not job.judged
    assert job.judge()
    assert job.verdict == check(AFTER)
