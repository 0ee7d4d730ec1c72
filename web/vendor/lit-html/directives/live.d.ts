export * from "../../../node_modules/lit-html/directives/live.js";
