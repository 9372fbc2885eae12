"""The rules said again, straight from the contract's words: a second opinion, and the plain baseline.

Everything is computed for everything each time, one thing after another, with shapes built afresh; nothing is
kept and nothing is skipped for speed.  It imports nothing from the program.
"""

from tests.plain.arrange import gap, off_board, off_wall, on_stay, overlap
from tests.plain.depth import plug_room, seat_depth
from tests.plain.eyes import reach, sight
from tests.plain.fixings import hole_edge, hole_hole, insert_landing, no_drill
from tests.plain.kept import drilled, reprint
from tests.plain.measure import lining_cut, on_landing, on_vent, way_in
from tests.plain.reading import Bay
from tests.plain.swing import seat_swing
from tests.plain.warm import air, heat_rise, warm_stack
from tests.plain.wires import beside, crossing, lead_path

RULES = {
    "overlap": overlap,
    "gap": gap,
    "off-board": off_board,
    "off-wall": off_wall,
    "seat-depth": seat_depth,
    "sight": sight,
    "reach": reach,
    "plug-room": plug_room,
    "on-stay": on_stay,
    "on-landing": on_landing,
    "on-vent": on_vent,
    "lining-cut": lining_cut,
    "way-in": way_in,
    "air": air,
    "warm-stack": warm_stack,
    "heat-rise": heat_rise,
    "seat-swing": seat_swing,
    "beside": beside,
    "crossing": crossing,
    "lead-path": lead_path,
    "insert-landing": insert_landing,
    "no-drill": no_drill,
    "hole-edge": hole_edge,
    "hole-hole": hole_hole,
    "drilled": drilled,
    "reprint": reprint,
}


def recheck(doc, routes, rules=tuple(RULES)):
    """Return (findings, unchecked) of a document as plain values.

    `doc` is the JSON document, `routes` the path of each lead whose `via` is empty.  A finding is
    a dict of rule, severity, subjects, measure and limit; an unchecked line is (rule, subjects).
    """
    bay = Bay(doc, routes)
    findings, unchecked = [], []
    for rule in rules:
        for said in RULES[rule](bay):
            if len(said) == 1:
                if (rule, said[0]) not in unchecked:
                    unchecked.append((rule, said[0]))
                continue
            severity, subjects, measure, limit = said
            findings.append(
                {
                    "rule": rule,
                    "severity": severity,
                    "subjects": subjects,
                    "measure": measure,
                    "limit": limit,
                }
            )
    return findings, unchecked
