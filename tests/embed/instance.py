#!/usr/bin/env python3
"""Starts two instances for pages of two origins, one without keys and one with, and runs a command with what they are.

    tests/embed/instance.py COMMAND ARGUMENT...

INSTANCE and INSTANCE_WITH_KEYS are the addresses, PAGE_PORTS the ports of the pages. The second instance takes the key tern-island-page
of these pages for all that the helper asks, and tern-island-elsewhere of other pages; its own front page asks with the first.
"""

import hashlib
import json
import os
import pathlib
import subprocess
import sys
import tempfile

sys.path.append(str(pathlib.Path(__file__).resolve().parents[1]))
from service import Service, free_port

PATHS = ["/v1/loop-sizing", "/v1/drawings/plan", "/v1/installation-plan/job-sheet"]


def client(key, origins):
    return {"name": key, "sha256": [hashlib.sha256(key.encode()).hexdigest()], "origins": origins, "paths": PATHS}


def main():
    ports = [free_port() for _ in range(2)]
    origins = [f"http://127.0.0.1:{port}" for port in ports]
    with tempfile.TemporaryDirectory() as folder:
        keys = pathlib.Path(folder) / "keys.json"
        elsewhere = ["https://elsewhere.tern-island.example"]
        keys.write_text(json.dumps([client("tern-island-page", origins), client("tern-island-elsewhere", elsewhere)]))
        services = []
        try:
            for settings in ({"CORS_ORIGINS": ",".join(origins)}, {"KEYS": str(keys), "FRONT_PAGE_KEY": "tern-island-page"}):
                services.append(Service(**settings))
            known = {"INSTANCE": services[0].base, "INSTANCE_WITH_KEYS": services[1].base, "PAGE_PORTS": ",".join(map(str, ports))}
            raise SystemExit(subprocess.run(sys.argv[1:], env={**os.environ, **known}).returncode)
        finally:
            for service in services:
                service.close()


main()
