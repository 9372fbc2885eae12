"""Leads whose bends are given, and one stand-in at many places that may come to lie on them."""

import numpy as np

from bayboard.geometry.crowd import boxes_apart
from bayboard.geometry.solids import grouped
from bayboard.geometry.stretches import stretches
from bayboard.geometry.trespass import inside_bodies, total
from bayboard.rules.levels import MUST, Key, Levels, head
from bayboard.rules.paths import Path
from bayboard.rules.places import Places
from bayboard.rules.scene import Scene
from bayboard.tables.limits import limit


def through_at(scene: Scene, places: Places, key: Key | None = None) -> dict[Key, Levels]:
    """Return how bad lead-path is with a stand-in at many places, for leads that do not go with it.

    Those are told whose bends are given and that end elsewhere; for others nobody knows before they are led.
    """
    return {
        subjects: _levels(scene, places, path)
        for path in scene.paths.values()
        if (subjects := (path.lead.id, places.id)) == key or key is None
        if stays(path, places.id) and _near(path, places)
    }


def stays(path: Path, gear: str) -> bool:
    """Return whether a lead stays where it is when a stand-in moves."""
    return bool(path.lead.via) and gear not in (head(path.lead.from_), head(path.lead.to))


def _near(path: Path, places: Places) -> bool:
    points = path.route.points
    box = np.concatenate([points.min(axis=0), points.max(axis=0)])
    return bool(places.model.bodies) and float(boxes_apart(box, places.box)) <= 0.0


def _levels(scene: Scene, places: Places, path: Path) -> Levels:
    levels, silent = places.silence, limit(scene.layout, "lead_path_silent")
    rows = stretches([path.route.points - at for at in places.at])  # the lead moves the other way
    z = np.tile(path.z, (len(places), 1))
    for found in inside_bodies(rows, z, grouped([places.model.prisms])):
        if total(path.beyond_plugs(places.id, found.parts)) > silent:
            levels[found.path] = MUST
    return levels
