/** What the page holds about one line: its drawing, its cable, what if, and the ladder. Types only. */

import type * as door from "./generated/door";
import type { Verdict } from "./answers";

export type View = "list" | "drawing" | "cable" | "if" | "meter" | "distance";
export type DrawnState = "override" | "set";
export type Stock = "metric" | "gauge" | "job";
export type Known = "drawing" | "found" | "set" | "checked";

export type Drawing = door.DrawingAnswer;
export type DrawnPoint = door.DrawnPoint;
export type PointNumbers = door.PointNumbers;
export type Swap = door.Swap;
export type CablePick = door.CablePick;

/** An answer, the zone or point it is about, and all it was asked with, by one text. */
export interface Asked<T> {
  job: string;
  of: string;
  key: string;
  answer: T;
}

export interface Cabling {
  choice: door.CableAnswer;
  longest: door.LongestAnswer;
}
export interface WhatIf {
  is: "voltage" | "cable" | "tap" | "more";
  line_v: string;
  cable: string;
  sections: "all" | "home_run";
  tap: string;
  run: string;
  answer: door.WhatIfAnswer | null;
  /** What the answer was asked with: with it a number that would be can be opened. */
  asked: { change: object; typed: Record<string, string> } | null;
  /** All the answer was asked with, by one text, and the line and question it is about. */
  key: string | null;
  about: string;
  problem: { words: string; remedy: string | null } | null;
}
export interface LineState {
  state: DrawnState;
  wide: boolean;
  /** How tall each row of the drawing is, in its own units. */
  row: number;
  drawing: Asked<Drawing> | null;
  numbers: Asked<PointNumbers> | null;
  swaps: Asked<Swap[]> | null;
  stock: Stock | null;
  cabling: Asked<Cabling> | null;
  what_if: WhatIf;
  /** As what a tap is entered that is touched; null leaves how it is known alone. */
  turning: Known | null;
  initials: string;
}
export type { Verdict };
