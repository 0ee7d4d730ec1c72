/** Everything by which jobs come and go, put together. */

import { makeArriving } from "./arriving.js";
import { makeCopies } from "./copies.js";
import { openDoors } from "./doors.js";
import { rememberLink } from "./fragment.js";
import { makeLookingBack } from "./looking_back.js";
import { makeSharing } from "./sharing.js";
import { takeShared } from "./shared.js";
import { makeStorage } from "./storage.js";

/** @param {import("../shapes").House} house @param {(error: unknown) => void} onError */
export const makeTravel = (house, onError) => {
  const arriving = makeArriving(house);
  const copies = makeCopies(house);
  const storage = makeStorage(house);
  const followers = [makeSharing(house), makeLookingBack(house), storage.follow];

  /** @param {string} text */
  const link = (text) => {
    rememberLink(text);
    location.hash = "#/open";
    arriving.read(text).catch(onError);
  };

  /** @param {File[]} some */
  const files = (some) => {
    rememberLink(null);
    location.hash = "#/open";
    arriving.readFiles(some).catch(onError);
  };

  /** @param {import("./shared.js").Shared} shared */
  const receive = (shared) => {
    if (shared.problem) return arriving.refuse(shared.problem);
    return shared.text ? link(shared.text) : files(shared.files);
  };

  return {
    parts: { arriving, copies, storage },
    link,

    /**
     * @param {string | null} carried the link this page was opened with
     * @param {ReturnType<typeof takeShared>} shared what it was shared
     */
    begin(carried, shared) {
      for (const follow of followers) {
        house.store.listen((state) => follow(state).catch(onError));
      }
      openDoors({ link, files, dragging: (dragging) => house.store.change({ dragging }) });
      copies.remember().catch(onError);
      storage.remember().catch(onError);
      shared?.then(receive).catch(onError);
      if (carried) arriving.read(carried).catch(onError);
    },
  };
};
