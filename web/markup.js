/** The little of lit-html that the page draws with, in one place. */

export { html, nothing, render, svg } from "./vendor/lit-html/lit-html.js";
export { live } from "./vendor/lit-html/directives/live.js";
export { repeat } from "./vendor/lit-html/directives/repeat.js";
