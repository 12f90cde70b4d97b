"""Is the dashboard closed towards all but this machine, silent about itself, sparing with what it takes in?"""

from __future__ import annotations

import http.client
import socket
import tomllib
import urllib.error
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.browser.harness import Server
from tests.load.session import Session
from tests.sources import ROOT

SETTINGS = tomllib.loads((ROOT / ".streamlit" / "config.toml").read_text("utf-8"))
UPGRADE = {
    "Connection": "Upgrade",
    "Upgrade": "websocket",
    "Sec-WebSocket-Version": "13",
    "Sec-WebSocket-Key": "dGhlIHNhbXBsZSBub25jZQ==",  # RFC 6455, section 1.3
}


@pytest.fixture(scope="module")
def server() -> Iterator[Server]:
    one = Server()
    one.start()
    yield one
    one.stop()


@pytest.mark.parametrize(
    ("section", "name", "value"),
    [
        ("server", "address", "127.0.0.1"),
        ("server", "allowedHosts", ["localhost", "127.0.0.1", "::1"]),
        ("server", "maxUploadSize", 5),
        ("server", "fileWatcherType", "none"),
        ("server", "showEmailPrompt", False),
        ("browser", "gatherUsageStats", False),
        ("client", "showErrorDetails", "none"),
        ("client", "showErrorLinks", False),
        ("client", "toolbarMode", "viewer"),
    ],
)
def test_a_setting_that_keeps_it_closed(section: str, name: str, value: object) -> None:
    assert SETTINGS[section][name] == value


def test_no_protection_is_turned_off() -> None:
    server = SETTINGS["server"]
    assert server.get("enableCORS", True)
    assert server.get("enableXsrfProtection", True)
    assert not server.get("enableAgentApi", False)


def test_it_listens_on_this_machine_alone(server: Server) -> None:
    table = Path("/proc/net/tcp")
    if not table.exists():
        pytest.skip("only Linux tells who listens where in a file")
    listening = "0A"  # of the kernel's table of connections
    for path in (table, Path("/proc/net/tcp6")):
        for row in path.read_text("ascii").splitlines()[1:]:
            local, state = row.split()[1], row.split()[3]
            address, port = local.split(":")
            if state == listening and int(port, 16) == server.port:
                assert address == "0100007F"  # 127.0.0.1


def test_every_answer_carries_its_protection(server: Server) -> None:
    with urllib.request.urlopen(server.url) as answer:
        assert answer.headers["x-content-type-options"] == "nosniff"
        assert answer.headers["referrer-policy"] == "no-referrer"  # the case stands in the address
        policy = answer.headers["content-security-policy"]
    assert "default-src 'self'" in policy
    assert "object-src 'none'" in policy
    assert "http" not in policy


def upgraded(server: Server, **headers: str) -> int:
    """Status with which the server answers somebody who would open a session."""
    asking = http.client.HTTPConnection("127.0.0.1", server.port, timeout=30)
    try:
        asking.putrequest("GET", "/_stcore/stream", skip_host="Host" in headers)
        for name, value in {**UPGRADE, **headers}.items():
            asking.putheader(name, value)
        asking.endheaders()
        return asking.getresponse().status
    finally:
        asking.close()


def test_a_page_of_another_site_opens_no_session(server: Server) -> None:
    assert upgraded(server) == 101
    assert upgraded(server, Origin="http://evil.example") == 403


def test_another_name_for_this_machine_opens_no_session(server: Server) -> None:
    """Rebinding a name to 127.0.0.1 gets a foreign page past the browser's rules, but not past the list of hosts."""
    assert upgraded(server, Host=f"localhost:{server.port}") == 101
    assert upgraded(server, Host="evil.example", Origin="http://evil.example") == 403


@pytest.mark.parametrize(
    "path", ["/../pyproject.toml", "/app/static/../../../pyproject.toml", "/%2e%2e/pyproject.toml"]
)
def test_no_path_leads_to_files_of_the_machine(server: Server, path: str) -> None:
    asking = http.client.HTTPConnection("127.0.0.1", server.port, timeout=30)
    asking.request("GET", path)  # as it stands: no client tidies it up
    said = asking.getresponse().read()
    assert b"[build-system]" not in said
    assert b"middleware" not in said
    asking.close()


def test_nothing_is_taken_in_without_a_session(server: Server) -> None:
    asked = urllib.request.Request(f"{server.url}/_stcore/upload_file/none/none", data=b"x" * 1000, method="PUT")
    with pytest.raises(urllib.error.HTTPError) as refused:
        urllib.request.urlopen(asked)
    assert refused.value.code in (400, 403)
    refused.value.close()


def test_it_survives_those_who_say_nothing_or_nonsense(server: Server) -> None:
    silent = [socket.create_connection(("127.0.0.1", server.port)) for _ in range(50)]
    session = Session(server.port)
    session.channel.send(b"\xff" * 1000)
    session.close()
    with urllib.request.urlopen(f"{server.url}/_stcore/health") as answer:
        assert answer.read() == b"ok"
    for one in silent:
        one.close()
