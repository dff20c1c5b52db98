/**
 * Sample views, and the views of a whole job that Rust wrote, in the real windows. `npm run dev`, then gallery.html:
 * `?step=NAME`, `?bay=NAME`, `?review=NAME` show a sample; `?moment=NAME&window=step&way=de-kg` a view of the job; `?parts` the parts.
 */
import { mount } from "svelte";
import ftl from "../../src-tauri/crates/words/text/en/ui.ftl?raw";
import { baySamples, carSample, carsSample, instrumentsSample, manualSample, originSample, reviewSamples } from "../samples/desk";
import { outlook } from "../samples/parts";
import { labelsOf, SETTINGS, standIn, type Shown } from "../samples/standin";
import { heardSample, stepSamples } from "../samples/step";
import type { Labels } from "../src/bridge";
import type { Outlook } from "../src/generated/Outlook";
import type { SettingsView } from "../src/generated/SettingsView";
import BayBoard from "../src/bay/BayBoard.svelte";
import ReviewWindow from "../src/review/ReviewWindow.svelte";
import StepWindow from "../src/step/StepWindow.svelte";
import "../src/style/base.css";
import Parts from "./Parts.svelte";

const asked = new URLSearchParams(location.search);
const target = document.getElementById("window");
const name = (window: string): string => asked.get(window) ?? "";

/** Samples begin their waits at 0; here they begin a little ago. */
function begun<T extends { began_ms: number }>(timer: T | null): T | null {
  return timer && { ...timer, began_ms: Date.now() - 37_000 };
}

async function shown(): Promise<Shown> {
  const common = { labels: labelsOf(ftl), outlook: (at: number) => outlook(at, (50 - (at - 0.42) * 3.2).toFixed(2)) };
  const moment = asked.get("moment");
  if (moment) {
    const told = async (name: string): Promise<unknown> => (await fetch(`/views/${asked.get("way") ?? "en-kg"}/${name}.json`)).json();
    const [labels, settings, view] = (await Promise.all(["labels", "settings", moment].map(told))) as [Labels, SettingsView, Omit<Shown, "outlook"> & { outlook?: Outlook }];
    const { outlook } = view;
    return { ...common, ...view, labels, settings: { ...settings, screens: SETTINGS.screens }, outlook: outlook ? () => outlook : common.outlook };
  }
  const [step, bay, review] = [stepSamples[name("step")], baySamples[name("bay")], reviewSamples[name("review")]];
  return { ...common, ...(step && { step }), ...(bay && { bay }), ...(review && { review }) };
}

async function show(target: HTMLElement): Promise<void> {
  const views = await shown();
  const window = asked.get("window") ?? (asked.has("step") ? "step" : asked.has("bay") ? "bay" : "review");
  document.documentElement.dataset.window = window;
  if (asked.has("parts")) {
    mount(Parts, { target, props: { labels: views.labels } });
  } else if (window === "step" && views.step) {
    if (views.step.screen.kind === "step") views.step.screen.timer = begun(views.step.screen.timer);
    const bridge = standIn(views);
    mount(StepWindow, { target, props: { bridge } });
    // `&heard` shows a number that was heard and waits, in a loud place.
    if (asked.has("heard")) setTimeout(() => bridge.hear(heardSample), 300);
  } else if (window === "bay" && views.bay) {
    mount(BayBoard, { target, props: { bridge: standIn({ ...views, bay: { ...views.bay, timer: begun(views.bay.timer) } }) } });
  } else if (window === "review" && views.review) {
    mount(ReviewWindow, { target, props: { bridge: standIn({ cars: carsSample, car: carSample, instruments: instrumentsSample, manual: manualSample, origin: originSample, ...views }) } });
  } else {
    list(target);
  }
}

/** Everything there is to look at. */
function list(target: HTMLElement): void {
  target.style.overflow = "auto";
  const link = (href: string, text: string): void => {
    const one = document.createElement("a");
    Object.assign(one, { href, textContent: text });
    one.style.display = "block";
    target.append(one);
  };
  link("?parts", "parts");
  for (const [window, samples] of Object.entries({ step: stepSamples, bay: baySamples, review: reviewSamples })) {
    for (const name of Object.keys(samples)) link(`?${window}=${name}`, `${window}: ${name}`);
  }
}

if (target) void show(target);

// `&key=H` presses a key once the window stands, `&click=ID,ID` then clicks one thing after the other (`ID*`: the first whose
// id begins so): to look at dialogs and pages.
const key = asked.get("key");
const clicks = asked.get("click")?.split(",") ?? [];

const found = async <E extends Element>(selector: string): Promise<E> => {
  for (;;) {
    const element = document.querySelector<E>(selector);
    if (element) return element;
    await new Promise((then) => setTimeout(then, 20));
  }
};

async function press(): Promise<void> {
  await found("main[data-revision]:not([data-screen=loading])");
  if (key) window.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true }));
  for (const id of clicks) {
    await new Promise((then) => setTimeout(then, 60));
    (await found<HTMLElement>(id.endsWith("*") ? `[data-id^="${id.slice(0, -1)}"]` : `[data-id="${id}"]`)).click();
  }
  await new Promise((then) => setTimeout(then, 60));
  document.documentElement.dataset.clicked = "true";
}

if (key || clicks.length > 0) void press();
