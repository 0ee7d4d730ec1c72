"""Install our own wheel with micropip inside the built runtime, and ask it one thing.

ARGUMENT is JSON: {"wheel": file name in /wheels}. Nothing is looked up: what the core leans on
is already there, and micropip is told so.
"""

import json

import micropip

task = json.loads(ARGUMENT)  # type: ignore[name-defined]  # noqa: F821
await micropip.install(f"emfs:/wheels/{task['wheel']}", deps=False)  # type: ignore[top-level-await]  # noqa: F704, PLE1142

import pycore  # noqa: E402
from pycore.door import handle  # noqa: E402

answer = handle('{"n": 1, "ask": "version", "manner": {"language": "en"}, "body": {}}')
print(json.dumps({"answer": json.loads(answer), "from": pycore.__file__}))
