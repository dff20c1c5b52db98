/** Invented pieces for sample views. They hang together as sketches do; nothing is computed. */
import type { CornerCode } from "../src/generated/CornerCode";
import type { Field } from "../src/generated/Field";
import type { FigureRow } from "../src/generated/FigureRow";
import type { Footprint } from "../src/generated/Footprint";
import type { Outlook } from "../src/generated/Outlook";
import type { PairPlot } from "../src/generated/PairPlot";
import type { HazardView } from "../src/generated/HazardView";
import type { PeopleView } from "../src/generated/PeopleView";
import type { ProcedureView } from "../src/generated/ProcedureView";
import type { PathStage } from "../src/generated/PathStage";
import type { StepBody } from "../src/generated/StepBody";
import type { StepView } from "../src/generated/StepView";
import type { TradeLine } from "../src/generated/TradeLine";
import type { TurnView } from "../src/generated/TurnView";

export const corners: { code: CornerCode; name: string }[] = [
  { code: "FL", name: "front left" },
  { code: "FR", name: "front right" },
  { code: "RL", name: "rear left" },
  { code: "RR", name: "rear right" },
];

const STAGES = [
  ["intake", "Intake"],
  ["walk-round", "Walk-round"],
  ["first-lift", "First lift"],
  ["raised", "Raised check"],
  ["pads", "Pads"],
  ["links", "Links released"],
  ["as-used", "Car as used"],
  ["rough", "Rough geometry"],
  ["baseline", "Baseline"],
  ["adjust", "Read and adjust"],
  ["lock-off", "Lock off"],
  ["locked", "Locked reading"],
  ["links-back", "Links back"],
  ["alignment", "Alignment"],
  ["final", "Final reading"],
  ["review", "Review"],
] as const;

/** The path with one stage at work and, if wished, one to do again. */
export function path(now: string, again: string | null = null): PathStage[] {
  const at = STAGES.findIndex(([id]) => id === now);
  return STAGES.map(([id, title], i) => {
    if (id === again) return { id, title, state: "again", state_word: "again" };
    if (i < at) return { id, title, state: "done", state_word: "done" };
    return i === at ? { id, title, state: "now", state_word: "now" } : { id, title, state: "to-come", state_word: "to come" };
  });
}

/** The procedure of a job where nothing else was chosen. */
export const SHIPPED: ProcedureView = {
  place: null,
  title: "corner-balance-and-alignment 1, 0a1b2c3d4e5f",
  trust: "shipped",
  says: "The procedure that ships with the program. Its proof is made by the program's tests.",
  found: [],
  signed_by: null,
};

/** A procedure of a workshop that breaks safety properties. */
export const NOT_PROVED: ProcedureView = {
  place: "/srv/workshop/our-procedure.json",
  title: "corner-balance-and-alignment 1, 5e4d3c2b1a0f",
  trust: "not-proved",
  says: "This procedure is not proved to be safe. No job begins with it, unless a supervisor signs for it.",
  found: ["Not kept: nobody is under or at a raised car that this raise did not acknowledge and secure. At: Locks engaged, Springs looked at.", "Not kept: no car is sealed or driven that is not whole. At: Seal."],
  signed_by: null,
};

/** A list of people; `atCar` is the one at the car. */
export function staffOf(people: { initials: string; rank: string; label: string }[], atCar: string | null = null): PeopleView {
  const row = (person: (typeof people)[number]): PeopleView["people"][number] => ({
    ...person,
    name: `Somebody ${person.initials}`,
    alone: person.rank === "trainee" ? ["intake"] : [],
    alone_says: person.rank === "trainee" ? "Intake" : "",
    left: false,
    fingerprint: person.rank === "supervisor" ? "7QK2-M9XF-03VT-H8RD" : null,
    wait_s: 0,
  });
  return {
    authenticates: people.length > 0,
    says: people.length > 0 ? "Whoever works at the car signs on with their PIN." : "This book knows nobody yet.",
    at_car: atCar,
    asks_again_s: atCar === null ? null : 1800,
    people: people.map(row),
    stages: [{ code: "intake", label: "Intake", outlook: null }, { code: "walk", label: "Walk-round", outlook: null }],
  };
}

export const trainee = { initials: "RO", rank: "trainee", label: "RO, trainee" };
export const technician = { initials: "LB", rank: "technician", label: "LB, technician" };
export const supervisor = { initials: "MT", rank: "supervisor", label: "MT, supervisor" };

export const spring: HazardView = {
  id: "spring-pinch",
  signal: "warning",
  word: "WARNING",
  line: "Hands clear of the spring",
  text: "Keep fingers out of the spring and off its seat while the collar turns, and turn with the tool that was made for it.\nA spring that shifts in its seat could crush a finger or take it off.\nFollow the instructions of the lift maker and the vehicle maker, and the local rules.\nWork on safety parts is for trained and authorised people.",
  acknowledged: null,
};

export const raised: HazardView = {
  id: "raised-vehicle",
  signal: "danger",
  word: "DANGER",
  line: "Nobody under the car until the locks are in",
  text: "Keep every part of your body out from under the car until it has been rocked and stands on engaged locks or on rated stands.\nA jack alone does not hold a car.\nA car that slips off its lift comes down faster than you can move, and will crush you to death.\nFollow the instructions of the lift maker and the vehicle maker, and the local rules.\nWork on safety parts is for trained and authorised people.",
  acknowledged: null,
};

export function acknowledged(hazard: HazardView): HazardView {
  return { ...hazard, acknowledged: "RO, 11:39, this raise" };
}

export const tradeLine: TradeLine = {
  marks: [
    { at: 0.28, label: "front even", strong: false },
    { at: 0.42, label: "cross wanted", strong: true },
    { at: 0.56, label: "rear even", strong: false },
  ],
  stops: [0.05, 0.122, 0.194, 0.266, 0.338, 0.41, 0.455, 0.53, 0.6, 0.672, 0.744, 0.816, 0.888],
  window: { from: 0.13, to: 0.7, label: "window of the cross weight, 0.5 %" },
  now: { at: 0.75, label: "car now", strong: true },
  now_band: { from: 0.66, to: 0.84, label: "how surely it is known" },
  after: { at: 0.455, label: "after this plan", strong: true },
  ends: [0.922],
  rounds: [],
  says: "Cross weight (front right and rear left) 49.4 ± 0.3 %, cannot tell yet",
  verdict: "cannot-tell",
};

export const footprints: Footprint[] = [
  { corner: "FL", name: "front left", load: "221.5", difference: "3.0 too heavy", wanted_area: 0.72, shown_area: 0.8 },
  { corner: "FR", name: "front right", load: "213.0", difference: "3.0 too light", wanted_area: 0.72, shown_area: 0.63 },
  { corner: "RL", name: "rear left", load: "301.0", difference: "3.0 too light", wanted_area: 1, shown_area: 0.91 },
  { corner: "RR", name: "rear right", load: "304.5", difference: "3.0 too heavy", wanted_area: 1, shown_area: 1.09 },
];

export const figures: FigureRow[] = [
  { id: "cross_pct", name: "Cross weight", found: "48.7 ± 0.3 %", left: "49.4 ± 0.3 %", made_of: "settles 64 %, the pads’ zero 22 %, twist of the pads 9 %", wanted: "50.0 ± 0.5 %", verdict: "cannot-tell", verdict_word: "cannot tell yet" },
  { id: "left_pct", name: "Left share", found: "50.3 ± 0.1 %", left: "50.2 ± 0.1 %", made_of: null, wanted: null, verdict: null, verdict_word: null },
  { id: "front_pct", name: "Front share", found: "41.8 ± 0.1 %", left: "41.8 ± 0.1 %", made_of: null, wanted: null, verdict: null, verdict_word: null },
  { id: "front_diff_kg", name: "Front, left less right", found: "14.0 ± 1.6 kg", left: "8.5 ± 1.6 kg", made_of: "settles 64 %, the pads’ zero 22 %, twist of the pads 9 %", wanted: "0 ± 4 kg", verdict: "outside", verdict_word: "outside" },
  { id: "rear_diff_kg", name: "Rear, left less right", found: "-9.0 ± 1.6 kg", left: "-3.5 ± 1.6 kg", made_of: "settles 64 %, the pads’ zero 22 %, twist of the pads 9 %", wanted: "0 ± 6 kg", verdict: "inside", verdict_word: "inside" },
  { id: "side_front_mm", name: "Front height, left minus right", found: "2.0 ± 0.5 mm", left: "3.0 ± 0.5 mm", made_of: null, wanted: "0 ± 7.5 mm", verdict: "inside", verdict_word: "inside" },
  { id: "side_rear_mm", name: "Rear height, left minus right", found: "-1.0 ± 0.5 mm", left: "-2.0 ± 0.5 mm", made_of: null, wanted: "0 ± 7.5 mm", verdict: "inside", verdict_word: "inside" },
];

/** What would follow from a place on the sample line. */
export function outlook(at: number, place: string | null): Outlook {
  const turns = [-0.25, 0.25, 0, 0.25].map((t) => t + Math.round((0.42 - at) * 8) / 4);
  const cross = (50 - (at - 0.42) * 3.2).toFixed(2);
  return {
    place,
    at,
    reached: tradeLine.stops.reduce((best, stop) => (Math.abs(stop - at) < Math.abs(best - at) ? stop : best), 0.5),
    turns: corners.map(({ code, name }, i) => ({ corner: code, name, turns: `${turns[i]! > 0 ? "+" : ""}${turns[i]}`, still: turns[i] === 0 })),
    figures: [
      { id: "cross_pct", name: "Cross weight, FR + RL", value: `${cross} % ± 0.30 %` },
      { id: "front_diff_kg", name: "Front, left minus right", value: "+2.5 kg ± 1.6 kg" },
      { id: "rear_diff_kg", name: "Rear, left minus right", value: "-3.0 kg ± 1.6 kg" },
      { id: "side_front_mm", name: "Front height, left minus right", value: "+1.5 mm" },
      { id: "side_rear_mm", name: "Rear height, left minus right", value: "-2.0 mm" },
    ],
    stop: false,
    why: "Turning front left -0.25, front right +0.25, rear right +0.25 lifts the chance that the cross weight and the heights are inside from 12 % to 97 %. No limit stands against it, and no height moves by more than 1.5 mm.",
  };
}

const PAIR: PairPlot = {
  id: "cross_pct",
  title: "Cross weight, FR + RL",
  window: [0.48, 0.82],
  target: "50.00 % ± 0.50 %",
  points: [
    { label: "as found", came: 0.14, u: 0.08, came_text: "48.70 % ± 0.30 %", predicted: null, predicted_text: null },
    { label: "round 1", came: 0.44, u: 0.09, came_text: "49.40 % ± 0.30 %", predicted: 0.62, predicted_text: "49.95 %" },
    { label: "round 2", came: 0.65, u: 0.07, came_text: "50.02 % ± 0.28 %", predicted: 0.63, predicted_text: "49.98 %" },
  ],
};

/** Pair plots of the figures with a wish. */
export const pairs: PairPlot[] = [
  PAIR,
  { ...PAIR, id: "front_diff_kg", title: "Front, left minus right" },
  { ...PAIR, id: "rear_diff_kg", title: "Rear, left minus right" },
];

/** The same, and a plot for each load. */
export const plots: PairPlot[] = [
  ...pairs,
  ...corners.map(({ code, name }): PairPlot => ({ ...PAIR, id: `load_kg.${code}`, title: `Load, ${name}`, window: null, target: null })),
];

export const turn: TurnView = {
  corner: "FR",
  count: "corner 1 of 4",
  car_does: "Raise the car at front right",
  collar_does: "Collar a quarter turn towards the spring, anticlockwise from above",
  turns: "+0.25",
  direction: "anticlockwise",
  towards_spring: true,
  spring_above: true,
};

/** A field for each corner. */
export function atCorners(key: string, group: string, units: [string, string][], looks: number, range: string): Field[] {
  return corners.map(({ code, name }) => ({
    key: `${key}.${code}`,
    label: `${group}, ${name}`,
    corner: code,
    group,
    kind: { kind: "number", units: units.map(([unit, symbol]) => ({ code: unit, symbol })), looks },
    range,
    last: null,
    only_with: null,
  }));
}

/** A field for each axle. */
export function atAxles(key: string, group: string, units: [string, string][], range: string): Field[] {
  return ["front", "rear"].map((axle) => ({ ...number(`${key}.${axle}`, `${group}, ${axle}`, units, range), group }));
}

export function check(key: string, label: string, yes = "Yes", no = "No"): Field {
  return { key, label, corner: null, group: null, kind: { kind: "check", yes, no }, range: null, last: null, only_with: null };
}

export function choice(key: string, label: string, group: string | null, options: string[]): Field {
  return { key, label, corner: null, group, kind: { kind: "choice", options: options.map((option, i) => ({ code: `option-${i + 1}`, label: option, outlook: null })) }, range: null, last: null, only_with: null };
}

export function text(key: string, label: string): Field {
  return { key, label, corner: null, group: null, kind: { kind: "text" }, range: null, last: null, only_with: null };
}

export function number(key: string, label: string, units: [string, string][], range: string): Field {
  return { key, label, corner: null, group: null, kind: { kind: "number", units: units.map(([code, symbol]) => ({ code, symbol })), looks: 1 }, range, last: null, only_with: null };
}

/** A bare step; `over` says what it has. */
export function step(over: Partial<StepBody>): StepBody {
  return {
    id: "baseline.centre",
    count: "Baseline, step 2 of 8",
    instruction: "Check that each tyre stands within 30 mm of the middle of its pad.",
    because: null,
    detail:
      "A tyre near the edge of its pad loads the pad's frame, and the pad reads less than there is.\n\nRoll the car back and on again rather than pushing it sideways: a pushed tyre stays wound up and holds the body off its height.",
    hazards: [],
    fields: [],
    displays: [],
    action: "All four are centred",
    hazards_open: false,
    gate: null,
    turn: null,
    line: null,
    footprints: [],
    footprint_scale: null,
    figures: [],
    came: [],
    timer: null,
    seal_in_review: false,
    stopping: false,
    angles: null,
    adjusters: [],
    reopen: [
      { step: "pads.level", label: "Pads: levelled", voids: "Again after it: baseline, first settle; baseline, second settle." },
      { step: "used.pressures", label: "Car as used: working pressures", voids: "Again after it: baseline, first settle." },
    ],
    ...over,
  };
}

/** A view with that step. */
export function stepView(body: StepBody, stage = "baseline", over: Partial<StepView> = {}): StepView {
  return {
    revision: 41,
    job: { id: 3, title: "Practice car, job 3", practice: true },
    path: path(stage),
    people: [trainee],
    notice: null,
    staff: staffOf([]),
    screen: { kind: "step", ...body },
    ...over,
  };
}
