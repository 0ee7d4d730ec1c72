/** Keeps the focus where the person is: on a new screen, in an opened panel, back where it came from. */

import { keepFocus } from "./focus_kept.js";
import { readingsOf } from "./meter_first.js";

/** @typedef {import("./state").State} State */

const PANELS = {
  form: "form-title",
  working: "working-title",
  option: "option-title",
  fits: "fits-title",
};

/** @param {State["bench"]} bench */
const panelOf = (bench) =>
  bench?.is === "form"
    ? `form ${bench.form.name}`
    : bench?.is === "working" || bench?.is === "option" || bench?.is === "fits"
      ? bench.is
      : null;

/** @param {State} state */
const placeOf = ({ place: { screen, job, zone, view } }) =>
  [screen, job, zone, view === "distance" ? view : ""].join(" ");

/** Which step of a screen that goes by steps. @param {State} state */
const stepOf = ({ place: { screen }, meter: { about, run } }) =>
  screen === "test" ? [run?.zone, run?.step].join(" ") : screen === "wrong" ? String(about.on) : "";

/** How much was measured on the line that is on the screen. @param {State} state */
const measuredOf = (state) =>
  readingsOf(state).now.filter(({ quantity }) => quantity !== "plays").length;

const toTop = () => document.querySelector(".sheet")?.scrollTo(0, 0);

/** @param {import("./store.js").Store} store @param {HTMLElement} root */
export const followFocus = (store, root) => {
  const keep = keepFocus(root);
  let place = placeOf(store.read());
  let step = stepOf(store.read());
  let { view } = store.read().place;
  let measured = 0;
  /** @type {string | null} */
  let pick = null;
  /** @type {string | null} */
  let panel = null;
  /** @type {Element | null} */
  let opener = null;
  /** What was pressed last and what opened the panel, by what they do: they are painted anew. */
  let pressed = "";
  let opening = "";
  root.addEventListener("click", ({ target }) => {
    const control = target instanceof Element && target.closest("[data-act]:not(form)");
    pressed = control instanceof HTMLElement ? JSON.stringify(control.dataset) : "";
  }, { capture: true });
  const openerNow = () =>
    opener instanceof HTMLElement && opener !== document.body && opener.isConnected
      ? opener
      : /** @type {HTMLElement[]} */ ([...root.querySelectorAll("button[data-act]")]).find(
          ({ dataset }) => JSON.stringify(dataset) === opening,
        );
  /** @type {State["bench"]} */
  let before = null;

  /**
   * Back at the field out of which another form was opened.
   * @param {State["bench"]} bench
   */
  const returnedTo = (bench) => {
    const left = before?.is === "form" && before.form.behind ? before.form.context.field : undefined;
    before = bench;
    return bench?.is === "form" && left ? document.getElementById(`field-${left}`) : null;
  };

  /** @param {State} state */
  const followPanel = (state) => {
    const now = panelOf(state.bench);
    const field = returnedTo(state.bench);
    if (now === panel) return;
    if (now && !panel) {
      opener = document.activeElement;
      opening = pressed;
    }
    panel = now;
    const title = now && state.bench ? PANELS[/** @type {keyof typeof PANELS} */ (state.bench.is)] : null;
    if (field) field.focus();
    else if (title) document.getElementById(title)?.focus();
    else openerNow()?.focus();
  };

  const showPicked = () => root.querySelector(".picked")?.scrollIntoView({ block: "nearest" });
  // The panel grows when its numbers arrive; it is followed until the person moves something.
  const growing = new ResizeObserver(showPicked);
  for (const moved of ["pointerdown", "wheel", "keydown"]) {
    root.addEventListener(moved, () => growing.disconnect(), { passive: true });
  }

  /** A picked thing must not lie behind the panel that opens for it. @param {State} state */
  const followPick = ({ bench }) => {
    const now = bench?.is === "thing" ? bench.id : null;
    const panelNow = root.querySelector(".bench");
    if (now && now !== pick && panelNow) {
      showPicked();
      growing.observe(panelNow);
    }
    pick = now;
  };

  /** @param {State} state */
  const goThere = (state) => {
    place = placeOf(state);
    step = stepOf(state);
    panel = panelOf(state.bench);
    toTop();
    document.getElementById("title")?.focus();
  };

  /** The next step of a screen begins at its head. @param {State} state */
  const followStep = (state) => {
    if (stepOf(state) === step) return;
    step = stepOf(state);
    toTop();
    (document.getElementById("test-title") ?? document.getElementById("title"))?.focus();
  };

  /** What a new reading comes to stands at the top. @param {State} state */
  const followReading = (state) => {
    const now = measuredOf(state);
    if (now > measured && placeOf(state) === place) toTop();
    measured = now;
  };

  /** Another way to look at a line begins at its head. @param {State} state */
  const followView = ({ place: now }) => {
    if (now.view !== view) toTop();
    view = now.view;
  };

  store.listen((state) => {
    followPick(state);
    followView(state);
    followReading(state);
    if (placeOf(state) !== place) return goThere(state);
    followStep(state);
    followPanel(state);
    keep();
  });
};
