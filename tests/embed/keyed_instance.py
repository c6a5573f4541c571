#!/usr/bin/env python3
"""Starts two instances, one without keys and one with, and runs a command with their addresses in OPEN and KEYED.

    tests/embed/keyed_instance.py COMMAND ARGUMENT...

The page of PAGE_PORTS[0] may show the key in PAGE_KEY; that of PAGE_PORTS[1] is nobody's.
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

PAGE_KEY = "tern-island-yard-page-0123456789abcdef"


def main():
    ports = [free_port() for _ in range(2)]
    shop = f"http://127.0.0.1:{ports[0]}"
    client = {
        "name": "yard-page", "sha256": [hashlib.sha256(PAGE_KEY.encode()).hexdigest()], "origins": [shop],
        "paths": ["/v1/loop-sizing", "/v1/loop-sizing/summary", "/v1/drawings/plan"],
    }
    with tempfile.TemporaryDirectory() as folder:
        keys = pathlib.Path(folder) / "keys.json"
        keys.write_text(json.dumps([client]))
        services = [Service(CORS_ORIGINS=shop), Service(KEYS=str(keys), FRONT_PAGE_KEY=PAGE_KEY)]
        known = {"OPEN": services[0].base, "KEYED": services[1].base, "PAGE_KEY": PAGE_KEY, "PAGE_PORTS": ",".join(map(str, ports))}
        try:
            status = subprocess.run(sys.argv[1:], env={**os.environ, **known}).returncode
        finally:
            for service in services:
                service.close()
    raise SystemExit(status)


main()
