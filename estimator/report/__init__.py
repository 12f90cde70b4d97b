"""Report: results in words, tables, documents and pictures."""
