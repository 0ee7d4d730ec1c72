/** All forms by name. */

import { jobForms } from "./job_forms.js";
import { kindForms } from "./kind_forms.js";
import { ladderForms } from "./ladder_forms.js";
import { add_loudspeakers } from "./loudspeaker_form.js";
import { set_lengths } from "./length_form.js";
import { pointForms } from "./point_forms.js";
import { poolForms } from "./pool_forms.js";
import { supplyForms } from "./supply_forms.js";
import { zoneForms } from "./zone_forms.js";

/** @type {Readonly<Record<string, import("./shape.js").FormKind>>} */
export const forms = {
  ...jobForms,
  ...supplyForms,
  ...poolForms,
  ...zoneForms,
  ...pointForms,
  ...ladderForms,
  ...kindForms,
  add_loudspeakers,
  set_lengths,
};
