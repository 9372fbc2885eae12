"""A window at Kept, on the pickup with its past or on a small bay."""

import pytest


@pytest.fixture
def kept(open_window, tmp_path):
    """Return a function that opens a window on a job and goes to Kept; the file is let go of afterwards."""
    from bayboard.job.job import new_job
    from bayboard.window.compare.stage import add_compare

    windows, jobs = [], []

    def opened(job, size=(1600, 1000), here=True):
        hands = open_window(job.layout, size)
        windows.append(hands.window)
        jobs.append(job)
        hands.place.take(job)
        hands.stage = add_compare(hands.window)
        hands.desk = hands.stage.desk
        if here:
            hands.window.show_stage("Kept")
        hands.app.processEvents()
        return hands

    yield opened
    for window in windows:
        window.show_stage("Arrange")
        window.place.take(new_job())  # nothing reads a file that is let go of
    for job in jobs:
        job.close()


@pytest.fixture
def pickup(tmp_path):
    """Return the pickup's job with six revisions."""
    from tests.window.compare.story import pickup as made

    return made(tmp_path / "pickup.bay")
