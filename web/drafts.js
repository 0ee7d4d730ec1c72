/**
 * Half-filled forms. What stands in one is kept while it is typed, so that nothing that takes its
 * place loses it: a link or a file that arrives, another screen, an update, a flat battery. Back
 * where it was opened, it is there again; elsewhere a notice leads to it.
 */

import { writeAddress } from "./address.js";
import { chainOf, formIn } from "./forms/behind.js";
import { forms } from "./forms/forms.js";

/** @typedef {import("./state").State} State */
/** @typedef {import("./state").Form} Form */
/** @typedef {import("./state").Bench} Bench */
/** @typedef {import("./state").Draft} Draft */
/** @typedef {import("./state").Place} Place */

/** Which form it is: the same one, opened again, goes on with what was typed. @param {Place} place @param {Form} form */
const keyOf = (place, { name, context: { act: _, ...about } }) =>
  JSON.stringify([place.job, name, Object.entries(about).sort()]);

/** What the device keeps: the fields are laid anew when it comes back. @param {Form} form @returns {Form} */
const bare = (form) => ({
  ...form,
  fields: [],
  behind: form.behind?.is === "form" ? { is: "form", form: bare(form.behind.form) } : form.behind,
});

/** @param {Form} form @returns {Form} */
const unsent = ({ context: { act: _, ...context }, ...form }) => ({ ...form, context, busy: false });

/** What may be offered to go on with: not what was sent, nor what another tab may be typing. @param {State} state */
export const draftOffered = ({ drafts, jobs, bench }) =>
  formIn(bench)
    ? undefined
    : drafts.findLast(({ job, form }) => !form.context.act && jobs?.some(({ id }) => id === job));

/** @param {Form} form */
const isTouched = (form) => chainOf(form).some(({ touched }) => touched.length);

/** @param {State} state @returns {Draft | null} */
const draftOf = ({ place, desk, bench }) => {
  const form = formIn(bench);
  if (!form || !place.job || desk?.id !== place.job || !isTouched(form)) return null;
  return { key: keyOf(place, form), job: place.job, address: writeAddress(place), form };
};

/**
 * A form laid anew over what the job is by now, with what was typed into it; null when what it was
 * about is gone.
 * @param {Form} form @param {State} state @returns {Form | null}
 */
const laidAnew = (form, state) => {
  const kind = forms[form.name];
  const behind = behindAnew(form.behind, state);
  if (!kind || (form.behind && !behind)) return null;
  try {
    const sheet = kind.lay(state, unsent(form).context);
    const typed = form.touched.map((name) => [name, form.values[name] ?? ""]);
    const fresh = sheet.fields.map(({ name, value }) => [name, value]);
    const values = Object.fromEntries([...fresh, ...typed]);
    return { ...unsent(form), ...sheet, values, behind, problem: null };
  } catch {
    return null;
  }
};

/** @param {Bench | null} behind @param {State} state @returns {Bench | null} */
const behindAnew = (behind, state) => {
  if (behind?.is !== "form") return behind;
  const form = laidAnew(behind.form, state);
  return form && { is: "form", form };
};

/** @param {Pick<import("./shapes").House, "store" | "keeper">} house */
export const makeDrafts = ({ store, keeper }) => {
  /** What is in the open form. @type {Draft | null} */
  let open = null;
  /** What the device is still to be told, by key; null: nothing is to be kept of it. @type {Map<string, Draft | null>} */
  const untold = new Map();
  let telling = Promise.resolve();
  /** The screen a form was put aside on: it comes back by itself only on a later one. @type {Map<string, Place>} */
  const left = new Map();

  const tell = async () => {
    for (const [key, draft] of untold) {
      untold.delete(key);
      await keeper.keepDraft(key, draft && { ...draft, form: bare(draft.form) });
    }
  };

  /** @param {string} key @param {Draft | null} draft */
  const keep = (key, draft) => {
    untold.set(key, draft);
    // A device that takes no more still has the form on its screen.
    telling = telling.then(tell).catch(() => {});
    return telling;
  };

  /** @param {(draft: Draft) => boolean} stays */
  const setAside = (stays) => store.change({ drafts: store.read().drafts.filter(stays) });

  /** Nothing of a form is wanted any more. @param {string} key */
  const drop = (key) => {
    if (open?.key === key) open = null;
    setAside((each) => each.key !== key);
    return keep(key, null);
  };

  /** Open a form as it was left. @param {Draft} draft */
  const bringBack = async (draft) => {
    setAside(({ key }) => key !== draft.key);
    // What this tab did not see itself may have been sent by another one meanwhile.
    const known = left.has(draft.key) || (await keeper.readDrafts()).some(({ key }) => key === draft.key);
    const form = known && laidAnew(draft.form, store.read());
    if (!form) return keep(draft.key, null);
    if (!store.read().bench) return store.change({ bench: { is: "form", form } });
    store.change({ drafts: [...store.read().drafts, draft] });
  };

  /** A form that left the screen without being sent or closed. @param {State} state */
  const watch = (state) => {
    const now = draftOf(state);
    const form = formIn(state.bench);
    const keys = form ? chainOf(form).map((each) => keyOf(state.place, each)) : [];
    const gone = open && !keys.includes(open.key) ? open : null;
    // One that stands behind another is kept with it.
    if (open && now && !gone && now.key !== open.key) keep(open.key, null);
    if (gone) {
      left.set(gone.key, state.place);
      store.change({ drafts: [...state.drafts.filter(({ key }) => key !== gone.key), gone] });
    }
    if (now && now.form !== open?.form) keep(now.key, now);
    if (now || gone || !form) open = now;
  };

  /** A form whose screen is there again. @param {State} state */
  const comeBack = ({ drafts, place, bench, desk }) => {
    if (bench || !desk || desk.id !== place.job) return;
    const here = drafts.find(
      (draft) =>
        draft.address === writeAddress(place) &&
        left.get(draft.key) !== place &&
        // What another tab may be typing is not taken from it.
        (left.has(draft.key) || desk.pen === "mine") &&
        !desk.waiting.some(({ key }) => key === draft.form.context.act),
    );
    if (here) return bringBack(here);
  };

  return {
    /** @param {State} state */
    async follow(state) {
      watch(state);
      await comeBack(store.read());
    },

    /** What this device has; what was sent and is not waiting any more has been done. */
    async remember() {
      const kept = await keeper.readDrafts();
      const own = new Set(store.read().drafts.map(({ key }) => key));
      if (open) own.add(open.key);
      for (const draft of kept) {
        const { act } = draft.form.context;
        const waits = act && (await keeper.readJob(draft.job))?.waiting.some(({ key }) => key === act);
        if (act && !waits) await keep(draft.key, null);
        else if (!own.has(draft.key)) store.change({ drafts: [...store.read().drafts, draft] });
      }
    },

    /**
     * The form that is opened now, with what was typed into it before; null when it is open already.
     * @param {Form} form @returns {Form | null}
     */
    resumed(form) {
      const state = store.read();
      const key = keyOf(state.place, form);
      const now = formIn(state.bench);
      if (now && isTouched(now) && keyOf(state.place, now) === key) return null;
      const draft = state.drafts.find((each) => each.key === key);
      if (!draft) return form;
      setAside((each) => each !== draft);
      return laidAnew({ ...draft.form, behind: form.behind }, state) ?? form;
    },

    /** Go where it was, and on with it. @param {string} key */
    async goOn(key) {
      const draft = store.read().drafts.find((each) => each.key === key);
      if (!draft) return;
      const { place } = store.read();
      if (draft.address !== writeAddress(place)) {
        location.hash = draft.address;
        return;
      }
      store.change({ bench: null });
      await bringBack(draft);
    },

    drop,

    /** A job is gone, and all that was typed about it. @param {string} job */
    async forget(job) {
      const gone = store.read().drafts.filter((each) => each.job === job);
      await Promise.all(gone.map(({ key }) => drop(key)));
    },

    /** The open form was closed by the person, or what it asked for is done. @param {Form} form */
    end: (form) => drop(keyOf(store.read().place, form)),

    /** What a form asked for that is not open any more is done, or may be put right. @param {string} act @param {boolean} done */
    answered(act, done) {
      for (const draft of store.read().drafts.filter(({ form }) => form.context.act === act)) {
        if (done) drop(draft.key);
        else {
          const free = { ...draft, form: unsent(draft.form) };
          store.change({ drafts: store.read().drafts.map((each) => (each === draft ? free : each)) });
          keep(draft.key, free);
        }
      }
    },

    /** Wait until what was typed is on the device. */
    settle: () => telling,
  };
};

/** @typedef {ReturnType<typeof makeDrafts>} Drafts */
