/** What the page holds, and what crosses the door. Types only: nothing here is shipped. */

import type {
  Catalogue,
  Code,
  Comparison,
  Job,
  PreviewOption,
  Problem,
  Seen,
  TallyAnswer,
  Verdict,
  Working,
} from "./answers";

import type { LineState, View } from "./line_state";
import type { MeterState } from "./meter_state";

export type * from "./answers";

export interface Manner {
  length: "m" | "ft";
  decimal: "." | ",";
}

export interface TallyRow {
  key: string;
  count: string;
  tap_w: string;
  shown_tap: string;
  output: number;
}
export interface Tally {
  line_v: string;
  amplifier_w: string;
  outputs: { max_w: string }[];
  rows: TallyRow[];
  count: string;
  other: string | null;
  output: number;
  line: string;
  line_problem: string | null;
  answer: TallyAnswer | null;
}

/** Commands are plain data; which there are, the core's door says. */
export type Command = { do: string } & Record<string, unknown>;
export interface Step {
  command: Command;
  typed?: Record<string, string>;
}
/** One act of the person: kept before it is done, done as a whole, undone as a whole. */
export interface Act {
  key: string;
  words: string;
  steps: Step[];
  back?: "undo" | "redo";
  /** What undo never touches, such as a tick: no step back is kept. */
  apart?: boolean;
  /** A state from elsewhere that goes into the job. */
  merge?: { theirs: Job; base: Job | null; taken: Taken };
  /** What is said once it is done, beside the way to put it back. */
  told?: string;
  /** Whether the device has it; said only of those that wait. */
  kept?: boolean;
}
export interface JobRecord {
  id: string;
  job: Job;
  seen: Seen;
  manner: string;
  waiting: Act[];
  undo: string[];
  redo: string[];
}
export interface JobLine {
  id: string;
  name: string;
  counts: string;
  verdict: Verdict;
  headline: string;
  touched: string;
}
/** One of the last states of a job; `theirs` came from elsewhere and went into a later one. */
export interface PastState {
  job: Job;
  at: string;
  words: string;
  counts: string;
  verdict: Verdict | null;
  headline: string;
  theirs: boolean;
}
/** What a state changed in the one before it; by the number of the state. */
export type PastChanges = Record<number, Comparison["changes"]>;
export interface Desk extends JobRecord {
  kept: "kept" | "keeping" | "failed";
  pen: "asking" | "mine" | "theirs";
}

export interface Choice {
  value: string;
  words: string;
}
export interface Field {
  name: string;
  at: string;
  is: "words" | "number" | "choice" | "flags" | "long";
  words: string;
  hint?: string;
  value: string;
  choices?: Choice[];
  negative?: boolean;
  /** Several numbers may be typed here: a key for the sign between them. */
  between?: "×" | "/";
  /** Only there while another field has this value. */
  when?: { field: string; is: string };
  /** Rarely needed: behind a fold, unless something stands there. */
  rarely?: boolean;
  /** A choice of kinds: a key to make one of one's own. */
  own?: import("./answers").Family;
  /** What holds while this is left empty, by the kind that is chosen in the form. */
  by_kind?: Record<string, string>;
  /** For a choice: what each value stands for in the command. */
  stands_for?: Record<string, unknown>;
}
export interface Form {
  name: string;
  title: string;
  send: string;
  fields: Field[];
  values: Record<string, string>;
  touched: string[];
  problem: { field: string | null; words: string; remedy: string | null } | null;
  context: Record<string, string>;
  /** What it was opened out of, and goes back to. */
  behind: Bench | null;
  busy: boolean;
}
/** A form that was typed into and neither sent nor closed. */
export interface Draft {
  key: string;
  job: string;
  address: string;
  form: Form;
}
export type Bench =
  | { is: "form"; form: Form }
  | {
      is: "working";
      /** Empty where the number is no finding of a job. */
      finding: string;
      /** What would be otherwise, as the ask takes it. */
      would: string;
      /** The job it was asked of; null while it was not. */
      of: Job | null;
      answer: Working | null;
      failed: string | null;
      back: Bench | null;
    }
  | { is: "thing"; id: string }
  | { is: "fits" }
  | { is: "swap"; point: string }
  /** What one option at a point would do; `swap`: the other kind, empty for another tap. */
  | { is: "option"; point: string; command: Command; swap: string; title: string }
  | { is: "sure"; point: string };
export interface Preview {
  point: string;
  rev: number;
  options: Record<string, PreviewOption>;
}

export type Screen =
  | "tally"
  | "jobs"
  | "job"
  | "zone"
  | "limits"
  | "kinds"
  | "about"
  | "share"
  | "history"
  | "compare"
  | "wrong"
  | "distance"
  | "test"
  | "paper"
  | "schedule"
  | "open";
export interface Place {
  screen: Screen;
  job: string | null;
  zone: string | null;
  view?: View;
}
export type Taken = Record<string, "mine" | "theirs">;
/** What the share screen shows, of one state of a job. */
export interface Share {
  id: string;
  rev: number;
  address: string | null;
  length: string;
  advice: string | null;
  code: Code | null;
  failed: string | null;
}
/** A job that came from elsewhere, and how it stands to what is kept here. */
export interface Came {
  job: Job;
  seen: Seen | null;
  made_by: string | null;
  print: string;
  here: "new" | "same" | "other";
  /** The id of the job here that says the same, or has the same id. */
  mine: string | null;
  comparison: Comparison | null;
  base: Job | null;
}
export interface Arrived {
  from: "link" | "file";
  text: string;
  reading: boolean;
  problem: { words: string; remedy: string | null } | null;
  came: Came[];
  refused: { name: string; words: string }[];
  picked: number | null;
}
/** Two states side by side. `past` when the other one is an earlier state of our own. */
export interface Comparing {
  id: string;
  rev: number;
  theirs: Job;
  base: Job | null;
  past: boolean;
  answer: Comparison;
  taken: Taken;
  problem: { words: string; remedy: string | null } | null;
}
export interface EngineState {
  stage: "fetch" | "start" | "wake" | "unpack" | "open" | "ready" | "again" | "failed";
  bytes: number;
  /** Why it did not start: the likely cause, the file it lies in, and what the browser said. */
  cause: { is: import("./failing.js").Cause; file: string; says: string } | null;
  version: string | null;
  /**
   * How it started: woken from the copy, as ever, or so that a copy could be taken; and then
   * whether that was kept.
   */
  way: "copy" | "making" | "made" | "unkept" | "plain" | "off" | null;
}
export interface State {
  place: Place;
  engine: EngineState;
  manner: Manner;
  catalogue: Catalogue;
  tally: Tally;
  jobs: JobLine[] | null;
  desk: Desk | null;
  missing: boolean;
  bench: Bench | null;
  /** The thing to be picked on the screen one is on the way to. */
  going: string | null;
  preview: Preview | null;
  line: LineState;
  meter: MeterState;
  notice: { words: string; bad: boolean; again?: string; again_words?: string; on?: Screen } | null;
  offline: "unknown" | "getting" | "ready" | "none";
  kept_for_good: boolean | null;
  update: boolean;
  removing: { id: string; name: string } | null;
  changes: { version: string; date?: string; changes: string[] }[] | null;
  share: Share | null;
  pasted: string;
  arrived: Arrived | null;
  dragging: boolean;
  /** What was asked for and waits for the engine, by the words of its button. */
  wishes: ("tally.keep" | "jobs.new" | "jobs.demo")[];
  drafts: Draft[];
  comparing: Comparing | null;
  past: { id: string; rev: number; states: PastState[]; changes: PastChanges; readings: Record<number, string[]> } | null;
  /** The count of changes of each job when a copy of it last left the device. */
  copied: Record<string, number>;
  reminded: Record<string, number>;
}
