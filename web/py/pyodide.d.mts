export * from "../node_modules/pyodide/pyodide.js";
