"""The script of the dashboard; everything it does is in `estimator.ui.shell`."""

from estimator.ui.shell import draw

draw()
