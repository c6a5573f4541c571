"""A headless Chromium, driven over a pipe with its debugging protocol: no library, no port."""

import base64
import json
import os
import select
import shutil
import subprocess
import tempfile
import time

TIMEOUT_SECONDS = 30.0


class Browser:
    """One Chromium with one page; errors and console messages of the page are collected in `complaints`."""

    def __init__(self):
        program = shutil.which("chromium") or shutil.which("chromium-browser")
        if not program:
            raise SystemExit("render: no chromium here; install it (apt-get install chromium)")
        to_read, self.write_end = os.pipe()
        self.read_end, to_write = os.pipe()
        self.profile = tempfile.mkdtemp(prefix="render-profile-")

        # Chromium reads commands from descriptor 3 and writes answers to descriptor 4.
        def place():
            # Both are first moved out of the way, for either may be 3 or 4 itself.
            high_read, high_write = os.dup2(to_read, 103), os.dup2(to_write, 104)
            os.dup2(high_read, 3)
            os.dup2(high_write, 4)

        self.process = subprocess.Popen(
            [program, "--headless=new", "--no-sandbox", "--disable-gpu", "--hide-scrollbars",
             "--disable-dev-shm-usage", "--no-first-run", "--disable-background-networking",
             f"--user-data-dir={self.profile}", "--remote-debugging-pipe", "about:blank"],
            stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
            preexec_fn=place, close_fds=False,
        )
        os.close(to_read)
        os.close(to_write)
        self.left, self.count, self.session, self.complaints, self.loaded = b"", 0, None, [], False
        target = self.call("Target.createTarget", url="about:blank")["targetId"]
        self.session = self.call("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        for domain in ("Page", "Runtime", "Log"):
            self.call(f"{domain}.enable")

    def call(self, method, **parameters):
        """Sends a command and gives its result."""
        self.count += 1
        message = {"id": self.count, "method": method, "params": parameters}
        if self.session:
            message["sessionId"] = self.session
        os.write(self.write_end, json.dumps(message).encode() + b"\0")
        wanted = self.count
        while True:
            answer = self.receive()
            if answer.get("id") == wanted:
                if "error" in answer:
                    raise SystemExit(f"render: {method}: {answer['error']['message']}")
                return answer["result"]

    def receive(self):
        """The next message; events are recorded on the way."""
        deadline = time.monotonic() + TIMEOUT_SECONDS
        while b"\0" not in self.left:
            ready, _, _ = select.select([self.read_end], [], [], max(0.0, deadline - time.monotonic()))
            part = os.read(self.read_end, 1 << 16) if ready else b""
            if not part:
                raise SystemExit("render: chromium says nothing any more")
            self.left += part
        text, self.left = self.left.split(b"\0", 1)
        message = json.loads(text)
        event, told = message.get("method"), message.get("params", {})
        if event == "Log.entryAdded":
            self.complaints.append(told["entry"]["text"])
        elif event == "Runtime.consoleAPICalled":
            said = " ".join(str(part.get("value", part.get("description"))) for part in told["args"])
            self.complaints.append(f"console.{told['type']}: {said[:300]}")
        elif event == "Runtime.exceptionThrown":
            self.complaints.append(told["exceptionDetails"]["text"])
        elif event == "Page.loadEventFired":
            self.loaded = True
        return message

    def open(self, address, width, height, scheme="light", media="", forced=False):
        """Shows an address in a window of this size, for a reader with this colour scheme, or who forces colours of their own."""
        self.resize(width, height)
        features = {"prefers-color-scheme": scheme, "forced-colors": "active" if forced else "none"}
        self.call("Emulation.setEmulatedMedia", media=media,
                  features=[{"name": name, "value": value} for name, value in features.items()])
        self.loaded = False
        self.call("Page.navigate", url=address)
        while not self.loaded:
            self.receive()

    def resize(self, width, height):
        """Gives the window this size."""
        self.call("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1, mobile=False)

    def ask(self, script):
        """The value of an expression in the page."""
        answer = self.call("Runtime.evaluate", expression=script, returnByValue=True, awaitPromise=True)
        if "exceptionDetails" in answer:
            raise SystemExit(f"render: {answer['exceptionDetails']}")
        return answer["result"]["value"]

    def shoot(self, path):
        """Writes what is shown to a PNG file."""
        with open(path, "wb") as file:
            file.write(base64.b64decode(self.call("Page.captureScreenshot", format="png")["data"]))

    def close(self):
        """Ends this Chromium and removes its profile."""
        self.session = None
        try:
            self.call("Browser.close")
        except SystemExit:
            self.process.kill()
        self.process.wait(TIMEOUT_SECONDS)
        shutil.rmtree(self.profile, ignore_errors=True)
