/** What the step window holds: the last view, who acts, and what is typed but not recorded. It decides nothing. */
import { asRefused, type StepBridge } from "../bridge";
import type { Entry } from "../generated/Entry";
import type { Field } from "../generated/Field";
import type { Refused } from "../generated/Refused";
import type { StepBody } from "../generated/StepBody";
import type { StepView } from "../generated/StepView";
import type { Wish } from "../generated/Wish";
import { t } from "../labels.svelte";
import { isAnswered, presetUnit } from "./arrange";

/** The step at hand of a view, or null. */
export function stepOf(view: StepView | null): StepBody | null {
  return view?.screen.kind === "step" ? view.screen : null;
}

/** Which job and step a draft belongs to. */
function placeOf(view: StepView | null): string | null {
  const step = stepOf(view);
  return step === null ? null : `${view?.job?.id ?? ""}/${step.id}`;
}

export class Desk {
  view = $state.raw<StepView | null>(null);
  /** Initials of the person who acts; empty until it is known. */
  actor = $state("");
  /** What is typed, by field key. */
  draft = $state<Record<string, Entry>>({});
  refusal = $state.raw<Refused | null>(null);
  /** True while an answer is awaited. */
  busy = $state(false);

  readonly #bridge: StepBridge;
  /** Requests are numbered, so that a late answer never hides a newer one. */
  #asked = 0;
  #shown = 0;

  constructor(bridge: StepBridge) {
    this.#bridge = bridge;
  }

  /** Fetches the view afresh. Drafts stay while the job and the step stay the same. */
  async load(): Promise<void> {
    const number = ++this.#asked;
    try {
      this.#show(await this.#bridge.stepView(), number);
    } catch (thrown) {
      this.refusal = asRefused(thrown, t("ui-no-answer"));
    }
  }

  /** Asks for something; true when it was recorded. A refusal stands in `refusal` and leaves all that is typed. */
  async ask(wish: Wish, by: string = this.actor): Promise<boolean> {
    if (this.busy || this.view === null) return false;
    this.busy = true;
    this.refusal = null;
    const number = ++this.#asked;
    try {
      const view = await this.#bridge.act({ revision: this.view.revision, by, wish });
      if (wish.kind === "sign-on" && this.actor === "") this.actor = wish.initials;
      this.#show(view, number);
      // A recorded entry is no draft any more; where the gate did not pass it is still what the person works on.
      if ((wish.kind === "record" || wish.kind === "waive") && !stepOf(view)?.gate) this.draft = {};
      return true;
    } catch (thrown) {
      this.refusal = asRefused(thrown, t("ui-no-answer"));
      if (this.refusal.code === "stale") await this.load();
      return false;
    } finally {
      this.busy = false;
    }
  }

  /** Takes what is typed for a field. */
  type(field: Field, text: string): void {
    this.draft[field.key] = { text, unit: this.draft[field.key]?.unit ?? presetUnit(field) };
    if (this.refusal?.field === field.key) this.refusal = null;
  }

  /** Takes the unit for a field. */
  measureIn(field: Field, unit: string): void {
    this.draft[field.key] = { text: this.draft[field.key]?.text ?? "", unit };
  }

  /** What would be sent: all that is answered, exactly as typed. */
  entries(fields: Field[]): Record<string, Entry> {
    const entries: Record<string, Entry> = {};
    for (const { key } of fields) {
      const entry = this.draft[key];
      if (entry !== undefined && isAnswered(entry)) entries[key] = { ...entry };
    }
    return entries;
  }

  #show(view: StepView, number: number): void {
    if (number < this.#shown) return;
    this.#shown = number;
    if (placeOf(view) !== placeOf(this.view)) this.draft = {};
    this.view = view;
    if (!view.people.some((person) => person.initials === this.actor)) {
      // One person can only be the one who acts; of several somebody has to say so.
      this.actor = view.people.length === 1 ? (view.people[0]?.initials ?? "") : "";
    }
  }
}
