"""What the Section shows, in sentences: for who cannot see it."""

from dataclasses import dataclass

from PySide6.QtCore import QRectF

from bayboard.window.draw.profile import cut_leads
from bayboard.window.draw.scale import Scale
from bayboard.window.section_points import cut_names, points_here
from bayboard.window.section_words import depths, swings
from bayboard.window.seen_words import sentence
from bayboard.window.workplace import Workplace

NEAR = 14.0  # px round a place that a sentence is about


@dataclass(frozen=True, slots=True)
class Told:
    """A sentence, where it is about in (z, y) mm, and the service point or stand-in it names."""

    words: str
    at: tuple[float, float]
    subject: str

    def rect(self, scale: Scale) -> QRectF:
        """Return the pixels round what it is about."""
        at = scale.px(-self.at[0], self.at[1])
        return QRectF(at.x() - NEAR, at.y() - NEAR, 2 * NEAR, 2 * NEAR)


def told(place: Workplace) -> tuple[Told, ...]:
    """Return a sentence for each piece that is cut, each room under the seat, each point seen and reached."""
    found, x = [], place.chalk_x
    for name in cut_names(place):
        piece = place.scene.placed[name]
        front = piece.under if piece.top is None else piece.top
        high = "of unknown height" if piece.top is None else "cut"
        found.append(Told(f"{name} {piece.card.name}, {high}", (front, piece.at[1]), name))
    for depth in depths(place):
        words = f"{depth.subject}: {depth.text}{_number(depth.severity, depth.number)}"
        found.append(Told(words, depth.front, depth.subject))
    for swing in swings(place):
        if swing.text:
            found.append(Told(f"Seat {swing.text}{_number(swing.severity, swing.number)}", swing.hinge, ""))
    for point in points_here(place):
        _, y, z = point.at
        found.append(Told(sentence(place, point), (z, y), point.subject))
    leads = len(list(cut_leads(place.scene, x))) if x is not None else 0
    if leads:
        words = f"{leads} leads cut here" if leads > 1 else "One lead cut here"
        found.append(Told(words, (0.0, 0.0), ""))
    return tuple(found)


def _number(severity: str | None, number: int | None) -> str:
    return "" if severity is None else f", {severity} {number}"
