"""A painted view: a still layer kept as a pixmap, and over it what changes by the frame."""

from PySide6.QtCore import QEvent, QRectF, Qt, QTimer
from PySide6.QtGui import QFocusEvent, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QWidget

from bayboard.window import lettering
from bayboard.window.draw.scale import Scale
from bayboard.window.theme import Theme, brush, pen
from bayboard.window.trouble import TROUBLE

BY_KEYS = (
    Qt.FocusReason.TabFocusReason,
    Qt.FocusReason.BacktabFocusReason,
    Qt.FocusReason.ShortcutFocusReason,
)
COVERED = 0.5  # of the view that a carried layer has to fill, or it is drawn anew at once
IDLE = 80  # ms without a further zoom or pan after which the layer is drawn sharp again


class Canvas(QWidget):
    """A view that paints itself.  A broken painting is reported and leaves the rest of the window alone.

    Subclasses give `theme`, `layer_scale`, `still_key`, `paint_still` and `paint_live`.
    """

    layered = True  # whether there is a still layer at all
    rings = False  # whether it wears a ring of its own where the keys are

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self._layer: QPixmap | None = None
        self._drawn_key: object = None
        self._drawn_scale: Scale | None = None
        self._by_keys = False  # Tab or F6 brought the keys here
        self._rough = QTimer(self)
        self._rough.setSingleShot(True)
        self._rough.setInterval(IDLE)
        self._rough.timeout.connect(self.update)

    # --- what a view gives ---

    @property
    def theme(self) -> Theme:
        """Return the colours to paint with."""
        raise TypeError("a view gives its theme")

    def layer_scale(self) -> Scale | None:
        """Return the scale of the layer, None for a view that is not scaled."""
        return None

    def still_key(self) -> object:
        """Return a value that is another whenever the still layer would look different."""
        return None

    def paint_still(self, p: QPainter) -> None:
        """Paint what stays the same from frame to frame."""

    def paint_live(self, p: QPainter) -> None:
        """Paint what changes by the frame."""

    def ringed(self) -> bool:
        """Return whether the view wears a ring: the keys came here by keys."""
        return self.rings and self._by_keys

    # --- how it is done ---

    def rescaled(self) -> None:
        """Show the layer as it is, enlarged or moved, until no further zoom or pan comes."""
        self._rough.start()
        self.update()

    def settle(self) -> None:
        """Draw sharp with the next frame."""
        self._rough.stop()
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the layer and what lies on it."""
        with QPainter(self) as p:
            try:
                if self.layered:
                    self._paint_layer(p)
                self.paint_live(p)
                if self.ringed():
                    self._paint_ring(p)
            except Exception as error:
                TROUBLE.report(error)
                self._paint_broken(p)

    def _paint_layer(self, p: QPainter) -> None:
        scale = self.layer_scale()
        rough = self._rough.isActive() and self._layer is not None and scale is not None
        if rough and self._fits() and self._covers(scale):
            self._paint_moved(p, scale)
            return
        key = (self.still_key(), scale, self.theme)
        if key != self._drawn_key or not self._fits():
            self._draw_layer()
            self._drawn_key, self._drawn_scale = key, scale
        p.drawPixmap(0, 0, self._layer)

    def _fits(self) -> bool:
        layer, ratio = self._layer, self.devicePixelRatioF()
        return (
            layer is not None and layer.devicePixelRatioF() == ratio and layer.size() == self.size() * ratio
        )

    def _covers(self, scale: Scale) -> bool:
        """Return whether the layer, carried to a scale, fills half of the view; a jump leaves it bare."""
        was = self._drawn_scale or scale
        k = scale.px_per_mm / was.px_per_mm
        left, top = scale.x0 - was.x0 * k, scale.y0 - was.y0 * k
        view = QRectF(self.rect())
        seen = QRectF(left, top, view.width() * k, view.height() * k) & view
        return seen.width() * seen.height() >= COVERED * view.width() * view.height()

    def _draw_layer(self) -> None:
        ratio = self.devicePixelRatioF()
        layer = QPixmap(self.size() * ratio)
        layer.setDevicePixelRatio(ratio)
        layer.fill(brush(self.theme.room).color())
        with QPainter(layer) as p:
            self.paint_still(p)
        self._layer = layer

    def _paint_moved(self, p: QPainter, scale: Scale) -> None:
        """Paint the layer as it was drawn at another scale, carried to this one."""
        was = self._drawn_scale or scale
        k = scale.px_per_mm / was.px_per_mm
        p.fillRect(self.rect(), brush(self.theme.room))
        p.save()
        p.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        p.translate(scale.x0 - was.x0 * k, scale.y0 - was.y0 * k)
        p.scale(k, k)
        p.drawPixmap(0, 0, self._layer)
        p.restore()

    def _paint_ring(self, p: QPainter) -> None:
        inner = QRectF(self.rect()).adjusted(3.0, 3.0, -3.0, -3.0)
        p.setRenderHint(QPainter.RenderHint.Antialiasing)
        p.setBrush(Qt.BrushStyle.NoBrush)
        for token, wide in ((self.theme.paper, 5.0), (self.theme.blue, 2.0)):
            p.setPen(pen(token, wide))
            p.drawRoundedRect(inner, 4.0, 4.0)

    def _paint_broken(self, p: QPainter) -> None:
        p.resetTransform()
        p.setClipping(False)
        p.fillRect(self.rect(), brush(self.theme.paper))
        words = "This part cannot be drawn; it was logged."
        lettering.draw_in(p, QRectF(self.rect()), words, lettering.HELPER, self.theme.ink2)

    def changeEvent(self, event: QEvent) -> None:
        """Drop the layer when the colours change."""
        if event.type() in (QEvent.Type.PaletteChange, QEvent.Type.StyleChange):
            self._layer = None
        super().changeEvent(event)

    def event(self, event: QEvent) -> bool:
        """Drop the layer on a screen of another sharpness; know whether the keys came by keys."""
        if event.type() == QEvent.Type.DevicePixelRatioChange:
            self._layer = None
        elif event.type() in (QEvent.Type.FocusIn, QEvent.Type.FocusOut):
            came = isinstance(event, QFocusEvent) and event.gotFocus()
            self._by_keys = came and event.reason() in BY_KEYS
            self.update()
        return super().event(event)
