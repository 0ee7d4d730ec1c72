/**
 * How the files of the engine's room come: whole, or told of at once. The runtime itself waits for
 * ever for a file that does not come, or that breaks off in the middle; so that is seen from outside.
 */

/** A file of ours did not come: no fault of the engine, nor of a copy of it. */
export class NotCome extends Error {}

/** The server does not have it. */
export class Missing extends NotCome {}

/** The connection broke off, before it or in the middle of it. */
export class BrokenOff extends NotCome {}

/** The name of a file at an address. @param {string} address */
export const nameOf = (address) => address.slice(address.lastIndexOf("/") + 1);

/** @typedef {<Result>(coming: Promise<Result>) => Promise<Result>} Count */

/**
 * Count what is on its way.
 * @param {(loading: boolean) => void} tell hears when the first sets out and the last has arrived
 * @returns {Count}
 */
export const countComing = (tell) => {
  let count = 0;
  const end = () => {
    count -= 1;
    if (!count) tell(false);
  };
  return (coming) => {
    if (!count) tell(true);
    count += 1;
    coming.then(end, end);
    return coming;
  };
};

/**
 * Watch every fetch of this room from now on, to the last byte.
 * @param {(error: NotCome) => void} onNotCome hears of each file that does not come
 * @param {Count} count
 */
export const watchFiles = (onNotCome, count) => {
  const fetchPlainly = self.fetch;
  self.fetch = async (...request) => {
    const fail = (/** @type {unknown} */ error) => {
      const known = error instanceof NotCome;
      const fault = known ? error : new BrokenOff(nameOf(String(request[0])), { cause: error });
      onNotCome(fault);
      throw fault;
    };
    const response = await count(fetchPlainly(...request)).catch(fail);
    if (!response.ok) fail(new Missing(nameOf(response.url)));
    const read = response.arrayBuffer.bind(response);
    response.arrayBuffer = () => count(read()).catch(fail);
    return response;
  };
};
