"""A mixed load for a long time, and the end of an instance under load.

Every POST path of the description is asked with every example it publishes, and with requests that must be refused. Batches are
among them: of the examples, with drawings and shared weather, and with items that fail. One client more sends the largest batch that
the description promises, every 17 s. Of each batch it is counted how many items have a report. Memory is sampled every ten seconds.
At the end the instance gets SIGTERM while all clients still ask.

A request is cut when it goes out on an open connection and no whole answer comes back. A connection that is not taken any more
once the instance stops listening is none: a balancer has looked elsewhere by then.
"""

import collections
import http.client
import itertools
import json
import signal
import statistics
import threading
import time

import heavy
from programs import EXAMPLES, ROOT, Server, headers

CLIENTS = 4
# How often the largest batch is sent, and its items.
LARGEST_EVERY, LARGEST = 17, 200
# Each client may have a batch in work, though all are one caller, and none is refused for its time: a machine may have other work.
LONGEST = 120
SETTINGS = {"LOOPWRIGHT_BATCHES_IN_FLIGHT": str(2 * (CLIENTS + 1)), "LOOPWRIGHT_BATCH_DEADLINE": f"{LONGEST} s",
            "LOOPWRIGHT_QUEUE_DEADLINE": f"{LONGEST} s",
            "LOOPWRIGHT_STOP_TIMEOUT": f"{LONGEST} s"}
SAMPLE = 10
# How long clients go on after SIGTERM; the instance drains for two seconds before it stops to listen.
AFTER = 6


def requests():
    """Path, method, body and what must come, for everything that is asked."""
    description = json.loads((ROOT / "openapi" / "openapi.json").read_text())
    posts = {path: item["post"]["requestBody"]["content"]["application/json"]
             for path, item in description["paths"].items() if "post" in item}
    asked = []
    for path, content in posts.items():
        asked += [(path, "POST", json.dumps(example["value"]), 200) for example in content.get("examples", {}).values()]
        asked.append((path, "POST", '{"no_such_field": 1}', 422))
    asked += [(heavy.BATCH, "POST", body, expected) for body, expected in batches()]
    sizing = heavy.SIZING
    asked += [(sizing, "POST", '{"opening": ', 400), (sizing, "POST", '{"opening": {"width": "wide"}, "vehicles": []}', 422),
              (sizing, "GET", None, 405), ("/v1/nothing", "POST", "{}", 404), (sizing, "POST", "[" * 1000, 400)]
    return asked


def examples():
    """The published plans, over and over."""
    files = sorted((EXAMPLES / "installation-plan").glob("*.request.json"))
    return itertools.cycle([json.loads(file.read_text()) for file in files])


def batches():
    """Batches, and how many of their items must have a report and a problem; or the status, where the whole is refused."""
    drawn = heavy.plan(heavy.USUAL_ROLES, heavy.USUAL_VEHICLES)
    wrong = [{"no_such_field": 1}, {"opening": {"width": "wide", "barrier": "slide_gate"}}]
    yield heavy.batch(itertools.islice(examples(), 3)), (3, 0)
    yield heavy.batch([drawn] * 4, weather=heavy.hours(72)), (4, 0)
    yield heavy.batch([drawn, *wrong, drawn], weather=heavy.hours(72)), (2, 2)
    yield heavy.batch([]), 422


def came(answer, body, expected):
    """What came, in the form of what must come."""
    if answer.status == 200 and isinstance(expected, tuple):
        report = json.loads(body)
        return report["succeeded"], report["failed"]
    return answer.status


class Clients:
    """Threads that ask at a steady rate until they are stopped, each on a connection of its own."""

    def __init__(self, port, rate):
        self.port = port
        self.statuses, self.wrong, self.cut, self.not_taken = collections.Counter(), [], [], 0
        # Items of batches with a report, and with a problem.
        self.items = [0, 0]
        self.lock, self.stopping, self.ended = threading.Lock(), threading.Event(), threading.Event()
        mix = requests()
        print(f"{len(mix)} kinds of requests, {sum(path == heavy.BATCH for path, *_ in mix)} of them batches")
        begins = [index * len(mix) // CLIENTS for index in range(CLIENTS)]
        shares = [(mix[begin:] + mix[:begin], CLIENTS / rate) for begin in begins]
        largest = heavy.batch(itertools.islice(examples(), LARGEST))
        shares.append(([(heavy.BATCH, "POST", largest, (LARGEST, 0))], LARGEST_EVERY))
        self.threads = [threading.Thread(target=self.run, args=share) for share in shares]
        for thread in self.threads:
            thread.start()

    def run(self, asked, every):
        connection, due = None, time.monotonic()
        for path, method, body, expected in itertools.cycle(asked):
            # Who waits long for his turn still ends with the others.
            if self.ended.wait(max(0, due - time.monotonic())):
                break
            # Time that was lost is not made up for.
            due = max(due + every, time.monotonic())
            if connection is None:
                connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=2 * LONGEST)
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
                got = came(answer, answer.read(), expected)
            except (OSError, http.client.HTTPException) as error:
                connection = None
                with self.lock:
                    self.cut.append(f"{method} {path}: {error!r}, {'while stopping' if self.stopping.is_set() else 'in service'}")
                continue
            # A connection that rests for long could be ended by the service just as it is used again.
            if answer.will_close or every > 1:
                connection.close()
                connection = None
            with self.lock:
                self.statuses[answer.status] += 1
                if isinstance(got, tuple):
                    self.items = [sum(pair) for pair in zip(self.items, got)]
                if got != expected:
                    self.wrong.append(f"{method} {path}: {got}, not {expected}")
        if connection:
            connection.close()

    def end(self):
        self.ended.set()
        for thread in self.threads:
            thread.join()


def soak(minutes, rate, folder):
    server = Server.service(folder, SETTINGS)
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
        code = server.process.wait(2 * LONGEST)
    finally:
        clients.end()
        server.end()
    memory = [sample for _, sample in samples]
    late = [(when, value) for when, value in samples if when > seconds / 2]
    slope = statistics.linear_regression(*zip(*late)).slope * 3600 if len(late) > 2 else float("nan")
    print(f"{answered:,} requests in {seconds:,.0f} s, {answered / seconds:.0f} a second, {processor / seconds:.0%} of a core")
    print(f"memory, MiB: first {memory[0]:.1f}, at most {most:.1f}, last {memory[-1]:.1f}; second half {slope:+.2f} an hour")
    print("answers: " + ", ".join(f"{status}: {count:,}" for status, count in sorted(clients.statuses.items()))
          + "; items of batches with a report {:,}, with a problem {:,}".format(*clients.items))
    print(f"SIGTERM under load: ended with {code}; {sum(clients.statuses.values()) - answered} answered after it, "
          f"{clients.not_taken} connections not taken, {len(clients.cut)} requests cut")
    for fault in [*clients.wrong[:10], *clients.cut[:10]]:
        print(fault)
    if clients.wrong or clients.cut or code:
        raise SystemExit(f"load: {len(clients.wrong)} unexpected answers, {len(clients.cut)} cut, ended with {code}")
