/** What touches on forms do: open one, type into it, send it, close it. */

import { leftFor, standsBehind } from "../forms/behind.js";
import { forms } from "../forms/forms.js";

/** @typedef {import("../state").Form} Form */

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const formActions = ({ store, keeper, edits, drafts }) => {
  const formNow = () => {
    const { bench } = store.read();
    return bench?.is === "form" ? bench.form : null;
  };

  /** @param {Partial<Form>} part */
  const set = (part) => {
    const form = formNow();
    if (form) store.change({ bench: { is: "form", form: { ...form, ...part } } });
  };

  /** @param {string} name @param {string} text */
  const type = (name, text) => {
    const form = formNow();
    if (!form) return;
    const values = { ...form.values, [name]: text };
    const touched = [...new Set([...form.touched, name])];
    const problem = form.problem?.field && fieldOf(form, form.problem.field) === name ? null : form.problem;
    set({ values, touched, problem });
  };

  /** The name of the field that stands at a place of the command. */
  const fieldOf = (/** @type {Form} */ form, /** @type {string} */ place) =>
    form.fields.find(({ name, at }) => name === place || at === place)?.name;

  return {
    "form.open": ({ data: { form: name = "", ...rest } }) => {
      const kind = forms[name];
      if (!kind) throw new Error(`no form ${name}`);
      const context = /** @type {Record<string, string>} */ ({ ...rest });
      const sheet = kind.lay(store.read(), context);
      const values = Object.fromEntries(sheet.fields.map((field) => [field.name, field.value]));
      const behind = standsBehind(store.read().bench);
      const fresh = { name, ...sheet, values, touched: [], problem: null, context, behind, busy: false };
      const form = drafts.resumed(fresh);
      if (form) store.change({ bench: { is: "form", form } });
    },

    "form.type": ({ data: { field = "" }, text }) => type(field, text),

    "form.flag": ({ data: { field = "", value = "" }, checked }) => {
      const now = (formNow()?.values[field] ?? "").split(" ").filter(Boolean);
      type(field, (checked ? [...now, value] : now.filter((each) => each !== value)).join(" "));
    },

    "form.sign": ({ data: { field = "" } }) => {
      const now = formNow()?.values[field] ?? "";
      type(field, /^\s*[-−]/.test(now) ? now.replace(/^\s*[-−]\s*/, "") : `−${now}`);
    },

    "form.between": ({ data: { field = "", sign = "" } }) => {
      type(field, `${(formNow()?.values[field] ?? "").trim()} ${sign} `);
      document.getElementById(`field-${field}`)?.focus();
    },

    "form.close": () => {
      const form = formNow();
      if (form) drafts.end(form);
      store.change({ bench: form ? leftFor(form) : null });
    },

    "draft.go_on": ({ data: { key = "" } }) => drafts.goOn(key),

    "draft.drop": ({ data: { key = "" } }) => drafts.drop(key),

    "form.send": async () => {
      const form = formNow();
      const kind = form && forms[form.name];
      if (!form || !kind || form.busy) return;
      const problem = kind.check?.(form) ?? null;
      if (problem) return set({ problem });
      const count = kind.ids?.(form) ?? 0;
      let { hand, first } = count ? await keeper.takeNumbers(count) : { hand: "", first: 0 };
      const steps = kind.build(form, store.read(), () => `${hand}${first++}`);
      const key = crypto.getRandomValues(new Uint32Array(2)).join("-");
      set({ busy: true, problem: null, context: { ...form.context, act: key } });
      await edits.send({ key, words: kind.words, steps });
    },
  };
};
