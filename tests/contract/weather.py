"""A weather service on loopback in the form that the service asks for: a point, then its hours. Its weather is invented.

It can be told to fail: with a document that is no forecast, or with silence.
"""

import datetime
import http.server
import json
import threading

SOUND, BROKEN, SILENT = "sound", "broken", "silent"
# When the forecast begins, and when work may begin with it.
BEGINS = datetime.datetime(2026, 5, 14, 6, tzinfo=datetime.timezone(datetime.timedelta(hours=-4)))
START = (BEGINS + datetime.timedelta(hours=3)).isoformat()
HOURLY = "/gridpoints/TIB/41,12/forecast/hourly"


def periods():
    """Three days on the coast."""
    times = [BEGINS + datetime.timedelta(hours=hour) for hour in range(73)]
    return [{
        "number": index + 1, "startTime": start.isoformat(), "endTime": end.isoformat(), "isDaytime": 7 < start.hour < 20,
        "temperature": 61 if 7 < start.hour < 20 else 52, "temperatureUnit": "F",
        "probabilityOfPrecipitation": {"unitCode": "wmoUnit:percent", "value": 5},
        "dewpoint": {"unitCode": "wmoUnit:degC", "value": 4.5},
        "relativeHumidity": {"unitCode": "wmoUnit:percent", "value": 60}, "windSpeed": "10 mph", "windDirection": "NW",
    } for index, (start, end) in enumerate(zip(times, times[1:]))]


class Asked(http.server.BaseHTTPRequestHandler):
    """One question."""

    protocol_version = "HTTP/1.1"

    def do_GET(self):
        weather = self.server.weather
        weather.was_asked.set()
        if weather.mode == SILENT:
            weather.may_speak.wait(60)
        body = b"The forecast office is closed."
        if weather.mode != BROKEN:
            is_point = self.path.startswith("/points/")
            properties = {"forecastHourly": weather.base + HOURLY} if is_point else {"periods": periods()}
            body = json.dumps({"type": "Feature", "properties": properties}).encode()
        try:
            self.send_response(200)
            self.send_header("content-type", "application/geo+json")
            self.send_header("content-length", str(len(body)))
            self.end_headers()
            self.wfile.write(body)
        except OSError:
            # Who asked has given up.
            self.close_connection = True

    def log_message(self, *_):
        """Says nothing."""


class Weather:
    """The service, and how it answers."""

    def __init__(self, mode):
        self.mode = mode
        self.was_asked, self.may_speak = threading.Event(), threading.Event()
        self.server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Asked)
        self.server.weather, self.server.daemon_threads = self, True
        self.base = f"http://127.0.0.1:{self.server.server_port}"
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

    def close(self):
        """Ends the service; who waits for an answer gets it."""
        self.may_speak.set()
        self.server.shutdown()
        self.server.server_close()
