/* Made by `python3 build.py make` from pycore/asks. Change the models there, not this. */

/** A line nobody has drawn, as typed: about so many, on one tap, on so many volts. */
export interface AboutIn {
  count: string;
  tap_w: string;
  line_v: string;
  amplifier_w?: string;
}

/** An amplifier. `pools` None: not known whether its outputs share watts; (): they do not. */
export interface Amplifier {
  id: string;
  name: string;
  pools?: Pool[] | null;
  outputs?: Output[];
}

/** A room or part of one. */
export interface Area {
  id: string;
  name: string;
  notes?: string;
}

/** A wall attenuator: what is known of this one goes before what its kind says. */
export interface Attenuator {
  is: "attenuator";
  kind?: string | null;
  rated_w?: number | null;
  rated_at_v?: number | null;
  insertion_db?: number | null;
  form?: "autotransformer" | "pad" | null;
  override?: boolean | null;
  override_sense?: "power_bypasses" | "loss_bypasses" | null;
  set_db: number;
  off: boolean;
  label: string;
}

/** A wall attenuator: what it may carry, and whether a page overrides it. */
export interface AttenuatorKind {
  id: string;
  name: string;
  rated_w?: number | null;
  rated_at_v?: number | null;
  insertion_db?: number | null;
  form?: "autotransformer" | "pad" | null;
  override?: boolean | null;
  override_sense?: "power_bypasses" | "loss_bypasses" | null;
}

/** What a meter should read (ohm; null for an open line), unrounded and ready to print. `range` is "88 Ω to 117 Ω", its ends alone are `low_shown` and `high_shown`; `tolerance` the whole of it as a fraction. */
export interface BandAnswer {
  value: number | null;
  low: number | null;
  high: number | null;
  tolerance: number;
  shown: string;
  range: string;
  low_shown: string;
  high_shown: string;
}

/** The state this one grew from, for a three-way merge. */
export interface Base {
  rev: number;
  print: string;
}

/** What may be made a line's baseline: the ids of readings, and why none may, in words. */
export interface BaselineAnswer {
  readings: string[];
  why: string;
}

/** What one box should read: outward with its feed lifted, what is fitted there alone, backward with what goes on lifted, and all together. */
export interface BoxAnswer {
  point: string;
  title: string;
  far: string;
  out: BandAnswer;
  alone: BandAnswer;
  back: BandAnswer;
  whole: BandAnswer;
}

/** Groups led by one kind of fault at several places that nothing read so far tells apart: what they say together, the places that lead them, and which of the groups listed they are. */
export interface BundleAnswer {
  share: number;
  rank: string;
  words: string;
  fault: string;
  places: Record<string, string>[];
  groups: number[];
}

/** What to pull. `refused` says why nothing can be said; then the lists are empty. */
export interface CableAnswer {
  refused: string | null;
  now: string;
  verdict: "ok" | "near" | "over" | "unknown" | "note";
  picks: CablePick[];
  step_ups: CablePick[];
  ways_out: WayOut[];
  stock: string[];
}

/** A job, a zone of it, and which cables are at hand. */
export interface CableBody {
  job: Job;
  zone: string;
  stock?: "metric" | "gauge" | "job";
}

/** A pair, by gauge, by area with its class, or by the loop resistance it measures. */
export interface CableKind {
  id: string;
  name: string;
  awg?: number | null;
  area_mm2?: number | null;
  class?: 1 | 2 | 5 | null;
  loop_ohm_per_km?: number | null;
  stranded?: boolean | null;
  tinned?: boolean | null;
  metal: "copper" | "copper_clad_aluminium";
  inductance_uh_per_m?: number | null;
  capacitance_pf_per_m?: number | null;
}

/** One proposal: a cable for some sections, the loss with it, and why none thinner. `command` puts it in; null where it is there already, or where nothing can be put in. `finding` opens the working of the loss, asked with that command. */
export interface CablePick {
  title: string;
  words: string;
  why_not: string;
  loss: string;
  finding: string | null;
  here: boolean;
  command: Record<string, unknown> | null;
}

/** Words in a row that stands empty. */
export interface Caption {
  row: number;
  words: string;
}

/** Generic kinds to start from and how they look, the usual voltages and taps. The page is built with this answer in it, so that it can be used before the core has started. */
export interface CatalogueAnswer {
  loudspeakers: LoudspeakerKind[];
  attenuators: AttenuatorKind[];
  cables: CableKind[];
  line_volts: LineVolts[];
  usual_taps: UsualTaps[];
  names: Record<string, string>;
  faces: KindFaces;
}

/** One difference. `what` and `title` name the thing, the same for all its changes, which stand together; `base` is None when it is not known or the thing was not there. `usual` is the side a merge takes unless told; where `must_choose`, it has to be told. */
export interface ChangeAnswer {
  id: string;
  where: Record<string, string>;
  what: string;
  title: string;
  field: string;
  words: string;
  mine: string | null;
  theirs: string | null;
  base: string | null;
  side: "mine" | "theirs" | "both" | "clash" | "differs";
  usual: "mine" | "theirs";
  must_choose: boolean;
}

/** A code: `rows` of "0" and "1" (1 is dark), `size` modules a side without the white around, and `text`, what a reader of it gets. When it is `too_large` there are no rows, and `words` offer the file. */
export interface CodeAnswer {
  version: number;
  size: number;
  rows: string[];
  text: string;
  too_large: boolean;
  words: string | null;
}

/** All differences, how the two states stand to each other, and what is united anyway. `read`: the readings that mine has and the known base has not, in words. */
export interface CompareAnswer {
  changes: ChangeAnswer[];
  relation: "same" | "ahead" | "behind" | "only_mine" | "only_theirs" | "apart_known" | "apart";
  words: string;
  counts: Record<string, number>;
  united: string[];
  read: string[];
}

/** Two states of a job, and the one they grew from when it is still kept. */
export interface CompareBody {
  mine: Job;
  theirs: Job;
  base?: Job | null;
}

/** A complaint, what it usually stands for, and the test that decides. */
export interface ComplaintAnswer {
  code: string;
  words: string;
  suspects: string[];
  test: string;
  cautions: string[];
}

/** One complaint, or none for the whole table. */
export interface ComplaintBody {
  complaint?: "protect_at_once" | "protect_on_bass" | "protect_after_an_hour" | "silent_beyond" | "weak_beyond" | "zone_silent" | "one_quiet" | "one_loud_rest_weak" | "hum_with_rain" | "oscillates" | "crackles" | "page_not_heard" | "louder_after_swap" | "quieter_after_swap" | "something_wrong" | null;
}

/** The complaints asked for. */
export interface ComplaintsAnswer {
  complaints: ComplaintAnswer[];
}

/** Two readings that exclude each other. */
export interface ContradictionAnswer {
  readings: string[];
  words: string;
}

/** What each access costs, in walks to the rack, or in a word: so many times the usual, never for what cannot be done. What is not said keeps its usual cost. `listen` (one look around while it plays), `tone` (to put a test tone on the line and read it there) and `earth` (legs to earth) null: not to be asked for. `probe`: volts at a box. */
export interface CostsIn {
  rack?: number | "easy" | "usual" | "hard" | "never";
  box?: number | "easy" | "usual" | "hard" | "never";
  control?: number | "easy" | "usual" | "hard" | "never";
  open_another?: number | "easy" | "usual" | "hard" | "never";
  again?: number | "easy" | "usual" | "hard" | "never";
  listen?: number | "easy" | "usual" | "hard" | "never" | null;
  tone?: number | "easy" | "usual" | "hard" | "never" | null;
  probe?: number | "easy" | "usual" | "hard" | "never";
  earth?: number | "easy" | "usual" | "hard" | "never" | null;
}

/** What the readings say. With `done` false the search for two faults goes on: ask again with `resume`; `searched` is where the search stands. `next` null: `next_reason` says why. `rest`: the share that is not listed. */
export interface DiagnoseAnswer {
  done: boolean;
  share: number;
  resume: Resume | null;
  searched: Resume | null;
  headline: string;
  verdict: "ok" | "near" | "over" | "unknown" | "note";
  reason: string;
  expected: ReadingAnswer[];
  groups: GroupAnswer[];
  bundles: BundleAnswer[];
  families: FamilyAnswer[];
  rest: number;
  settled: boolean;
  odds: string;
  next: NextAnswer | null;
  next_reason: string;
  contradictions: ContradictionAnswer[];
  cannot_see: string[];
  assumptions: string[];
  job?: Job;
}

/** A job and a place on it (or a bare count), and all that was read, heard and said. Baselines are the job's own readings that are marked so. `load_tolerance_pct` null: 10 %. `leads_ohm` null: the leads were nulled. `budget`: how much to search before answering. */
export interface DiagnoseBody {
  job?: Job | null;
  about?: AboutIn | null;
  where?: Spot | null;
  readings?: ReadingIn[];
  complaint?: "protect_at_once" | "protect_on_bass" | "protect_after_an_hour" | "silent_beyond" | "weak_beyond" | "zone_silent" | "one_quiet" | "one_loud_rest_weak" | "hum_with_rain" | "oscillates" | "crackles" | "page_not_heard" | "louder_after_swap" | "quieter_after_swap" | "something_wrong" | null;
  load_tolerance_pct?: number | null;
  leads_ohm?: number | null;
  costs?: CostsIn;
  resume?: Resume | null;
  budget?: number;
}

/** Metres from the amplifier along the route, from how many ends, and in words. */
export interface DistanceAnswer {
  metres: number;
  low: number;
  high: number;
  ends: number;
  own_ohm: number | null;
  words: string;
}

/** A short or a break read from one end or both, as typed; empty is not known. On a drawn line, `job` and `where` (a zone), and `far_point`: the box at which `far_ohm` was read, the home run lifted. Else on a bare pair: the cable is a kind, or its measured loop resistance per kilometre, and `route_m`, its one-way length, is needed with `far_ohm`. `conductor_c` is how warm the copper is; empty, as the job's limits say (without a job 30 °C). A break is told by impedance at 1 kHz. */
export interface DistanceBody {
  fault?: "short" | "break";
  near_ohm: string;
  far_ohm?: string;
  leads_ohm?: string;
  route_m?: string;
  conductor_c?: string;
  tolerance_pct?: string;
  quantity?: "z_1k_ohm" | "dc_ohm";
  cable?: CableKind | null;
  job?: Job | null;
  where?: Spot | null;
  far_point?: string | null;
}

/** A zone's line to be drawn. `limit` says the loss limit in all four ways. */
export interface DrawingAnswer {
  zone: string;
  state: "set" | "override";
  states_differ: boolean;
  rows: number;
  lanes: number;
  to_scale: boolean;
  points: DrawnPoint[];
  ticks: RulerMark[];
  captions: Caption[];
  tones: ToneWords[];
  limit: string;
}

/** A job, the zone to draw, and in which state. */
export interface DrawingBody {
  job: Job;
  zone: string;
  state?: "set" | "override";
}

/** A point with the section that leads to it. `x` is its lane, `y` its place in rows. */
export interface DrawnPoint {
  id: string;
  x: number;
  y: number;
  row: number;
  from_x: number;
  from_y: number;
  known: boolean;
  drawn_as: string;
  title: string;
  line: string;
  length: string;
  tone: 0 | 1 | 2 | 3 | 4 | 5;
  figure: string;
  finding: string | null;
  worst: boolean;
  far: boolean;
  costliest: boolean;
  home_run: boolean;
}

/** What the line had to read in the moment of a reading, in the unit of its quantity: the value and the ends of its band. An open line has a lowest only. */
export interface Due {
  value?: number | null;
  low: number;
  high?: number | null;
}

/** A job and the command to apply; `typed` are fields of it as the person typed them. */
export interface EditBody {
  job: Job;
  command: Record<string, JsonValue>;
  typed?: Record<string, string>;
}

/** One number as it would be. `share_fraction` is of its limit; null is not known. `finding` opens its working, asked with the same command. */
export interface Effect {
  what: "this" | "zone" | "output" | "pool" | "control" | "far";
  name: string;
  shown: string;
  share_fraction: number | null;
  verdict: "ok" | "near" | "over" | "unknown" | "note";
  finding: string;
}

/** A part of a line nobody has drawn, by what it measures or by the watts on its label. */
export interface Existing {
  is: "existing";
  ohm?: number | null;
  hz?: number | null;
  w?: number | null;
  label?: string | null;
}

/** What everything at a place should read, and what comes before the first act on it. `controls`: how the controls of this line can stand while it is read. */
export interface ExpectedAnswer {
  heads: HeadAnswer[];
  boxes: BoxAnswer[];
  cautions: string[];
  cannot_see: string[];
  assumptions: string[];
  controls: ("open" | "set" | "override")[];
  job?: Job;
}

/** A job and a place (or a bare count): what everything there should read. `controls` and `quantity` choose the table of boxes; the amplifier's end is told for all. */
export interface ExpectedBody {
  job?: Job | null;
  about?: AboutIn | null;
  where?: Spot | null;
  controls?: "open" | "set" | "override";
  quantity?: "z_1k_ohm" | "dc_ohm";
  meter_tolerance_pct?: number | null;
  load_tolerance_pct?: number | null;
}

/** Which band of `expected` is to be explained, or that of a reading. `at` is the id of the output, zone or point (null: of `where`); `view` a column of a box, heads are "out". With `reading` its own place, looking, lifted, controls and quantity count. */
export interface ExpectedWorkingBody {
  job?: Job | null;
  about?: AboutIn | null;
  where?: Spot | null;
  controls?: "open" | "set" | "override";
  quantity?: "z_1k_ohm" | "dc_ohm";
  meter_tolerance_pct?: number | null;
  load_tolerance_pct?: number | null;
  at?: string | null;
  view?: "out" | "alone" | "back" | "whole";
  reading?: ReadingIn | null;
}

/** How a thing looks in a list; every text is ready to print. `finding`, `share_finding`, `left_finding` open the workings of load, share and left, `reason_finding` that of what the reason speaks of; `left_by` is "shared" where the watts an output shares leave less than its own maximum does, and "feeds" where the outputs that share watts can take less than is left of those; `row_v` is the line voltage (volts) a loudspeaker's tap is marked for, where that is known. */
export interface Face {
  title: string;
  line: string;
  detail: string;
  verdict: "ok" | "near" | "over" | "unknown" | "note";
  verdict_words: string;
  reason: string;
  reason_finding: string | null;
  load: string;
  limit: string;
  share: string;
  share_fraction: number | null;
  left: string;
  finding: string | null;
  share_finding: string | null;
  left_finding: string | null;
  fields?: Record<string, string>;
  loss?: string;
  left_by?: "shared" | "feeds";
  row_v?: number;
}

/** All texts the page's lists need. */
export interface Faces {
  job: JobFace;
  things: Record<string, Face>;
  kinds: KindFaces;
}

/** All suspects of one kind together: at how many places, and how likely together. */
export interface FamilyAnswer {
  fault: string;
  short: string;
  share: number;
  rank: string;
  count: number;
}

/** A finding with its words. `value`, `low`, `high`, `limit` are unrounded, in `unit`. */
export interface FindingAnswer {
  id: string;
  code: string;
  what: string;
  where: Record<string, string>;
  state: "set" | "override" | null;
  value: number | null;
  low: number | null;
  high: number | null;
  unit: string;
  verdict: "ok" | "near" | "over" | "unknown" | "note";
  verdict_words: string;
  limit: number | null;
  values: Record<string, string | number | null>;
  words: string;
  remedy: string | null;
  title: string;
  shown: ShownTexts;
  share_fraction: number | null;
}

/** A first test of a whole job. `readings`: the ids of what was entered; `whole`: nothing that is to be entered is missing. */
export interface FirstTestAnswer {
  zones: TestedZone[];
  readings: string[];
  whole: boolean;
  connect: string;
}

/** A job; `since`: readings taken before that day do not count. */
export interface FirstTestBody {
  job: Job;
  since: string;
}

/** How many more on one tap, with reserve and to the rating, and the limit met first. */
export interface FitAnswer {
  words: string;
  with_reserve: number | null;
  to_rating: number | null;
  first_limit: string;
  finding: string;
}

/** Suspects that nothing tells apart. `rank` is what to print: a word, or a share once the line has a baseline; `share` orders them. */
export interface GroupAnswer {
  share: number;
  rank: string;
  inside: boolean;
  suspects: SuspectAnswer[];
}

/** What the amplifier's end should read in one state, against the least it may see. `how`: by what, and how the controls stand; `title`: place and how. */
export interface HeadAnswer {
  where: Record<string, string>;
  title: string;
  place: string;
  how: string;
  controls: string;
  quantity: string;
  band: BandAnswer;
  verdict: "ok" | "near" | "over" | "unknown" | "note";
  words: string;
}

/** A column of a table: its words, and the unit of its numbers, empty for words. */
export interface HeadCell {
  words: string;
  unit: string;
}

/** A number put into a step, and where it came from. */
export interface InputAnswer {
  name: string;
  shown: string;
  origin: string;
  source?: string;
}

/** A whole job. One that exists keeps every rule in `rules`: ids, trees, references. */
export interface Job {
  format: "rungline-job";
  version: 1;
  id: string;
  name: string;
  place?: string;
  notes?: string;
  rev: number;
  saved_at?: string | null;
  base?: Base | null;
  limits: Limits;
  kinds: Kinds;
  amplifiers?: Amplifier[];
  zones?: Zone[];
  areas?: Area[];
  readings?: Reading[];
  ticks?: Tick[];
}

/** An ask about one job. */
export interface JobBody {
  job: Job;
}

/** How the whole job looks: its verdict, why, and what nobody has checked. */
export interface JobFace {
  title: string;
  line: string;
  verdict: "ok" | "near" | "over" | "unknown" | "note";
  headline: string;
  reason: string;
  not_checked: string[];
  counts: string;
  finding: string | null;
  fields?: Record<string, string>;
}

/** Several jobs. */
export interface JobsBody {
  jobs: Job[];
}

export type JsonValue = unknown;

/** A box where a line divides. */
export interface Junction {
  is: "junction";
  label: string;
}

/** One kind: its name as it is printed, its lines, whether it is used, its numbers as typed, the rows of its selector; `differs`: the tool comes with one of this id that says otherwise. */
export interface KindFace {
  title: string;
  lines: string[];
  used: string;
  in_use: boolean;
  differs: boolean;
  fields: Record<string, string>;
  rows: RowFace[];
}

/** The kinds of a job by family and id. */
export interface KindFaces {
  loudspeakers: Record<string, KindFace>;
  attenuators: Record<string, KindFace>;
  cables: Record<string, KindFace>;
}

/** The kinds a job uses, each family with ids of its own. */
export interface Kinds {
  cables?: CableKind[];
  loudspeakers?: LoudspeakerKind[];
  attenuators?: AttenuatorKind[];
}

/** What the person wants kept: cable loss, reserve of watts, heat, and cable sizes. */
export interface Limits {
  loss_db: number;
  load_fraction: number;
  conductor_c: number;
  thinnest_mm2?: number | null;
  thickest_mm2?: number | null;
}

/** A usual line voltage and how it is printed. */
export interface LineVolts {
  line_v: number;
  shown: string;
}

/** A link's text, to stand behind #; `advice` when it is longer than messengers like, and `too_long` when only a file is sure to arrive. */
export interface LinkAnswer {
  text: string;
  characters: number;
  too_long: boolean;
  advice: string | null;
}

/** A job, and the address its link is to lead to: what is sent is as long as both together. */
export interface LinkBody {
  job: Job;
  address?: string;
}

/** The job of a link, looked at; the version that wrote it, and the print of its content. */
export interface LinkedJob {
  findings: FindingAnswer[];
  points: PointRow[];
  faces: Faces;
  job: Job;
  made_by: string;
  print: string;
}

/** One load before and after a command. */
export interface LoadChange {
  what: string;
  where: Record<string, string>;
  title: string;
  shown_before: string;
  shown_after: string;
  share_before: number | null;
  share_after: number | null;
  verdict: "ok" | "near" | "over" | "unknown" | "note";
}

/** How far the line may run. */
export interface LongestAnswer {
  words: string;
  known: boolean;
}

/** A loudspeaker on its tap; `direct_ohm` when its selector bypasses the transformer. */
export interface Loudspeaker {
  is: "loudspeaker";
  kind?: string | null;
  tap_w?: number | null;
  tap_at_v?: number | null;
  planned_tap_w?: number | null;
  direct_ohm?: number | null;
  label: string;
  connected: boolean;
  seen?: "drawing" | "found" | "set" | "checked" | null;
  x_m?: number | null;
  y_m?: number | null;
  z_m?: number | null;
}

/** A loudspeaker with its transformer: the taps it offers and how loud it plays. */
export interface LoudspeakerKind {
  id: string;
  name: string;
  mount?: string | null;
  rated_w?: number | null;
  taps: Tap[];
  tap_means?: "drawn" | "delivered" | null;
  transformer_loss_db?: number | null;
  sensitivity_db?: number | null;
  coverage_h_deg?: number | null;
  coverage_v_deg?: number | null;
}

/** Metres to a short or a break, with the least and the most, a short's own ohms, and the steps, for the first of `places`. A line that divides can have several that read alike. */
export interface MeasuredDistance {
  metres: number;
  low: number;
  high: number;
  own_ohm: number | null;
  shown: string;
  range: string;
  own_shown: string;
  places: MeasuredPlace[];
  steps: StepAnswer[];
  assumptions: string[];
}

/** One place that reads so: where on a drawn line (the thing its section leads to, and the share of the section; the error's ends may lie beyond it), and metres from the amplifier with the least and the most. */
export interface MeasuredPlace {
  point: string | null;
  share: number;
  low_share: number;
  high_share: number;
  metres: number;
  low: number;
  high: number;
  shown: string;
  range: string;
  words: string;
}

/** The merged job, looked at, and what of theirs was united with mine. */
export interface MergeAnswer {
  findings: FindingAnswer[];
  points: PointRow[];
  faces: Faces;
  job: Job;
  united: string[];
}

/** The same, and which side each change is taken from, by the ids `compare` gave. */
export interface MergeBody {
  mine: Job;
  theirs: Job;
  base?: Job | null;
  taken?: Record<string, "mine" | "theirs">;
}

/** The next reading to take, as a reading without its value, and what it would tell. */
export interface NextAnswer {
  words: string;
  where: Record<string, string>;
  looking: string;
  lifted: string[];
  quantity: string;
  controls: string;
  cost: number;
  bits: number;
  cautions: string[];
  outcomes: OutcomeAnswer[];
}

/** An ask that needs nothing. */
export interface NothingBody {
}

/** One number in both states. */
export interface NumberRow {
  what: string;
  name: string;
  override: NumberShown;
  set: NumberShown;
}

/** One number; `finding` opens its working, null where it is not known. */
export interface NumberShown {
  shown: string;
  finding: string | null;
}

/** A tap and how it is printed. */
export interface OfferedTap {
  tap_w: number;
  shown: string;
}

/** The jobs of a text, and those that could not be read: one bad job costs no other. */
export interface OpenedJobs {
  jobs: Job[];
  refused: RefusedJob[];
}

/** What a command would do: a problem, or the loads it changes and the verdict on them. `effects` are told of commands at one loudspeaker, in the order a person asks for them; `keeps`: every limit it bears on is known and kept. */
export interface Option {
  verdict: "ok" | "near" | "over" | "unknown" | "note";
  words: string;
  problem: ProblemAnswer | null;
  loads: LoadChange[];
  effects: Effect[];
  keeps: boolean;
}

/** What one range of the next reading would mean: the suspects it leaves, likeliest first. */
export interface OutcomeAnswer {
  low: number;
  high: number | null;
  shown: string;
  share: number;
  rank: string;
  suspects: string[];
  more: number;
}

/** One pair of terminals with the line voltage and the limits printed beside it. */
export interface Output {
  id: string;
  name: string;
  line_v: number;
  max_w?: number | null;
  min_load_ohm?: number | null;
  source_ohm?: number | null;
  drive?: "isolated" | "direct" | null;
  marked_class?: string | null;
  high_pass_hz?: number | null;
}

/** A place on a line. `after` None hangs on the terminals; `length_m` is one way. */
export interface Point {
  id: string;
  after?: string | null;
  length_m?: number | null;
  cable?: string | null;
  joint_ohm?: number | null;
  fitted: Loudspeaker | Attenuator | Existing | Junction;
}

/** A job and one of its points. */
export interface PointBody {
  job: Job;
  point: string;
}

/** Volts, watts, cable loss and level at a point; `same` where both states agree in all. */
export interface PointNumbers {
  point: string;
  rows: NumberRow[];
  same: boolean;
}

/** What arrives at one point; None is not known (or, below a control that is off, no level). `watts_w` is what the point draws from the line; `loss_db` is cable alone, against the terminals; `level_db` is all that lies between: cable, insertion and setting. Where a section farther on is not known its load counts in full: the most that can be lost here. */
export interface PointRow {
  zone: string;
  point: string;
  state: "set" | "override";
  volts_v: number | null;
  watts_w: number | null;
  loss_db: number | null;
  level_db: number | null;
}

/** Watts that several outputs share; `other_w` is what else draws on them. */
export interface Pool {
  w: number;
  outputs: string[];
  other_w?: number | null;
}

/** One option for each command, in the same order. */
export interface PreviewAnswer {
  options: Option[];
}

/** A job and the commands to try on it, each by itself. */
export interface PreviewBody {
  job: Job;
  commands: Record<string, JsonValue>[];
  typed?: Record<string, string>;
}

/** The print of each job's content, in the same order: equal content, equal prints. */
export interface PrintsAnswer {
  prints: string[];
}

/** What went wrong, where, and what to do. */
export interface ProblemAnswer {
  code: string;
  values: Record<string, string | number>;
  words: string;
  where: Record<string, string>;
  remedy: string | null;
}

/** What an instrument said, or how a loudspeaker was heard to play. `due` is filled in by the ask that keeps a reading, never by a page; without it a reading is judged by the line as it is. */
export interface Reading {
  id: string;
  at: string;
  where: Spot;
  looking: "out" | "back";
  lifted?: string[];
  quantity: "z_1k_ohm" | "dc_ohm" | "volts" | "amps" | "earth_ohm" | "plays" | "foreign_v";
  value: number | "well" | "weak" | "silent" | "loud" | "distorted";
  controls: "open" | "set" | "override";
  tolerance_pct: number;
  temperature_c?: number | null;
  instrument: string;
  baseline: boolean;
  due?: Due | null;
}

/** A reading judged. `position` is the reading within its band as a fraction (0 low end, 1 high end) for a picture, null where there is none. `mark`: the verdict in a word or two. */
export interface ReadingAnswer {
  reading: string;
  title: string;
  shown: string;
  band: BandAnswer | null;
  position: number | null;
  deviation: string;
  verdict: "ok" | "near" | "over" | "unknown" | "note";
  mark: string;
  code: string;
  words: string;
  remedy: string | null;
  notes: string[];
}

/** A reading of this visit. `value`: a number, or as it was typed: "201,5", "OL", "well"; tolerance, temperature and the ohms of leads that were not nulled the same. `lifted` names what was taken off: the place itself for what is fitted there, any other point for the line in front of it. `tolerance_pct` null or empty: 5 %, common practice. `due` comes back with a kept reading and is not looked at: what the job itself keeps counts. */
export interface ReadingIn {
  id: string;
  at?: string;
  where: Spot;
  looking?: "out" | "back";
  lifted?: string[];
  quantity: "z_1k_ohm" | "dc_ohm" | "volts" | "amps" | "earth_ohm" | "plays" | "foreign_v";
  value: number | string;
  controls?: "open" | "set" | "override";
  tolerance_pct?: number | string | null;
  temperature_c?: number | string | null;
  leads_ohm?: number | string | null;
  instrument?: string;
  baseline?: boolean;
  due?: Due | null;
}

/** A kept reading of any visit: when and where, what was measured and how, by what, and whether the line is judged against it. */
export interface RecordAnswer {
  reading: string;
  title: string;
  shown: string;
  band: BandAnswer | null;
  position: number | null;
  deviation: string;
  verdict: "ok" | "near" | "over" | "unknown" | "note";
  mark: string;
  code: string;
  words: string;
  remedy: string | null;
  notes: string[];
  at: string;
  where: Record<string, string>;
  place: string;
  what: string;
  how: string;
  instrument: string;
  is_baseline: boolean;
}

/** What was read on a line, the newest first. `sharp`: later visits are judged against a baseline, within `repeat`. `offers`: by day, what may be made the baseline. */
export interface RecordsAnswer {
  records: RecordAnswer[];
  offers: Record<string, BaselineAnswer>;
  sharp: boolean;
  repeat: string;
}

/** A job and one of its zones or outputs: what was read there on any visit. */
export interface RecordsBody {
  job: Job;
  where: Spot;
}

/** A job among several that could not be read: its place from 0, its name, and why. */
export interface RefusedJob {
  place: number;
  name: string;
  problem: ProblemAnswer;
}

/** Where a long diagnosis goes on; handed back as it came. */
export interface Resume {
  next_first: number;
  firsts: number;
  kept: [number, number, number][];
}

/** A row as it reads, with its tap, what it adds up to, or what is wrong with it. Without line volts nothing is counted: `sum` is empty. `finding` opens its working. */
export interface RowAnswer {
  shown: string;
  tap: string;
  sum: string;
  finding: string | null;
  problem: ProblemAnswer | null;
}

/** The taps of one marked voltage; `taps` are those one may turn to, small ones first. `at_v` is the mark, `line_v` the voltage of the line it stands for. */
export interface RowFace {
  at_v: number;
  line_v: number;
  shown: string;
  text: string;
  taps: OfferedTap[];
}

/** A mark of the ruler beside the drawing. */
export interface RulerMark {
  y: number;
  words: string;
}

/** A text to keep and a name for its file. */
export interface SavedAnswer {
  text: string;
  file_name: string;
}

/** A saved text. */
export interface SavedBody {
  text: string;
}

/** A job looked at: its findings, the table of its points, and its faces. */
export interface Seen {
  findings: FindingAnswer[];
  points: PointRow[];
  faces: Faces;
}

/** The same, with the job itself. */
export interface SeenJob {
  findings: FindingAnswer[];
  points: PointRow[];
  faces: Faces;
  job: Job;
}

/** A diagnosis, and which of its groups is to be explained, counted from 0. */
export interface ShareWorkingBody {
  job?: Job | null;
  about?: AboutIn | null;
  where?: Spot | null;
  readings?: ReadingIn[];
  complaint?: "protect_at_once" | "protect_on_bass" | "protect_after_an_hour" | "silent_beyond" | "weak_beyond" | "zone_silent" | "one_quiet" | "one_loud_rest_weak" | "hum_with_rain" | "oscillates" | "crackles" | "page_not_heard" | "louder_after_swap" | "quieter_after_swap" | "something_wrong" | null;
  load_tolerance_pct?: number | null;
  leads_ohm?: number | null;
  costs?: CostsIn;
  resume?: Resume | null;
  budget?: number;
  group: number;
}

/** A paper: its warnings come before everything. `csv` is all of it for a spreadsheet. `running`: what each of its pages says at its head, so that one that is alone is known. */
export interface SheetAnswer {
  title: string;
  running: string;
  warnings: string[];
  tables: SheetTable[];
  notes: string[];
  csv: string;
}

/** A job and which of its papers: `test` is what every zone should read, `taps` what hangs where, on which tap. */
export interface SheetBody {
  job: Job;
  which: "test" | "taps";
}

/** A cell ready to print; `within` is its band, or when and by what it was read; empty where there is neither. `judged`: of a reading, its mark and what it should read. `line`: nothing is known, there is a line to write on. */
export interface SheetCell {
  shown: string;
  judged: string;
  within: string;
  line: boolean;
}

/** One table of a paper. */
export interface SheetTable {
  title: string;
  heads: HeadCell[];
  rows: SheetCell[][];
  notes: string[];
}

/** Texts of a finding's numbers; one that is not known is not there. */
export interface ShownTexts {
  value?: string;
  low?: string;
  high?: string;
  limit?: string;
  share?: string;
  left?: string;
}

/** Where a reading was taken: exactly one of an output, a zone or a point. */
export interface Spot {
  output?: string | null;
  zone?: string | null;
  point?: string | null;
}

/** A new job: its id and name. */
export interface StartBody {
  id: string;
  name: string;
}

/** One equation, the numbers put in, and what came out. */
export interface StepAnswer {
  title: string;
  formula: string;
  put_in: string;
  result: string;
  inputs: InputAnswer[];
  source: string;
  source_note: string;
}

/** One thing that may be wrong. `fault` is its code, `also` a second one where two are needed. `inside`: every reading agrees with it. `would_read`: what each reading would be. */
export interface SuspectAnswer {
  fault: string;
  where: Record<string, string>;
  also?: SuspectAnswer;
  short: string;
  words: string;
  share: number;
  inside: boolean;
  would_read: string[];
  distance: DistanceAnswer | null;
}

/** One kind on one of its taps: the command that fits it, and what that would do. `neighbour`: the nearest loudspeaker on the line is of this kind. */
export interface Swap {
  kind: string;
  title: string;
  line: string;
  command: Record<string, unknown>;
  option: Option;
  neighbour: boolean;
}

/** The kinds of the job first, the nearest on the line before the others, then those that come with the tool. */
export interface SwapsAnswer {
  options: Swap[];
}

/** A job and the loudspeaker that may be swapped. */
export interface SwapsBody {
  job: Job;
  point: string;
}

/** The tally as a job, looked at, with its rows and its summary. */
export interface TallyAnswer {
  job: Job;
  findings: FindingAnswer[];
  points: PointRow[];
  faces: Faces;
  rows: RowAnswer[];
  next: number;
  summary: TallySummary;
  problems: ProblemAnswer[];
}

/** A tally as typed; the empty text is not known. */
export interface TallyBody {
  line_v: string;
  amplifier_w: string;
  outputs?: TallyOutput[];
  rows?: TallyRow[];
  ids: TallyIds;
  name: string;
}

/** Ids to use: the job's, and a hand with the first free counter. */
export interface TallyIds {
  job: string;
  hand: string;
  next: number;
}

/** One output of the tally's amplifier. */
export interface TallyOutput {
  max_w: string;
}

/** So many loudspeakers on one tap, as typed; `output` counts from 0. */
export interface TallyRow {
  count: string;
  tap_w: string;
  output?: number;
}

/** What a tally comes to, ready to print. */
export interface TallySummary {
  sum: string;
  share: string;
  share_fraction: number | null;
  left: string;
  left_by: "shared" | "feeds" | null;
  limit: string;
  verdict: "ok" | "near" | "over" | "unknown" | "note";
  headline: string;
  reason: string;
  fits: FitAnswer[];
  not_checked: string[];
  verdict_finding: string | null;
  finding: string | null;
  share_finding: string | null;
  left_finding: string | null;
}

/** One position of a selector: watts at a line voltage, or the low-impedance position. */
export interface Tap {
  w?: number | null;
  ohm?: number | null;
  at_v: number;
  position?: string | null;
  allowed?: boolean | null;
}

/** What is entered at a step, and how the controls stand. */
export interface TestEntry {
  quantity: "z_1k_ohm" | "dc_ohm" | "volts" | "amps" | "earth_ohm" | "plays" | "foreign_v";
  controls: "open" | "set" | "override";
}

/** One step of a first test. `reading`: what is entered there, null where it is only confirmed; `record`: what was entered, judged. `stop`: why nothing more may be done on this line for now, from the step that found it on; empty where nothing was found. */
export interface TestStep {
  code: string;
  title: string;
  words: string;
  expects: string;
  cautions: string[];
  reading: TestEntry | null;
  record: RecordAnswer | null;
  stop: string;
}

/** The steps of one zone, or why there are none, and what may be made its baseline. */
export interface TestedZone {
  zone: string;
  title: string;
  problem: string | null;
  steps: TestStep[];
  baseline: BaselineAnswer;
}

/** A text: a link, a message with one, a file. */
export interface TextBody {
  text: string;
}

/** A loudspeaker signed off on one tap; it dies when the tap changes. */
export interface Tick {
  point: string;
  tap_w: number;
  tap_at_v: number;
  at: string;
  initials: string;
}

/** What a tone stands for. */
export interface ToneWords {
  tone: 0 | 1 | 2 | 3 | 4 | 5;
  words: string;
}

/** A usual tap and how it is printed. */
export interface UsualTap {
  tap_w: number;
  shown: string;
}

/** The usual taps at one line voltage. */
export interface UsualTaps {
  line_v: number;
  taps: UsualTap[];
}

/** The version of the core. */
export interface VersionAnswer {
  version: string;
}

/** What would help where no cable does. */
export interface WayOut {
  words: string;
  passes: boolean;
}

/** What would be otherwise, in words, and every judged number that would change. `left`: which loudspeakers stay as they are, and why. `command` does what is shown; the page puts in the ids of what is added. Null where the job is like that already. */
export interface WhatIfAnswer {
  title: string;
  caution: string;
  left: string;
  rows: WhatIfRow[];
  same: string;
  command: Record<string, unknown> | null;
}

/** A job and what would be otherwise; `typed` are fields of it as the person typed them. */
export interface WhatIfBody {
  job: Job;
  change: Record<string, JsonValue>;
  typed?: Record<string, string>;
}

/** One number before and after; empty where it is only in one of them. The findings open the workings: of the second, asked with the same change. */
export interface WhatIfRow {
  title: string;
  before: string;
  after: string;
  verdict_before: "ok" | "near" | "over" | "unknown" | "note";
  verdict_after: "ok" | "near" | "over" | "unknown" | "note";
  finding_before: string | null;
  finding_after: string | null;
}

/** How a number came to be. */
export interface WorkingAnswer {
  title: string;
  result: string;
  steps: StepAnswer[];
  assumptions: string[];
}

/** A job and the finding whose number is to be explained. With commands or a change it is explained as it would be once they were done; the job stays as it is. `typed` are fields of them as the person typed them. */
export interface WorkingBody {
  job: Job;
  finding: string;
  commands?: Record<string, JsonValue>[];
  change?: Record<string, JsonValue> | null;
  typed?: Record<string, string>;
}

/** A zone: the line it hangs on, and the output that drives it. */
export interface Zone {
  id: string;
  name: string;
  output?: string | null;
  page_output?: string | null;
  loss_db?: number | null;
  areas?: string[];
  line?: Point[];
}

/** A job and a zone of it. */
export interface ZoneBody {
  job: Job;
  zone: string;
}

/** Every ask: what goes in and what comes back. */
export interface Asks {
  catalogue: { body: NothingBody; answer: CatalogueAnswer };
  choose_cable: { body: CableBody; answer: CableAnswer };
  compare: { body: CompareBody; answer: CompareAnswer };
  complaint: { body: ComplaintBody; answer: ComplaintsAnswer };
  diagnose: { body: DiagnoseBody; answer: DiagnoseAnswer };
  distance: { body: DistanceBody; answer: MeasuredDistance };
  drawing: { body: DrawingBody; answer: DrawingAnswer };
  edit: { body: EditBody; answer: SeenJob };
  expected: { body: ExpectedBody; answer: ExpectedAnswer };
  expected_working: { body: ExpectedWorkingBody; answer: WorkingAnswer };
  findings: { body: JobBody; answer: Seen };
  first_test: { body: FirstTestBody; answer: FirstTestAnswer };
  longest_run: { body: ZoneBody; answer: LongestAnswer };
  merge: { body: MergeBody; answer: MergeAnswer };
  open_all: { body: TextBody; answer: OpenedJobs };
  open_saved: { body: SavedBody; answer: SeenJob };
  point_numbers: { body: PointBody; answer: PointNumbers };
  preview: { body: PreviewBody; answer: PreviewAnswer };
  prints: { body: JobsBody; answer: PrintsAnswer };
  qr: { body: TextBody; answer: CodeAnswer };
  read_link: { body: TextBody; answer: LinkedJob };
  records: { body: RecordsBody; answer: RecordsAnswer };
  save: { body: JobBody; answer: SavedAnswer };
  save_all: { body: JobsBody; answer: SavedAnswer };
  share_working: { body: ShareWorkingBody; answer: WorkingAnswer };
  sheet: { body: SheetBody; answer: SheetAnswer };
  start: { body: StartBody; answer: SeenJob };
  swaps: { body: SwapsBody; answer: SwapsAnswer };
  tally: { body: TallyBody; answer: TallyAnswer };
  version: { body: NothingBody; answer: VersionAnswer };
  what_if: { body: WhatIfBody; answer: WhatIfAnswer };
  working: { body: WorkingBody; answer: WorkingAnswer };
  write_link: { body: LinkBody; answer: LinkAnswer };
}
