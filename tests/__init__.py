"""Tests: `python -m tests` runs them all, with lint, format and types."""
