/** The order in which things hang on a line, and where it divides. Shape only, no quantity. */

/** @typedef {import("./state").Point} Point */
/** @typedef {Map<string | null, Point[]>} Children */
/**
 * One row of the drawing. `level` counts the branches between it and the run from the
 * terminals; a run is drawn after the branches that leave it, so rails above always go on.
 * @typedef {{point: Point, level: number, branches: boolean, ends: boolean}} Row
 */

/** @param {readonly Point[]} line @returns {Children} */
export const childrenOf = (line) => {
  /** @type {Children} */
  const children = new Map();
  for (const point of line) {
    const above = point.after ?? null;
    const hanging = children.get(above);
    if (hanging) hanging.push(point);
    else children.set(above, [point]);
  }
  return children;
};

/**
 * How many points hang on each, itself included.
 * @param {Children} children
 */
const weigh = (children) => {
  /** @type {Map<string, number>} */
  const weights = new Map();
  const order = [];
  const stack = [...(children.get(null) ?? [])];
  for (let point = stack.pop(); point; point = stack.pop()) {
    order.push(point);
    stack.push(...(children.get(point.id) ?? []));
  }
  for (const { id } of order.reverse()) {
    const below = (children.get(id) ?? []).map((point) => weights.get(point.id) ?? 0);
    weights.set(
      id,
      below.reduce((sum, each) => sum + each, 1),
    );
  }
  return weights;
};

/**
 * The points from the terminals outward; where a line divides, its longest part is the run.
 * @param {readonly Point[]} line
 * @returns {Row[]}
 */
export const hangingOrder = (line) => {
  const children = childrenOf(line);
  const weights = weigh(children);
  /** @type {Row[]} */
  const rows = [];
  /** @type {Array<{point: Point, level: number}>} */
  const stack = [];

  /** @param {string | null} above @param {number} level */
  const push = (above, level) => {
    const hanging = [...(children.get(above) ?? [])];
    hanging.sort((one, other) => (weights.get(other.id) ?? 0) - (weights.get(one.id) ?? 0));
    for (const [number, point] of hanging.entries()) {
      stack.push({ point, level: number ? level + 1 : level });
    }
  };

  push(null, 0);
  for (let next = stack.pop(); next; next = stack.pop()) {
    const hanging = children.get(next.point.id) ?? [];
    rows.push({ ...next, branches: hanging.length > 1, ends: !hanging.length });
    push(next.point.id, next.level);
  }
  return rows;
};

/**
 * Everything that hangs on a point, near first.
 * @param {readonly Point[]} line @param {string} id
 * @returns {Point[]}
 */
export const belowOf = (line, id) => {
  const children = childrenOf(line);
  const found = [...(children.get(id) ?? [])];
  for (const point of found) found.push(...(children.get(point.id) ?? []));
  return found;
};
