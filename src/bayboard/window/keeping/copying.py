"""Saving a copy: a job file with every revision, or the plain layout, which says what stays behind."""

import contextlib
from pathlib import Path

from bayboard.job.job import Job
from bayboard.model.refused import Refused
from bayboard.store.files import save_layout
from bayboard.window.keeping.door import same_file
from bayboard.window.keeping.words import stays_behind

BAY, JSON = ".bay", ".json"


def copy_name(job: Job) -> str:
    """Return what a copy of the job's file may be called."""
    ending = JSON if job.file is None and job.path is not None else BAY
    return f"{job.path.stem if job.path else plain_stem(job.layout.vehicle.name)} copy{ending}"


def plain_stem(name: str) -> str:
    """Return a vehicle's name as a file may be called."""
    kept = "".join(c if c.isalnum() or c in " -_" else " " for c in name)
    return "-".join(kept.split()).lower() or "layout"


def with_ending(path: Path, job: Job) -> Path:
    """Return the path as chosen; with no ending that is ours, that of the job's own kind."""
    if path.suffix.lower() in (BAY, JSON):
        return path
    own = JSON if job.file is None and job.path is not None else BAY
    return path.with_name(path.name + own)


def as_job_file(path: Path) -> Path:
    """Return the path with the ending of a job file."""
    return path if path.suffix.lower() == BAY else path.with_name(path.name + BAY)


def save_copy(job: Job, path: Path) -> str:
    """Save a copy at `path` and return the sentence about it; raise `Refused` when it cannot be."""
    if job.file is not None and same_file(path, job.path):
        raise Refused(path.name, "this is the file itself", "Name another for the copy")
    if path.suffix.lower() == JSON:
        save_layout(path, job.layout)  # also where the job's own file takes nothing more
    else:
        job.save_copy(path)
    said = f"Saved a copy as {path.name}."
    behind = left_behind(job) if path.suffix.lower() == JSON else ""
    if behind:
        said += f" {behind} stay{'s' if behind.startswith('1 ') and ' and ' not in behind else ''} behind"
        said += f" in {job.path.name}: a .json holds none." if job.path else ": a .json holds none."
    return said


def left_behind(job: Job) -> str:
    """Return what a plain layout of this job does not take along."""
    if job.file is None:
        return ""
    photos = 0
    with contextlib.suppress(Refused):
        photos = len(job.file.photos())
    return stays_behind(len(job.revisions()), photos)
