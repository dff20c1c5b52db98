/** A bridge that keeps views in memory: for tests and for the gallery, never in a built page. */
import type { BayBridge, Labels, ReviewBridge, StepBridge } from "../src/bridge";
import type { Ask } from "../src/generated/Ask";
import type { BayView } from "../src/generated/BayView";
import type { Refused } from "../src/generated/Refused";
import type { ReviewView } from "../src/generated/ReviewView";
import type { StepView } from "../src/generated/StepView";

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
  /** Gives the next view, or throws a `Refused`. Without it every wish is recorded and changes nothing. */
  answer?: (ask: Ask) => StepView | ReviewView;
}

/** The bridge with a record of what it was asked, and the means to tell of a change. */
export interface StandIn extends StepBridge, BayBridge, ReviewBridge {
  shown: Shown;
  asked: Ask[];
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

export function standIn(shown: Shown): StandIn {
  const asked: Ask[] = [];
  const listeners = new Set<() => void>();
  return {
    shown,
    asked,
    change: () => listeners.forEach((then) => then()),
    labels: async () => shown.labels,
    onChanged: async (then) => {
      listeners.add(then);
      return () => void listeners.delete(then);
    },
    stepView: async () => need(shown.step),
    bayView: async () => need(shown.bay),
    reviewView: async () => need(shown.review),
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
    verify: async () => "Chain of 318 entries whole: every entry follows from the one before.",
    writeSheet: async () => "Written: sheets/job-0003.pdf",
  };
}
