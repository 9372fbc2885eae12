"""What stands on the Wall and in the Findings as sentences to be read out."""

from bayboard.geometry import outline as outlines
from bayboard.model.drilled import is_drilled
from bayboard.model.layout import Fixing
from bayboard.rules.finding import Finding, heads
from bayboard.units.length import show_length
from bayboard.window.draw.leads import WORDS as LEAD_WORDS
from bayboard.window.findings_rows import WORDS, Fold, Row
from bayboard.window.loud import open_findings
from bayboard.window.made import drilled_words
from bayboard.window.picking import reading_order
from bayboard.window.steps import foot_of
from bayboard.window.workplace import Workplace

NEAR = 12.0  # mm; half the side of a fixing's box


def wall_parts(place: Workplace) -> tuple[str, ...]:
    """Return the ids of what is read out of the Wall: stand-ins in reading order, leads, fixings."""
    boards = place.scene.boards
    fixings = (fixing.id for fixing in place.shown.fixings if fixing.board in boards)
    return (*reading_order(place.scene), *place.scene.routes, *fixings)


def wall_names(place: Workplace) -> list[str]:
    """Return the sentence of each of them."""
    scene, found = place.scene, []
    fixings = {fixing.id: fixing for fixing in place.shown.fixings}
    for name in wall_parts(place):
        if name in scene.placed:
            found.append(piece_name(place, name))
        elif name in scene.routes:
            found.append(lead_name(place, name))
        else:
            found.append(fixing_name(place, fixings[name]))
    return found


def box_on_wall(place: Workplace, name: str) -> tuple[float, float, float, float]:
    """Return the box (x0, y0, x1, y1) of one of them, mm in bay axes."""
    scene = place.scene
    if name in scene.placed:
        return scene.placed[name].box
    if name in scene.routes:
        return outlines.box([(float(x), float(y)) for x, y in scene.routes[name].points])
    x, y = next(fixing.at for fixing in place.shown.fixings if fixing.id == name)
    return x - NEAR, y - NEAR, x + NEAR, y + NEAR


def piece_name(place: Workplace, name: str) -> str:
    """Return a stand-in's sentence: "A2 Deepwell, 33 in across, 6 11/16 in up, must 1"."""
    piece = place.scene.placed[name]
    told = [f"{name} {piece.card.name}", *where(place, name)]
    if piece.gear.taped:
        told.append("taped down")
    if is_drilled(place.layout, name):
        told.append(drilled_words(place.layout, name))
    return ", ".join([*told, *severities(place, name)])


def where(place: Workplace, name: str) -> tuple[str, str]:
    """Return how far across and up a stand-in's middle is on its board: ("33 in across", "6 in up")."""
    piece, units = place.scene.placed[name], place.units
    foot = foot_of(piece.board)
    across, up = (show_length(piece.at[i] - foot[i], units) for i in (0, 1))
    return f"{across} across", f"{up} up"


def lead_name(place: Workplace, name: str) -> str:
    """Return a lead's sentence: "C2, 12 V lead from B1.1 to A2.12V, 4 AWG, length in the bay 14 3/4 in"."""
    lead = next(lead for lead in place.shown.leads if lead.id == name)
    route = place.scene.routes[name]
    kind = LEAD_WORDS.get(route.kind or "", "")
    told = [name, f"{kind} lead from {lead.from_} to {lead.to}".strip()]
    told.append(lead.size or "no size yet")
    told.append(f"length in the bay {show_length(route.length, place.units)}")
    return ", ".join([*told, *severities(place, name)])


def fixing_name(place: Workplace, fixing: Fixing) -> str:
    """Return a fixing's sentence: "H2, M6 bolt, 12 in across, 3 in up, slot, drilled, should 3"."""
    foot, units = foot_of(place.scene.boards[fixing.board or ""].board), place.units
    told = [fixing.id, f"{fixing.thread} bolt"]
    told += [f"{show_length(fixing.at[i] - foot[i], units)} {way}" for i, way in ((0, "across"), (1, "up"))]
    told += ["slot"] if fixing.slot is not None else []
    told += ["drilled"] if fixing.drilled is not None else []
    return ", ".join([*told, *severities(place, fixing.id)])


def severities(place: Workplace, name: str) -> list[str]:
    """Return the open findings about a thing: "must 1", "should 3"."""
    found = open_findings(place.verdict)
    return [f"{finding.severity} {number}" for number, finding in found if name in heads(finding)]


def finding_name(place: Workplace, finding: Finding) -> str:
    """Return a finding's sentence with its number and severity."""
    start = "Let be" if finding.let_be is not None else WORDS[finding.severity]
    return f"{start} {place.verdict.number(finding)}: {finding.says}"


def line_name(place: Workplace, line: Row | Fold) -> str:
    """Return the sentence of a line of the Findings."""
    if isinstance(line, Row):
        return finding_name(place, line.finding)
    return f"{line.words}. {'Unfolded' if line.unfolded else 'Folded'}"
