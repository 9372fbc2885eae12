"""A job written somewhere else: a copy, a new job file to go on in, a layout set aside."""

import re
from datetime import datetime
from pathlib import Path

from bayboard.job.filed import Filed
from bayboard.job.picture import picture
from bayboard.model.layout import Layout
from bayboard.store.files import save_layout
from bayboard.store.job_file import copy_job_file, make_job_file, open_job_file


def save_copy(layout: Layout, filed: Filed | None, path: Path) -> None:
    """Write a copy to `path`: a `.bay` with every revision there is, a `.json` of the layout."""
    if path.suffix.lower() != ".bay":
        save_layout(path, layout)
    elif filed is not None:
        copy_job_file(filed.file.path, path)
    else:
        make_job_file(path, layout, picture=picture(layout)).close()


def housed(layout: Layout, filed: Filed | None, path: Path) -> Filed:
    """Return a new job file at `path`, with all revisions of the job file there was."""
    if filed is None:
        return Filed(make_job_file(path, layout, picture=picture(layout)), None, layout)
    filed.file.copy(path)
    return Filed(open_job_file(path, take=True), filed.parent, filed.pictured)


def set_aside(layout: Layout, path: Path | None, folder: Path) -> Path:
    """Write the layout to a new file in `folder`, named after the file at `path`, and return its path."""
    folder.mkdir(parents=True, exist_ok=True)
    name = path.stem if path else layout.vehicle.name
    plain = re.sub(r"[^A-Za-z0-9-]+", "-", name).strip("-")[:40] or "layout"
    start = f"{plain}-{datetime.now().strftime('%Y%m%d-%H%M%S')}"
    number, aside = 1, folder / f"{start}.json"
    while aside.exists():
        number += 1
        aside = folder / f"{start}-{number}.json"
    save_layout(aside, layout)
    return aside
