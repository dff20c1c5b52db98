/** Every screen shows what its view holds, and marks for a driver what stands there. */
import { cleanup, render } from "@testing-library/svelte";
import { afterEach, describe, expect, test } from "vitest";
import { baySamples, reviewSamples } from "../samples/desk";
import { standIn } from "../samples/standin";
import { stepSamples } from "../samples/step";
import BayBoard from "../src/bay/BayBoard.svelte";
import ReviewWindow from "../src/review/ReviewWindow.svelte";
import { click, find, get, labels, openStep, record, settle, type } from "./windows";

afterEach(cleanup);

describe("the window at the car", () => {
  for (const [name, view] of Object.entries(stepSamples)) {
    test(name, async () => {
      await openStep(view);
      const main = document.querySelector("main");
      expect(main?.dataset.revision, "the revision that an answer will name").toBe(String(view.revision));
      const words = document.body.textContent ?? "";
      expect(words, "no label is missing").not.toMatch(/\bui-[a-z]/);
      if (view.screen.kind === "step") {
        expect(main?.dataset.step).toBe(view.screen.id);
        expect(get("instruction").textContent).toBe(view.screen.instruction);
        expect(find("record") === null, "a step that the seal ends has no action of its own").toBe(view.screen.seal_in_review);
        for (const field of view.screen.fields) {
          const there = find(`field-${field.key}`) ?? document.querySelector(`[name="field-${field.key}"]`);
          const hidden = view.screen.hazards_open || field.only_with !== null;
          expect(there === null, `${field.key} stands there unless a hazard is open or another option would bring it`).toBe(hidden);
        }
      } else {
        expect(words, "what to do").toContain(view.screen.says);
      }
      for (const element of document.querySelectorAll("button, input, select, textarea, [role=slider]")) {
        expect(element.getAttribute("data-id"), `${element.outerHTML} can be found by a driver`).toBeTruthy();
      }
    });
  }

  test("a stage's state is told by a word, not by colour alone", async () => {
    await openStep(stepSamples.turn!);
    expect(document.querySelector('[data-stage="alignment"]')?.textContent).toContain("again");
    expect(document.querySelector('[data-stage="adjust"]')?.getAttribute("aria-current")).toBe("step");
  });

  test("what the practice car shows is never filled in", async () => {
    await openStep(stepSamples.reading!);
    expect(get("display-loads.FL").textContent, "it stands beside the field").toContain("221.4");
    expect(get<HTMLInputElement>("field-loads.FL").value, "and the field is empty").toBe("");
  });

  test("one unit chooser serves a column", async () => {
    const bridge = await openStep(stepSamples.reading!);
    expect(get("unit-loads.FL").dataset.unit).toBe("kg");
    await click("unit-loads.FL");
    expect(get("unit-loads.FL").dataset.unit, "a press takes the next unit").toBe("lb");
    const field = get<HTMLInputElement>("field-loads.RR");
    field.value = "671.3";
    field.dispatchEvent(new Event("input", { bubbles: true }));
    await record();
    expect(bridge.asked[0]?.wish).toMatchObject({ kind: "record", entries: { "loads.RR": { text: "671.3", unit: "lb" } } });
  });
});

describe("the board", () => {
  for (const [name, view] of Object.entries(baySamples)) {
    test(name, async () => {
      render(BayBoard, { props: { bridge: standIn({ labels, bay: view }) } });
      await settle();
      const main = document.querySelector("main");
      expect(main?.textContent).toContain(view.turn ? view.turn.car_does : view.instruction);
      expect(main?.querySelectorAll("button, input, a, select").length, "there is nothing to press").toBe(0);
      if (view.raised) expect(main?.textContent).toContain(view.raised);
      if (view.hazard) expect(main?.textContent).toContain(view.hazard.line);
      if (view.last_reading) expect(get("last-reading").textContent, "a past reading carries its time").toBe(view.last_reading);
    });
  }

  test("a program that is silent is said, not hidden", async () => {
    render(BayBoard, { props: { bridge: standIn({ labels }) } });
    await settle();
    expect(document.querySelector("main")?.textContent).toContain(labels["ui-bay-silent"]);
  });
});

describe("the window at the desk", () => {
  async function open(name: string): Promise<ReturnType<typeof standIn>> {
    const bridge = standIn({ labels, review: reviewSamples[name]! });
    render(ReviewWindow, { props: { bridge } });
    await settle();
    return bridge;
  }

  test("without a job it says what to do first", async () => {
    await open("empty");
    expect(document.querySelector("main")?.textContent).toContain(reviewSamples.empty?.says);
  });

  test("departures stand before the record, and what is void is struck", async () => {
    await open("job");
    const text = document.querySelector("main")?.textContent ?? "";
    expect(text.indexOf("Gate waived")).toBeLessThan(text.indexOf("Step by step"));
    expect(document.querySelector('[data-entry="286"]')?.getAttribute("data-state")).toBe("again");
  });

  test("the chain's check and the sheet say what came of them", async () => {
    await open("job");
    await click("verify");
    expect(get("said").textContent).toContain("318 entries");
    await click("write-sheet");
    expect(get("said").textContent).toContain("job-3.csv");
  });

  test("the coach of a practice job says what was wrong, where it showed, and what counted", async () => {
    await open("job");
    await click("coach");
    const text = get("dialog-coach").textContent ?? "";
    expect(text).toContain("First to be seen at No. 148");
    expect(get("coach-points").textContent).toBe("70 of 100");
    await click("coach-close");
    expect(find("dialog-coach"), "it closes").toBeNull();
  });

  test("a seal carries the person chosen and the revision seen", async () => {
    const bridge = await open("job");
    await click("seal");
    await click("who-MT");
    await click("confirm");
    expect(bridge.asked).toEqual([{ revision: 318, by: "MT", wish: { kind: "seal" } }]);
    expect(find("dialog-seal"), "the dialog closes once it is done").toBeNull();
  });

  test("a supervisor who was not at the car signs on at the desk", async () => {
    const bridge = await open("job");
    await click("sign-on-open");
    for (const [id, text] of [["initials", "MT"], ["name", "Mara Tol"]] as const) await type(id, text);
    await click("rank-supervisor");
    await click("sign-on");
    expect(bridge.asked[0]).toEqual({ revision: 318, by: "", wish: { kind: "sign-on", initials: "MT", name: "Mara Tol", rank: "supervisor" } });
    expect(find("dialog-sign-on")).toBeNull();
  });

  test("sending back names step, reason and person", async () => {
    const bridge = await open("job");
    await click("send-back");
    await click("target-adjust.read");
    await click("who-MT");
    const reason = get<HTMLTextAreaElement>("reason");
    reason.value = "settles too far apart";
    reason.dispatchEvent(new Event("input", { bubbles: true }));
    await click("confirm");
    expect(bridge.asked[0]).toEqual({ revision: 318, by: "MT", wish: { kind: "reopen", step: "adjust.read", reason: "settles too far apart" } });
  });
});
