"""Takes the first question of each language out of openapi/GUIDE.md, as integrators copy it, for the instance at INSTANCE. `clients`
compiles and runs what is written to the folder `generated`."""

import os
import pathlib
import re

HERE = pathlib.Path(__file__).parent
TARGETS = {"ts": "first.ts", "python": "first.py", "java": "First.java", "go": "go-first/main.go"}
text = (HERE / "../../openapi/GUIDE.md").read_text().split("\n## Generated clients\n")[1]
found = re.findall(r"^```(\w+)\n(.*?)^```$", text, re.MULTILINE | re.DOTALL)
snippets = {language: snippet for language, snippet in found if language in TARGETS}
if snippets.keys() != TARGETS.keys():
    raise SystemExit(f"snippets.py: the guide has snippets of {sorted(snippets)} alone")
for language, snippet in snippets.items():
    if "http://127.0.0.1:8080" not in snippet:
        raise SystemExit(f"snippets.py: the snippet of {language} asks no instance")
    file = HERE / "generated" / TARGETS[language]
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(snippet.replace("http://127.0.0.1:8080", os.environ["INSTANCE"]))
# The settings that the guide shows are those that are tried.
settings = dict(found)["yaml"]
if settings not in (HERE / "client.yaml").read_text():
    raise SystemExit("snippets.py: the guide shows other settings than client.yaml")
