/** Opens a window on a stand-in bridge, as a person finds it. */
import { readFileSync } from "node:fs";
import { render } from "@testing-library/svelte";
import { expect, vi } from "vitest";
import { labelsOf, standIn, type Shown, type StandIn } from "../samples/standin";
import { outlook } from "../samples/parts";
import type { Outlook } from "../src/generated/Outlook";
import type { StepView } from "../src/generated/StepView";
import StepWindow from "../src/step/StepWindow.svelte";

/** The English labels as the program ships them. */
export const englishText = readFileSync("../src-tauri/crates/words/text/en/ui.ftl", "utf8");
export const labels = labelsOf(englishText);

/** The element with a `data-id`, or null. */
export function find<E extends HTMLElement = HTMLElement>(id: string): E | null {
  return document.querySelector<E>(`[data-id="${id}"]`);
}

/** The element with a `data-id`, which must be there. */
export function get<E extends HTMLElement = HTMLElement>(id: string): E {
  const element = find<E>(id);
  expect(element, `${id} stands in the window`).not.toBeNull();
  return element as E;
}

/** Opens the window at the car and waits until it shows its view. */
export async function openStep(step: StepView, answer?: Shown["answer"], settings?: Shown["settings"]): Promise<StandIn> {
  const onLine = (at: number): Outlook => outlook(at, (50 - (at - 0.42) * 3.2).toFixed(2));
  const bridge = standIn({ labels, step, outlook: onLine, ...(answer ? { answer } : {}), ...(settings ? { settings } : {}) });
  render(StepWindow, { props: { bridge } });
  await vi.waitFor(() => expect(document.querySelector("main")?.dataset.screen).toBe(step.screen.kind));
  await settle();
  return bridge;
}

/** Lets answers arrive and the window draw itself. */
export async function settle(): Promise<void> {
  for (let turn = 0; turn < 8; turn += 1) await new Promise((then) => setTimeout(then, 0));
}

/** Presses a key where the focus is, or on an element. */
export async function press(key: string, on: HTMLElement = document.body, more: KeyboardEventInit = {}): Promise<KeyboardEvent> {
  const event = new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true, ...more });
  on.dispatchEvent(event);
  await settle();
  return event;
}

/** Types a text into a field. */
export async function type(id: string, text: string): Promise<void> {
  const field = get<HTMLInputElement>(id);
  field.focus();
  field.value = text;
  field.dispatchEvent(new Event("input", { bubbles: true }));
  await settle();
}

/** Clicks an element. */
export async function click(id: string): Promise<void> {
  get(id).click();
  await settle();
}

/** Records: numbers are read back first, and that is answered with yes. */
export async function record(): Promise<void> {
  await click("record");
  if (find("read-back")) await click("record");
}
