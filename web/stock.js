/** The catalogue that comes with the page: what the core answers to `catalogue`, made with it. */

import { catalogues } from "./generated/catalogue.js";

/** @param {import("./state").Manner} manner @returns {import("./state").Catalogue} */
export const catalogueOf = ({ decimal }) => catalogues[decimal];
