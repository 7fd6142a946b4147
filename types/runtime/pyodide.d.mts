export * from "pyodide";
