"""Hands for a window under test: real events, to the widget under the pointer or the window's handle."""

from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QMouseEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from bayboard.job.job import Job, new_job
from bayboard.window.app import application
from bayboard.window.first_frame import Frame
from bayboard.window.main_window import MainWindow
from bayboard.window.theme import LIGHT
from bayboard.window.workplace import Workplace

LEFT, MIDDLE, NONE = Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton, Qt.MouseButton.NoButton
SHIFT, CTRL = Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.ControlModifier
PLAIN = Qt.KeyboardModifier.NoModifier


class Hands:
    """A window on a layout and what hands do to it.  Points of the Wall are mm in bay axes."""

    def __init__(self, layout=None, size=(1600, 1000), first_start=False, path=None):
        self.app = application()
        job = Job(layout, path) if layout is not None else new_job()
        self.place = Workplace(job, LIGHT, first_start)
        self.frame = Frame(LIGHT, self._furnish)
        self.frame.resize(*size)
        self.frame.show()
        self.frame.bring_in()
        self.window = self.frame.furniture
        QTest.qWaitForWindowExposed(self.frame)
        self.frame.activateWindow()
        self.window.to_wall()
        self.app.processEvents()
        self.held = NONE

    def _furnish(self, frame):
        return MainWindow(self.place, frame)

    # --- what there is ---

    @property
    def wall(self):
        return self.window.wall

    @property
    def card(self):
        return self.window.card

    @property
    def bench(self):
        return self.window.bench

    @property
    def layout(self):
        return self.place.layout

    def gear(self, name):
        return next(gear for gear in self.layout.gear if gear.id == name)

    def px(self, x, y):
        """Return a point of the Wall, mm, as a pixel of the window."""
        return self.wall.mapTo(self.window, self.place.scale.px(x, y))

    def line(self):
        return self.window.strip.line

    # --- the mouse, in pixels of the window ---

    def _mouse(self, kind, at, button, held, mods, target=None):
        target = target or self.window.childAt(QPointF(at).toPoint()) or self.window
        inside = target.mapFrom(self.window, QPointF(at))
        event = QMouseEvent(kind, inside, target.mapToGlobal(inside), button, held, mods)
        QApplication.sendEvent(target, event)
        return target

    def press(self, at, mods=PLAIN, button=LEFT):
        self.held = button
        self.target = self._mouse(QEvent.Type.MouseButtonPress, at, button, button, mods)

    def move(self, at, mods=PLAIN):
        target = self.target if self.held != NONE else None
        self._mouse(QEvent.Type.MouseMove, at, NONE, self.held, mods, target)

    def release(self, at, mods=PLAIN):
        button, self.held = self.held, NONE
        self._mouse(QEvent.Type.MouseButtonRelease, at, button, NONE, mods, self.target)

    def drag(self, start, end, mods=PLAIN, button=LEFT, let_go=True):
        """Drag from a pixel of the window to another in three moves."""
        self.press(start, mods, button)
        for share in (0.3, 0.7, 1.0):
            self.move(start + (end - start) * share, mods)
        if let_go:
            self.release(end, mods)

    def click(self, at, mods=PLAIN):
        self.press(at, mods)
        self.release(at, mods)

    def click_mm(self, x, y, mods=PLAIN):
        self.click(self.px(x, y), mods)

    def drag_mm(self, start, end, mods=PLAIN, let_go=True):
        self.drag(self.px(*start), self.px(*end), mods, let_go=let_go)

    def wheel(self, at, eighths):
        inside = self.wall.mapFrom(self.window, QPointF(at))
        event = QWheelEvent(
            inside,
            self.wall.mapToGlobal(inside),
            QPoint(),
            QPoint(0, eighths),
            NONE,
            PLAIN,
            Qt.ScrollPhase.NoScrollPhase,
            False,
        )
        QApplication.sendEvent(self.wall, event)

    # --- fingers, to the window's handle, in pixels of the window ---

    def fingers(self, *places):
        """Put a finger down at each place; return them, to be moved and lifted."""
        return Fingers(self, places)

    # --- keys, to the window's handle ---

    def key(self, key, mods=PLAIN):
        """Press a key: a letter as text, or one of Qt.Key."""
        if isinstance(key, str):
            key = getattr(Qt.Key, f"Key_{key}")
        QTest.keyClick(self.frame.windowHandle(), key, mods)

    def type(self, text):
        for letter in text:
            QTest.keyClick(self.frame.windowHandle(), letter)

    def picture(self):
        return self.frame.grab().toImage()


SCREEN = []  # the one touch screen of all tests


class Fingers:
    """Fingers that are down on the window."""

    def __init__(self, hands, places):
        if not SCREEN:
            SCREEN.append(QTest.createTouchDevice())
        self.hands = hands
        self._each("press", places)

    def _each(self, act, places):
        handle = self.hands.frame.windowHandle()
        touch = QTest.touchEvent(handle, SCREEN[0], False)
        for number, at in enumerate(places):
            inside = self.hands.window.mapTo(self.hands.frame, QPointF(at).toPoint())
            getattr(touch, act)(number, inside, handle)
        touch.commit()
        self.places = places

    def second(self, at):
        """Put a second finger down while the first stays where it is."""
        handle = self.hands.frame.windowHandle()
        touch = QTest.touchEvent(handle, SCREEN[0], False)
        touch.stationary(0)
        touch.press(1, self.hands.window.mapTo(self.hands.frame, QPointF(at).toPoint()), handle)
        touch.commit()
        self.places = (*self.places, at)
        return self

    def move(self, *places):
        self._each("move", places)
        return self

    def lift(self):
        self._each("release", self.places)

    def drag(self, *ends):
        """Go to the ends in three moves."""
        starts = self.places
        for share in (0.3, 0.7, 1.0):
            self.move(*(a + (b - a) * share for a, b in zip(starts, ends, strict=True)))
        return self
