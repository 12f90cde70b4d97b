"""Evidence: published values that the package is held against, run by the user's own copy."""
