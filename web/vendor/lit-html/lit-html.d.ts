export * from "../../node_modules/lit-html/lit-html.js";
