/**
 * What comes back through the door, as the page sees it. The shapes are the core's own
 * (generated/door.d.ts); an answer always carries every field, so none is optional here.
 */

import type * as door from "./generated/door";

export type Filled<T> = T extends (infer U)[]
  ? Filled<U>[]
  : T extends object
    ? { [K in keyof T]-?: Filled<Exclude<T[K], undefined>> }
    : T;

export type Verdict = door.FindingAnswer["verdict"];
export type Problem = door.ProblemAnswer;
export type Catalogue = Omit<Filled<door.CatalogueAnswer>, Family> & Kinds;
export type Family = "loudspeakers" | "attenuators" | "cables";
export interface Kind {
  id: string;
  name: string;
  taps?: door.Tap[];
}
export type KindFace = door.KindFace;
export type Kinds = Record<Family, Kind[]>;

/** Any fitted thing: which fields it has, `is` says. */
export type Fitted = { is: "loudspeaker" | "attenuator" | "existing" | "junction" } & Partial<
  Omit<door.Loudspeaker, "is"> & Omit<door.Attenuator, "is"> & Omit<door.Existing, "is">
>;
export type Point = Omit<door.Point, "fitted"> & { fitted: Fitted };
export type Zone = Omit<door.Zone, "line"> & { line: Point[] };
export type Output = door.Output;
export type Amplifier = Omit<door.Amplifier, "outputs"> & { outputs: Output[] };
export type Job = Omit<Filled<door.Job>, "kinds" | "amplifiers" | "zones"> & {
  kinds: Kinds;
  amplifiers: Amplifier[];
  zones: Zone[];
};

export type Finding = door.FindingAnswer;
/** `fields` are the numbers of a thing as they would be typed; `loss` of a loudspeaker. */
export type Face = door.Face & { loss?: string; fields?: Record<string, string> };
export type JobFace = door.JobFace & { fields?: Record<string, string> };
export interface Seen {
  findings: Finding[];
  points: door.PointRow[];
  /** What was kept by an earlier version has no `kinds` until it is looked at again. */
  faces: { job: JobFace; things: Record<string, Face>; kinds?: door.KindFaces };
}
export type SeenJob = Seen & { job: Job };

export type TallySummary = door.TallySummary;
export type TallyAnswer = Omit<door.TallyAnswer, keyof SeenJob> & SeenJob;
export type Working = door.WorkingAnswer;
export type WorkingStep = door.StepAnswer;
export type PreviewOption = door.Option;

export type Code = door.CodeAnswer;
export type Comparison = door.CompareAnswer;
export type Change = door.ChangeAnswer;
export type LinkedJob = SeenJob & { made_by: string; print: string };
export type MergedJob = SeenJob & { united: string[] };
export type OpenedJobs = Omit<door.OpenedJobs, "jobs"> & { jobs: Job[] };

/** What the answer to each ask is. A new ask of the core must be entered here to be asked. */
export interface Answers {
  catalogue: Catalogue;
  choose_cable: door.CableAnswer;
  complaint: door.ComplaintsAnswer;
  diagnose: door.DiagnoseAnswer;
  drawing: door.DrawingAnswer;
  distance: door.MeasuredDistance;
  expected_working: door.WorkingAnswer;
  first_test: door.FirstTestAnswer;
  records: door.RecordsAnswer;
  share_working: door.WorkingAnswer;
  sheet: door.SheetAnswer;
  expected: door.ExpectedAnswer;
  longest_run: door.LongestAnswer;
  point_numbers: door.PointNumbers;
  swaps: door.SwapsAnswer;
  what_if: door.WhatIfAnswer;
  compare: Comparison;
  edit: SeenJob;
  findings: Seen;
  merge: MergedJob;
  open_all: OpenedJobs;
  open_saved: SeenJob;
  preview: door.PreviewAnswer;
  prints: door.PrintsAnswer;
  qr: Code;
  read_link: LinkedJob;
  save: door.SavedAnswer;
  save_all: door.SavedAnswer;
  start: SeenJob;
  tally: TallyAnswer;
  version: door.VersionAnswer;
  working: Working;
  write_link: door.LinkAnswer;
}
