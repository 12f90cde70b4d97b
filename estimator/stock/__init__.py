"""Stock: many homes at once, the very functions of one home on columns."""
