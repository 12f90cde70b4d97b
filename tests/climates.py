"""On which climates is tried what costs seconds on each of them?

Those of every make and winter: all that stand as hours, and of the regions, whose years are all made in one way from
twelve means, the mildest winter and the windiest. What is cheap is tried on all of them.
"""

from __future__ import annotations

from estimator import names
from estimator.climate.monthly_tables import uk_regions

REGIONS = ("South-west England", "Shetland")
OF_EVERY_KIND = (*(name for name in names() if name not in uk_regions()), *REGIONS)
