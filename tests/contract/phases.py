"""Refusals that a usual instance never gives, brought about by its settings and held against the description.

Each phase starts an instance with keys, a small rate, small limits, a weather service that fails, or with a body on its way, and asks
every operation that says that it refuses so. All ask as a page of another site does. A refusal that an operation states and that
never came up is a fault, as is one that it does not state.

    tests/contract/.venv/bin/python tests/contract/phases.py     by itself; `probe` runs it as its last part
"""

import collections
import contextlib
import hashlib
import http.client
import itertools
import json
import pathlib
import socket
import sys
import tempfile
import time
import urllib.parse

import jsonschema_rs
import weather

HERE = pathlib.Path(__file__).resolve().parent
sys.path.append(str(HERE.parent))
from service import Service

DESCRIPTION = json.loads((HERE / "../../openapi/openapi.json").read_text())
ORIGIN, STRANGER = "https://shop.tern-island.example", "https://elsewhere.example"
KEY = "a-key-for-probing-and-nothing-else"
PAGE_KEY = "a-key-in-a-page"
JOB = "job-17"
# What every operation that states it must have answered at the end. 404 and 500 are left to the other part.
HELD = (400, 401, 403, 408, 413, 415, 422, 429, 431, 502, 503, 504)
BATCH = "/v1/installation-plan/batch"
EXPOSED = ("x-request-id", "ratelimit", "ratelimit-policy", "retry-after", "www-authenticate")

Answer = collections.namedtuple("Answer", "status headers body")


class Operation:
    """An operation of the description, and how it is asked."""

    def __init__(self, path, method, stated):
        self.method, self.path, self.responses = method.upper(), path, stated["responses"]
        self.name = f"{self.method} {path}"
        slugs = (parameter for parameter in stated.get("parameters", []) if parameter["in"] == "path")
        self.address = path.format(**{slug["name"]: slug["schema"]["enum"][0] for slug in slugs})
        asked = {parameter["name"]: parameter["example"] for parameter in stated.get("parameters", [])
                 if parameter["in"] == "query" and parameter.get("required")}
        # Without its query an operation that needs one is refused.
        self.bare, self.address = self.address, f"{self.address}?{urllib.parse.urlencode(asked)}" if asked else self.address
        content = stated.get("requestBody", {}).get("content", {}).get("application/json")
        named = [example["value"] for example in content.get("examples", {}).values()] if content else [None]
        self.example = (named or [content["example"]])[0]
        self.body = None if self.example is None else json.dumps(self.example).encode()

    def states(self, status):
        return str(status) in self.responses

    def with_location(self, place):
        """Its example, with the weather of a place."""
        example = json.loads(self.body)
        for holder in [item["request"] for item in example["items"]] if "items" in example else [example]:
            holder["start"] = weather.START
        example["weather"] = {"location": {"latitude": 44 + place / 100, "longitude": -68.2}}
        return json.dumps(example).encode()


OPERATIONS = [Operation(path, method, stated) for path, item in DESCRIPTION["paths"].items() for method, stated in item.items()]


def validator(schema):
    return jsonschema_rs.Draft202012Validator({**schema, "components": DESCRIPTION["components"]})


class Phase:
    """An instance with settings, and what its answers have in common."""

    def __init__(self, name, met, faults, **settings):
        self.name, self.met, self.faults, self.answers = name, met, faults, 0
        self.started, self.connection = time.monotonic(), None
        self.service = Service(**{"CORS_ORIGINS": ORIGIN, **settings})

    def __enter__(self):
        return self

    def __exit__(self, failed, *_):
        if self.connection:
            self.connection.close()
        self.service.close()
        if not failed:
            print(f"{self.name}: {self.answers} answers in {time.monotonic() - self.started:.1f} s", flush=True)

    def ask(self, operation, method=None, body=None, announced=None, origin=ORIGIN, address=None, **headers):
        """One answer, over the connection of the answer before where that is still open."""
        self.connection = self.connection or http.client.HTTPConnection(self.service.base.removeprefix("http://"), timeout=60)
        body = operation.body if body is None else body
        sent = {"origin": origin, "x-request-id": JOB, **{name.replace("_", "-"): value for name, value in headers.items()}}
        if body is not None:
            sent = {"content-type": "application/json", "content-length": str(announced or len(body)), **sent}
        self.connection.request(method or operation.method, address or operation.address, body, sent)
        with self.connection.getresponse() as answer:
            said = Answer(answer.status, {name.lower(): value for name, value in answer.getheaders()}, answer.read())
            if answer.will_close:
                self.connection.close()
        self.answers += 1
        return said

    def wrong(self, operation, text):
        self.faults.append(f"{self.name}: {operation.name}: {text}")

    def refused(self, operation, status, code, answer):
        """Holds a refusal against the description and against what all refusals have in common."""
        if answer.status != status:
            self.wrong(operation, f"{answer.status}, not {status}: {answer.body[:300]}")
            return
        self.met[operation.name].add(status)
        stated = operation.responses.get(str(status))
        if not stated:
            self.wrong(operation, f"a {status} that the description does not state")
            return
        self.problem(operation, answer, code, stated["content"])
        for name, header in stated.get("headers", {}).items():
            if name.lower() not in answer.headers and header.get("required"):
                self.wrong(operation, f"{status} without {name}")
        self.readable(operation, answer)

    def problem(self, operation, answer, code, content):
        """Holds the body, and the headers of all problems."""
        media = answer.headers.get("content-type")
        if media not in content:
            self.wrong(operation, f"{answer.status} as {media}")
            return
        body = json.loads(answer.body)
        for error in validator(content[media]["schema"]).iter_errors(body):
            self.wrong(operation, f"{answer.status} breaks its schema: {error.message}")
        said = (body.get("status"), body.get("code"), body.get("request_id"), answer.headers.get("x-request-id"))
        if said != (answer.status, code, JOB, JOB):
            self.wrong(operation, f"{answer.status} says {said}, not {code}")
        if answer.headers.get("cache-control") != "no-store":
            self.wrong(operation, f"{answer.status} may be stored")
        # What a caller is to wait for, and how it is to show who it is.
        wait, challenge = answer.headers.get("retry-after"), answer.headers.get("www-authenticate", "")
        if answer.status in (429, 503) and not (wait and wait.isdecimal() and int(wait) > 0):
            self.wrong(operation, f"{answer.status} with Retry-After {wait}")
        if answer.status == 401 and not challenge.startswith("Bearer "):
            self.wrong(operation, f"401 with WWW-Authenticate {challenge!r}")

    def readable(self, operation, answer):
        """Holds that a page of the listed origin can read an answer, and the headers that it needs."""
        allowed, exposed = answer.headers.get("access-control-allow-origin"), answer.headers.get("access-control-expose-headers", "")
        if allowed != ORIGIN or "origin" not in answer.headers.get("vary", "").lower():
            self.wrong(operation, f"{answer.status} for {allowed}, and varies by {answer.headers.get('vary')}")
        if missing := [name for name in EXPOSED if name not in exposed.lower()]:
            self.wrong(operation, f"{answer.status} does not expose {missing}")

    def until(self, status, operation, attempts=10, **sent):
        """The first answer with that status, or the last."""
        for _ in range(attempts):
            answer = self.ask(operation, **sent)
            if answer.status == status:
                break
        return answer


def waits_for_nothing(operation):
    """Whether an operation computes nothing: it states a 503, as it did when it had to wait, and is never refused so."""
    return operation.method == "GET" and not operation.path.startswith("/health/")


def needs_key(operation):
    """Whether it is refused without a key. Tables state a 401, as they did when they needed one."""
    return operation.states(403)


def stating(status):
    return [operation for operation in OPERATIONS if operation.states(status)]


def bodies(met, faults):
    """Bodies that are none, of another kind, too large, too late, and heads that are too large."""
    with Phase("bodies and heads", met, faults, BODY_LIMIT="1000", DEADLINE="0.2 s") as phase:
        for operation in stating(408):
            phase.refused(operation, 400, "malformed_json", phase.ask(operation, body=b"{"))
            phase.refused(operation, 415, "unsupported_media_type", phase.ask(operation, body=b"{}", content_type="text/plain"))
            phase.refused(operation, 422, "validation_failed", phase.ask(operation, body=b'{"no_such_field": 1}'))
            phase.refused(operation, 413, "body_too_large", phase.ask(operation, body=b" " * 70_000))
            phase.refused(operation, 408, "request_timeout", phase.ask(operation, body=b"{", announced=9))
        for operation in stating(422):
            if operation.method == "GET":
                phase.refused(operation, 422, "validation_failed", phase.ask(operation, address=operation.bare))
        for operation in stating(431):
            phase.refused(operation, 431, "head_too_large", phase.ask(operation, x_padding="a" * 20_000))


def keys(met, faults, folder):
    """No key, one that nobody has, one of another page, and the right one."""
    file = pathlib.Path(folder) / "keys.json"
    hashes = [[hashlib.sha256(key.encode()).hexdigest()] for key in (KEY, PAGE_KEY)]
    page = {"name": "page", "sha256": hashes[1], "origins": ["https://yard.tern-island.example"], "paths": [BATCH],
            "requests_per_second": 1000, "burst": 1000}
    file.write_text(json.dumps([{"name": "tern-island", "sha256": hashes[0]}, page]))
    with Phase("keys", met, faults, KEYS=str(file)) as phase:
        for operation in OPERATIONS:
            answer = phase.ask(operation)
            if not needs_key(operation):
                if answer.status == 401:
                    phase.wrong(operation, "needs a key, which the description does not state")
                continue
            phase.refused(operation, 401, "unauthorized", answer)
            if "error=" in answer.headers.get("www-authenticate", ""):
                phase.wrong(operation, "calls a key wrong that was not sent")
            answer = phase.ask(operation, authorization="Bearer of-another-client")
            phase.refused(operation, 401, "unauthorized", answer)
            if 'error="invalid_token"' not in answer.headers.get("www-authenticate", ""):
                phase.wrong(operation, "does not say that the key is wrong")
            answer = phase.ask(operation, authorization=f"Bearer {PAGE_KEY}")
            phase.refused(operation, 403, "key_not_for_here", answer)
            answer = phase.ask(operation, authorization=f"Bearer {KEY}")
            if answer.status != 200:
                phase.wrong(operation, f"{answer.status} with the right key")
            phase.readable(operation, answer)


def rate(met, faults):
    """One request a second."""
    with Phase("rate", met, faults, RATE="1", BURST="1") as phase:
        for operation in OPERATIONS:
            if operation.states(429):
                # The batch of the example is larger than the burst, so that it would never be taken.
                body = json.dumps({"items": operation.example["items"][:1]}).encode() if "batch" in operation.path else None
                phase.refused(operation, 429, "rate_limited", phase.until(429, operation, body=body))
            elif phase.until(429, operation).status == 429:
                phase.wrong(operation, "counts against the rate, which the description does not state")


def pages(met, faults):
    """Pages that may call, pages that may not, and an instance that no page may call."""
    preflight = {"access_control_request_method": "POST", "access_control_request_headers": "content-type, authorization"}
    problem = {"application/problem+json": {"schema": {"$ref": "#/components/schemas/Problem"}}}
    with Phase("pages of other sites", met, faults) as phase:
        for operation in OPERATIONS:
            asked = {**preflight, "access_control_request_method": operation.method}
            answer = phase.ask(operation, method="OPTIONS", body=b"", **asked)
            methods = answer.headers.get("access-control-allow-methods", "")
            if answer.status != 200 or answer.headers.get("access-control-allow-origin") != ORIGIN or operation.method not in methods:
                phase.wrong(operation, f"preflight of a listed page: {answer.status}, {answer.headers}")
            answer = phase.ask(operation, method="OPTIONS", body=b"", origin=STRANGER, **asked)
            if answer.status != 400 or "access-control-allow-origin" in answer.headers:
                phase.wrong(operation, f"preflight of another page: {answer.status}, {answer.headers}")
            phase.problem(operation, answer, "preflight_refused", problem)
            answer = phase.ask(operation, origin=STRANGER)
            if answer.status != 200 or "access-control-allow-origin" in answer.headers:
                phase.wrong(operation, f"another page: {answer.status}, {answer.headers}")
    with Phase("no pages", met, faults, CORS_ORIGINS="") as phase:
        for operation in OPERATIONS:
            for answer in (phase.ask(operation), phase.ask(operation, method="OPTIONS", body=b"", **preflight)):
                if found := [name for name in answer.headers if name.startswith("access-control-")]:
                    phase.wrong(operation, f"{answer.status} with {found}")


def forecasting(mode, timeout, **settings):
    """A weather service, and the settings of an instance that asks it."""
    service = weather.Weather(mode)
    return service, {"FORECAST_URL": service.base, "FORECAST_USER_AGENT": "yard@tern-island.example",
                     "FORECAST_TIMEOUT": timeout, **settings}


def forecasts(met, faults):
    """A weather service that is sound, talks nonsense until it is left alone, and is silent."""
    places = itertools.count(1)

    def ask(phase, operation):
        # Each place once, for what is known of one is not asked again.
        return phase.ask(operation, body=operation.with_location(next(places)))

    # So few to an instance that their failures do not yet leave the weather service alone.
    asking = stating(502)
    groups = [asking[first:first + 3] for first in range(0, len(asking), 3)]
    for (mode, timeout), group in itertools.product(((weather.SOUND, "10 s"), (weather.BROKEN, "10 s"), (weather.SILENT, "0.2 s")), groups):
        service, settings = forecasting(mode, timeout)
        with contextlib.closing(service), Phase(f"weather service, {mode}", met, faults, **settings) as phase:
            for operation in group:
                answer = ask(phase, operation)
                if mode == weather.BROKEN:
                    phase.refused(operation, 502, "forecast_failed", answer)
                elif mode == weather.SILENT:
                    phase.refused(operation, 504, "forecast_timeout", answer)
                elif answer.status != 200:
                    phase.wrong(operation, f"{answer.status} with a sound forecast: {answer.body[:300]}")
            # After enough failures the weather service is left alone, for every caller and place.
            for operation in (group if mode == weather.BROKEN else ()):
                tries = (ask(phase, operation) for _ in range(20))
                answer = next((answer for answer in tries if answer.status == 503), None) or ask(phase, operation)
                phase.refused(operation, 503, "forecast_unavailable", answer)


def crowd(met, faults):
    """A caller whose bodies on their way are as large as may be, so that no other of its bodies is taken; then an instance that stops."""
    share = 256 * 1024
    with Phase("bodies on their way", met, faults, ARRIVING_LIMIT=str(4 * share), DEADLINE="60 s", DRAIN_DELAY="2 s") as phase:
        address = phase.service.base.removeprefix("http://").split(":")
        head = f"POST {BATCH} HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\ncontent-length: {2 * share}\r\n\r\n"
        refused = [operation for operation in stating(503) if operation.method == "POST"]
        # The body that is to be held may itself be the one too many, while a question is on its way: then it is sent again.
        for _ in range(20):
            with socket.create_connection(address, timeout=30) as holder:
                holder.sendall(head.encode() + b" " * share)
                # It takes a moment until the last byte has arrived.
                if phase.until(503, refused[0], attempts=100).status != 503:
                    continue
                for operation in refused:
                    phase.refused(operation, 503, "overloaded", phase.ask(operation))
                break
        ready = next(operation for operation in OPERATIONS if operation.path == "/health/ready")
        phase.service.process.terminate()
        phase.refused(ready, 503, "unavailable", phase.until(503, ready, attempts=1000))


def main():
    met, faults = collections.defaultdict(set), []
    with tempfile.TemporaryDirectory(prefix="loopwright-phases-") as folder:
        bodies(met, faults)
        keys(met, faults, folder)
        rate(met, faults)
        pages(met, faults)
        forecasts(met, faults)
        crowd(met, faults)
    for status in HELD:
        never = [operation.name for operation in stating(status)
                 if status not in met[operation.name] and not (status == 503 and waits_for_nothing(operation))
                 and not (status == 401 and not needs_key(operation))]
        faults[:0] = [f"{name} states a {status} that never came up" for name in never]
        count = sum(status in statuses for statuses in met.values())
        print(f"{status}: {count} operations refused so" + (f", {len(never)} never did" if never else ""))
        if not count:
            faults.insert(0, f"no operation refused with a {status}")
    if faults:
        shown = [*faults[:40], *([f"and {len(faults) - 40} more"] if len(faults) > 40 else [])]
        raise SystemExit("\n".join(["phases: refusals are not what the description says:", *shown]))


main()
