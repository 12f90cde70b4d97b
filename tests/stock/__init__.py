"""Many homes at once: the same answers as one by one, no row lost, and nothing done twice."""
