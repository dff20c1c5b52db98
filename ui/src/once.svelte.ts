/** One thing at a time: whether it is under way, and why the last one was refused. */
import { asRefused } from "./bridge";
import type { Refused } from "./generated/Refused";
import { t } from "./labels.svelte";

export class Once {
  /** True while something is under way: nothing else begins then. */
  busy = $state(false);
  /** Why the last one was refused; null: it was not. */
  refusal = $state.raw<Refused | null>(null);

  /** Does it, unless something is under way; true when it was done. */
  async do(what: () => Promise<unknown>): Promise<boolean> {
    if (this.busy) return false;
    [this.busy, this.refusal] = [true, null];
    try {
      await what();
      return true;
    } catch (thrown) {
      this.refusal = asRefused(thrown, t("ui-no-answer"));
      return false;
    } finally {
      this.busy = false;
    }
  }

  /** Whether the refusal is about this field of a form. */
  about = (field: string): boolean => this.refusal?.field === field;
}
