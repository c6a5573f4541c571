"""Instructions, counted by callgrind: they do not depend on who else uses the machine.

Only instructions of the program itself are counted, not those of the kernel, which reads and writes the sockets and the log.
Each figure is the difference of two runs that differ in their count of requests, so starting and stopping cancel out.
"""

import http.client
import pathlib
import re
import subprocess

from programs import BUILT, Server


def callgrind(file):
    return ["valgrind", "--tool=callgrind", f"--callgrind-out-file={file}", "--quiet"]


def total(file):
    text = pathlib.Path(file).read_text()
    found = re.search(r"^(?:summary|totals): (\d+)", text, re.MULTILINE)
    if not found:
        raise SystemExit(f"load: {file} holds no total")
    return int(found[1])


def of_server(start, path, body, counts, folder):
    """Instructions for one request. `start` takes what the server is to be wrapped by."""
    totals = []
    for count in counts:
        file = pathlib.Path(folder) / f"server-{count}.out"
        server = start(wrapped_by=callgrind(file))
        try:
            connection = http.client.HTTPConnection("127.0.0.1", server.port, timeout=120)
            for _ in range(count):
                status, _answer = server.ask(path, body, connection)
                if status != 200:
                    raise SystemExit(f"load: {path} answers {status}")
            connection.close()
        finally:
            server.end()
        totals.append(total(file))
    return (totals[1] - totals[0]) / (counts[1] - counts[0])


def of_stage(name, request, stage, counts, folder, floor=BUILT / "examples" / "floor"):
    """Instructions for one pass of a stage without a server."""
    totals = []
    for count in counts:
        file = pathlib.Path(folder) / f"{stage}-{count}.out"
        alone = [str(floor), "alone", name, str(request), stage, str(count)]
        subprocess.run([*callgrind(file), *alone], check=True, stdout=subprocess.DEVNULL)
        totals.append(total(file))
    return (totals[1] - totals[0]) / (counts[1] - counts[0])
