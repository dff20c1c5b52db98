/** Sample views in the real windows, for looking at while developing: `npm run dev`, then gallery.html. */
import { mount } from "svelte";
import ftl from "../../src-tauri/crates/words/text/en/ui.ftl?raw";
import { baySamples, reviewSamples } from "../samples/desk";
import { labelsOf, standIn } from "../samples/standin";
import { stepSamples } from "../samples/step";
import BayBoard from "../src/bay/BayBoard.svelte";
import ReviewWindow from "../src/review/ReviewWindow.svelte";
import StepWindow from "../src/step/StepWindow.svelte";
import "../src/style/base.css";

const labels = labelsOf(ftl);
const asked = new URLSearchParams(location.search);
const target = document.getElementById("window");

/** Samples begin their waits at 0; here they begin a little ago. */
function begun<T extends { began_ms: number }>(timer: T | null): T | null {
  return timer && { ...timer, began_ms: Date.now() - 37_000 };
}

if (target) {
  const step = stepSamples[asked.get("step") ?? ""];
  const bay = baySamples[asked.get("bay") ?? ""];
  const review = reviewSamples[asked.get("review") ?? ""];
  if (step) {
    if (step.screen.kind === "step") step.screen.timer = begun(step.screen.timer);
    mount(StepWindow, { target, props: { bridge: standIn({ labels, step }) } });
  } else if (bay) {
    mount(BayBoard, { target, props: { bridge: standIn({ labels, bay: { ...bay, timer: begun(bay.timer) } }) } });
  } else if (review) {
    mount(ReviewWindow, { target, props: { bridge: standIn({ labels, review }) } });
  } else {
    target.style.overflow = "auto";
    for (const [window, samples] of Object.entries({ step: stepSamples, bay: baySamples, review: reviewSamples })) {
      for (const name of Object.keys(samples)) {
        const link = document.createElement("a");
        link.href = `?${window}=${name}`;
        link.textContent = `${window}: ${name}`;
        link.style.display = "block";
        target.append(link);
      }
    }
  }
}

// `&key=H` presses a key once the window stands, to look at its dialog.
const key = asked.get("key");
if (key) setTimeout(() => window.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true })), 500);
