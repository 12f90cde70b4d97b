"""Which words may stand behind the command that screens a stock of homes?"""

from __future__ import annotations

import argparse
from pathlib import Path


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Everything that can stand behind the name of the command."""
    parser.add_argument("table", nargs="?", type=Path, help="the homes, one a row: .csv or .parquet")
    parser.add_argument("results", nargs="?", type=Path, help="where the results go: .csv or .parquet")
    parser.add_argument("--case", help="a case file whose options, prices and weather hold for every home")
    parser.add_argument("--climate", default="", help="weather instead of the case's own, as for an estimate")
    parser.add_argument("--option", help="the option to judge; the case's heat recovery unless said")
    parser.add_argument("--full-year", action="store_true", help="all 8,760 hours for every home, in double precision")
    parser.add_argument("--ranges", action="store_true", help="low and high ends for every home as well; slow")
    parser.add_argument("--workers", type=int, help="processes; as many as there are cores unless said")
    parser.add_argument("--template", action="store_true", help="print a table to fill in, with examples")
    parser.add_argument(
        "--headings", action="store_true", help="print every heading a column may have, and its meaning"
    )
