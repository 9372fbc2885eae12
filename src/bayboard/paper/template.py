"""The drill-and-cut template: every sheet of every board, full size."""

from collections.abc import Sequence

from bayboard.model.layout import Layout
from bayboard.paper.form import MARGIN
from bayboard.paper.marks import Page
from bayboard.paper.options import DRAFT, Options
from bayboard.paper.section import Section, sections
from bayboard.paper.sheet import Sheet, drawn
from bayboard.paper.sheet_words import at_least, write
from bayboard.paper.strip import PROVE, Silhouette, Strip, strip
from bayboard.paper.swap_words import swap_sentence
from bayboard.paper.tiles import Tile
from bayboard.units.length import Units

SHEET = "drill"


def template(layout: Layout, options: Options) -> tuple[Page, ...]:
    """Return every template sheet in taping order, board by board."""
    return pages_of(tuple(sections(layout, options)))


def pages_of(made: Sequence[Section]) -> tuple[Page, ...]:
    """Return the sheets of boards whose sections are made, all of one print."""
    total = sum(len(s.plan.tiles) for s in made)
    wanted = made[0].words.options.swap if made else None
    return tuple(
        _page(section, tile, total)
        for section in made
        for tile in section.plan.tiles
        if wanted is None or tile.number in wanted.numbers
    )


def _page(section: Section, tile: Tile, total: int) -> Page:
    sheet = drawn(section, tile)
    write(sheet)
    return sheet.page(strip(section.plan.form, _strip(sheet, total)))


def _strip(sheet: Sheet, total: int) -> Strip:
    section, words = sheet.section, sheet.section.words
    options = words.options
    title = [words.vehicle, _revision(options.revision)]
    title += [
        f"board {section.face.board.id}" if words.several else "",
        f"sheet {sheet.tile.number} of {total}",
    ]
    side = (
        "BACK FACE, MIRRORED. Seen from the vehicle side."
        if section.face.back
        else "Seen from the gear side."
    )
    return Strip(
        sheet.tile.number,
        [*(t for t in title if t), _paper(options)],
        f"{PROVE} {side}",
        f"set {words.code}",
        swap_sentence(options.swap) if options.swap else _seam_sentence(sheet),
        _silhouette(sheet) if len(section.plan.tiles) > 1 else None,
    )


def _revision(revision: str) -> str:
    if revision == DRAFT:
        return "not kept as a revision"
    return f"revision {revision}" if revision else ""


def _paper(options: Options) -> str:
    """Return the paper, with its white edge where that is not the usual one: seams lie elsewhere then."""
    return options.paper if options.margin == MARGIN else f"{options.paper}, {options.margin:g} mm edge"


def _silhouette(sheet: Sheet) -> Silhouette:
    face = sheet.section.face
    return Silhouette((face.outline, *(ring for _, ring in face.cutouts)), face.box, sheet.tile.core)


def _seam_sentence(sheet: Sheet) -> str:
    """Return how near this sheet's seams come to a hole; nothing when there is no seam or no hole."""
    clearances, units = sheet.section.clearances, sheet.section.words.options.units
    near = clearances.of(sheet.tile.number)
    if near:
        return _named([(n.hole, n.mm) for n in near], units)
    least = clearances.least.get(sheet.tile.number)
    return "" if least is None else f"seams are {at_least(least, units)} or more from every hole's edge"


def _named(near: Sequence[tuple[str, float]], units: Units) -> str:
    cut = [f"seam cuts {hole}" for hole, mm in near if mm < 0]
    close = [f"seam {at_least(mm, units)} from {hole}'s edge" for hole, mm in near if mm >= 0]
    return f"{'; '.join([*cut, *close])}: measure {'this one' if len(near) == 1 else 'these'} twice"
