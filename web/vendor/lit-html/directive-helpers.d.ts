export * from "../../node_modules/lit-html/directive-helpers.js";
