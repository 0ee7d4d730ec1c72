/** What the actions work with. Types only. */

import type { DeskKeeper } from "./desk.js";
import type { Door } from "./door.js";
import type { Drafts } from "./drafts.js";
import type { Edits } from "./edits.js";
import type { Keeper } from "./keeper.js";
import type { Store } from "./store.js";
import type { Tabs } from "./tabs.js";
import type { Manner } from "./state";
import type { makeArriving } from "./travel/arriving.js";
import type { makeCopies } from "./travel/copies.js";
import type { makeStorage } from "./travel/storage.js";
import type { Updates } from "./updates.js";

export interface House {
  store: Store;
  door: Door;
  keeper: Keeper;
  tabs: Tabs;
}
export interface FullHouse extends House {
  drafts: Drafts;
  edits: Edits;
  desk: DeskKeeper;
  updates: Updates;
  arriving: ReturnType<typeof makeArriving>;
  copies: ReturnType<typeof makeCopies>;
  storage: ReturnType<typeof makeStorage>;
  setManner: (part: Partial<Manner>) => unknown;
}
/** What a touched control says: its data-* attributes, and its text where it has one. */
export interface Touch {
  data: DOMStringMap;
  text: string;
  checked: boolean;
  files: FileList | null;
}
export type Actions = Record<string, (touch: Touch) => unknown>;
