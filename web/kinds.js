/** The kinds a job can use: its own first, then those of the catalogue that it does not have. */

/** @typedef {import("./state").State} State */
/** @typedef {import("./state").Family} Family */
/** @typedef {import("./state").Kind} Kind */
/** @typedef {import("./state").KindFace} KindFace */
/** @typedef {{id: string, awg?: number | null, area_mm2?: number | null}} CableKind */

export const FAMILIES = /** @type {const} */ (["loudspeakers", "cables", "attenuators"]);

/** @param {State} state @param {Family} family @returns {Kind[]} */
export const ownKinds = ({ desk }, family) => desk?.job.kinds[family] ?? [];

/** @param {State} state @param {Family} family @returns {Kind[]} */
export const stockKinds = (state, family) => {
  const own = new Set(ownKinds(state, family).map(({ id }) => id));
  const rest = state.catalogue[family].filter(({ id }) => !own.has(id));
  if (family !== "cables") return rest;
  // Those of the person's own measures come first.
  const feet = state.manner.length === "ft";
  const near = (/** @type {CableKind} */ { awg }) => Boolean(awg) === feet;
  return [...rest.filter((kind) => near(kind)), ...rest.filter((kind) => !near(kind))];
};

/** @param {State} state @param {Family} family */
export const kindsOf = (state, family) => [...ownKinds(state, family), ...stockKinds(state, family)];

/** @param {State} state @param {Family} family @param {string} id @returns {KindFace | undefined} */
export const kindFace = ({ desk, catalogue }, family, id) => {
  const own = desk?.job.kinds[family].some((kind) => kind.id === id);
  return own ? desk?.seen.faces.kinds?.[family][id] : catalogue.faces[family][id];
};

/**
 * A kind as one thing that can be picked: ids of kinds are their family's own.
 * @param {Family} family @param {string} id
 */
export const pickOf = (family, id) => `${family}/${id}`;

/** @param {State} state @param {string | null} pick */
export const pickedKind = (state, pick) => {
  const [family, id = ""] = (pick ?? "").split("/");
  const known = FAMILIES.find((each) => each === family);
  const kind = known && kindsOf(state, known).find((each) => each.id === id);
  return known && kind ? { family: known, kind, own: ownKinds(state, known).includes(kind) } : null;
};

/**
 * The cables first shown: those a line is made of, else those of the person's own measures.
 * @param {import("./state").State} state
 */
const usual = ({ manner, place, desk }) => {
  const line = desk?.job.zones.find(({ id }) => id === place.zone)?.line ?? [];
  const cables = /** @type {CableKind[]} */ (desk?.job.kinds.cables ?? []);
  const used = cables.filter(({ id }) => line.some(({ cable }) => cable === id));
  if (used.length && used.every(({ awg }) => awg)) return "gauge";
  if (used.length && used.every(({ area_mm2 }) => area_mm2)) return "metric";
  return manner.length === "ft" ? "gauge" : "metric";
};

/**
 * The cables that are looked through: the person's choice, else the usual.
 * @param {import("./state").State} state
 */
export const stockOf = (state) => state.line.stock ?? usual(state);
