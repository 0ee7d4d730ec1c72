/** The whole page: which parts make which screen, and the drawing of it whenever state changes. */

import { tellTouchFromKeys } from "./by_touch.js";
import { keepRowsWhole } from "./drawn_rows.js";
import { followFocus } from "./focus.js";
import { openHouse } from "./house.js";
import { html, nothing, render } from "./markup.js";
import { about } from "./parts/about.js";
import { cableBench } from "./parts/cable_bench.js";
import { cableSheet } from "./parts/cable_sheet.js";
import { compareBench } from "./parts/compare_bench.js";
import { compareSheet } from "./parts/compare_sheet.js";
import { copyReminder } from "./parts/copy_reminder.js";
import { distanceBench } from "./parts/distance_bench.js";
import { distanceSheet } from "./parts/distance_sheet.js";
import { findingList } from "./parts/findings.js";
import { fitsBench } from "./parts/fits_bench.js";
import { foot } from "./parts/foot.js";
import { formPart } from "./parts/form.js";
import { historySheet } from "./parts/history_sheet.js";
import { ifBench } from "./parts/if_bench.js";
import { ifSheet } from "./parts/if_sheet.js";
import { jobBench } from "./parts/job_bench.js";
import { jobSheet } from "./parts/job_sheet.js";
import { jobsBench } from "./parts/jobs_bench.js";
import { jobsSheet } from "./parts/jobs_sheet.js";
import { kindsBench } from "./parts/kinds_bench.js";
import { kindsSheet } from "./parts/kinds_sheet.js";
import { ladderBench } from "./parts/ladder_bench.js";
import { lineDrawing } from "./parts/line_drawing.js";
import { lineFigures, lineHead } from "./parts/line_figures.js";
import { lineViews } from "./parts/line_views.js";
import { meterBench } from "./parts/meter_bench.js";
import { meterSheet } from "./parts/meter_sheet.js";
import { notices } from "./parts/notices.js";
import { openBench } from "./parts/open_bench.js";
import { openSheet } from "./parts/open_sheet.js";
import { optionBench } from "./parts/option_bench.js";
import { paperBench } from "./parts/paper_bench.js";
import { paperSheet } from "./parts/paper_sheet.js";
import { pointBench, sureBench } from "./parts/point_bench.js";
import { removingPart } from "./parts/removing.js";
import { said } from "./parts/said.js";
import { shareBench } from "./parts/share_bench.js";
import { shareSheet } from "./parts/share_sheet.js";
import { swapBench } from "./parts/swap_bench.js";
import { tallyPad } from "./parts/tally_pad.js";
import { tallySheet } from "./parts/tally_sheet.js";
import { testBench } from "./parts/test_bench.js";
import { testSheet } from "./parts/test_sheet.js";
import { titleOf, top } from "./parts/top.js";
import { waysIn } from "./parts/ways_in.js";
import { verdictHead } from "./parts/verdict_head.js";
import { workingPart } from "./parts/working.js";
import { wrongBench } from "./parts/wrong_bench.js";
import { wrongSheet } from "./parts/wrong_sheet.js";
import { zoneBench } from "./parts/zone_bench.js";
import { zoneSheet } from "./parts/zone_sheet.js";
import { say } from "./say.js";
import { keepSteady } from "./steady.js";
import { listenForTouches } from "./touch.js";

/** @typedef {import("./state").State} State */

/** @param {State} state */
const jobScreen = ({ desk, ...state }) =>
  desk
    ? html`${verdictHead(desk)} ${jobSheet({ ...state, desk })}
      ${findingList({ ...state, desk }, desk.seen.findings)}`
    : nothing;

/** @param {State} state */
const zoneScreen = (state) => {
  const zone = state.desk?.job.zones.find(({ id }) => id === state.place.zone);
  const places = new Set([zone?.id, zone?.output, ...(zone?.line ?? []).map(({ id }) => id)]);
  const findings = state.desk?.seen.findings ?? [];
  const mine = findings.filter(({ where }) => Object.values(where).some((id) => places.has(id)));
  const drawing = state.line.wide ? lineDrawing(state) : nothing;
  return html`${zoneSheet(state)} ${drawing} ${findingList(state, mine)}`;
};

/**
 * The ways to look at one line.
 * @type {Record<import("./line_state").View, (state: State) => unknown>}
 */
const VIEWS = {
  list: zoneScreen,
  drawing: (state) => html`${lineHead(state)} ${lineDrawing(state)} ${lineFigures(state)}`,
  cable: cableSheet,
  if: ifSheet,
  meter: meterSheet,
  distance: distanceSheet,
};

/**
 * The other screens of a job, and what stands under each.
 * @type {Partial<Record<import("./state").Screen, Record<"sheet" | "bench", (state: State) => unknown>>>}
 */
const MORE = {
  share: { sheet: shareSheet, bench: shareBench },
  open: { sheet: openSheet, bench: openBench },
  compare: { sheet: compareSheet, bench: compareBench },
  history: { sheet: historySheet, bench: () => nothing },
  kinds: { sheet: kindsSheet, bench: kindsBench },
};

/**
 * The screens by which a line is proved and searched, and what stands under each.
 * @type {Partial<Record<import("./state").Screen, Record<"sheet" | "bench", (state: State) => unknown>>>}
 */
const METER = {
  wrong: {
    sheet: (state) => wrongSheet(state, meterSheet),
    bench: (state) => (state.meter.about.on ? meterBench(state) : wrongBench(state)),
  },
  distance: { sheet: distanceSheet, bench: distanceBench },
  test: { sheet: testSheet, bench: testBench },
  paper: { sheet: paperSheet, bench: paperBench },
  schedule: { sheet: paperSheet, bench: paperBench },
};

/** @param {State} state */
const sheet = (state) => {
  const { place, missing, bench } = state;
  if (place.job && missing) return html`<p class="empty">${say("job.missing")}</p>`;
  if (place.screen === "tally") return html`${tallySheet(state)} ${waysIn(state)}`;
  if (place.screen === "jobs") return jobsSheet(state);
  if (place.screen === "about") return about(state);
  if (place.screen === "zone") return html`${lineViews(state)} ${VIEWS[place.view ?? "list"](state)}`;
  if (place.screen === "job") return jobScreen(state);
  const other = MORE[place.screen] ?? METER[place.screen];
  if (other) return other.sheet(state);
  return bench?.is === "form" ? formPart(bench.form, false) : nothing;
};

/** @param {State} state @param {string} id */
const pickedPoint = (state, id) => {
  const zone = state.desk?.job.zones.find((each) => each.id === state.place.zone);
  const point = zone?.line.find((each) => each.id === id);
  if (!zone || !point) return zoneBench(state);
  const benchOf = point.fitted.is === "loudspeaker" ? ladderBench : pointBench;
  return benchOf(state, zone, point);
};

/** @param {State} state */
const bench = (state) => {
  const { bench: now, place, desk } = state;
  if (place.screen === "limits" || place.screen === "about") return nothing;
  if (now?.is === "working") return workingPart(now);
  if (now?.is === "form") return formPart(now.form);
  if (place.screen === "tally") return now?.is === "fits" ? fitsBench(state) : tallyPad(state);
  if (place.screen === "open") return openBench(state);
  if (place.screen === "jobs") return jobsBench(state);
  if (place.screen === "wrong" || place.screen === "distance") return METER[place.screen]?.bench(state);
  if (!desk || state.missing) return nothing;
  if (now?.is === "sure") return sureBench(desk, now.point);
  if (now?.is === "option") return optionBench(state, now);
  if (now?.is === "swap") return swapBench(state, now.point);
  if (place.screen === "job") return jobBench(state);
  const other = MORE[place.screen] ?? METER[place.screen];
  if (other) return other.bench(state);
  if (place.view === "if") return ifBench(state);
  if (place.view === "cable") return cableBench(state);
  if (place.view === "meter") return meterBench(state);
  if (place.view === "distance") return distanceBench(state);
  return now?.is === "thing" ? pickedPoint(state, now.id) : zoneBench(state);
};

const root = document.getElementById("app") ?? document.body;
const dialog = document.createElement("dialog");
dialog.setAttribute("aria-labelledby", "removing-title");
root.replaceChildren();
root.after(dialog);

/** @param {State} state */
const draw = (state) => {
  const open = bench(state);
  render(
    html`
      <header class="top">
        ${top(state)}
        <div class="notices">${notices(state)} ${copyReminder(state)}</div>
      </header>
      <main class="sheet sheet-${state.place.screen} look-${state.place.view ?? "list"}" id="sheet" tabindex="0" aria-labelledby="title">
        ${sheet(state)} ${said(state)}
      </main>
      <section class="bench bench-${state.bench?.is ?? "plain"}" aria-label=${say("bench.title")}
        ?hidden=${open === nothing}>
        ${open}
      </section>
      <nav class="foot" aria-label=${say("foot.title")}>${foot(state)}</nav>
    `,
    root,
  );
  render(removingPart(state.removing), dialog);
  if (state.removing && !dialog.open) dialog.showModal();
  if (!state.removing && dialog.open) dialog.close();
  root.classList.toggle("dragging", state.dragging);
  document.title = `${titleOf(state)} · ${say("app.name")}`;
};

const { store, act } = openHouse();
store.listen(draw);
tellTouchFromKeys(document.documentElement);
followFocus(store, root);
listenForTouches(root, act);
listenForTouches(dialog, act);
dialog.addEventListener("cancel", () => store.change({ removing: null }));
draw(store.read());
keepSteady(root);
keepRowsWhole(store, root);
