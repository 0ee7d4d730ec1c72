/** What touches do where a distance is asked for, and where a paper is printed or taken along. */

import { Overtaken, Refused } from "../door.js";
import { offerFile } from "../files.js";
import { farOf, lineOf } from "../meter_first.js";
import { say } from "../say.js";

/** @typedef {import("../meter_state").Far} Far */

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const farActions = ({ store, door }) => {
  /** @param {Partial<Far>} part */
  const change = (part) => {
    const { meter } = store.read();
    const far = { ...farOf(store.read()), ...part, of: lineOf(store.read()) };
    store.change({ meter: { ...meter, far } });
  };

  /** What is asked: a zone of the job, or a bare pair of a cable. @param {Far} far */
  const bodyOf = ({ fault, quantity, typed, cable, far_point }) => {
    const { place, desk, catalogue } = store.read();
    const said = { fault, quantity: fault === "break" ? "z_1k_ohm" : quantity, near_ohm: "", ...typed };
    if (place.screen === "zone") {
      return { ...said, job: desk?.job, where: { zone: place.zone }, far_point: far_point || null };
    }
    const kinds = [...(desk?.job.kinds.cables ?? []), ...(catalogue?.cables ?? [])];
    return { ...said, job: desk?.job ?? null, cable: kinds.find(({ id }) => id === cable) ?? null };
  };

  return {
    // what was read of a short says nothing of a break: only how it is measured stays
    "far.fault": ({ data: { fault } }) => {
      const { near_ohm: _near, far_ohm: _far, ...typed } = farOf(store.read()).typed;
      change({ fault: fault === "break" ? "break" : "short", typed, answer: null, problem: null });
    },
    "far.quantity": ({ text }) => change({ quantity: text === "dc_ohm" ? "dc_ohm" : "z_1k_ohm", answer: null }),
    "far.cable": ({ text }) => change({ cable: text, answer: null, problem: null }),
    "far.box": ({ text }) => change({ far_point: text, answer: null, problem: null }),
    "far.type": ({ data: { field = "" }, text }) => {
      const { typed } = farOf(store.read());
      change({ typed: { ...typed, [field]: text }, problem: null });
    },

    "far.ask": async () => {
      const far = farOf(store.read());
      if (!far.typed.near_ohm?.trim()) {
        change({ answer: null, problem: { field: "near_ohm", words: say("far.missing"), remedy: "" } });
        return document.getElementById("far-near_ohm")?.focus();
      }
      try {
        const answer = await door.ask("distance", bodyOf(far), "distance");
        change({ answer, problem: null });
      } catch (error) {
        if (error instanceof Overtaken) return;
        if (!(error instanceof Refused)) throw error;
        const { where, words, remedy } = error.problem;
        const field = where.field ?? "";
        change({ answer: null, problem: { field, words, remedy: remedy ?? "" } });
        document.getElementById(`far-${field}`)?.focus();
      }
    },

    "far.working": () => {
      const { answer } = farOf(store.read());
      if (!answer) return;
      const { shown, range, steps, assumptions } = answer;
      const told = { title: say("title.distance"), result: say("far.result", { shown, range }), steps, assumptions };
      store.change({
        bench: { is: "working", finding: "", would: "{}", of: null, answer: told, failed: null, back: null },
      });
    },

    "paper.print": () => globalThis.print(),

    "paper.csv": () => {
      const { meter: { paper }, place } = store.read();
      const name = say(place.screen === "schedule" ? "paper.file_schedule" : "paper.file");
      if (paper) return offerFile(paper.answer.csv, name, "text/csv");
    },
  };
};
