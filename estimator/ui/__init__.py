"""Dashboard: the only room that knows the app framework."""
