/** What touches on an open job do beside forms: pick, turn, connect, move, remove, undo. */

import { goTo, leaveFormScreen } from "../address.js";
import { FAMILIES } from "../kinds.js";
import { removedPointWords, removedWords } from "../removed.js";
import { childrenOf } from "../tree.js";

/** @typedef {import("../state").Command} Command */

const makeKey = () => crypto.getRandomValues(new Uint32Array(2)).join("-");

/** The one before which a thing must be listed to go one place up or down. */
export const placeBeside = (
  /** @type {readonly {id: string}[]} */ list,
  /** @type {string} */ id,
  /** @type {string} */ way,
) => {
  const at = list.findIndex((each) => each.id === id);
  const target = way === "up" ? at - 1 : at + 2;
  if (at < 0 || target < 0 || target > list.length) return undefined;
  return list[target]?.id ?? null;
};

/**
 * What a closed bench lets one see again.
 * @param {import("../state").Bench | null} bench @returns {import("../state").Bench | null}
 */
const behind = (bench) => {
  if (bench?.is === "working") return bench.back;
  if (bench?.is === "form") return bench.form.behind;
  if (bench?.is !== "option") return null;
  const { point, swap } = bench;
  return swap ? { is: "swap", point } : { is: "thing", id: point };
};

/** @param {import("../shapes").FullHouse} house @returns {import("../shapes").Actions} */
export const lineActions = ({ store, edits, drafts }) => {
  /** @param {Command} command @param {string} [words] @param {string} [told] */
  const send = (command, words = `do.${command.do}`, told = undefined) =>
    edits.send({ key: makeKey(), words, steps: [{ command }], ...(told ? { told } : {}) });

  /** Take a thing away, and say what went. @param {Command} command @param {string} id */
  const remove = (command, id) => send(command, undefined, removedWords(store.read(), id));

  const job = () => store.read().desk?.job;
  const lineWith = (/** @type {string} */ point) =>
    job()?.zones.find(({ line }) => line.some(({ id }) => id === point))?.line ?? [];

  const closeBench = () => store.change({ bench: null });

  /** @param {string} point @param {string} tail */
  const removePoint = (point, tail) => {
    closeBench();
    const told = removedPointWords(store.read(), point, tail);
    return send({ do: "remove_point", point, tail }, undefined, told);
  };

  return {
    "bench.close": () => {
      const { bench, place } = store.read();
      if (bench?.is === "form") drafts.end(bench.form);
      store.change({ bench: behind(bench) });
      if (bench?.is === "form") leaveFormScreen(place);
    },

    "thing.pick": ({ data: { id = "" } }) => {
      const { bench } = store.read();
      const same = bench?.is === "thing" && bench.id === id;
      store.change({ bench: same ? null : { is: "thing", id }, preview: null });
    },

    /** From a finding to what it is about: a point or zone on its line, an output in the job. */
    "finding.go": ({ data: { id = "" } }) => {
      const { desk, place } = store.read();
      const zone = desk?.job.zones.find((each) => each.id === id || each.line.some((point) => point.id === id));
      const screen = zone ? "zone" : "job";
      const going = zone?.id === id ? null : id;
      if (place.screen === screen && place.zone === (zone?.id ?? null)) {
        return store.change({ bench: { is: "thing", id }, preview: null });
      }
      store.change({ going });
      goTo({ screen, job: place.job, zone: zone?.id ?? null });
    },

    "kind.drop": ({ data: { family = "", id: kind = "" } }) => {
      closeBench();
      return send({ do: "drop_kind", family, kind });
    },

    /** A copy of what comes with the tool follows it again, and all that is of it. */
    "kind.take": ({ data: { family = "", id = "" } }) => {
      const known = FAMILIES.find((each) => each === family);
      const kind = known && store.read().catalogue[known].find((each) => each.id === id);
      const own = known && job()?.kinds[known].find((each) => each.id === id);
      return kind && own && send({ do: "use_kind", family, kind: { ...kind, name: own.name } });
    },

    "point.connect": ({ data: { point = "" } }) => send({ do: "connect", point }),
    "point.disconnect": ({ data: { point = "" } }) => send({ do: "disconnect", point }),

    "point.off": ({ data: { point = "", off } }) =>
      send({ do: "set_attenuator", point, off: off === "yes" }),

    "point.remove": ({ data: { point = "" } }) => {
      if (childrenOf(lineWith(point)).has(point)) {
        return store.change({ bench: { is: "sure", point } });
      }
      return removePoint(point, "cut");
    },

    "point.remove_so": ({ data: { point = "", tail = "join" } }) => removePoint(point, tail),

    "amplifier.move": ({ data: { id = "", way = "" } }) => {
      const before = placeBeside(job()?.amplifiers ?? [], id, way);
      if (before !== undefined) return send({ do: "move_amplifier", amplifier: id, before });
    },

    "amplifier.remove": ({ data: { id = "" } }) => {
      closeBench();
      return remove({ do: "remove_amplifier", amplifier: id }, id);
    },

    "output.move": ({ data: { id = "", way = "" } }) => {
      const home = job()?.amplifiers.find(({ outputs }) => outputs.some((each) => each.id === id));
      const before = placeBeside(home?.outputs ?? [], id, way);
      if (!home || before === undefined) return;
      return send({ do: "move_output", output: id, amplifier: home.id, before });
    },

    "output.remove": ({ data: { id = "" } }) => {
      closeBench();
      return remove({ do: "remove_output", output: id }, id);
    },

    "pool.none": ({ data: { id } }) =>
      send({ do: "change_amplifier", amplifier: id, changes: { pools: [] } }, "do.share"),

    "pool.unknown": ({ data: { id } }) =>
      send({ do: "change_amplifier", amplifier: id, changes: { pools: null } }, "do.share"),

    "pool.remove": ({ data: { id, at } }) => {
      const pools = job()?.amplifiers.find((each) => each.id === id)?.pools ?? [];
      const changes = { pools: pools.filter((_, number) => number !== Number(at)) };
      return send({ do: "change_amplifier", amplifier: id, changes }, "do.share");
    },

    "zone.move": ({ data: { id = "", way = "" } }) => {
      const before = placeBeside(job()?.zones ?? [], id, way);
      if (before !== undefined) return send({ do: "move_zone", zone: id, before });
    },

    "zone.remove": async ({ data: { id = "" } }) => {
      const { desk } = store.read();
      closeBench();
      await remove({ do: "remove_zone", zone: id }, id);
      if (desk) goTo({ screen: "job", job: desk.id });
    },

    "edit.undo": () => edits.send({ key: makeKey(), words: "do.undo", steps: [], back: "undo" }),
    "edit.redo": () => edits.send({ key: makeKey(), words: "do.redo", steps: [], back: "redo" }),
  };
};
