"""What stands in for three instances where a test must see what the proxy sends, and say what comes back."""

import http.server
import json
import socket
import struct
import threading
import time


class Server(http.server.ThreadingHTTPServer):
    daemon_threads = True
    # The usual 5 would let connections wait that come all at once.
    request_queue_size = 256


class Behind:
    """Three servers that note each request and answer as the test has laid out; without a word they tell what they got."""

    def __init__(self):
        self.asked, self.lock, self.over = [], threading.Lock(), threading.Event()
        self.servers = [self.server(at) for at in range(3)]
        self.ports = [server.server_address[1] for server in self.servers]

    def server(self, at):
        behind = self

        class Handler(http.server.BaseHTTPRequestHandler):
            protocol_version = "HTTP/1.1"

            def do_POST(self):
                body = self.rfile.read(int(self.headers.get("content-length", 0)))
                # What this request wants to see, one word for each time it is asked: "reset 200", "503 503".
                wanted = self.headers.get("x-wanted", "200").split()
                name = self.headers.get("x-case", "")
                with behind.lock:
                    times = sum(1 for case, *_ in behind.asked if case == name)
                    behind.asked.append((name, at, self.path, dict(self.headers.items()), body))
                behind.answer(self, wanted[min(times, len(wanted) - 1)], body)

            do_GET = do_POST

            def log_message(self, *_):
                pass

        server = Server(("127.0.0.1", 0), Handler)
        threading.Thread(target=server.serve_forever, daemon=True).start()
        return server

    def answer(self, handler, word, body):
        if word == "late":
            self.over.wait(40)
        if word in ("reset", "late"):
            # Closed at once and with everything unsent thrown away, as when a process is killed.
            handler.connection.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, struct.pack("ii", 1, 0))
            handler.connection.shutdown(socket.SHUT_RDWR)
            handler.close_connection = True
            return
        got = json.dumps({"got": len(body), "fill": "-" * 2000}).encode()
        handler.send_response(int(word))
        handler.send_header("content-type", "application/json")
        handler.send_header("content-length", str(len(got)))
        # As the service does.
        handler.send_header("x-request-id", handler.headers.get("x-request-id", ""))
        handler.send_header("x-content-type-options", "nosniff")
        handler.send_header("cache-control", "no-store")
        handler.end_headers()
        handler.wfile.write(got)

    def of(self, name):
        """The requests of one case: which server, which path, with which headers and body."""
        with self.lock:
            return [rest for case, *rest in self.asked if case == name]

    def close(self):
        self.over.set()
        time.sleep(0.1)
        for server in self.servers:
            server.shutdown()
            server.server_close()
