"""Run tests inside the built runtime. Runs inside it, started by trial.py.

ARGUMENT is JSON: {"project": text of pyproject.toml, "pytest": [words]}. /project/tests holds
the tests; pycore and the standard library are those of dist/py.
"""

import json
import os
import sys
from pathlib import Path

task = json.loads(ARGUMENT)  # type: ignore[name-defined]  # noqa: F821

# First, while nothing but what is shipped can be imported: the whole core, and one answer.
CORE = Path("/lib/python3.14/site-packages/pycore")
for path in sorted(CORE.rglob("*.pyc")):
    name = path.relative_to(CORE.parent).as_posix().removesuffix(".pyc")
    __import__(name.removesuffix("/__init__").replace("/", "."))
from pycore.door import handle  # noqa: E402

said = handle('{"n": 1, "ask": "version", "manner": {"language": "en"}, "body": {}}')
if '"n":1' not in said.replace(" ", ""):
    raise AssertionError(said)

# The test tools lean on more of the standard library than the app. What is imported by now
# stays as shipped; what comes later is taken from the stock library.
STOCK = "/stock/python_stdlib.zip"
sys.path.insert(0, STOCK)
for name, module in list(sys.modules.items()):
    places = getattr(module, "__path__", None)
    if places is not None and name.partition(".")[0] in sys.stdlib_module_names:
        module.__path__ = [*places, f"{STOCK}/{name.replace('.', '/')}"]
import pytest  # noqa: E402

Path("/project/pyproject.toml").write_text(task["project"])
os.chdir("/project")
EXIT_CODE = int(
    pytest.main(["-o", "cache_dir=/tmp/cache", "-p", "no:faulthandler", *task["pytest"]])
)
