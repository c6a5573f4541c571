"""Clients that ask over kept-alive connections, and count what became of each request."""

import collections
import http.client
import socket
import threading
import time

from instance import ROOT

HEADERS = {"content-type": "application/json"}


def questions():
    """A quick question and a longer one, as the published examples ask them."""
    asked = [("loop-characteristics", "standard_test_loop"), ("loop-sizing", "yard_gate")]
    folder = ROOT / "openapi" / "examples"
    return [(f"/v1/{path}", (folder / path / f"{name}.request.json").read_bytes()) for path, name in asked]


class Answers:
    """The first answer to each question; every later one must be the same, byte for byte."""

    def __init__(self):
        self.first, self.lock = {}, threading.Lock()

    def agree(self, path, body):
        with self.lock:
            return self.first.setdefault(path, body) == body


class Client(threading.Thread):
    """Asks one request after the other until it is told to end.

    Each request counts as `answered`, `wrong` (another status, or other bytes than the first answer), `cut` (the connection broke
    after the request had been sent, wholly or in part) or `refused` (no connection; nothing was sent).
    """

    def __init__(self, connect, answers, pause=0.0):
        super().__init__(daemon=True)
        self.connect, self.answers, self.pause = connect, answers, pause
        self.counts, self.told, self.over = collections.Counter(), [], threading.Event()
        self.connection = None

    def may_connect(self):
        """Whether it would open another connection; one that asks an instance directly looks at its readiness first."""
        return True

    def run(self):
        asked = questions()
        turn = 0
        while not self.over.is_set():
            if self.connection is None and not self.open():
                return
            self.ask(*asked[turn % len(asked)])
            turn += 1
            if self.pause:
                time.sleep(self.pause)
        self.hang_up()

    def open(self):
        if not self.may_connect():
            return False
        try:
            self.connection = self.connect()
            return True
        except OSError as error:
            self.note("refused", error)
            return False

    def hang_up(self):
        if self.connection:
            self.connection.close()
        self.connection = None

    def ask(self, path, body):
        try:
            self.connection.request("POST", path, body, HEADERS)
            answer = self.connection.getresponse()
            got = answer.read()
        except (OSError, http.client.HTTPException) as error:
            self.note("cut", f"{path}: {error!r}")
            self.hang_up()
            return
        if answer.status == 200 and self.answers.agree(path, got):
            self.counts["answered"] += 1
        else:
            self.note("wrong", f"{path}: {answer.status} {got[:300]!r}")
        if answer.will_close:
            self.counts["closed"] += 1
            self.hang_up()

    def note(self, kind, what):
        self.counts[kind] += 1
        self.told.append(f"{kind}: {what}")


def plain(port):
    """A way to open a connection to an instance."""
    def connect():
        connection = http.client.HTTPConnection("127.0.0.1", port, timeout=30)
        connection.connect()
        connection.sock.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        return connection
    return connect


def total(clients):
    return sum((client.counts for client in clients), collections.Counter())


def report(clients):
    """What went wrong, for a person; the first lines are enough."""
    lines = [line for client in clients for line in client.told]
    return "\n".join(lines[:10])
