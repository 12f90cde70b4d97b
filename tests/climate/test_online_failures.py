"""Does every way in which the service can fail end in one plain sentence, with the next best choice?

It fails on a server of this machine, or at an address where nobody listens.
"""

from __future__ import annotations

import json
import socket
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from estimator.climate.cache import Cache
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault
from tests.climate.replay import BROKEN, SEA, Replay, Row, as_csv, as_epw


def changed(good_answer: bytes, change: Callable[[dict[str, Any]], None]) -> bytes:
    answer = json.loads(good_answer)
    change(answer)
    return json.dumps(answer).encode()


def put(hour: int, name: str, value: object) -> Callable[[dict[str, Any]], None]:
    return lambda answer: answer["outputs"]["tmy_hourly"][hour].__setitem__(name, value)


FAILURES: list[tuple[str, Callable[[Replay, bytes], Replay], str]] = [
    ("sea", lambda r, _: replace(r, status=400, body=json.dumps(SEA).encode()), "Location over the sea"),
    ("error in words", lambda r, _: replace(r, status=500, body=json.dumps(BROKEN).encode()), "Internal Server Error"),
    ("error", lambda r, _: replace(r, status=500, body=b"oops"), "status 500"),
    ("busy", lambda r, _: replace(r, status=529, body=b""), "overloaded"),
    ("too often", lambda r, _: replace(r, status=429, body=b""), "wait a minute"),
    ("error of another form", lambda r, _: replace(r, status=400, body=b"[1]"), "no weather year"),
    ("web page", lambda r, _: replace(r, body=b"<!DOCTYPE html><p>Sign in"), "sign-in page"),
    ("empty", lambda r, _: replace(r, body=b""), "no weather year"),
    ("empty object", lambda r, _: replace(r, body=b"{}"), "no weather year"),
    ("cut off", lambda r, g: replace(r, body=g[:90_000], stated_length=len(g)), "broke off"),
    ("cut off unnoticed", lambda r, g: replace(r, body=g[:90_000]), "no weather year"),
    ("slow", lambda r, g: replace(r, body=g, wait=3.0), "within 0.6 s"),
    ("trickle", lambda r, g: replace(r, body=g, trickle=0.05), "within 0.6 s"),
    ("few hours", lambda r, g: replace(r, body=changed(g, lambda a: a["outputs"]["tmy_hourly"].pop())), "8,759 hours"),
    ("elsewhere", lambda r, g: replace(r, body=g.replace(b"-79.95", b"-70.0")), "answered for 36.1, -70"),
    ("no place", lambda r, g: replace(r, body=g.replace(b'"latitude"', b'"north"')), "which place"),
    ("no wind", lambda r, g: replace(r, body=g.replace(b"WS10m", b"wind")), "lacks wind_speed"),
    ("letters", lambda r, g: replace(r, body=changed(g, put(70, "T2m", "warm"))), "row 71, column temp_air"),
    ("kelvin", lambda r, g: replace(r, body=changed(g, put(70, "T2m", 280.0))), "kelvin"),
    ("time", lambda r, g: replace(r, body=changed(g, put(70, "time(UTC)", "noon"))), "no weather year"),
]


@pytest.mark.parametrize(("answers", "says"), [row[1:] for row in FAILURES], ids=[row[0] for row in FAILURES])
def test_every_failure_is_one_plain_sentence_with_the_next_best_choice(
    server: Replay,
    ask: Callable[..., ClimateYear],
    good_answer: bytes,
    tmp_path: Path,
    answers: Callable[[Replay, bytes], Replay],
    says: str,
) -> None:
    wanted = answers(server, good_answer)
    for name in ("status", "body", "stated_length", "wait", "trickle"):
        setattr(server, name, getattr(wanted, name))
    began = time.monotonic()
    with pytest.raises(ClimateFault) as caught:
        ask(timeout=0.6 if wanted.wait or wanted.trickle else 20.0)
    assert time.monotonic() - began < 15.0
    (fault,) = caught.value.faults
    assert says in fault.what
    assert "nearest included climate is “Greensboro”, 0 km away" in fault.what
    assert "36.10° N, 79.95° W" in fault.where
    assert caught.value.__cause__ is None
    assert Cache(tmp_path / "kept").kept() == []


@pytest.mark.parametrize("form", ["csv", "epw"])
def test_other_forms_fail_in_words_too(
    server: Replay, ask: Callable[..., ClimateYear], answered_rows: list[Row], form: str
) -> None:
    whole = {"csv": as_csv, "epw": as_epw}[form](answered_rows)
    for body in (whole[: len(whole) // 2], b"", b"<html>", whole.replace(b"2007", b"zwei")):
        server.body = body
        with pytest.raises(ClimateFault, match="nearest included climate"):
            ask(form=form)


def test_without_a_network_the_next_best_is_offered(ask: Callable[..., ClimateYear]) -> None:
    with socket.socket() as nobody:
        nobody.bind(("127.0.0.1", 0))  # bound, but not listening
        url = f"http://127.0.0.1:{nobody.getsockname()[1]}/api/"
        with pytest.raises(ClimateFault, match="cannot be reached: there is no network") as caught:
            ask("52.2,0.1", url=url)
    assert "or give a weather file of your own" in str(caught.value)
    with pytest.raises(ClimateFault, match="no address"):
        ask(url="nonsense")
