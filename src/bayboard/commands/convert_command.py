"""`bayboard convert IN OUT`: a layout in its normal form, or a job file with every revision."""

import argparse
from pathlib import Path

from bayboard.commands.opened import layout_of, looked_into
from bayboard.commands.words import FILE, not_the_same
from bayboard.job.picture import picture
from bayboard.model.refused import Refused
from bayboard.store.files import save_layout
from bayboard.store.named import Named, layout_in, named
from bayboard.store.replacing import in_place_of, make_in_place
from bayboard.store.sentences import path_words


def describe(parser: argparse.ArgumentParser) -> None:
    """Add the command's words to `parser`."""
    parser.add_argument("read", metavar="IN", help=FILE)
    parser.add_argument("out", type=Path, metavar="OUT", help="the .json or .bay to write, replaced whole")


def run(chosen: argparse.Namespace) -> int:
    """Write the other file and say what it cannot hold; return 0."""
    what, out = named(chosen.read), chosen.out
    ending = out.suffix.lower()
    if ending not in (".json", ".bay"):
        raise Refused(
            "OUT", f"{path_words(out)} ends neither in .json nor in .bay", "Name a .json or a .bay file"
        )
    not_the_same(out, what.path, "OUT")
    said = _to_layout(what, out) if ending == ".json" else _to_job(what, out)
    for line in said:
        print(line)
    return 0


def _to_layout(what: Named, out: Path) -> list[str]:
    """Write one layout; return what is left behind."""
    if not what.is_job:
        save_layout(out, layout_of(what))
        return []
    with looked_into(what.path) as file:
        save_layout(out, layout_in(file, what.revision))
        photos, kept = len(file.photos()), len(file.revisions())
    return left_behind(what.path.name, photos, kept if what.revision is None else 0)


def left_behind(name: str, photos: int, kept: int) -> list[str]:
    """Return the sentence about what a .json cannot hold, none where nothing is lost."""
    told = [f"{n} {word}{'s' * (n != 1)}" for n, word in ((photos, "photo"), (kept, "revision")) if n]
    if not told:
        return []
    verb = "stays" if photos + kept == 1 else "stay"
    return [f"{' and '.join(told)} {verb} behind in {name}: a .json holds one layout."]


def _to_job(what: Named, out: Path) -> list[str]:
    """Write a job file: every revision of one, or a new one with nothing kept yet."""
    if what.is_job and what.revision is None:
        with looked_into(what.path) as file, in_place_of(out) as beside:
            file.copy(beside.path)
        return beside.said
    if not what.is_job:
        layout = layout_of(what)
        said = make_in_place(out, layout, picture(layout), ())
        return [*said, *without_pictures(what.path.name, len(layout.photos))]
    with looked_into(what.path) as file:
        layout = layout_in(file, what.revision)
        photos = [file.photo(name) for name in file.photos()]
    return make_in_place(out, layout, picture(layout), photos)


def without_pictures(name: str, photos: int) -> list[str]:
    """Return the sentence about photos of a .json, whose pictures are in no .json; none where it has none."""
    if not photos:
        return []
    have = "1 photo has" if photos == 1 else f"{photos} photos have"
    return [f"{have} no picture in the job file: {name} holds none."]
