"""The shipped nginx.conf on loopback: nothing in it is changed but names of files, ports, and the instances behind it."""

import http.client
import json
import os
import pathlib
import shutil
import socket
import ssl
import subprocess
import time

from instance import ROOT

SHIPPED = ROOT / "deploy" / "nginx.conf"
NAME = "loops.example"
# What a rootless nginx would write below /var as well; the shipped file leaves these three as they were built in.
UNUSED = ("fastcgi", "scgi", "uwsgi")


def nginx():
    found = shutil.which("nginx") or shutil.which("nginx", path="/usr/sbin")
    if not found:
        raise SystemExit("nginx is not installed (apt-get install nginx-light)")
    return found


def certificate(folder):
    """A certificate that only this run trusts."""
    key, made = folder / "loops.key", folder / "loops.pem"
    subprocess.run(
        ["openssl", "req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:P-256", "-nodes", "-days", "2", "-subj", f"/CN={NAME}",
         "-addext", f"subjectAltName=DNS:{NAME}", "-keyout", key, "-out", made],
        check=True, capture_output=True)
    return key, made


def adapted(folder, port, upstream):
    """The shipped text with its places exchanged. Each must be there as often as is said here, else the text has changed."""
    key, made = certificate(folder)
    text = SHIPPED.read_text()
    exchanged = [
        ("pid /run/nginx.pid;", f"pid {folder}/nginx.pid;", 1),
        ("/var/log/nginx/", f"{folder}/", 2),
        ("/var/lib/nginx/", f"{folder}/", 2),
        ("root /var/www/loopwright;", f"root {folder}/www;", 1),
        (f"/etc/nginx/tls/{NAME}.pem", str(made), 1),
        (f"/etc/nginx/tls/{NAME}.key", str(key), 1),
        ("listen 443 ssl", f"listen 127.0.0.1:{port} ssl", 2),
        *((f"server 10.0.0.{11 + at}:8080", f"server 127.0.0.1:{to}", 1) for at, to in enumerate(upstream)),
        ("http {", "http {\n" + "".join(f"    {name}_temp_path {folder}/{name};\n" for name in UNUSED), 1),
    ]
    for old, new, times in exchanged:
        if text.count(old) != times:
            raise SystemExit(f"deploy/nginx.conf holds \"{old}\" {text.count(old)} times, not {times}")
        text = text.replace(old, new)
    return text


class Proxy:
    """nginx on one port of loopback, ended by its own process id."""

    def __init__(self, folder, port, upstream):
        self.folder, self.port = pathlib.Path(folder), port
        # The workers give up root and must still reach their files.
        self.folder.chmod(0o755)
        self.file = self.folder / "nginx.conf"
        self.file.write_text(adapted(self.folder, port, upstream))
        self.command = [nginx(), "-e", f"{self.folder}/error.log", "-c", self.file]
        self.process = None
        self.trust = ssl.create_default_context(cafile=self.folder / "loops.pem")

    def test(self):
        """`nginx -t` must have nothing to say but that all is well."""
        said = subprocess.run([*self.command, "-t"], capture_output=True, text=True)
        lines = [line for line in said.stderr.splitlines() if "syntax is ok" not in line and "test is successful" not in line]
        if os.geteuid() != 0:
            lines = [line for line in lines if 'the "user" directive makes sense only' not in line]
        if said.returncode or lines:
            raise SystemExit("nginx -t: " + "\n".join(lines))

    def start(self):
        self.process = subprocess.Popen([*self.command, "-g", "daemon off;"])
        for _ in range(100):
            try:
                self.connect().close()
                return self
            except OSError:
                if self.process.poll() is not None:
                    break
                time.sleep(0.05)
        self.close()
        raise SystemExit(f"nginx does not start:\n{(self.folder / 'error.log').read_text()}")

    def connect(self):
        """A kept-alive TLS connection to the name of the server, wherever that name points."""
        connection = http.client.HTTPConnection(NAME, timeout=60)
        plain = socket.create_connection(("127.0.0.1", self.port), timeout=60)
        plain.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        connection.sock = self.trust.wrap_socket(plain, server_hostname=NAME)
        # Once it is over, this connection opens no other by itself, and no plain one.
        connection.auto_open = 0
        return connection

    def requests(self):
        """The lines of the log so far."""
        log = self.folder / "access.log"
        return [json.loads(line) for line in log.read_text().splitlines()] if log.exists() else []

    def close(self):
        if self.process and self.process.poll() is None:
            self.process.terminate()
            self.process.wait(60)
