postMessage("__APP__");
