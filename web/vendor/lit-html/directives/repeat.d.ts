export * from "../../../node_modules/lit-html/directives/repeat.js";
