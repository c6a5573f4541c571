#!/usr/bin/env python3
"""The service on a loopback port, for every script that needs a running instance.

As a program it starts an instance, runs a command with its address in INSTANCE, ends the instance and passes on the command's status:

    tests/service.py COMMAND ARGUMENT...

The program is that of the variable INSTANCE_PROGRAM; without it, the debug build of this tree, which is brought up to date first.
"""

import json
import os
import pathlib
import signal
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request

ROOT = pathlib.Path(__file__).resolve().parents[1]


def free_port():
    with socket.socket() as asked:
        asked.bind(("127.0.0.1", 0))
        return asked.getsockname()[1]


def program():
    """The program to start."""
    if named := os.environ.get("INSTANCE_PROGRAM"):
        return pathlib.Path(named).resolve()
    subprocess.run(["cargo", "build", "--locked", "--quiet"], cwd=ROOT, check=True)
    return pathlib.Path(os.environ.get("CARGO_TARGET_DIR", ROOT / "target")) / "debug" / "loopwright"


class Service:
    """An instance of the service, ended by its own process id. Settings are its variables without their LOOPWRIGHT_."""

    def __init__(self, **settings):
        started = program()
        self.base = f"http://127.0.0.1:{free_port()}"
        settings = {"LISTEN": self.base.removeprefix("http://"), "LOG": "off", "DRAIN_DELAY": "0 s", **settings}
        # One caller asks everything here. A setting that the program does not know would stop its start.
        if b"LOOPWRIGHT_RATE" in started.read_bytes():
            settings = {"RATE": "0", **settings}
        environment = {name: value for name, value in os.environ.items() if not name.startswith("LOOPWRIGHT_")}
        # Who ends the script also ends the instance.
        signal.signal(signal.SIGTERM, lambda *_: sys.exit(143))
        environment |= {f"LOOPWRIGHT_{name}": value for name, value in settings.items()}
        self.process = subprocess.Popen([started], env=environment)
        for _ in range(300):
            try:
                urllib.request.urlopen(f"{self.base}/health/ready", timeout=5).close()
                return
            except OSError:
                if self.process.poll() is not None:
                    break
                time.sleep(0.1)
        self.close()
        raise SystemExit(f"{pathlib.Path(sys.argv[0]).name}: the service does not start")

    def draw(self, drawing, request, language="en", parameters=""):
        return self.post(f"drawings/{drawing}?lang={language}&{parameters}", json.dumps(request).encode())

    def post(self, path, body):
        """The answer to a request, and its headers."""
        asked = urllib.request.Request(f"{self.base}/v1/{path}", body, {"content-type": "application/json"})
        try:
            with urllib.request.urlopen(asked, timeout=30) as answer:
                return answer.read(), {name.lower(): value for name, value in answer.headers.items()}
        except urllib.error.HTTPError as refused:
            raise SystemExit(f"{pathlib.Path(sys.argv[0]).name}: {path} {body}: {refused.read().decode()}") from refused

    def close(self):
        """Ends the instance. A second call does nothing."""
        self.process.terminate()
        try:
            self.process.wait(60)
        except subprocess.TimeoutExpired:
            self.process.kill()
            self.process.wait()
            raise


def main():
    if len(sys.argv) < 2:
        raise SystemExit(__doc__)
    service = Service()
    try:
        raise SystemExit(subprocess.run(sys.argv[1:], env={**os.environ, "INSTANCE": service.base}).returncode)
    finally:
        service.close()


if __name__ == "__main__":
    main()
