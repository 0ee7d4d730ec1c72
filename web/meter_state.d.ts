/** What the page holds about the meter on one line. Types only. */

import type * as door from "./generated/door";

export type Quantity = door.Reading["quantity"];
export type Controls = door.Reading["controls"];
export type Looking = door.Reading["looking"];
export type Diagnosis = door.DiagnoseAnswer;
export type Expected = door.ExpectedAnswer;
export type Complaint = door.ComplaintAnswer;
export type Reading = door.Reading;

/** What is being entered: where, looking which way, and the text as typed so far. */
export interface Entry {
  place: string;
  looking: Looking;
  lifted: string[];
  quantity: Quantity;
  controls: Controls;
  text: string;
}
export interface MeterState {
  entry: Entry;
  complaint: string;
  /** The answers, each with the zone it is about. */
  diagnosis: { of: string; answer: Diagnosis } | null;
  expected: { of: string; answer: Expected } | null;
  complaints: Complaint[] | null;
}
