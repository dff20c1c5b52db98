/** The only door from a window to the program. Nothing else in the pages knows the shell or the names of its commands. */
import { invoke } from "@tauri-apps/api/core";
import { listen } from "@tauri-apps/api/event";
import type { Ask } from "./generated/Ask";
import type { BayView } from "./generated/BayView";
import type { Entry } from "./generated/Entry";
import type { Outlook } from "./generated/Outlook";
import type { Preferences } from "./generated/Preferences";
import type { ReadBack } from "./generated/ReadBack";
import type { Refused } from "./generated/Refused";
import type { ReviewView } from "./generated/ReviewView";
import type { SettingsView } from "./generated/SettingsView";
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

/** Commands of the window at the car. */
export interface StepBridge extends CommonBridge {
  /** `by`: initials of whoever acts, whose units the view is in; empty: the workshop's. */
  stepView(by: string): Promise<StepView>;
  /** What would follow from turning for a place on the trade line, 0 to 1. Nothing is recorded. */
  preview(by: string, at: number): Promise<Outlook>;
  /** What was understood of what is typed. Nothing is recorded; rejects with `Refused` when a number is wrong. */
  readBack(by: string, step: string, entries: Record<string, Entry>): Promise<ReadBack>;
  /** Says once more what the step at hand says. */
  sayAgain(by: string): Promise<void>;
  settings(): Promise<SettingsView>;
  /** Rejects with `Refused` when nothing was changed. */
  set(preferences: Preferences): Promise<SettingsView>;
  /** Rejects with `Refused` when nothing was recorded. */
  act(ask: Ask): Promise<StepView>;
}

/** Commands of the board across the bay. */
export interface BayBridge extends CommonBridge {
  bayView(): Promise<BayView>;
}

/** Commands of the window at the desk. */
export interface ReviewBridge extends CommonBridge {
  /** The list of jobs with one of them; null: the one that the program puts first. */
  reviewView(job: number | null): Promise<ReviewView>;
  /** Code of the key that the pedal sends, which seals nothing; null: there is none. */
  pedal(): Promise<string | null>;
  /** Rejects with `Refused` when nothing was recorded. */
  reviewAct(job: number, ask: Ask): Promise<ReviewView>;
  /** Checks the chain of a job's record; says what was found. */
  verify(job: number): Promise<string>;
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
  settings: () => invoke("settings"),
  set: (preferences) => invoke("set_preferences", { preferences }),
  pedal: () => invoke("pedal"),
  act: (ask) => invoke("act", { ask }),
  bayView: () => invoke("bay_view"),
  reviewView: (job) => invoke("review_view", { job }),
  reviewAct: (job, ask) => invoke("review_act", { job, ask }),
  verify: (job) => invoke("verify", { job }),
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
