"""Instances of the service on loopback, each ended by its own process id."""

import os
import pathlib
import re
import socket
import subprocess
import time
import urllib.error
import urllib.request

ROOT = pathlib.Path(__file__).resolve().parents[2]
# As in production, but shorter: a test should not wait longer than it must.
SETTINGS = {
    "LOOPWRIGHT_DRAIN_DELAY": "1 s",
    "LOOPWRIGHT_STOP_TIMEOUT": "10 s",
    "LOOPWRIGHT_WORKERS": "2",
    "LOOPWRIGHT_LOG": "warn",
    "LOOPWRIGHT_RATE": "0",
    "LOOPWRIGHT_TRUSTED_PROXIES": "127.0.0.0/8",
}


def program():
    """The binary under test."""
    target = pathlib.Path(os.environ.get("CARGO_TARGET_DIR", ROOT / "target"))
    found = pathlib.Path(os.environ.get("PROGRAM", target / "debug" / "loopwright"))
    if not os.access(found, os.X_OK):
        raise SystemExit(f"{found} is no program; build it with cargo build, or name one in PROGRAM")
    return found


def settings_known():
    """The variables that the source knows; the service does not start with any other."""
    files = [path for path in (ROOT / "src").glob("settings*") if path.is_file()]
    files += (ROOT / "src").glob("settings/**/*.rs")
    return set(re.findall(r'"(LOOPWRIGHT_[A-Z_]+)"', "".join(path.read_text() for path in files)))


def free_ports(count):
    """Ports that nobody has now; held together while they are looked for, so that all differ."""
    held = [socket.socket() for _ in range(count)]
    for one in held:
        one.bind(("127.0.0.1", 0))
    ports = [one.getsockname()[1] for one in held]
    for one in held:
        one.close()
    return ports


class Instance:
    """One instance on one port, which may be started again after it has ended."""

    def __init__(self, port, folder, **settings):
        self.port, self.log = port, pathlib.Path(folder) / f"instance-{port}.log"
        known = settings_known()
        asked = {**SETTINGS, **settings, "LOOPWRIGHT_LISTEN": f"127.0.0.1:{port}"}
        inherited = {name: value for name, value in os.environ.items() if not name.startswith("LOOPWRIGHT_")}
        self.environment = {**inherited, **{name: value for name, value in asked.items() if name in known}}
        self.command, self.process = [program()], None

    def start(self):
        with self.log.open("ab") as log:
            self.process = subprocess.Popen(self.command, env=self.environment, stdout=log, stderr=log)
        for _ in range(300):
            if self.is_ready():
                return self
            if self.process.poll() is not None:
                break
            time.sleep(0.05)
        self.close()
        raise SystemExit(f"the instance on port {self.port} does not become ready:\n{self.log.read_text()}")

    def is_ready(self):
        try:
            with urllib.request.urlopen(f"http://127.0.0.1:{self.port}/health/ready", timeout=5) as answer:
                return answer.status == 200
        except OSError:
            return False

    def stop(self):
        """SIGTERM, and the seconds until the process had ended by itself."""
        began = time.monotonic()
        self.process.terminate()
        code = self.process.wait(60)
        if code != 0:
            raise SystemExit(f"the instance on port {self.port} ended with {code}:\n{self.log.read_text()}")
        return time.monotonic() - began

    def kill(self):
        self.process.kill()
        self.process.wait(60)

    def close(self):
        """Ends it whatever state it is in."""
        if self.process and self.process.poll() is None:
            self.kill()
