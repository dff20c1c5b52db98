/** The manual in the review window. */
import { cleanup, render } from "@testing-library/svelte";
import { afterEach, expect, test } from "vitest";
import { manualSample, reviewSamples } from "../samples/desk";
import { standIn } from "../samples/standin";
import ReviewWindow from "../src/review/ReviewWindow.svelte";
import { click, find, get, labels, settle, type } from "./windows";

afterEach(cleanup);

async function open(): Promise<void> {
  render(ReviewWindow, { props: { bridge: standIn({ labels, review: reviewSamples["job"]!, manual: manualSample }) } });
  await settle();
  await click("page-manual");
}

const steps = (): string[] => [...document.querySelectorAll("[data-step]")].map((step) => step.getAttribute("data-step") ?? "");

test("every step can be read with its hazards, what is entered and what must hold", async () => {
  await open();
  expect(steps()).toEqual(["used.ballast", "raise.rock"]);
  const text = document.querySelector("[data-step='used.ballast']")!.textContent;
  for (const words of ["CAUTION. Lift heavy parts in pairs.", "about a fifth of it in the footwell", "Ballast in the footwell", "Every point was found in order."]) expect(text).toContain(words);
  expect(document.body.textContent, "a stage that is not on the way says when it comes").toContain("Comes when a step needs it.");
});

test("words are searched in everything that a step says", async () => {
  await open();
  await type("manual-search", "crush");
  expect(steps(), "a hazard's text").toEqual(["raise.rock"]);
  expect(find("stage-used"), "stages without a step that holds the words are left out").toBeNull();
  await type("manual-search", "no such words");
  expect(steps()).toEqual([]);
  expect(get("manual-none").textContent).toBe("No step holds these words.");
});
