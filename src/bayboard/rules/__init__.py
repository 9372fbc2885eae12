"""The rules: one file each, named for the fault, judged on one scene.

Reading order: `finding`, `scene`, `rule`, one rule of `arrange`, then `check`, which asks them all.
"""

from bayboard.rules.arrange import (
    air,
    gap,
    heat_rise,
    off_board,
    off_wall,
    on_stay,
    overlap,
    plug_room,
    reach,
    seat_depth,
    seat_swing,
    sight,
    warm_stack,
)
from bayboard.rules.fix import hole_edge, hole_hole, insert_landing, no_drill
from bayboard.rules.keep import drilled, reprint
from bayboard.rules.measure import lining_cut, on_landing, on_vent, way_in
from bayboard.rules.rule import Rule
from bayboard.rules.wire import beside, crossing, lead_path

RULES: tuple[Rule, ...] = (
    off_wall,
    on_stay,
    on_landing,
    on_vent,
    lining_cut,
    way_in,
    overlap,
    gap,
    off_board,
    seat_depth,
    seat_swing,
    sight,
    reach,
    plug_room,
    air,
    warm_stack,
    heat_rise,
    beside,
    crossing,
    lead_path,
    insert_landing,
    no_drill,
    hole_edge,
    hole_hole,
    drilled,
    reprint,
)
"""Every rule, in the order of the job: measure, arrange, wire, fix, keep."""
