"""Money: what energy costs and emits, and what saving is worth. Arrays in, arrays out."""
