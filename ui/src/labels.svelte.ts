/** The fixed words of a window, fetched once from the program, which alone knows languages. */
import type { CommonBridge, Labels } from "./bridge";

let words = $state<Labels | null>(null);

/** Takes the labels that the program gave. */
export function setLabels(next: Labels): void {
  words = next;
  // A screen reader reads in the language of the words.
  document.documentElement.lang = next["ui-lang"] ?? "en";
}

/** Fetches the words and takes them; without an answer the labels show their ids. */
export async function fetchLabels(bridge: CommonBridge): Promise<void> {
  setLabels(await bridge.labels().catch(() => ({})));
}

/**
 * The label of an id; a missing one shows its id, so that it is seen and reported. Nothing before the labels came: a
 * window that opens shows no ids.
 *
 * A label may hold a place in square brackets, such as `[who]`, that stands for something that the person sees
 * beside it (such as initials); `places` fills it.
 */
export function t(id: string, places: Record<string, string> = {}): string {
  if (words === null) return "";
  let text = words[id] ?? id;
  for (const [name, value] of Object.entries(places)) text = text.replaceAll(`[${name}]`, value);
  return text;
}
