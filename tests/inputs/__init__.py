"""Tests of the nouns a person describes, and of the files they stand in."""
