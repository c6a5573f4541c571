"""The service on a loopback port, and a shelf that hands its pages to a browser."""

import http.server
import json
import os
import pathlib
import re
import socket
import subprocess
import threading
import time
import urllib.error
import urllib.request

ROOT = pathlib.Path(__file__).resolve().parents[2]


def free_port():
    with socket.socket() as asked:
        asked.bind(("127.0.0.1", 0))
        return asked.getsockname()[1]


class Service:
    """An instance of the service, ended by its own process id."""

    def __init__(self):
        subprocess.run(["cargo", "build", "--locked", "--quiet"], cwd=ROOT, check=True)
        self.base = f"http://127.0.0.1:{free_port()}"
        environment = {**os.environ, "LOOPWRIGHT_LISTEN": self.base.removeprefix("http://"), "LOOPWRIGHT_LOG": "off"}
        program = pathlib.Path(os.environ.get("CARGO_TARGET_DIR", ROOT / "target")) / "debug" / "loopwright"
        self.process = subprocess.Popen([program], env=environment)
        for _ in range(300):
            try:
                urllib.request.urlopen(f"{self.base}/health/ready", timeout=5).close()
                return
            except OSError:
                if self.process.poll() is not None:
                    break
                time.sleep(0.1)
        raise SystemExit("render: the service does not start")

    def draw(self, drawing, request):
        return self.post(f"drawings/{drawing}", json.dumps(request).encode())

    def post(self, path, body):
        """The answer to a request, and its headers."""
        asked = urllib.request.Request(f"{self.base}/v1/{path}", body, {"content-type": "application/json"})
        try:
            with urllib.request.urlopen(asked, timeout=30) as answer:
                return answer.read(), {name.lower(): value for name, value in answer.headers.items()}
        except urllib.error.HTTPError as refused:
            raise SystemExit(f"render: {path} {body}: {refused.read().decode()}") from refused

    def close(self):
        self.process.terminate()
        self.process.wait(60)


class Shelf:
    """Serves the drawings to the browser with the headers that the service sent."""

    def __init__(self):
        held = self.held = {}

        class Handler(http.server.BaseHTTPRequestHandler):
            def do_GET(self):
                body, headers = held.get(self.path, (None, None))
                self.send_response(200 if body is not None else 404)
                for name in ("content-type", "content-security-policy", "x-content-type-options"):
                    if headers and name in headers:
                        self.send_header(name, headers[name])
                self.end_headers()
                self.wfile.write(body or b"")

            def log_message(self, *_):
                pass

        self.server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Handler)
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

    def put(self, name, body, headers):
        path = "/" + re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")
        self.held[path] = (body, headers)
        return f"http://127.0.0.1:{self.server.server_address[1]}{path}"
