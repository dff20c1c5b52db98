/** Which key does what at the car. Pure rules; the window carries them out. No key acknowledges a hazard. */

/** What a single key may ask for. */
export type Action = "why" | "hold" | "reopen" | "stop" | "who" | "aside" | "waive" | "undo" | "settings" | "again";

/** The letter of each action, as it is shown on its button. */
export const LETTER: Record<Action, string> = {
  why: "W",
  hold: "H",
  reopen: "O",
  stop: "S",
  who: "P",
  aside: "A",
  waive: "V",
  undo: "U",
  settings: "G",
  again: "R",
};

const BY_LETTER = new Map(Object.entries(LETTER).map(([action, letter]) => [letter.toLowerCase(), action as Action]));

/** True where letters are typed or choose by their first letter, so that they must mean only that. */
export function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement) return target.type !== "radio" && target.type !== "checkbox";
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement || target.isContentEditable;
}

/** True for a key press that is an intent: not held down, not with a modifier, not half of a composed letter. */
export function isPlain(event: KeyboardEvent): boolean {
  return !event.repeat && !event.ctrlKey && !event.altKey && !event.metaKey && !event.isComposing && !event.defaultPrevented;
}

/** The action of a key press, or null. */
export function actionOf(event: KeyboardEvent): Action | null {
  if (!isPlain(event) || isTyping(event.target)) return null;
  return BY_LETTER.get(event.key.toLowerCase()) ?? null;
}

/** True when Enter goes on with the step: not on something that Enter itself presses or opens. */
export function goesOn(event: KeyboardEvent): boolean {
  if (event.key !== "Enter" || event.shiftKey || !isPlain(event)) return false;
  const target = event.target;
  return !(target instanceof Element && target.closest("button, a, select, summary, dialog") !== null);
}

/** Keys that type, move the focus or leave a dialog: as a pedal they would do that too. */
const NO_PEDAL = new Set(["Tab", "Escape", "Backspace", "Delete", "Shift", "Control", "Alt", "Meta", "AltGraph", "CapsLock", "Enter", " "]);

/** True for a key that may be taught as the pedal. */
export function mayBePedal(event: KeyboardEvent): boolean {
  return event.key.length > 1 && !NO_PEDAL.has(event.key) && !event.key.startsWith("Arrow");
}

/** True for the first key of a reading, typed while no field has the focus. */
export function beginsReading(event: KeyboardEvent): boolean {
  return isPlain(event) && !isTyping(event.target) && /^[0-9.,+-]$/.test(event.key);
}
