/** What the step window does after somebody spoke: the program says what, and it is carried out as if by hand. */
import type { StepBridge } from "../bridge";
import type { HeardView } from "../generated/HeardView";
import { presetUnit } from "./arrange";
import { stepOf, type Desk } from "./desk.svelte";

/** What the window can do besides changing the draft. */
export interface Hands {
  focusField(key: string): void;
  /** Presses the main action. */
  confirm(): void;
  /** Asks for the reason of a hold. */
  hold(): void;
}

export class Voice {
  /** What came of what was heard last; null: nothing to show. */
  heard = $state.raw<HeardView | null>(null);
  /** True while the key to talk is held down. */
  talking = $state(false);

  readonly #bridge: StepBridge;
  readonly #desk: Desk;
  readonly #hands: Hands;

  constructor(bridge: StepBridge, desk: Desk, hands: Hands) {
    this.#bridge = bridge;
    this.#desk = desk;
    this.#hands = hands;
  }

  /** The key to talk goes down or up. */
  talk(down: boolean): void {
    if (down === this.talking) return;
    this.talking = down;
    void this.#bridge.talk(down).catch(() => undefined);
  }

  /** A number that waits is right, or not. */
  async answer(right: boolean): Promise<void> {
    const view = await this.#bridge.confirmHeard(right).catch(() => null);
    if (view !== null) this.take(view);
  }

  /** Takes what came of something heard. */
  take(view: HeardView): void {
    this.heard = view;
    const { act } = view;
    const fields = stepOf(this.#desk.view)?.fields ?? [];
    switch (act.kind) {
      case "fill": {
        const field = fields.find((one) => one.key === act.key);
        if (field === undefined) return;
        this.#desk.type(field, act.text);
        const unit = act.unit ?? presetUnit(field);
        if (unit !== null) this.#desk.measureIn(field, unit);
        return;
      }
      case "focus":
        return this.#hands.focusField(act.key);
      case "confirm":
        return this.#hands.confirm();
      case "change":
        this.#desk.readBack = null;
        return;
      case "undo":
        return this.#desk.undo();
      case "hold":
        return this.#hands.hold();
    }
  }
}
