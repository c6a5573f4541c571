"""A mixed load for a long time, and the end of an instance under load.

Every POST path of the description is asked with every example it publishes, a batch of plans among them, and with requests that
must be refused. Memory is sampled every ten seconds. At the end the instance gets SIGTERM while all clients still ask.

A request is cut when it goes out on an open connection and no whole answer comes back. A connection that is not taken any more
once the instance stops listening is none: a balancer has looked elsewhere by then.
"""

import collections
import http.client
import json
import signal
import statistics
import threading
import time

from programs import EXAMPLES, ROOT, Server, headers

CLIENTS = 4
SAMPLE = 10
# How long clients go on after SIGTERM; the instance drains for two seconds before it stops to listen.
AFTER = 6


def requests():
    """Path, method, body and the status that must come, for everything that is asked."""
    description = json.loads((ROOT / "openapi" / "openapi.json").read_text())
    posts = {path: item["post"]["requestBody"]["content"]["application/json"]
             for path, item in description["paths"].items() if "post" in item}
    asked = []
    for path, content in posts.items():
        asked += [(path, "POST", json.dumps(example["value"]), 200) for example in content.get("examples", {}).values()]
        asked.append((path, "POST", '{"no_such_field": 1}', 422))
    plans = sorted((EXAMPLES / "installation-plan").glob("*.request.json"))
    items = [{"id": plan.name, "request": json.loads(plan.read_text())} for plan in plans]
    asked.append(("/v1/installation-plan/batch", "POST", json.dumps({"items": items}), 200))
    sizing = "/v1/loop-sizing"
    asked += [(sizing, "POST", '{"opening": ', 400), (sizing, "POST", '{"opening": {"width": "wide"}, "vehicles": []}', 422),
              (sizing, "GET", None, 405), ("/v1/nothing", "POST", "{}", 404), (sizing, "POST", "[" * 1000, 400)]
    return asked


class Clients:
    """Threads that ask at a steady rate until they are stopped, each on a connection of its own."""

    def __init__(self, port, rate):
        self.port, self.every, self.mix = port, CLIENTS / rate, requests()
        self.statuses, self.wrong, self.cut, self.not_taken = collections.Counter(), [], [], 0
        self.lock, self.stopping, self.ended = threading.Lock(), threading.Event(), threading.Event()
        self.threads = [threading.Thread(target=self.run, args=(index,)) for index in range(CLIENTS)]
        for thread in self.threads:
            thread.start()

    def run(self, index):
        connection, at = None, index * len(self.mix) // CLIENTS
        due = time.monotonic()
        while not self.ended.is_set():
            path, method, body, expected = self.mix[at % len(self.mix)]
            at += 1
            due += self.every
            time.sleep(max(0, due - time.monotonic()))
            if connection is None:
                connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=60)
                try:
                    connection.connect()
                except OSError:
                    connection = None
                    with self.lock:
                        self.not_taken += 1
                    continue
            try:
                connection.request(method, path, body, headers())
                answer = connection.getresponse()
                answer.read()
            except (OSError, http.client.HTTPException) as error:
                connection = None
                with self.lock:
                    self.cut.append(f"{method} {path}: {error!r}, {'while stopping' if self.stopping.is_set() else 'in service'}")
                continue
            if answer.will_close:
                connection = None
            with self.lock:
                self.statuses[answer.status] += 1
                if answer.status != expected:
                    self.wrong.append(f"{method} {path}: {answer.status}, not {expected}")
        if connection:
            connection.close()

    def end(self):
        self.ended.set()
        for thread in self.threads:
            thread.join()


def soak(minutes, rate, folder):
    server = Server.service(folder)
    clients = Clients(server.port, rate)
    samples, started = [], time.monotonic()
    try:
        while time.monotonic() < started + minutes * 60 and server.process.poll() is None:
            time.sleep(SAMPLE)
            samples.append((time.monotonic() - started, server.memory("VmRSS")))
        answered = sum(clients.statuses.values())
        seconds = time.monotonic() - started
        most, processor = server.memory("VmHWM"), server.processor_seconds()
        clients.stopping.set()
        server.process.send_signal(signal.SIGTERM)
        time.sleep(AFTER)
        clients.end()
        code = server.process.wait(60)
    finally:
        clients.end()
        server.end()
    memory = [sample for _, sample in samples]
    late = [(when, value) for when, value in samples if when > seconds / 2]
    slope = statistics.linear_regression(*zip(*late)).slope * 3600 if len(late) > 2 else float("nan")
    print(f"{answered:,} requests in {seconds:,.0f} s, {answered / seconds:.0f} a second, {processor / seconds:.0%} of a core")
    print(f"memory, MiB: first {memory[0]:.1f}, at most {most:.1f}, last {memory[-1]:.1f}; second half {slope:+.2f} an hour")
    print("answers: " + ", ".join(f"{status}: {count:,}" for status, count in sorted(clients.statuses.items())))
    print(f"SIGTERM under load: ended with {code}; {sum(clients.statuses.values()) - answered} answered after it, "
          f"{clients.not_taken} connections not taken, {len(clients.cut)} requests cut")
    for fault in [*clients.wrong[:10], *clients.cut[:10]]:
        print(fault)
    if clients.wrong or clients.cut or code:
        raise SystemExit(f"load: {len(clients.wrong)} unexpected answers, {len(clients.cut)} cut, ended with {code}")
