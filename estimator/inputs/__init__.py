"""Inputs: the nouns a person describes, each field declared once."""
