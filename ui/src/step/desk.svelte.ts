/** What the step window holds: the last view, who acts, and what is typed but not recorded. It decides nothing. */
import { asRefused, type StepBridge } from "../bridge";
import type { Entry } from "../generated/Entry";
import type { Field } from "../generated/Field";
import type { Outlook } from "../generated/Outlook";
import type { ReadBack } from "../generated/ReadBack";
import type { Refused } from "../generated/Refused";
import type { StepBody } from "../generated/StepBody";
import type { StepView } from "../generated/StepView";
import type { Wish } from "../generated/Wish";
import { t } from "../labels.svelte";
import { asked, isAnswered, placeChoice, presetUnit } from "./arrange";

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
  /** What was understood of the draft, while it is read back; null: nothing is. */
  readBack = $state.raw<ReadBack | null>(null);
  /** The place on the trade line under the finger, and what would follow from it once the program said so. */
  aim = $state.raw<{ at: number; outlook: Outlook | null } | null>(null);
  /** Earlier drafts, the newest last. */
  #past: Record<string, Entry>[] = $state([]);
  /** Key of the field that was changed last: typing on in one field is one change. */
  #changing = "";

  readonly #bridge: StepBridge;
  /** Requests are numbered, so that a late answer never hides a newer one. */
  #asked = 0;
  #shown = 0;

  constructor(bridge: StepBridge) {
    this.#bridge = bridge;
  }

  /** Fetches the view afresh, and shows it once its `words` are there. Drafts stay while job and step stay the same. */
  async load(words?: Promise<void>): Promise<void> {
    const number = ++this.#asked;
    try {
      const [view] = await Promise.all([this.#bridge.stepView(this.actor), words]);
      this.#show(view, number);
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
      this.readBack = null;
      // A recorded entry is no draft any more; where the gate did not pass it is still what the person works on.
      if ((wish.kind === "record" || wish.kind === "waive") && !stepOf(view)?.gate) this.#clear();
      return true;
    } catch (thrown) {
      this.refusal = asRefused(thrown, t("ui-no-answer"));
      this.readBack = null;
      // The job moved on, or whoever was at the car is asked for their PIN again.
      if (["stale", "pin-first", "hand-over"].includes(this.refusal.code)) await this.load();
      return false;
    } finally {
      this.busy = false;
    }
  }

  /** Somebody takes over at the car by PIN; rejects with `Refused`. Drafts stay: the place is kept. */
  async handOver(initials: string, pin: string): Promise<void> {
    const number = ++this.#asked;
    this.#show(await this.#bridge.handOver(initials, pin), number);
  }

  /** Somebody beside lets the gate pass by their PIN; true when it was recorded. */
  async waive(step: StepBody, by: string, pin: string, reason: string): Promise<boolean> {
    if (this.busy || this.view === null) return false;
    this.busy = true;
    this.refusal = null;
    const number = ++this.#asked;
    try {
      this.#show(await this.#bridge.waive(this.view.revision, by, pin, step.id, reason), number);
      this.#clear();
      return true;
    } catch (thrown) {
      this.refusal = asRefused(thrown, t("ui-no-answer"));
      if (this.refusal.code === "stale") await this.load();
      return false;
    } finally {
      this.busy = false;
    }
  }

  /** Sets who acts in a book that knows no people, and fetches the view in their units. */
  async act(initials: string): Promise<void> {
    this.actor = initials;
    await this.load();
  }

  /** Has the draft read back; true when it could be. A number that is wrong is a refusal. */
  async understand(step: StepBody): Promise<boolean> {
    if (this.busy) return false;
    this.busy = true;
    this.refusal = null;
    try {
      this.readBack = await this.#bridge.readBack(this.actor, step.id, this.entries(step.fields));
      return true;
    } catch (thrown) {
      this.refusal = asRefused(thrown, t("ui-no-answer"));
      return false;
    } finally {
      this.busy = false;
    }
  }

  #previewing = false;

  /**
   * Aims at a place on the trade line: the option of the place is chosen, and what would follow is asked for. While one
   * answer is awaited only the newest place is kept, so that the line follows the finger.
   */
  async aimAt(step: StepBody, at: number): Promise<void> {
    const choice = placeChoice(step.fields);
    if (choice === null) return;
    this.aim = { at, outlook: this.aim?.outlook ?? null };
    this.#change(choice.place.key);
    this.draft[choice.field.key] = { text: choice.option, unit: null };
    if (this.#previewing) return;
    this.#previewing = true;
    try {
      let shown = NaN;
      while (this.aim !== null && this.aim.at !== shown) {
        shown = this.aim.at;
        const outlook = await this.#bridge.preview(this.actor, shown);
        if (this.aim === null) break;
        this.aim = { at: this.aim.at, outlook };
        if (outlook.place !== null) this.draft[choice.place.key] = { text: outlook.place, unit: presetUnit(choice.place) };
      }
    } catch (thrown) {
      this.refusal = asRefused(thrown, t("ui-no-answer"));
    } finally {
      this.#previewing = false;
    }
  }

  /** True when there is a change to take back. */
  get undoable(): boolean {
    return this.#past.length > 0;
  }

  /** Takes the last change of the draft back; gives the key of the field that was changed. */
  undo(): void {
    const before = this.#past.pop();
    if (before === undefined) return;
    this.draft = before;
    this.aim = null;
    this.readBack = null;
    this.#changing = "";
  }

  #change(key: string): void {
    if (this.#changing !== key) this.#past.push($state.snapshot(this.draft));
    this.#changing = key;
  }

  #clear(): void {
    this.draft = {};
    this.aim = null;
    this.readBack = null;
    this.#past = [];
    this.#changing = "";
  }

  /** Takes what is typed for a field. */
  type(field: Field, text: string): void {
    this.#change(field.key);
    this.readBack = null;
    // Another option was chosen: the place under the finger is no aim any more.
    if (placeChoice(stepOf(this.view)?.fields ?? [])?.field.key === field.key) this.aim = null;
    this.draft[field.key] = { text, unit: this.draft[field.key]?.unit ?? presetUnit(field) };
    if (this.refusal?.field === field.key) this.refusal = null;
  }

  /** Takes the unit for a field. */
  measureIn(field: Field, unit: string): void {
    this.readBack = null;
    this.draft[field.key] = { text: this.draft[field.key]?.text ?? "", unit };
  }

  /** What would be sent: all that is answered, exactly as typed. */
  entries(fields: Field[]): Record<string, Entry> {
    const entries: Record<string, Entry> = {};
    for (const { key } of asked(fields, this.draft)) {
      const entry = this.draft[key];
      if (entry !== undefined && isAnswered(entry)) entries[key] = { ...entry };
    }
    return entries;
  }

  #show(view: StepView, number: number): void {
    if (number < this.#shown) return;
    this.#shown = number;
    if (placeOf(view) !== placeOf(this.view)) this.#clear();
    this.view = view;
    if (view.staff.authenticates) {
      this.actor = view.staff.at_car ?? "";
    } else if (!view.people.some((person) => person.initials === this.actor)) {
      // One person can only be the one who acts; of several somebody has to say so.
      this.actor = view.people.length === 1 ? (view.people[0]?.initials ?? "") : "";
    }
  }
}
