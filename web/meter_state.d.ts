/** What the page holds about the meter on one line. Types only. */

import type * as door from "./generated/door";
import type { Drawing } from "./line_state";
import type { Job } from "./answers";

export type Quantity = door.Reading["quantity"];
export type Controls = door.Reading["controls"];
export type Looking = door.Reading["looking"];
export type Diagnosis = door.DiagnoseAnswer;
export type Expected = door.ExpectedAnswer;
export type Complaint = door.ComplaintAnswer;
export type Reading = door.Reading;
export type Record_ = door.RecordAnswer;
export type Band = door.BandAnswer;
/** How hard it is to get somewhere, in words; what is not said is as usual. */
export type Efforts = Partial<
  Record<"rack" | "box" | "control" | "listen" | "tone" | "earth", "usual" | "easy" | "hard" | "never">
>;
export type Heard = "well" | "weak" | "silent" | "loud" | "distorted";

/** What is being entered: where, looking which way, and the text as typed so far. */
export interface Entry {
  place: string;
  looking: Looking;
  lifted: string[];
  quantity: Quantity;
  controls: Controls;
  text: string;
}
/** A reading of a line nobody has drawn, its value as it was typed. */
export interface LooseReading {
  id: string;
  at: string;
  where: Record<string, string>;
  looking: Looking;
  lifted: string[];
  quantity: Quantity;
  controls: Controls;
  value: string;
  tolerance_pct?: string;
  temperature_c?: string;
  leads_ohm?: string;
  instrument?: string;
}
/** A line nobody has drawn: about so many, on one tap. `on` once it is being measured. */
export interface About {
  count: string;
  tap_w: string;
  line_v: string;
  amplifier_w: string;
  on: boolean;
  readings: LooseReading[];
  next: number;
  job: Job | null;
  problem: { field: string; words: string; remedy: string } | null;
}
/** A step of a first test that is only confirmed: what was said of it, and on which day. */
export interface Said {
  is: "done" | "left";
  at: string;
}
/** A first test under way on one job: since which day, where it stands, what was confirmed. */
export interface Run {
  job: string;
  since: string;
  zone: string | null;
  step: string;
  said: Record<string, Said>;
  /** A step that has its reading is measured once more. */
  again: boolean;
  answer: door.FirstTestAnswer | null;
}
export interface Far {
  of: string;
  fault: "short" | "break";
  quantity: "z_1k_ohm" | "dc_ohm";
  typed: Record<string, string>;
  cable: string;
  far_point: string;
  answer: door.MeasuredDistance | null;
  problem: { field: string; words: string; remedy: string } | null;
}
/** What is measured with, as typed; remembered on this device. */
export interface Instrument {
  name: string;
  tolerance_pct: string;
  temperature_c: string;
  leads_ohm?: string;
}
export interface MeterState {
  entry: Entry;
  instrument: Instrument;
  efforts: Efforts;
  complaint: string;
  /** Of which line it is: of another it says nothing. */
  complaint_of: string;
  /** How the loudspeaker that is touched next is entered as heard. */
  brush: Heard;
  /** The answers, each with the zone it is about. */
  diagnosis: { of: string; answer: Diagnosis } | null;
  /** Whether what was typed last is being judged. */
  judging: boolean;
  expected: { of: string; answer: Expected } | null;
  records: { of: string; answer: door.RecordsAnswer } | null;
  complaints: Complaint[] | null;
  about: About;
  run: Run | null;
  far: Far;
  paper: { of: string; answer: door.SheetAnswer } | null;
  /** The drawing in which suspects and distances are marked. */
  sketch: { of: string; answer: Drawing } | null;
}
