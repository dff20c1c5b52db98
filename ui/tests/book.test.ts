/** The pages of the review window that show the book by its cars and instruments. */
import { cleanup, render } from "@testing-library/svelte";
import { afterEach, expect, test } from "vitest";
import { carSample, carsSample, instrumentsSample, reviewSamples } from "../samples/desk";
import { standIn, type StandIn } from "../samples/standin";
import type { CarsView } from "../src/generated/CarsView";
import ReviewWindow from "../src/review/ReviewWindow.svelte";
import { click, find, get, labels, settle, type } from "./windows";

afterEach(cleanup);

async function open(cars: CarsView = carsSample, page = "page-cars"): Promise<StandIn> {
  const bridge = standIn({ labels, review: reviewSamples["job"]!, cars, car: carSample, instruments: instrumentsSample });
  render(ReviewWindow, { props: { bridge } });
  await settle();
  await click(page);
  return bridge;
}

test("the car that was here last is shown, and another one when it is chosen", async () => {
  const bridge = await open();
  expect(get("car-name").textContent).toBe("Practice car");
  expect(get("car-learned").textContent).toContain("days ago: 12");
  expect(get("collar-front left").textContent).toContain("+9.8 kg ± 1.1 kg");
  expect(get("car-1").getAttribute("aria-current")).toBe("true");
  await click("car-2");
  expect(bridge.told).toEqual([["car", 1], ["car", 2]]);
});

test("a visit leads to its job", async () => {
  await open();
  await click("visit-1");
  expect(find("car-name"), "the page of the cars is left").toBeNull();
  expect(get("job-title").textContent).toContain("job 3");
});

test("cars are searched while it is typed", async () => {
  const bridge = await open();
  await type("car-search", "saloon");
  expect(bridge.told).toContainEqual(["cars", "saloon"]);
});

test("a book without cars says what to do first", async () => {
  const bridge = await open({ says: "No car was here yet. Begin a job at the car.", cars: [] });
  expect(get("cars-says").textContent).toContain("Begin a job");
  expect(bridge.told, "no car is asked for").toEqual([]);
  expect(find("car-name")).toBeNull();
});

test("an instrument says plainly whether it is due, and what is not recorded", async () => {
  await open(carsSample, "page-instruments");
  const laser = get("instrument-laser: site laser 1");
  expect(laser.querySelector("[data-due]")?.getAttribute("data-due")).toBe("overdue");
  expect(laser.textContent).toContain("Overdue: was due on 2026-10-31");
  const rule = get("instrument-height-gauge: rule").textContent ?? "";
  expect(rule.match(/Not recorded/g)?.length, "uncertainty, calibration and checks").toBe(3);
  expect(get("instrument-pads: pad set 3").textContent).toContain("Pads, resolution: 0.5 kg");
});

test("a job that an instrument was used in is opened", async () => {
  await open(carsSample, "page-instruments");
  await click("used-laser: site laser 1-3");
  expect(find("instrument-laser: site laser 1"), "the page is left").toBeNull();
  expect(get("job-title").textContent).toContain("job 3");
});
