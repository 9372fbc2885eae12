"""Long work: started, watched, stopped, dropped when it comes too late."""

import pytest
from tests.build import gear, layout

from bayboard.edits.move_gear import MoveGear
from bayboard.job.job import Job
from bayboard.job.runner import InPlace, Ticket, finished


def _count(payload):
    """Count to payload, telling how far it is; return the sum."""
    total = 0
    for k in range(payload):
        total += k
        yield (k + 1) / payload
    return total


def test_a_task_runs_to_its_end_and_tells_how_far_it_is():
    done, shares = [], []
    ticket = InPlace().start(_count, 4, done.append, shares.append)
    assert (done, shares, ticket.stopped) == ([6], [0.25, 0.5, 0.75, 1.0], False)


def test_a_task_without_a_step_is_done_at_once():
    done = []
    InPlace().start(_count, 0, done.append)
    assert done == [0]


def test_a_task_that_returns_nothing_is_done_too():
    def nothing(_):
        yield 1.0

    done = []
    InPlace().start(nothing, None, done.append)
    assert done == [None]


def test_stopped_work_is_closed_and_never_done():
    closed, done, asked = [], [], []

    def careful(_):
        try:
            while True:
                yield 0.5
        finally:
            closed.append(True)

    ticket = InPlace(lambda: len(asked) >= 3).start(careful, None, done.append, asked.append)
    assert (ticket.stopped, closed, done, asked) == (True, [True], [], [0.5] * 3)


def test_a_ticket_stops_work_between_two_steps():
    ticket, shares = Ticket(), []

    def told(share):
        shares.append(share)
        if len(shares) == 2:
            ticket.stop()

    assert finished(_count(5), ticket, lambda: False, told) is None
    assert shares == [0.2, 0.4]


def test_what_a_task_raises_comes_out():
    def broken(_):
        yield 0.1
        raise ValueError("no room")

    with pytest.raises(ValueError, match="no room"):
        InPlace().start(broken, None, lambda _: None)


class _Later:
    """A runner that keeps what it was given until somebody lets it go."""

    def start(self, task, payload, done, progress=None):
        self.work, self.done = task(payload), done
        return Ticket()

    def let_go(self):
        self.done(finished(self.work, Ticket(), lambda: False)[0])


def _pieces(draft):
    yield 0.5
    return len(draft.gear)


def test_a_job_gives_its_draft_and_takes_the_result_while_it_is_still_that():
    runner, done = _Later(), []
    job = Job(layout(gear=[gear("A", 100, 100)]), runner=runner)
    job.start(_pieces, done.append)
    job.preview(MoveGear(("A",), 1, 0))
    runner.let_go()
    assert done == [1]


def test_a_result_for_an_older_draft_is_dropped():
    runner, done = _Later(), []
    job = Job(layout(gear=[gear("A", 100, 100)]), runner=runner)
    job.start(_pieces, done.append)
    job.do(MoveGear(("A",), 1, 0))
    runner.let_go()
    assert done == []
