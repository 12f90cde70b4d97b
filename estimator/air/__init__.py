"""Air: how much is needed, how much leaks, what fans, exchangers and ducts do. Arrays in, arrays out."""
