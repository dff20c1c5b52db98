/** What is typed is lost only when it was recorded or when the step is another one. */
import { cleanup } from "@testing-library/svelte";
import { afterEach, expect, test } from "vitest";
import { number, step, stepView, technician, text, trainee } from "../samples/parts";
import { refuse } from "../samples/standin";
import { stepSamples } from "../samples/step";
import { click, find, get, openStep, record, settle, type } from "./windows";

afterEach(cleanup);

const mass = stepView(step({ id: "intake.mass", fields: [number("driver", "Mass of the driver", [["kg", "kg"]], "0 to 200 kg"), text("use", "Use of the car")] }), "intake");
const valueOf = (id: string): string => get<HTMLInputElement>(id).value;

test("a refusal leaves all that is typed, stands by its field and leads there", async () => {
  await openStep(mass, () => refuse({ code: "out-of-range", field: "driver", says: "900 kg is above 200 kg. Nothing was recorded. Read it again." }));
  await type("field-driver", "900");
  await type("field-use", "track days");
  await record();
  const field = get<HTMLInputElement>("field-driver");
  expect(field.value).toBe("900");
  expect(valueOf("field-use")).toBe("track days");
  expect(document.activeElement, "the focus is on the field").toBe(field);
  expect(field.getAttribute("aria-invalid")).toBe("true");
  const described = (field.getAttribute("aria-describedby") ?? "").split(" ").map((id) => document.getElementById(id)?.textContent ?? "");
  expect(described.join(" "), "a screen reader reads it with the field").toContain("900 kg is above 200 kg");
  await type("field-driver", "90");
  expect(find("refusal"), "it goes once the field is changed").toBeNull();
});

test("a refusal in a table stands under its row", async () => {
  await openStep(stepSamples.reading!, () => refuse({ code: "out-of-range", field: "loads.RL", says: "Too heavy." }));
  await record();
  expect(document.activeElement).toBe(get("field-loads.RL"));
  expect(get("refusal").id).toBe("refusal-loads.RL");
});

test("a refusal of no field stands over the action", async () => {
  await openStep(mass, () => refuse({ code: "too-early", field: null, says: "Wait on." }));
  await record();
  expect(get("refusal").dataset.code).toBe("too-early");
});

test("an answer that is no refusal is said in the windows' own words", async () => {
  await openStep(mass, () => {
    throw new Error("broken pipe");
  });
  await record();
  expect(get("refusal").dataset.code).toBe("no-answer");
  expect(get("refusal").textContent, "no inner workings reach a person").not.toContain("pipe");
});

test("a change elsewhere keeps the draft of the same step", async () => {
  const bridge = await openStep(mass);
  await type("field-driver", "78");
  bridge.shown.step = { ...mass, revision: 42, people: [trainee, technician] };
  bridge.change();
  await settle();
  expect(document.querySelector("main")?.dataset.revision, "the new view is shown").toBe("42");
  expect(valueOf("field-driver")).toBe("78");
});

test("a stale answer fetches the view and keeps the draft", async () => {
  const bridge = await openStep(mass, () => refuse({ code: "stale", field: null, says: "Somebody was faster. Look again." }));
  await type("field-driver", "78");
  bridge.shown.step = { ...mass, revision: 43 };
  await record();
  expect(document.querySelector("main")?.dataset.revision).toBe("43");
  expect(get("refusal").dataset.code).toBe("stale");
  expect(valueOf("field-driver")).toBe("78");
});

test("another step begins empty", async () => {
  const bridge = await openStep(mass);
  await type("field-driver", "78");
  bridge.shown.step = stepView(step({ id: "intake.other", fields: [number("driver", "Mass", [["kg", "kg"]], "0 to 200 kg")] }), "intake");
  bridge.change();
  await settle();
  expect(valueOf("field-driver")).toBe("");
});

test("once recorded, the next turn of the same step begins empty", async () => {
  await openStep(mass, () => ({ ...mass, revision: 44 }));
  await type("field-driver", "78");
  await record();
  expect(valueOf("field-driver")).toBe("");
});

test("where the gate did not pass the entry stays to be worked on", async () => {
  const gate = { verdict: "outside" as const, says: "Too far out.", may_waive: null };
  await openStep(mass, () => ({ ...mass, screen: { ...step({ id: "intake.mass", fields: mass.screen.kind === "step" ? mass.screen.fields : [], gate }), kind: "step" as const } }));
  await type("field-driver", "78");
  await record();
  expect(valueOf("field-driver")).toBe("78");
  expect(get("gate").dataset.verdict).toBe("outside");
  expect(find("waive"), "no button where nobody may waive").toBeNull();
});

test("a waiver carries the person who gives it, not the one who works", async () => {
  const bridge = await openStep(stepSamples["reading-gate"]!);
  await click("waive");
  await click("who-LB");
  const reason = get<HTMLTextAreaElement>("reason");
  reason.value = "known floor";
  reason.dispatchEvent(new Event("input", { bubbles: true }));
  await click("confirm");
  expect(bridge.asked[0]).toEqual({ revision: 41, by: "LB", wish: { kind: "waive", step: "adjust.read", reason: "known floor" } });
});

test("a refused reason stays in its dialog", async () => {
  await openStep(mass, () => refuse({ code: "no-reason", field: null, says: "Give a reason." }));
  await click("hold");
  await click("confirm");
  expect(get("dialog-hold").textContent).toContain("Give a reason.");
});

test("starting: the practice car's number is sent as a number, and a wrong one is said", async () => {
  const bridge = await openStep(stepSamples.start!);
  await type("seed", "7x");
  await click("begin-practice");
  expect(bridge.asked).toEqual([]);
  expect(find("refusal")).not.toBeNull();
  await type("seed", "7");
  await click("begin-practice");
  expect(bridge.asked[0]).toEqual({ revision: 0, by: "RO", wish: { kind: "begin", car: "Practice car", practice: { seed: 7, drawn: 0 } } });
});

test("signing on sends what was typed, and who signed on first acts", async () => {
  const bridge = await openStep(stepSamples["sign-on"]!, () => ({ ...stepSamples.plain!, people: [trainee, technician] }));
  await type("initials", "RO");
  await type("name", "Rona Ode");
  await click("rank-trainee");
  await click("sign-on");
  expect(bridge.asked[0]).toEqual({ revision: 1, by: "", wish: { kind: "sign-on", initials: "RO", name: "Rona Ode", rank: "trainee" } });
  expect(get("actor").textContent).toContain("RO, trainee");
});
