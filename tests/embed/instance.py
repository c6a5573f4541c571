#!/usr/bin/env python3
"""Starts the service for pages of one origin, and runs a command with the addresses of both: INSTANCE and PAGE_PORT.

    tests/embed/instance.py COMMAND ARGUMENT...
"""

import os
import pathlib
import subprocess
import sys

sys.path.append(str(pathlib.Path(__file__).resolve().parents[1]))
from service import Service, free_port


def main():
    port = free_port()
    service = Service(CORS_ORIGINS=f"http://127.0.0.1:{port}")
    try:
        known = {"INSTANCE": service.base, "PAGE_PORT": str(port)}
        raise SystemExit(subprocess.run(sys.argv[1:], env={**os.environ, **known}).returncode)
    finally:
        service.close()


main()
