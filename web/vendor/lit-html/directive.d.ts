export * from "../../node_modules/lit-html/directive.js";
