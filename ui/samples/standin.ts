/** A bridge that keeps views in memory: for tests and for the gallery, never in a built page. */
import type { BayBridge, Labels, ReviewBridge, StepBridge } from "../src/bridge";
import type { Ask } from "../src/generated/Ask";
import type { CarsView } from "../src/generated/CarsView";
import type { CarView } from "../src/generated/CarView";
import type { CoachView } from "../src/generated/CoachView";
import type { BookView } from "../src/generated/BookView";
import type { Entry } from "../src/generated/Entry";
import type { Attention } from "../src/generated/Attention";
import type { HeardView } from "../src/generated/HeardView";
import type { BayView } from "../src/generated/BayView";
import type { ManualView } from "../src/generated/ManualView";
import type { InstrumentsView } from "../src/generated/InstrumentsView";
import type { OriginView } from "../src/generated/OriginView";
import type { PersonRecord } from "../src/generated/PersonRecord";
import type { Outlook } from "../src/generated/Outlook";
import type { ReadBack } from "../src/generated/ReadBack";
import type { Refused } from "../src/generated/Refused";
import type { ReviewView } from "../src/generated/ReviewView";
import type { SettingsView } from "../src/generated/SettingsView";
import type { StepView } from "../src/generated/StepView";
import { SHIPPED, staffOf } from "./parts";

/** The labels of a Fluent text whose messages stand on one line each. */
export function labelsOf(ftl: string): Labels {
  return Object.fromEntries([...ftl.matchAll(/^(ui-[a-z-]+) = (.+)$/gm)].map((found) => [found[1], found[2]]));
}

/** What the stand-in shows now and how it answers; a test changes these as it goes. */
export interface Shown {
  labels: Labels;
  step?: StepView;
  bay?: BayView;
  review?: ReviewView;
  settings?: SettingsView;
  book?: BookView;
  /** The cars of the book, and one of them. */
  cars?: CarsView;
  car?: CarView;
  instruments?: InstrumentsView;
  /** The procedure to be read. */
  manual?: ManualView;
  origin?: OriginView;
  /** What the coach says, and what is counted of a person; without them a sample says it. */
  coach?: CoachView;
  person?: PersonRecord;
  customer?: string;
  /** What a place on the trade line leads to. */
  outlook?: (at: number) => Outlook;
  /** What is read back of what is typed; throws a `Refused`. Without it numbers come back as they were typed. */
  readBack?: (entries: Record<string, Entry>) => ReadBack;
  /** What comes of confirming what was heard. */
  confirmed?: (right: boolean) => HeardView;
  /** Gives the next view, or throws a `Refused`. Without it every wish is recorded and changes nothing. */
  answer?: (ask: Ask) => StepView | ReviewView;
  /** Who takes over with which PIN; throws a `Refused`. Without it every PIN is right. */
  pin?: (initials: string, pin: string) => void;
}

/** The bridge with a record of what it was asked, and the means to tell of a change. */
export interface StandIn extends StepBridge, BayBridge, ReviewBridge {
  shown: Shown;
  asked: Ask[];
  /** For whom the step was said once more. */
  said: string[];
  /** What else it was asked: the command and its arguments. */
  told: unknown[][];
  /** What the window waited for, the newest last. */
  attended: Attention[];
  /** How the key to talk went. */
  talked: boolean[];
  /** As the program does after somebody spoke. */
  hear(heard: HeardView): void;
  /** As the program does after each commit. */
  change(): void;
}

/** Throws a refusal as the program does. */
export function refuse(refused: Refused): never {
  throw refused;
}

function need<V>(view: V | undefined): V {
  if (view === undefined) throw new Error("the stand-in has no such view");
  return view;
}

/** Reads back as typed, with the symbol of the unit. */
function echo(view: StepView, entries: Record<string, Entry>): ReadBack {
  const fields = view.screen.kind === "step" ? view.screen.fields : [];
  const numbers = fields.flatMap(({ key, label, kind }) => {
    const entry = entries[key];
    if (kind.kind !== "number" || !entry) return [];
    const symbol = kind.units.find((unit) => unit.code === entry.unit)?.symbol ?? "";
    const looks = entry.text.trim().split(/\s+/);
    return [{ key, label, text: `${looks.join("  ")} ${symbol}`.trim(), apart: looks.length > 1 ? "0.1 kg apart" : null }];
  });
  return { numbers };
}

/** As a new installation is set. */
export const SETTINGS: SettingsView = {
  set: {
    language: "en",
    units: { mass: "kg", length: "mm", pressure: "bar", angle: "deg" },
    people: {},
    board: { screen: null, distance_m: "5", diagonal_in: "55" },
    pedal: null,
    procedure: null,
    copies_in: null,
    speech: { say: true, volume_percent: 100, words_a_minute: 150, voice: null },
    speech_of: {},
    hearing: { by: "hold", talk_key: "F8", model: null },
  },
  languages: [{ code: "en", label: "English", outlook: null }],
  screens: [
    { name: "HDMI-1", size: "1920 x 1080", here: true },
    { name: "DP-2", size: "3840 x 2160", here: false },
  ],
  board_says: "Type on the board is 44 mm high: capitals of 20 minutes of arc at 5 m.",
};

/** What the coach says after a job with two things wrong. */
const COACH: CoachView = {
  says: "Not as they were taken to be: 2. Held by a gate: 1. Written down other than shown: 1.",
  points: "70 of 100",
  wrong: [
    {
      title: "The pad at front right showed +2.0 kg with nothing on it.",
      text: [
        "First to be seen at No. 148 (Read the pads' zeros): Pad at rest, front right showed 2.1 kg; 0.1 kg would have been right.",
        "A gate held where it showed: No. 161.",
        "It was gone by No. 174.",
      ],
      outcome: "held, and put right",
    },
    {
      title: "The tyre at front left differed by -0.40 bar from what it was set to.",
      text: ["First to be seen at No. 301 (Cold pressures): Pressure, front left showed 1.50 bar; 1.90 bar would have been right."],
      outcome: "not seen",
    },
  ],
  slips: [
    {
      title: "Loads, front left",
      text: ["No. 152 (First reading): shown 214.5 214.4 214.5, written 241.5.", "That is what stood at rear left."],
      outcome: "slip of the pen",
    },
  ],
  score: [
    { name: "Could be seen and was sealed in", text: "1", taken: "−25" },
    { name: "Rounds of turning (three are enough)", text: "2", taken: "" },
  ],
};

export function standIn(shown: Shown): StandIn {
  const asked: Ask[] = [];
  const said: string[] = [];
  const told: unknown[][] = [];
  const attended: Attention[] = [];
  const talked: boolean[] = [];
  const hearers = new Set<(heard: HeardView) => void>();
  const listeners = new Set<() => void>();
  return {
    shown,
    asked,
    said,
    told,
    attended,
    talked,
    hear: (heard) => hearers.forEach((then) => then(heard)),
    change: () => listeners.forEach((then) => then()),
    labels: async () => shown.labels,
    onChanged: async (then) => {
      listeners.add(then);
      return () => void listeners.delete(then);
    },
    stepView: async () => need(shown.step),
    preview: async (_by, at) => need(shown.outlook?.(at)),
    readBack: async (_by, _step, entries) => shown.readBack?.(entries) ?? echo(need(shown.step), entries),
    sayAgain: async (by) => void said.push(by),
    attend: async (attention) => void attended.push(attention),
    talk: async (down) => void talked.push(down),
    confirmHeard: async (right) => need(shown.confirmed?.(right)),
    onHeard: async (then) => {
      hearers.add(then);
      return () => void hearers.delete(then);
    },
    settings: async () => (shown.settings ??= SETTINGS),
    set: async (set) => (shown.settings = { ...(shown.settings ?? SETTINGS), set }),
    pedal: async () => shown.settings?.set.pedal ?? null,
    bayView: async () => need(shown.bay),
    reviewView: async (_job, filter) => {
      if (Object.values(filter).some((one) => one !== "" && one !== false)) told.push(["filter", filter]);
      return need(shown.review);
    },
    correct: async (ask) => {
      told.push(["correct", ask]);
      return need(shown.review);
    },
    personRecord: async () => shown.person ?? ({ says: "2 jobs: 180 steps done, 3 tries held by a gate, 1 of them waived.", stages: [{ title: "Intake", done: 28, held: 1 }, { title: "Pads", done: 16, held: 2 }], jobs: need(shown.review).jobs }),
    firstSupervisor: async (...given) => {
      told.push(["firstSupervisor", ...given]);
      return "4QTZ-9M2K-XW7B-3HRE-0VND";
    },
    lookAtProcedure: async (...given) => {
      told.push(["lookAtProcedure", ...given]);
      return SHIPPED;
    },
    shippedProcedure: async () => {
      told.push(["shippedProcedure"]);
      return SHIPPED;
    },
    signForProcedure: async (...given) => {
      told.push(["signForProcedure", ...given]);
      return SHIPPED;
    },
    handOver: async (initials, pin) => {
      told.push(["handOver", initials, pin]);
      shown.pin?.(initials, pin);
      const view = need(shown.step);
      const people = view.staff.people.length > 0 ? view.staff : staffOf([{ initials, rank: "supervisor", label: `${initials}, supervisor` }]);
      return (shown.step = { ...view, staff: { ...people, at_car: initials, asks_again_s: 1800 } });
    },
    signOff: async () => {
      told.push(["signOff"]);
      const view = need(shown.step);
      shown.step = { ...view, staff: { ...view.staff, at_car: null, asks_again_s: null } };
    },
    changePin: async (...given) => {
      told.push(["changePin", ...given]);
      return need(shown.step).staff;
    },
    keepPeople: async (ask) => {
      told.push(["keepPeople", ask]);
      return staffOf([]);
    },
    recover: async (...given) => {
      told.push(["recover", ...given]);
      return "0000-1111-2222-3333-4444";
    },
    waive: async (...given) => {
      told.push(["waive", ...given]);
      return need(shown.step);
    },
    seal: async (...given) => {
      told.push(["seal", ...given]);
      return need(shown.review);
    },
    sendBack: async (...given) => {
      told.push(["sendBack", ...given]);
      return need(shown.review);
    },
    act: async (ask) => {
      asked.push(ask);
      if (shown.answer) shown.step = shown.answer(ask) as StepView;
      return need(shown.step);
    },
    reviewAct: async (_job, ask) => {
      asked.push(ask);
      if (shown.answer) shown.review = shown.answer(ask) as ReviewView;
      return need(shown.review);
    },
    cars: async (search) => {
      if (search) told.push(["cars", search]);
      return need(shown.cars);
    },
    car: async (id) => {
      told.push(["car", id]);
      return need(shown.car);
    },
    manual: async () => need(shown.manual),
    instruments: async () => need(shown.instruments),
    origin: async (...given) => {
      told.push(["origin", ...given]);
      return need(shown.origin);
    },
    bookView: async () => shown.book ?? { copies_in: null, copy_told: null, imported: [] },
    copyTo: async (place) => {
      told.push(["copyTo", place]);
      shown.book = { copies_in: place, copy_told: `The book was copied to ${place}/jobs-2026-11-24.db.`, imported: shown.book?.imported ?? [] };
      return shown.book.copy_told ?? "";
    },
    exportJob: async (job) => `Written to exports/job-${job}.json.`,
    importJob: async (...given) => {
      told.push(["importJob", ...given]);
      return "The job was checked and taken in.";
    },
    importedJob: async () => {
      const job = shown.review?.job;
      if (!job) throw new Error("the stand-in has no such job");
      return job;
    },
    customer: async () => shown.customer ?? null,
    setCustomer: async (...given) => {
      told.push(["setCustomer", ...given]);
      shown.customer = given[3];
    },
    eraseCustomer: async (...given) => {
      told.push(["eraseCustomer", ...given]);
      delete shown.customer;
    },
    verify: async () => "Chain of 318 entries whole: every entry follows from the one before.",
    coach: async () => shown.coach ?? COACH,
    writeSheet: async () => "Sheet: sheets/job-3.pdf. Its figures as numbers: sheets/job-3.csv and sheets/job-3.json.",
  };
}
