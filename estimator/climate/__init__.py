"""Climate: a weather year from a name or a file, checked, with the sun on four façades."""
