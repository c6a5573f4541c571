#!/usr/bin/env python3
"""Starts the service for pages of two origins, and runs a command with its address in INSTANCE and the ports of the pages in PAGE_PORTS.

    tests/embed/instance.py COMMAND ARGUMENT...
"""

import os
import pathlib
import subprocess
import sys

sys.path.append(str(pathlib.Path(__file__).resolve().parents[1]))
from service import Service, free_port


def main():
    ports = [free_port() for _ in range(2)]
    service = Service(CORS_ORIGINS=",".join(f"http://127.0.0.1:{port}" for port in ports))
    try:
        known = {"INSTANCE": service.base, "PAGE_PORTS": ",".join(map(str, ports))}
        raise SystemExit(subprocess.run(sys.argv[1:], env={**os.environ, **known}).returncode)
    finally:
        service.close()


main()
