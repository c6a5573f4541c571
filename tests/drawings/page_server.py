"""A server on a loopback port that gives drawings and pages to a browser."""

import http.server
import re
import threading


class PageServer:
    """Serves the drawings to the browser with the headers that the service sent."""

    def __init__(self):
        pages = self.pages = {}

        class Handler(http.server.BaseHTTPRequestHandler):
            def do_GET(self):
                body, headers = pages.get(self.path, (None, None))
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
        self.pages[path] = (body, headers)
        return f"http://127.0.0.1:{self.server.server_address[1]}{path}"
