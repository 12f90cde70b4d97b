"""Survey: from what was said to complete numbers in SI, each with its origin."""
