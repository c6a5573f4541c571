"""What the files of deploy/ say, each read in its own form."""

import json
import pathlib
import re

import yaml

from instance import ROOT

NAME = re.compile(r"LOOPWRIGHT_[A-Z_]+")


class Deploy:
    """The files of one folder: the shipped one, or a copy with a fault."""

    def __init__(self, folder):
        self.folder = pathlib.Path(folder)

    def text(self, file):
        return (self.folder / file).read_text()

    def variables(self):
        """Every setting that any file names, and where."""
        for file in sorted(path for path in self.folder.rglob("*") if path.is_file()):
            for name in sorted(set(NAME.findall(file.read_text()))):
                yield name, file.relative_to(self.folder)

    # loopwright.env

    def lines(self, pattern):
        return dict(re.findall(pattern, self.text("loopwright.env"), re.M))

    def environment(self):
        return self.lines(r"^(LOOPWRIGHT_[A-Z_]+)=(.*)$")

    def commented(self):
        return self.lines(r"^#(LOOPWRIGHT_[A-Z_]+)=(.*)$")

    def named(self):
        return {*self.environment(), *self.commented()}

    def shown(self, name):
        """The value that is set, or the default that is shown."""
        return {**self.commented(), **self.environment()}[f"LOOPWRIGHT_{name}"]

    def seconds(self, values, name):
        text = values.get(f"LOOPWRIGHT_{name}") or self.shown(name)
        number, unit = text.split()
        return float(number) * {"s": 1, "min": 60}[unit]

    # The source, and what it says of itself.

    def readme_defaults(self):
        """The defaults of the table of settings that are values; others are told in words."""
        return dict(re.findall(r"^\| `(LOOPWRIGHT_[A-Z_]+)` \| `([^`]*)`", self.text("README.md"), re.M))

    @staticmethod
    def described_paths():
        return json.loads((ROOT / "openapi" / "openapi.json").read_text())["paths"]

    @staticmethod
    def body_shares():
        """By how much the largest usual body and that of a batch may be larger than the limit."""
        def largest(folder):
            texts = [path.read_text() for path in (ROOT / "src" / folder).rglob("*.rs")]
            return max(int(share) for text in texts for share in re.findall(r"\b[A-Z_]+_FACTOR: usize = (\d+);", text))
        return largest("calculation"), largest("api")

    @staticmethod
    def problem_titles():
        """The codes of problems that the service knows, and their titles."""
        text = (ROOT / "src" / "api" / "problem.rs").read_text()
        return dict(re.findall(r'^ +[A-Z][A-Za-z]+ "([a-z_]+)" "([^"]+)"', text, re.M))

    # Containerfile

    def exposed(self):
        return re.search(r"^EXPOSE (.*)$", self.text("Containerfile"), re.M)[1].split()

    def image_environment(self):
        return dict(re.findall(r"^ENV ([A-Z_]+)=(.*)$", self.text("Containerfile"), re.M))

    def program(self):
        return json.loads(re.search(r"^ENTRYPOINT (.*)$", self.text("Containerfile"), re.M)[1])[0]

    # loopwright.service

    def unit(self, key):
        return re.search(rf"^{key}=(.*)$", self.text("loopwright.service"), re.M)[1]

    # nginx.conf

    def nginx(self, directive):
        """Its values, in the order of the file."""
        return re.findall(rf"^ *{directive} ([^;]*);", self.text("nginx.conf"), re.M)

    def nginx_seconds(self, directive, at):
        return float(self.nginx(directive)[at].removesuffix("s"))

    def problems(self):
        """The problems that nginx writes itself: the status that it sends, and the object."""
        found = re.findall(r"^ *return (\d+) '([^']*)';", self.text("nginx.conf"), re.M)
        return [(int(status), json.loads(text)) for status, text in found]

    def upstream_ports(self):
        return re.findall(r"^ *server [0-9.]+:(\d+)", self.text("nginx.conf"), re.M)

    @staticmethod
    def bytes(size):
        return int(size[:-1]) * {"k": 1024, "m": 1024 * 1024}[size[-1]]

    # kubernetes/

    def manifest(self, name):
        return yaml.safe_load(self.text(f"kubernetes/{name}.yaml"))

    def pod(self):
        return self.manifest("deployment")["spec"]["template"]["spec"]

    def container(self):
        return self.pod()["containers"][0]

    def config(self):
        return self.manifest("configmap")["data"]
