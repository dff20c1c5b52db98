/** The only door from a window to the program. Nothing else in the pages knows the shell or the names of its commands. */
import { invoke } from "@tauri-apps/api/core";
import { listen } from "@tauri-apps/api/event";
import type { Ask } from "./generated/Ask";
import type { Attention } from "./generated/Attention";
import type { BayView } from "./generated/BayView";
import type { CarsView } from "./generated/CarsView";
import type { CarView } from "./generated/CarView";
import type { CoachView } from "./generated/CoachView";
import type { BookView } from "./generated/BookView";
import type { CorrectAsk } from "./generated/CorrectAsk";
import type { Entry } from "./generated/Entry";
import type { HeardView } from "./generated/HeardView";
import type { ManualView } from "./generated/ManualView";
import type { InstrumentsView } from "./generated/InstrumentsView";
import type { OriginView } from "./generated/OriginView";
import type { Outlook } from "./generated/Outlook";
import type { Preferences } from "./generated/Preferences";
import type { PeopleView } from "./generated/PeopleView";
import type { JobFilter } from "./generated/JobFilter";
import type { PersonRecord } from "./generated/PersonRecord";
import type { PersonAsk } from "./generated/PersonAsk";
import type { ProcedureView } from "./generated/ProcedureView";
import type { ReadBack } from "./generated/ReadBack";
import type { Refused } from "./generated/Refused";
import type { ReviewJob } from "./generated/ReviewJob";
import type { ReviewView } from "./generated/ReviewView";
import type { SettingsView } from "./generated/SettingsView";
import type { StaffAsk } from "./generated/StaffAsk";
import type { StepView } from "./generated/StepView";

/** Words of a window by id. */
export type Labels = Record<string, string>;

/** What every window needs. */
export interface CommonBridge {
  /** The window's fixed words. */
  labels(): Promise<Labels>;
  /** Calls `then` after each commit and each change of the settings; gives back how to stop that. */
  onChanged(then: () => void): Promise<() => void>;
}

/** Commands that keep the list of people. All reject with `Refused`. */
export interface StaffBridge {
  keepPeople(ask: StaffAsk): Promise<PeopleView>;
  /** New PIN and key for the recovery code; gives the next code. */
  recover(initials: string, code: string, pin: string, passphrase: string): Promise<string>;
}

/** Commands of the window at the car. */
export interface StepBridge extends CommonBridge, StaffBridge {
  /** `by`: initials of whoever acts, whose units the view is in; empty: the workshop's. */
  stepView(by: string): Promise<StepView>;
  /** What would follow from turning for a place on the trade line, 0 to 1. Nothing is recorded. */
  preview(by: string, at: number): Promise<Outlook>;
  /** What was understood of what is typed. Nothing is recorded; rejects with `Refused` when a number is wrong. */
  readBack(by: string, step: string, entries: Record<string, Entry>): Promise<ReadBack>;
  /** Says once more what the step at hand says. */
  sayAgain(by: string): Promise<void>;
  /** What the window waits for, so that what is said is held to it. */
  attend(attention: Attention): Promise<void>;
  /** The key to talk is held down, or let go. */
  talk(down: boolean): Promise<void>;
  /** Confirms a number that was heard, or takes it back. */
  confirmHeard(right: boolean): Promise<HeardView>;
  /** Calls `then` with what came of each thing heard; gives back how to stop that. */
  onHeard(then: (heard: HeardView) => void): Promise<() => void>;
  settings(): Promise<SettingsView>;
  /** Rejects with `Refused` when nothing was changed. */
  set(preferences: Preferences): Promise<SettingsView>;
  /** Rejects with `Refused` when nothing was recorded. */
  act(ask: Ask): Promise<StepView>;
  /** Makes the first supervisor of a new book; gives the recovery code. */
  firstSupervisor(person: PersonAsk, pin: string, passphrase: string): Promise<string>;
  /** Looks at a procedure of this workshop, proving it; the next job begins with it. */
  lookAtProcedure(place: string): Promise<ProcedureView>;
  shippedProcedure(): Promise<ProcedureView>;
  /** A supervisor signs that the next job may begin with a procedure that is not proved. */
  signForProcedure(by: string, passphrase: string, reason: string): Promise<ProcedureView>;
  /** Takes over at the car by PIN. */
  handOver(initials: string, pin: string): Promise<StepView>;
  /** Leaves the car. */
  signOff(): Promise<void>;
  changePin(initials: string, old: string, next: string): Promise<PeopleView>;
  /** Lets a gate pass by the PIN of somebody who stays beside. */
  waive(revision: number, by: string, pin: string, step: string, reason: string): Promise<StepView>;
}

/** Commands of the board across the bay. */
export interface BayBridge extends CommonBridge {
  bayView(): Promise<BayView>;
}

/** Commands of the window at the desk. */
export interface ReviewBridge extends CommonBridge, StaffBridge {
  /** The list of jobs with one of them; null: the one that the program puts first. */
  reviewView(job: number | null, filter: JobFilter): Promise<ReviewView>;
  /** Corrects a text of an entry, by PIN. */
  correct(ask: CorrectAsk): Promise<ReviewView>;
  /** What somebody did over all jobs. */
  personRecord(initials: string): Promise<PersonRecord>;
  /** Code of the key that the pedal sends, which seals nothing; null: there is none. */
  pedal(): Promise<string | null>;
  /** Rejects with `Refused` when nothing was recorded. */
  reviewAct(job: number, ask: Ask): Promise<ReviewView>;
  /** Seals with the key that the passphrase opens. */
  seal(job: number, revision: number, by: string, passphrase: string): Promise<ReviewView>;
  sendBack(job: number, revision: number, by: string, pin: string, step: string, reason: string): Promise<ReviewView>;
  /** The cars of the book, or those that a search finds; empty: all. */
  cars(search: string): Promise<CarsView>;
  /** One car, by the number of its first job. */
  car(id: number): Promise<CarView>;
  /** The procedure to be read. */
  manual(): Promise<ManualView>;
  /** The instruments of the book. */
  instruments(): Promise<InstrumentsView>;
  /** Where a figure of a job comes from. */
  origin(job: number, figure: string): Promise<OriginView>;
  /** Copies of the book, and the jobs of other bays. */
  bookView(): Promise<BookView>;
  /** Copies the book into a folder now and at the end of each job; empty: no more. Says what became of it. */
  copyTo(place: string): Promise<string>;
  /** Writes a job as one text that a third party can check; says where it stands. */
  exportJob(job: number): Promise<string>;
  /** Takes in a job that another bay exported; says whether it was new. */
  importJob(place: string, by: string, pin: string): Promise<string>;
  importedJob(id: number): Promise<ReviewJob>;
  customer(job: number): Promise<string | null>;
  setCustomer(job: number, by: string, pin: string, text: string): Promise<void>;
  eraseCustomer(job: number, by: string, pin: string, reason: string): Promise<void>;
  /** Checks the chain of a job's record; says what was found. */
  verify(job: number): Promise<string>;
  /** What the coach says of a practice job that has ended. */
  coach(job: number): Promise<CoachView>;
  /** Writes the sheet; says where it stands. */
  writeSheet(job: number): Promise<string>;
}

/** The bridge of the running app. A window may only call its own commands: the program's capabilities see to that. */
export const tauriBridge: StepBridge & BayBridge & ReviewBridge = {
  labels: () => invoke("labels"),
  onChanged: (then) => listen("changed", then),
  stepView: (by) => invoke("step_view", { by }),
  preview: (by, at) => invoke("preview", { by, at }),
  readBack: (by, step, entries) => invoke("read_back", { by, step, entries }),
  sayAgain: (by) => invoke("say_again", { by }),
  attend: (attention) => invoke("attend", { attention }),
  talk: (down) => invoke("talk", { down }),
  confirmHeard: (right) => invoke("confirm_heard", { right }),
  onHeard: (then) => listen<HeardView>("heard", (event) => then(event.payload)),
  settings: () => invoke("settings"),
  set: (preferences) => invoke("set_preferences", { preferences }),
  pedal: () => invoke("pedal"),
  act: (ask) => invoke("act", { ask }),
  keepPeople: (ask) => invoke("keep_people", { ask }),
  recover: (initials, code, pin, passphrase) => invoke("recover", { initials, code, pin, passphrase }),
  firstSupervisor: (person, pin, passphrase) => invoke("first_supervisor", { person, pin, passphrase }),
  lookAtProcedure: (place) => invoke("look_at_procedure", { place }),
  shippedProcedure: () => invoke("shipped_procedure"),
  signForProcedure: (by, passphrase, reason) => invoke("sign_for_procedure", { by, passphrase, reason }),
  handOver: (initials, pin) => invoke("hand_over", { initials, pin }),
  signOff: () => invoke("sign_off"),
  changePin: (initials, old, next) => invoke("change_pin", { initials, old, new: next }),
  waive: (revision, by, pin, step, reason) => invoke("waive", { revision, by, pin, step, reason }),
  bayView: () => invoke("bay_view"),
  reviewView: (job, filter) => invoke("review_view", { job, filter }),
  correct: (ask) => invoke("correct", { ask }),
  personRecord: (initials) => invoke("person_record", { initials }),
  reviewAct: (job, ask) => invoke("review_act", { job, ask }),
  seal: (job, revision, by, passphrase) => invoke("seal", { job, revision, by, passphrase }),
  sendBack: (job, revision, by, pin, step, reason) => invoke("send_back", { job, revision, by, pin, step, reason }),
  cars: (search) => invoke("cars", { search }),
  car: (id) => invoke("car", { id }),
  manual: () => invoke("manual"),
  instruments: () => invoke("instruments"),
  origin: (job, figure) => invoke("origin", { job, figure }),
  bookView: () => invoke("book_view"),
  copyTo: (place) => invoke("copy_to", { place }),
  exportJob: (job) => invoke("export_job", { job }),
  importJob: (place, by, pin) => invoke("import_job", { place, by, pin }),
  importedJob: (id) => invoke("imported_job", { id }),
  customer: (job) => invoke("customer", { job }),
  setCustomer: (job, by, pin, text) => invoke("set_customer", { job, by, pin, text }),
  eraseCustomer: (job, by, pin, reason) => invoke("erase_customer", { job, by, pin, reason }),
  verify: (job) => invoke("verify", { job }),
  coach: (job) => invoke("coach", { job }),
  writeSheet: (job) => invoke("write_sheet", { job }),
};

/** Code of a refusal that is this window's own: the program did not answer as agreed. */
export const NO_ANSWER = "no-answer";

/** What a rejected command means: the program's refusal, or `noAnswerSays` when what came is none. */
export function asRefused(thrown: unknown, noAnswerSays: string): Refused {
  if (typeof thrown === "object" && thrown !== null && "code" in thrown && "says" in thrown) {
    return thrown as Refused;
  }
  return { code: NO_ANSWER, field: null, says: noAnswerSays };
}
