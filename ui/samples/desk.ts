/** Sample views of the board and of the window at the desk. */
import type { BayView } from "../src/generated/BayView";
import type { CarsView } from "../src/generated/CarsView";
import type { CarView } from "../src/generated/CarView";
import type { CollarRow } from "../src/generated/CollarRow";
import type { EntryRow } from "../src/generated/EntryRow";
import type { ManualView } from "../src/generated/ManualView";
import type { InstrumentsView } from "../src/generated/InstrumentsView";
import type { OriginReading } from "../src/generated/OriginReading";
import type { OriginView } from "../src/generated/OriginView";
import type { ReviewView } from "../src/generated/ReviewView";
import { figures, footprints, plots, raised, spring, staffOf, supervisor, technician, tradeLine, trainee, turn } from "./parts";

const quiet: BayView = { revision: 41, stage: "Read and adjust, round 2", raised: null, instruction: "Read all four pads three times, and the four heights.", turn: null, adjusters: [], line: null, footprints: [], last_reading: null, hazard: null, timer: null, capital_mm: 29.1, diagonal_mm: 1397 };
const line = { ...tradeLine, says: "Cross 49.4 %, cannot tell yet" };

export const baySamples: Record<string, BayView> = {
  "none": { ...quiet, stage: "No job", instruction: "Waiting for a job to begin." },
  "turn": { ...quiet, stage: "Read and adjust", raised: "CAR RAISED", turn, hazard: spring },
  "turn-down": { ...quiet, stage: "Read and adjust", raised: "CAR RAISED", hazard: spring, turn: { ...turn, car_does: "Lower the car at rear left", collar_does: "Collar half a turn away from the spring, clockwise from above", direction: "clockwise", towards_spring: false, spring_above: false } },
  "reading": { ...quiet, line, footprints, last_reading: "Last reading 11:26" },
  "hazard": { ...quiet, stage: "First lift, step 3 of 7", raised: "CAR RAISED", instruction: "Raise until the wheels just clear, then stop and rock the car.", hazard: raised },
  "wait": { ...quiet, stage: "Baseline", instruction: "Keep clear of the car while it settles.", timer: { seconds: 120, began_ms: 0, label: "Settling" } },
  "crowded": { ...quiet, line, footprints, last_reading: "Last reading 11:26", hazard: { ...spring, signal: "caution", word: "CAUTION", line: "Brake off: the car can roll" } },
};

const row = (number: number, when: string, what: string, who: string, entered: string, used: string, note: string, state: EntryRow["state"] = "done"): EntryRow => ({ number, when, what, who, entered, used, note, state, texts: [], step: null });

const reviewed: Record<string, ReviewView> = {
  "empty": { revision: 0, jobs: [], says: "No job yet. Begin a practice job in the window at the car; it will stand here from its first entry on.", cars: [], persons: [], staff: staffOf([]), job: null },
  "job": {
    revision: 318,
    jobs: [
      { id: 3, title: "Practice car, job 3", state: "for-review", says: "For review, since 13:40" },
      { id: 2, title: "Green saloon, job 2", state: "held", says: "On hold at Pads, 24 Nov" },
      { id: 1, title: "Practice car, job 1", state: "sealed", says: "Sealed by MT, 23 Nov" },
      { id: 0, title: "Practice car, job 0", state: "stopped", says: "Stopped at First lift, 22 Nov" },
    ],
    says: null,
    cars: ["Green saloon", "Practice car"],
    persons: ["LB", "MT", "RO"],
    staff: staffOf([]),
    job: {
      id: 3,
      title: "Practice car, job 3",
      says: "For review. Signed on: RO (trainee), LB (technician). 24 Nov, 09:05 to 13:40. Chain of 318 entries whole.",
      departures_title: "Departed from the procedure: 2",
      departures: [
        { put_right: false,
title: "Reading found unlikely and withdrawn.", text: "Round 1, 11:20. Left side 10.0 kg heavier with only collars turned. Likeliest: mass moved across the car, 78 kg by about 100 mm. RO: “ballast slid on the seat; strapped; read again”. The next reading agrees." },
        { put_right: false,
title: "Gate waived.", text: "Pads, twist of the pads 0.9 mm (limit for this car 0.7). By MT, not at work on this job: “floor crack; twist corrected for in the figures”. Largest part of the uncertainty of the cross weight." },
      ],
      entries: [
        row(281, "10:31", "Front left pad, reading 3 of 3", "RO", "214,5 kg", "2103.5 N", "pad 3, due Mar 27"),
        row(286, "11:18", "Four pads, round 1", "RO", "226.0 211.5 306.5 296.0 kg", "", "void: ballast moved", "again"),
        row(292, "11:26", "Four pads, round 1", "RO", "221.5 213.0 301.0 304.5 kg", "2172 2089 2952 2986 N", "settle 3 of 3"),
        { ...row(294, "11:31", "What to do next", "RO, trainee", "Reason: same feel", "", ""), texts: [{ key: "reason", label: "Reason", text: "same feel" }], step: "adjust.read" },
        row(297, "11:39", "Locks in, wheels clear, nobody inside", "RO, by hand", "acknowledged", "", "raise 5"),
        row(298, "11:41", "Front right collar, towards the spring", "RO", "0.25 turns", "0.500 mm", "as planned"),
        row(304, "12:02", "Four pads, round 2", "RO", "218.5 215.5 303.5 302.0 kg", "2143 2113 2976 2962 N", "inside"),
      ],
      figures,
      plots,
      line: { ...tradeLine, now: { ...tradeLine.now, at: 0.44 }, now_band: { ...tradeLine.now_band, from: 0.36, to: 0.52 }, after: null, says: "Cross weight 50.0 ± 0.2 %, inside", rounds: [{ at: 0.88, label: "as found", strong: false }, { at: 0.62, label: "1", strong: false }, { at: 0.44, label: "2", strong: false }] },
      footprints_found: footprints,
      footprints,
      footprint_scale: "Differences are drawn 12 times larger.",
      stage_times: [
        { title: "Intake", text: "24 min", share: 0.4 },
        { title: "Pads", text: "38 min", share: 0.63 },
        { title: "Baseline", text: "21 min", share: 0.35 },
        { title: "Read and adjust", text: "1 h 0 min", share: 1 },
        { title: "Alignment", text: "47 min", share: 0.78 },
        { title: "Review", text: "under a minute", share: 0.01 },
      ],
      instruments: [
        { name: "Pads", text: "pad set 3, due 2027-03-31" },
        { name: "Laser", text: "site laser 1, due 2027-03-31" },
      ],
      compromise: "“Same feel left and right first: track use.” The rear difference of 2.3 ± 2.0 kg stays, since removing it would move the cross weight out of its window.",
      people: [trainee, technician, supervisor],
      may_seal: true,
      seal_says: "Nothing is void and nothing is missing. A supervisor who did not work on this job may seal it.",
      send_back: [
        { step: "adjust.read", label: "Read and adjust: read all four pads", voids: "The final reading and the alignment have to be done again." },
        { step: "final.read", label: "Final reading: read pads and heights", voids: "The closing change has to be done again." },
      ],
      sheet_ready: true,
      coach_ready: true,
    },
  },
};

export const reviewSamples: Record<string, ReviewView> = {
  ...reviewed,
  "by-pin": { ...reviewed.job!, staff: staffOf([trainee, technician, supervisor]) },
};

/** A manual of two stages. */
export const manualSample: ManualView = {
  says: "corner-balance-and-alignment, version 1: every step in the words that the window at the car has, with why it is done so. The makers’ instructions, the local rules, and trained and authorised people come first.",
  stages: [
    {
      id: "used",
      title: "Car as used",
      when: null,
      steps: [
        {
          id: "used.ballast",
          short: "Ballast strapped in",
          instruction: "Strap the ballast into the driver’s seat.",
          detail: ["Sand, water or lead; about a fifth of it in the footwell.", "Ballast that slides is read as load that moves."],
          hazards: [{ signal: "caution", line: "CAUTION. Lift heavy parts in pairs.", text: "A heavy part could hurt your back or fall on your feet. Lift it with a second person." }],
          asks: ["Ballast in the seat", "Ballast in the footwell"],
          gates: ["Every point was found in order."],
        },
      ],
    },
    {
      id: "raise",
      title: "Raise the car",
      when: "Comes when a step needs it.",
      steps: [
        {
          id: "raise.rock",
          short: "Rocked when just clear",
          instruction: "When the wheels are just clear, rock the car.",
          detail: ["A car that moves on its pads comes down again."],
          hazards: [{ signal: "danger", line: "DANGER. Keep out until it is locked.", text: "A car that comes down will kill or crush who is under it." }],
          asks: ["It stands still"],
          gates: [],
        },
      ],
    },
  ],
};

/** Two cars in the book, and one that was here three times. */
export const carsSample: CarsView = {
  says: null,
  cars: [
    { id: 1, name: "Practice car", says: "Simulated car of seed 7. Visits: 2. Waits for review, 24 Nov 2026, 13:40" },
    { id: 2, name: "Green saloon with a rather long name, second owner’s", says: "Visits: 1. On hold: Pads, 24 Nov 2026, 10:12" },
  ],
};

const collar = (corner: string, load: string, height: string): CollarRow => ({ corner, travel: "2.00 mm", load, height });

export const carSample: CarView = {
  id: 1,
  name: "Practice car",
  says: "Simulated car of seed 7.",
  visits: [
    { id: 3, title: "Practice car, job 3", state: "for-review", says: "Waits for review, 24 Nov 2026, 13:40. Signed on: LB, MT, RO. Departures: 2" },
    { id: 1, title: "Practice car, job 1", state: "sealed", says: "Sealed, 12 Nov 2026, 16:02. Signed on: LB, MT, RO. Departures: 0" },
  ],
  learned: {
    says: "Learned on 2026-11-12 (days ago: 12) from what was turned and read. The next visit begins with it. Each value with ± expanded uncertainty (k = 2).",
    collars: [collar("front left", "+9.8 kg ± 1.1 kg", "+1.2 mm ± 0.1 mm"), collar("front right", "+9.9 kg ± 1.1 kg", "+1.2 mm ± 0.1 mm"), collar("rear left", "+8.1 kg ± 0.9 kg", "+1.3 mm ± 0.1 mm"), collar("rear right", "+8.1 kg ± 0.9 kg", "+1.3 mm ± 0.1 mm")],
    factors: [{ name: "Spring rate, front left, front right", text: "108.0 % ± 6.2 % of what was entered; before that it was taken to be known to ± 20.0 %" }],
    settle: "One settle moves 0.6 kg at front left along the diagonal pattern (one sigma).",
  },
  learned_none: "Nothing is learned of this car yet. A sealed job in which collars were turned teaches it.",
  left_says: "As handed over on 12 Nov 2026, job 1, with as found beside it.",
  left: [
    {
      title: "Figures",
      columns: ["as found", "as left", "wanted"],
      rows: [
        { name: "Cross weight, FR + RL", cells: ["48.62 % ± 0.21 %", "50.03 % ± 0.20 %", "50.00 % ± 0.25 %"], verdict: ["cannot-tell", "cannot tell yet"] },
        { name: "Total", cells: ["1032.5 kg ± 1.4 kg", "1032.4 kg ± 1.4 kg", ""], verdict: null },
      ],
      note: "With ± expanded uncertainty (k = 2).",
    },
  ],
};

/** An instrument in date, one that is overdue, and one of which little is known. */
export const instrumentsSample: InstrumentsView = {
  says: null,
  instruments: [
    { id: "laser: site laser 1", name: "Laser", serial: "site laser 1", stated: [{ label: "Laser, accuracy over the pads", text: "0.30 mm" }], calibrated: "Not recorded: intake asks for the day when it is due", due: "overdue", due_says: "Overdue: was due on 2026-10-31 (days past: 24)", checks: ["Pads read from two places of it, at most 0.20 mm apart: 24 Nov 2026, 09:41, RO (job 3, no. 61)"], jobs: carSample.visits, jobs_title: "Jobs in which it was used: 2" },
    { id: "height-gauge: rule", name: "Height gauge", serial: "rule", stated: [], calibrated: "Not recorded: intake asks for the day when it is due", due: "unknown", due_says: "Unknown: its due day is written as “next spring”, not as 2027-03-31", checks: ["Not recorded: no step asks for a check of it"], jobs: carSample.visits.slice(0, 1), jobs_title: "Jobs in which it was used: 1" },
    { id: "pads: pad set 3", name: "Pads", serial: "pad set 3", stated: [{ label: "Pads, resolution", text: "0.5 kg" }, { label: "Pads, zero kept over the job, ±", text: "0.5 kg" }, { label: "Pads, calibration, ± of the load", text: "0.1 %" }], calibrated: "Not recorded: intake asks for the day when it is due", due: "in-date", due_says: "In date: due on 2027-03-31 (days left: 127)", checks: ["Zeros of the empty pads read 7 times, last 24 Nov 2026, 13:02, RO (job 3, no. 281)", "Zeros of the empty pads read 5 times, last 12 Nov 2026, 14:30, RO (job 1, no. 263)", "Zeros of the empty pads read 5 times, last 9 Nov 2026, 14:30, RO (job 0, no. 263)", "Zeros of the empty pads read 4 times, last 2 Nov 2026, 11:08, LB (job 0, no. 201)"], jobs: carSample.visits, jobs_title: "Jobs in which it was used: 2" },
  ],
};

const settle = (entry: number, what: string, when: string, raw: string[]): OriginReading => ({ entry, what, when, who: "RO, trainee", raw, instrument: "Pads: pad set 3", configuration: "front link released; no rear bar; ballast strapped in; working pressures; fuel and fluids as agreed; collars as found" });

/** Where the difference of the front axle comes from. */
export const originSample: OriginView = {
  title: "Front, left minus right",
  parts: [
    {
      says: "As found: 24.3 kg ± 0.9 kg",
      made_of: null,
      readings: [
        { entry: 281, what: "Read the pads’ heights", when: "10:02", who: "RO, trainee", raw: ["Height of the pad, first place of the laser: front left 0.0 mm, front right 0.1 mm, rear left 0.0 mm, rear right -0.1 mm", "Height of the pad, second place of the laser: front left 0.1 mm, front right 0.1 mm, rear left 0.0 mm, rear right 0.0 mm"], instrument: "Laser: site laser 1", configuration: "front link released; no rear bar; no ballast; pressures as found; fuel as found; collars as found" },
        settle(286, "Settle 1 of 2", "11:18", ["Load: front left 226.0 226.0 226.1 kg (mean 226.03 kg), front right 201.5 201.7 201.6 kg (mean 201.60 kg)"]),
        settle(292, "Settle 2 of 2", "11:26", ["Load: front left 226.1 226.0 226.1 kg (mean 226.07 kg), front right 201.7 201.7 201.6 kg (mean 201.67 kg)"]),
      ],
    },
    { says: "As left: 0.2 kg ± 0.9 kg", made_of: "settles 71 %, the pads’ zero 22 %", readings: [settle(304, "Settle 1 of 1", "12:02", ["Load: front left 218.5 218.4 218.5 kg (mean 218.47 kg), front right 218.3 218.2 218.3 kg (mean 218.27 kg)"])] },
  ],
};
