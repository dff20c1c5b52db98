/** Sample views of the window at the car, one for each screen and each kind of step. */
import type { ScenarioView } from "../src/generated/ScenarioView";
import type { Choice } from "../src/generated/Choice";
import type { HeardView } from "../src/generated/HeardView";
import type { PairPlot } from "../src/generated/PairPlot";
import type { StepView } from "../src/generated/StepView";
import {
  NOT_PROVED,
  SHIPPED,
  acknowledged,
  atAxles,
  atCorners,
  check,
  choice,
  corners,
  figures,
  footprints,
  number,
  outlook,
  pairs,
  path,
  raised,
  spring,
  staffOf,
  step,
  stepView,
  supervisor,
  technician,
  text,
  tradeLine,
  trainee,
  turn,
} from "./parts";

const none = { revision: 0, job: null, path: [], people: [], staff: staffOf([trainee, technician, supervisor], "RO"), notice: null };

const loads = atCorners("loads", "Load", [["kg", "kg"], ["lb", "lb"]], 3, "10 to 1500 kg, up to three looks with blanks between");
const heights = atCorners("heights", "Height", [["mm", "mm"], ["in", "in"]], 1, "40 to 400 mm");
const showing = corners.flatMap(({ code }, i) => [
  { key: `loads.${code}`, label: `Pad ${code}`, text: ["221.4 221.5 221.5", "213.0 213.1 213.0", "301.0 300.9 301.0", "304.5 304.4 304.5"][i] ?? "" },
  { key: `heights.${code}`, label: "Height gauge", text: ["121.5", "120.0", "133.0", "134.5"][i] + " mm" },
]);

const reading = step({
  id: "adjust.read",
  count: "Read and adjust, round 2, settle 1 of 3",
  instruction: "Read all four pads three times, and the four heights.",
  action: "Record the reading",
  hazards: [acknowledged({ ...spring, id: "rolling-car", signal: "caution", word: "CAUTION", line: "The car stands in neutral with the brake off" })],
  fields: [...loads, ...heights],
  displays: showing,
});

/** Where the place on the trade line is chosen. */
function choosing(came: PairPlot[]): StepView {
  const option = (code: string, label: string, at: number | null): Choice => ({ code, label, outlook: at === null ? null : outlook(at, null) });
  const options = [
    option("go-on", "Go on: lock off", null),
    option("turn-cross", "Turn, for the cross weight", 0.42),
    option("turn-front", "Turn, for an even front axle", 0.28),
    option("turn-rear", "Turn, for an even rear axle", 0.56),
    option("turn-place", "Turn, for a place on the line", null),
  ];
  return stepView(
    step({
      id: "loop.judge",
      count: "Read and adjust, round 2",
      instruction: "Choose what to do next.",
      fields: [
        { key: "next", label: "What to do next", corner: null, group: null, kind: { kind: "choice", options }, range: null, last: null, only_with: null },
        { ...number("place", "Cross weight aimed at, FR + RL", [["percent", "%"]], "30 to 70 %"), only_with: { key: "next", options: ["turn-place"] } },
        { ...text("reason", "Reason"), range: "Write “none” where nothing is meant." },
      ],
      action: "Record this decision",
      line: tradeLine,
      footprints,
      footprint_scale: "Differences drawn 6 times larger",
      figures,
      came,
    }),
    "adjust",
  );
}

const SCENARIOS: ScenarioView[] = [
  { id: "first-morning", title: "A first morning", story: "A small coupe for fast road use, and an owner who wants it to feel the same in left and right bends. Nothing is meant to be wrong: go through the job once and see where each figure comes from.", wrong: false },
  { id: "after-a-kerb", title: "After a kerb", story: "The owner touched a kerb, and the car has pulled to one side since. A tyre shop set the toe, which did not help for long. Find out what you can before you turn anything.", wrong: false },
  { id: "ours.json", title: "ours.json", story: "ours.json is no scenario: unknown field `drown`, expected one of `format`, `id`, `title`, `story`, `seed`, `faults`, `drawn` at line 9 column 9", wrong: true },
];

/** A number that was heard and waits to be confirmed, where it is loud. */
export const heardSample: HeardView = {
  act: { kind: "nothing" },
  says: "Load, front left: 221.4, 221.5, 221.5 kg.",
  loud: "It is loud here: speech stands 9 dB above the noise. Use the keys, or look twice at each number.",
  pending: { key: "loads.FL", label: "Load, front left", text: "221.4  221.5  221.5 kg" },
};

export const stepSamples: Record<string, StepView> = {
  "start-first": { ...none, staff: staffOf([]), screen: { kind: "start", says: "Set up this workshop, or only look first.", open_jobs: [], scenarios: SCENARIOS, procedure: SHIPPED } },
  "start": { ...none, screen: { kind: "start", says: "Begin with a practice job: it goes through every stage on a simulated car.", open_jobs: [], scenarios: SCENARIOS, procedure: SHIPPED } },
  "start-open": {
    ...none,
    screen: {
      kind: "start",
      says: "Take up an open job, or begin one.",
      open_jobs: [
        { id: 3, title: "Practice car, job 3", state: "working", says: "Read and adjust, since 11:26 today" },
        { id: 2, title: "Green saloon, job 2", state: "held", says: "On hold at Pads: waits for a new laser" },
      ],
      scenarios: SCENARIOS,
      procedure: SHIPPED,
    },
  },
  "not-proved": { ...none, screen: { kind: "start", says: "Take up a job that was set aside, or begin a new one.", open_jobs: [], scenarios: SCENARIOS, procedure: NOT_PROVED } },
  "sign-on": { revision: 1, job: { id: 3, title: "Practice car, job 3", practice: true }, path: path("intake"), people: [], staff: staffOf([]), notice: null, screen: { kind: "sign-on", says: "Sign on first: every entry carries the name of who made it." } },
  "plain": stepView(step({})),
  "springs": stepView(
    step({
      id: "intake.springs",
      count: "Intake, step 4 of 12",
      instruction: "Write the springs, tyres and unsprung masses of each axle.",
      action: "Record",
      fields: [
        ...atAxles("spring", "Spring rate", [["n-per-mm", "N/mm"], ["lb-per-in", "lb/in"]], "10 to 500 N/mm"),
        ...atAxles("motion-ratio", "Motion ratio", [["one", ""]], "0.3 to 1.2"),
        ...atAxles("tyre", "Tyre rate", [["n-per-mm", "N/mm"], ["lb-per-in", "lb/in"]], "50 to 600 N/mm"),
        ...atAxles("unsprung", "Unsprung mass of one corner", [["kg", "kg"], ["lb", "lb"]], "5 to 120 kg"),
      ],
      displays: ["spring", "motion-ratio", "tyre", "unsprung"].flatMap((key, i) =>
        ["front", "rear"].map((axle) => ({ key: `${key}.${axle}`, label: "Job papers", text: ["60 N/mm", "0.95", "210 N/mm", "32 kg"][i] ?? "" })),
      ),
    }),
    "intake",
  ),
  "layout": stepView(
    step({
      id: "intake.layout",
      count: "Intake, step 2 of 12",
      instruction: "State how the car is sprung, driven and braked.",
      action: "Record",
      fields: [
        choice("axle-kind.front", "Kind of axle, front", "Kind of axle", ["Independent", "Beam"]),
        choice("axle-kind.rear", "Kind of axle, rear", "Kind of axle", ["Independent", "Beam"]),
        choice("drive", "Driven wheels", null, ["Front", "Rear", "All four"]),
        choice("springing", "Springing", null, ["A spring with a collar at each wheel", "Not adjustable: measure and advise", "One spring for two wheels: measure and advise", "Interconnected: measure and advise", "Active: measure and advise"]),
        choice("high-voltage", "High voltage aboard", null, ["None", "High voltage aboard"]),
      ],
      displays: [{ key: "drive", label: "Job papers", text: "Rear" }, { key: "springing", label: "Job papers", text: "A spring with a collar at each wheel" }],
    }),
    "intake",
  ),
  "one-check": stepView(step({ id: "raise.clear", count: "First lift: going up", instruction: "Raise the car until the wheels just clear.", because: "First, because the wheels must just clear.", hazards: [acknowledged(raised)], fields: [check("wheels-clear", "A sheet of card slides under all four tyres", "Yes", "No, found wrong")], action: "Record" }), "first-lift"),
  "hazards": stepView(
    step({ id: "lift.raise", count: "First lift, step 3 of 7", instruction: "Raise until the wheels just clear, then stop and rock the car.", hazards: [raised, { ...spring, id: "balance", signal: "notice", word: "NOTICE", line: "Note what hangs loose", text: "Write down each lead and hose that hangs lower than the sills before going on." }], hazards_open: true, fields: [check("rocked", "Rocked: it sits firm")], action: "It sits firm" }),
    "first-lift",
  ),
  "reading": stepView(reading, "adjust"),
  "reading-notice": stepView(reading, "adjust", { notice: "Nothing can be said here: espeak-ng is not here, so nothing can be said. Everything stands on the screen, and the job goes on without a voice. To be spoken to, install espeak-ng and start the program afresh." }),
  "reading-gate": stepView(
    { ...reading, gate: { verdict: "cannot-tell", says: "The settles differ by 4.1 kg at front left; the limit is 3 kg. Free the tyres, bounce each end and read again.", may_waive: "A technician or supervisor who does not work on this step may waive it." } },
    "adjust",
    { people: [trainee, technician] },
  ),
  "turn": stepView(
    step({
      id: "adjust.turn",
      count: "Read and adjust, round 2, step 5 of 9",
      instruction: "Raise the car at front right: a quarter turn.",
      because: "Next, because the car is raised and its locks are in.",
      hazards: [acknowledged(spring), acknowledged(raised)],
      fields: [number("turned.FR", "Turns made at front right, or the distance you measured", [["turns", "turns up"], ["mm", "mm up"]], "-4 to 4 turns, in quarters")],
      action: "Record what I turned",
      turn,
    }),
    "adjust",
    { path: path("adjust", "alignment") },
  ),
  "by-pin": stepView(reading, "adjust", { people: [trainee, technician], staff: staffOf([trainee, technician, supervisor], "RO") }),
  "choose": choosing([]),
  "choose-again": choosing(pairs),
  "judged": stepView(
    step({ id: "final.judge", count: "Final reading, step 6 of 9", instruction: "Compare the final reading with what was agreed.", action: "I have seen it", line: { ...tradeLine, after: null }, footprints, footprint_scale: "Differences drawn 6 times larger", figures }),
    "final",
  ),
  "checks": stepView(
    step({
      id: "walk.ground",
      count: "Walk-round, step 1 of 3",
      instruction: "Walk round the car and look at each of these.",
      action: "Record the walk-round",
      fields: [
        check("tyres", "Tyres match what was agreed and are sound", "All sound", "Found wrong"),
        check("leaks", "No leaks, no smell of fuel", "None", "Found wrong"),
        check("loose", "No loose parts", "None", "Found wrong"),
        check("points", "Lifting points found in the maker's data", "Found", "Not found"),
        check("mode", "Maker's lifting mode set, or none needed", "Set", "Cannot set"),
        text("notes", "Anything else, or none"),
      ],
    }),
    "walk-round",
  ),
  "intake": stepView(
    step({
      id: "intake.agreed",
      count: "Intake, step 4 of 6",
      instruction: "Write down what was agreed for each wheel.",
      action: "Record what was agreed",
      displays: [{ key: null, label: "Job paper", text: "Cold 1.9 front, 2.0 rear; driver 78 kg" }],
      fields: [
        number("driver", "Mass of the driver", [["kg", "kg"], ["lb", "lb"]], "0 to 200 kg"),
        text("use", "Use of the car"),
        ...atCorners("cold", "Cold", [["bar", "bar"], ["kPa", "kPa"], ["psi", "psi"]], 1, "1 to 4 bar"),
        ...atCorners("working", "Working", [["bar", "bar"], ["kPa", "kPa"], ["psi", "psi"]], 1, "1 to 4 bar"),
        ...atCorners("height", "Height", [["mm", "mm"]], 1, "40 to 400 mm"),
      ],
    }),
    "intake",
  ),
  "wait": stepView(
    step({ id: "baseline.wait", count: "Baseline, step 5 of 8", instruction: "Keep clear of the car while it settles.", timer: { seconds: 120, began_ms: 0, label: "Settling after the bounce" }, action: "It has settled" }),
  ),
  "seal": stepView(step({ id: "review.seal", count: "Review", instruction: "Ask a supervisor to look at the record.", seal_in_review: true }), "review"),
  "held": stepView(step({}), "pads", { screen: { kind: "held", says: "Since 11:52, by RO: waits for a second pair of hands. The car stands on the pads." } }),
  "ended": stepView(step({}), "review", { screen: { kind: "ended", says: "Sealed by MT, 24 November, 14:02." } }),
};
