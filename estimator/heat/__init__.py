"""Heat: gains, losses and the heat that remains to be supplied. Arrays in, arrays out."""
