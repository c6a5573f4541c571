"""The programs that are measured: how they are built, set up, started and ended."""

import hashlib
import http.client
import json
import os
import pathlib
import signal
import socket
import subprocess
import time

ROOT = pathlib.Path(__file__).resolve().parents[2]
BUILT = pathlib.Path(os.environ.get("CARGO_TARGET_DIR", ROOT / "target")) / "release"
EXAMPLES = ROOT / "openapi" / "examples"
# The server has the first core for itself and whoever asks it has the second.
SERVER_CORE, CLIENT_CORE = "0", "1"
ALL_CORES = ",".join(map(str, sorted(os.sched_getaffinity(0))))
ORIGIN = "https://yard.tern-island.example"
KEY = "a-key-for-measuring-and-nothing-else"
# Set where the service knows them. The rate is on and never trips.
WHERE_KNOWN = {"LOOPWRIGHT_RATE": "1000000000", "LOOPWRIGHT_BURST": "1000000000"}

# Lines of the log leave together; a tenth of a second after the last, all have.
LOG_WAITS = 0.1


def build(*targets):
    """Builds as released; the service and the floor, if nothing else is named."""
    targets = targets or ("--bin", "loopwright", "--example", "floor")
    subprocess.run(["cargo", "build", "--release", "--locked", "--quiet", *targets], cwd=ROOT, check=True)


def program():
    """The service that is measured: that of the variable INSTANCE_PROGRAM, else the one of this tree as it was built last."""
    return pathlib.Path(os.environ.get("INSTANCE_PROGRAM") or BUILT / "loopwright").resolve()


def choose(named):
    """Takes the named program as the service, or that of INSTANCE_PROGRAM, and builds it where there is neither."""
    if named:
        os.environ["INSTANCE_PROGRAM"] = str(pathlib.Path(named).resolve())
    elif not os.environ.get("INSTANCE_PROGRAM"):
        build("--bin", "loopwright")


def knows(setting):
    """Whether the service has a setting; one that it does not know would stop its start."""
    return setting.encode() in program().read_bytes()


def free_port():
    with socket.socket() as asked:
        asked.bind(("127.0.0.1", 0))
        return asked.getsockname()[1]


def headers():
    """What is sent with each request: a page of another site with a key."""
    return {"Content-Type": "application/json", "Origin": ORIGIN, "Authorization": f"Bearer {KEY}"}


def settings(folder):
    """Everything on: log, counters, cross-origin answers, and keys and rate where the service has them."""
    chosen = {"LOOPWRIGHT_WORKERS": "1", "LOOPWRIGHT_LOG": "info", "LOOPWRIGHT_LOG_FORMAT": "json",
              "LOOPWRIGHT_CORS_ORIGINS": ORIGIN}
    chosen |= {name: value for name, value in WHERE_KNOWN.items() if knows(name)}
    if knows("LOOPWRIGHT_KEYS"):
        keys = pathlib.Path(folder) / "keys.json"
        clients = [{"name": f"client-{index}", "sha256": [hashlib.sha256(f"another-{index}".encode()).hexdigest()]}
                   for index in range(9)]
        clients.append({"name": "measuring", "sha256": [hashlib.sha256(KEY.encode()).hexdigest()]})
        keys.write_text(json.dumps(clients))
        chosen["LOOPWRIGHT_KEYS"] = str(keys)
    return chosen


class Server:
    """A server on a free loopback port, on its own core or the named ones, ended by its own process id."""

    def __init__(self, command, environment=None, log=None, wrapped_by=(), cores=SERVER_CORE):
        self.port = free_port()
        self.log = open(log, "w+b") if log else None
        command = [part.replace("ADDRESS", f"127.0.0.1:{self.port}") for part in command]
        own = {name: value for name, value in os.environ.items() if not name.startswith("LOOPWRIGHT_")}
        own |= {name: value.replace("ADDRESS", f"127.0.0.1:{self.port}") for name, value in (environment or {}).items()}
        self.process = subprocess.Popen(["taskset", "-c", cores, *wrapped_by, *command], env=own,
                                        stdout=self.log or subprocess.DEVNULL, stderr=self.log or subprocess.DEVNULL)
        for _ in range(600):
            try:
                socket.create_connection(("127.0.0.1", self.port), 1).close()
                return
            except OSError:
                if self.process.poll() is not None:
                    raise SystemExit(f"load: {command} ended with {self.process.returncode}") from None
                time.sleep(0.05)
        self.end()
        raise SystemExit(f"load: {command} does not listen")

    @classmethod
    def service(cls, folder, more=None, wrapped_by=()):
        environment = {"LOOPWRIGHT_LISTEN": "ADDRESS", **settings(folder), **(more or {})}
        return cls([str(program())], environment, pathlib.Path(folder) / "log.json", wrapped_by)

    @classmethod
    def as_shipped(cls, folder, **settings):
        """The service with its defaults, on all cores. Its rate is off, for it would hide what stands behind it."""
        environment = {"LISTEN": "ADDRESS", "RATE": "0", **settings}
        environment = {f"LOOPWRIGHT_{name}": value for name, value in environment.items()}
        return cls([str(program())], environment, pathlib.Path(folder) / "log.json", cores=ALL_CORES)

    @classmethod
    def floor(cls, name, request, wrapped_by=()):
        return cls([str(BUILT / "examples" / "floor"), "serve", "ADDRESS", name, str(request)], wrapped_by=wrapped_by)

    def ask(self, path, body, connection=None):
        """Status and body of one answer."""
        asked = connection or http.client.HTTPConnection("127.0.0.1", self.port, timeout=60)
        asked.request("POST", path, body, headers())
        answer = asked.getresponse()
        return answer.status, answer.read()

    def processor_seconds(self):
        """Processor time of all threads so far, the kernel's work for them included."""
        tasks = pathlib.Path(f"/proc/{self.process.pid}/task").iterdir()
        return sum(int((task / "schedstat").read_text().split()[0]) for task in tasks) / 1e9

    def processor_seconds_with_ended(self):
        """Processor time of all threads so far, of those that have ended too; in hundredths of a second."""
        fields = pathlib.Path(f"/proc/{self.process.pid}/stat").read_text().rpartition(")")[2].split()
        return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")

    def logged(self):
        """Where the log ends now, once what waits in the program has been written."""
        time.sleep(LOG_WAITS)
        return os.fstat(self.log.fileno()).st_size if self.log else 0

    def log_since(self, place):
        """What was logged since."""
        return os.pread(self.log.fileno(), self.logged() - place, place).decode() if self.log else ""

    def memory(self, row):
        """A row of the kernel's account of this process, in MiB: VmRSS now, VmHWM at most."""
        lines = pathlib.Path(f"/proc/{self.process.pid}/status").read_text().splitlines()
        return next(int(line.split()[1]) / 1024 for line in lines if line.startswith(row))

    def end(self, how=signal.SIGINT):
        """Ends the server at once, or as told, and says with which code it ended."""
        if self.process.poll() is None:
            self.process.send_signal(how)
        code = self.process.wait(120)
        if self.log:
            self.log.close()
        return code
