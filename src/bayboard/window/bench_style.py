"""The program's style: plain shapes for what Qt paints itself, and tooltips as they are drawn."""

from PySide6.QtWidgets import QProxyStyle, QStyle, QStyleHintReturn, QStyleOption, QToolTip, QWidget

from bayboard.window import lettering
from bayboard.window.lettering import Style
from bayboard.window.theme import Theme, palette

WAKES = 600  # ms that the pointer rests before a tooltip comes
MARGIN = 9  # px round a tooltip's words
TIP = Style(px=15.0)


class BenchStyle(QProxyStyle):
    """Fusion, with tooltips that come after 600 ms and have air round their words."""

    def __init__(self) -> None:
        super().__init__("Fusion")

    def styleHint(
        self,
        hint: QStyle.StyleHint,
        option: QStyleOption | None = None,
        widget: QWidget | None = None,
        returned: QStyleHintReturn | None = None,
    ) -> int:
        """Return when a tooltip comes; anything else is Fusion's."""
        if hint == QStyle.StyleHint.SH_ToolTip_WakeUpDelay:
            return WAKES
        if hint == QStyle.StyleHint.SH_ToolTipLabel_Opacity:
            return 255
        return super().styleHint(hint, option, widget, returned)

    def pixelMetric(
        self, metric: QStyle.PixelMetric, option: QStyleOption | None = None, widget: QWidget | None = None
    ) -> int:
        """Return the air round a tooltip's words; anything else is Fusion's."""
        if metric == QStyle.PixelMetric.PM_ToolTipLabelFrameWidth:
            return MARGIN
        return super().pixelMetric(metric, option, widget)


def dress_tips(theme: Theme) -> None:
    """Have tooltips wear a theme: paper lettering on ink."""
    QToolTip.setFont(lettering.font(TIP.sized(theme.size), hinted=True))
    QToolTip.setPalette(palette(theme))
