/** Everything by which jobs come and go, put together. */

import { makeArriving } from "./arriving.js";
import { makeCopies } from "./copies.js";
import { openDoors } from "./doors.js";
import { rememberLink } from "./fragment.js";
import { makeLookingBack } from "./looking_back.js";
import { makeSharing } from "./sharing.js";
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
    arriving.read("link", text).catch(onError);
  };

  /** @param {File} file */
  const file = (file) => {
    rememberLink(null);
    location.hash = "#/open";
    arriving.readFile(file).catch(onError);
  };

  return {
    parts: { arriving, copies, storage },
    link,

    /** @param {string | null} carried the link this page was opened with */
    begin(carried) {
      for (const follow of followers) {
        house.store.listen((state) => follow(state).catch(onError));
      }
      openDoors({ link, file, dragging: (dragging) => house.store.change({ dragging }) });
      copies.remember().catch(onError);
      storage.remember().catch(onError);
      if (carried) arriving.read("link", carried).catch(onError);
    },
  };
};
