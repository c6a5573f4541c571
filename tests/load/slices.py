"""Short slices of load by wrk, and what a server did in one."""

import json
import pathlib
import statistics
import subprocess

from programs import CLIENT_CORE, headers

# Each connection sends its next request when it has the answer to the last, so latencies hold the time in the queue.
CONNECTIONS = 16

SCRIPT = """wrk.method = "POST"
wrk.body = io.open(%(body)s, "rb"):read("*a")
%(headers)s
function done(summary, latency, requests)
  local errors = summary.errors
  print(string.format('{"requests": %%d, "seconds": %%f, "p50": %%d, "p99": %%d, "refused": %%d, "broken": %%d}',
    summary.requests, summary.duration / 1e6, latency:percentile(50), latency:percentile(99), errors.status,
    errors.connect + errors.read + errors.write + errors.timeout))
end
"""


def script(folder, request, pause=None):
    """The script that makes wrk send that request; with a pause, so many milliseconds before each on a connection."""
    lines = "\n".join(f"wrk.headers[{json.dumps(name)}] = {json.dumps(value)}" for name, value in headers().items())
    lines += f"\nfunction delay() return {pause} end" if pause else ""
    file = pathlib.Path(folder) / "request.lua"
    file.write_text(SCRIPT % {"body": json.dumps(str(request)), "headers": lines})
    return file


def computed(log):
    """How long the service says that it computed for each request, µs; nothing where there is no such log."""
    times = [event["computed_micros"] for event in map(json.loads, log.splitlines()) if "computed_micros" in event]
    return statistics.mean(times) if times else None


def wrk(server, path, lua, seconds, connections, cores):
    """Runs wrk, and says what it counted."""
    command = ["taskset", "-c", cores, "wrk", "-t1", f"-c{connections}", f"-d{seconds}s", "--timeout", "10s", "-s", str(lua),
               f"http://127.0.0.1:{server.port}{path}"]
    return json.loads(subprocess.run(command, check=True, capture_output=True, text=True).stdout.splitlines()[-1])


def load(server, path, lua, seconds, connections=CONNECTIONS):
    """One slice of load. Any answer but a 2xx, and any broken connection, ends the measurement."""
    before, logged = server.processor_seconds(), server.logged()
    slice_ = wrk(server, path, lua, seconds, connections, CLIENT_CORE)
    if slice_["refused"] or slice_["broken"] or not slice_["requests"]:
        raise SystemExit(f"load: {path}: {slice_['refused']} answers were not 2xx and {slice_['broken']} connections broke")
    slice_["rate"] = slice_["requests"] / slice_["seconds"]
    slice_["computed"] = computed(server.log_since(logged))
    # By now the last lines of the log are written, and one request more of each connection is answered, which wrk does not count.
    slice_["processor"] = (server.processor_seconds() - before) / (slice_["requests"] + connections) * 1e6
    return slice_
