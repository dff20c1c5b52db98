/** How a window keeps up with the program. */
import type { CommonBridge } from "./bridge";

/**
 * Listens, and then asks for the first view, so that no change falls between; gives back how to stop that. `first` is
 * also what is done after a change, unless `then` is.
 */
export function follow(bridge: CommonBridge, first: () => Promise<void>, then: () => Promise<void> = first): () => void {
  const listening = bridge.onChanged(() => void then());
  void first();
  return () => void listening.then((stop) => stop()).catch(() => undefined);
}
