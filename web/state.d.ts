/** What the page holds, and what crosses the door. Types only: nothing here is shipped. */

export type Verdict = "ok" | "near" | "over" | "unknown" | "note";
export type Where = Record<string, string>;

export interface Manner {
  length: "m" | "ft";
  decimal: "." | ",";
}

export interface Problem {
  code: string;
  values: Record<string, unknown>;
  words: string;
  where: Where;
  remedy: string | null;
}

export interface Tap {
  w?: number | null;
  ohm?: number | null;
  at_v: number;
  position?: string | null;
  allowed?: boolean | null;
  shown?: string;
}
export interface Kind {
  id: string;
  name: string;
  taps?: Tap[];
}
export type Family = "loudspeakers" | "attenuators" | "cables";
export type Kinds = Record<Family, Kind[]>;
export interface ShownTap {
  tap_w: number;
  shown: string;
}
export interface Catalogue extends Kinds {
  line_volts: { line_v: number; shown: string }[];
  usual_taps: { line_v: number; taps: ShownTap[] }[];
  names: Record<string, string>;
}

export interface Fitted {
  is: "loudspeaker" | "attenuator" | "existing" | "junction";
  kind?: string | null;
  tap_w?: number | null;
  tap_at_v?: number | null;
  connected?: boolean;
  off?: boolean;
  override?: boolean | null;
  override_sense?: string | null;
  form?: string | null;
  seen?: string | null;
  label?: string | null;
}
export interface Point {
  id: string;
  after?: string | null;
  length_m?: number | null;
  cable?: string | null;
  fitted: Fitted;
}
export interface Zone {
  id: string;
  name: string;
  output?: string | null;
  page_output?: string | null;
  line: Point[];
}
export interface Output {
  id: string;
  name: string;
  line_v: number;
  drive?: string | null;
  marked_class?: string | null;
}
export interface Pool {
  w: number;
  outputs: string[];
  other_w?: number | null;
}
export interface Amplifier {
  id: string;
  name: string;
  pools?: Pool[] | null;
  outputs: Output[];
}
export interface Job {
  id: string;
  name: string;
  place: string;
  notes: string;
  rev: number;
  limits: Record<string, number | null>;
  kinds: Kinds;
  amplifiers: Amplifier[];
  zones: Zone[];
}

export interface Shown {
  value?: string;
  low?: string;
  high?: string;
  limit?: string;
  share?: string;
  left?: string;
}
export interface Finding {
  id: string;
  code: string;
  what: string;
  where: Where;
  state: "set" | "override" | null;
  verdict: Verdict;
  title: string;
  words: string;
  remedy: string | null;
  shown: Shown;
  share_fraction: number | null;
}
export interface Face {
  title: string;
  line?: string | null;
  detail?: string | null;
  verdict?: Verdict | null;
  reason?: string | null;
  load?: string | null;
  limit?: string | null;
  share?: string | null;
  share_fraction?: number | null;
  left?: string | null;
  loss?: string | null;
  finding?: string | null;
  fields?: Record<string, string>;
}
export interface JobFace {
  title: string;
  line: string;
  verdict: Verdict;
  headline: string;
  reason: string;
  not_checked: string[];
  counts: string;
  fields?: Record<string, string>;
}
export interface Faces {
  job: JobFace;
  things: Record<string, Face>;
}
export interface Seen {
  findings: Finding[];
  points: unknown[];
  faces: Faces;
}

export interface TallyRow {
  key: string;
  count: string;
  tap_w: string;
  shown_tap: string;
  output: number;
}
export interface TallyFit {
  words: string;
  first_limit?: string | null;
}
export interface TallySummary {
  sum: string;
  share: string;
  share_fraction: number | null;
  left: string;
  verdict: Verdict;
  headline: string;
  reason: string;
  fits: TallyFit[];
  not_checked: string[];
  finding: string | null;
}
export interface TallyAnswer extends Seen {
  job: Job;
  rows: { shown: string; sum: string; problem: Problem | null }[];
  next: number;
  summary: TallySummary;
  problems?: Problem[];
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
  busy: boolean;
}
export type Bench =
  | { is: "form"; form: Form }
  | {
      is: "working";
      finding: string;
      answer: Working | null;
      failed: string | null;
      back: Bench | null;
    }
  | { is: "thing"; id: string }
  | { is: "sure"; point: string };
export interface WorkingStep {
  title: string;
  formula: string;
  put_in: string;
  result: string;
  inputs: { name: string; shown: string; origin: string; source?: string | null }[];
  source: string;
  source_note: string;
}
export interface Working {
  title: string;
  result: string;
  steps: WorkingStep[];
  assumptions: string[];
}
export interface PreviewOption {
  verdict: Verdict;
  words: string;
  problem?: Problem;
  loads: {
    what: string;
    where: string;
    shown_before: string;
    shown_after: string;
    verdict: Verdict;
  }[];
}
export interface Preview {
  point: string;
  rev: number;
  options: Record<string, PreviewOption>;
}

export type Screen = "tally" | "jobs" | "job" | "zone" | "limits" | "about";
export interface Place {
  screen: Screen;
  job: string | null;
  zone: string | null;
}
export interface EngineState {
  stage: "fetch" | "start" | "unpack" | "open" | "ready" | "again" | "failed";
  bytes: number;
  cause: string | null;
  version: string | null;
}
export interface State {
  place: Place;
  engine: EngineState;
  manner: Manner;
  catalogue: Catalogue | null;
  tally: Tally;
  jobs: JobLine[] | null;
  desk: Desk | null;
  missing: boolean;
  bench: Bench | null;
  preview: Preview | null;
  notice: { words: string; bad: boolean; again?: string } | null;
  offline: "unknown" | "getting" | "ready" | "none";
  kept_for_good: boolean | null;
  update: boolean;
  removing: { id: string; name: string } | null;
  changes: { version: string; date?: string; changes: string[] }[] | null;
}
