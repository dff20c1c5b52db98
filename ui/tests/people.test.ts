/** A book that knows its people: who is at the car, by PIN; who keeps the list and seals, by passphrase. */
import { cleanup, render } from "@testing-library/svelte";
import { afterEach, describe, expect, test } from "vitest";
import { originSample, reviewSamples } from "../samples/desk";
import { staffOf, supervisor, technician, trainee } from "../samples/parts";
import { refuse, standIn, type StandIn } from "../samples/standin";
import { stepSamples } from "../samples/step";
import ReviewWindow from "../src/review/ReviewWindow.svelte";
import { click, find, get, labels, openStep, press, settle, type } from "./windows";

afterEach(cleanup);

const people = [trainee, technician, supervisor];
/** The reading, with nobody at the car. */
const unattended = { ...stepSamples["by-pin"]!, staff: staffOf(people) };

async function enter(pin: string): Promise<void> {
  for (const digit of pin) await click(`digit-${digit}`);
  await click("take-over");
}

describe("the first start", () => {
  const first = stepSamples["start-first"]!;

  async function fill(changes: Record<string, string> = {}): Promise<void> {
    const typed = { "initials": "mt", "name": "Somebody", "pin": "2468", "pin-again": "2468", "passphrase": "rain on a tin roof", "passphrase-again": "rain on a tin roof", ...changes };
    for (const [id, text] of Object.entries(typed)) await type(id, text);
    await click("first-supervisor");
  }

  test("makes the first supervisor, shows the recovery code until it is kept, and has them at the car", async () => {
    const bridge = await openStep(first);
    await fill();
    const person = { initials: "mt", name: "Somebody", rank: "supervisor", alone: [] };
    expect(bridge.told).toEqual([["firstSupervisor", person, "2468", "rain on a tin roof"], ["handOver", "MT", "2468"]]);
    expect(get("recovery-code").textContent).toContain("4QTZ");
    await press("Escape");
    expect(find("recovery-code"), "Escape does not lose the code").not.toBeNull();
    await click("code-kept");
    expect(find("recovery-code")).toBeNull();
    expect(get("actor").textContent, "who made the PIN stands at the car").toContain("MT");
  });

  test("what is typed twice must be the same", async () => {
    const bridge = await openStep(first);
    await fill({ "passphrase-again": "rain on a tin rood" });
    expect(bridge.told, "nothing is sent").toEqual([]);
    expect(document.body.textContent).toContain(labels["ui-secret-differs"]);
    expect(get<HTMLInputElement>("name").value, "nothing typed is lost").toBe("Somebody");
  });

  test("no car in the bay is offered, a practice by names alone is", async () => {
    await openStep(first);
    expect(find("begin-real")).toBeNull();
    expect(find("begin-practice")).not.toBeNull();
  });
});

describe("at the car", () => {
  test("somebody else takes over by PIN, and what is typed stays", async () => {
    const bridge = await openStep(stepSamples["by-pin"]!);
    await type("field-loads.FL", "221.5");
    await press("p");
    await click("person-LB");
    await enter("9753");
    expect(bridge.told).toEqual([["handOver", "LB", "9753"]]);
    expect(get("actor").textContent).toContain("LB");
    expect(get<HTMLInputElement>("field-loads.FL").value, "the place is kept").toBe("221.5");
  });

  test("a wrong PIN is told, and how long the next try has to wait runs down", async () => {
    const bridge = await openStep(stepSamples["by-pin"]!);
    bridge.shown.pin = () => {
      const staff = staffOf(people, "RO");
      bridge.shown.step = { ...bridge.shown.step!, staff: { ...staff, people: staff.people.map((one) => ({ ...one, wait_s: one.initials === "LB" ? 30 : 0 })) } };
      refuse({ code: "wrong-pin", field: "pin", says: "This is not the PIN of LB." });
    };
    await press("p");
    await click("person-LB");
    await enter("1111");
    expect(get("pin-waits").textContent).toContain("30 s");
    expect(get<HTMLButtonElement>("take-over").disabled).toBe(true);
    expect(get<HTMLInputElement>("pin").value, "it is typed anew").toBe("");
    await click("person-RO");
    expect(find("pin-waits"), "another person's PIN need not wait").toBeNull();
  });

  test("with nobody at the car the PIN is asked for first, then what was wanted goes on", async () => {
    const bridge = await openStep(unattended);
    expect(get("actor").className, "it is seen").toContain("unknown");
    await press("h");
    expect(find("dialog-hold"), "not yet").toBeNull();
    await click("person-RO");
    await enter("1357");
    expect(find("dialog-hold"), "now").not.toBeNull();
    expect(bridge.asked).toEqual([]);
  });

  test("left the car: nobody acts until somebody takes over", async () => {
    const bridge = await openStep(stepSamples["by-pin"]!);
    await press("p");
    await click("sign-off");
    expect(bridge.told).toEqual([["signOff"]]);
    expect(get("actor").textContent).toContain(labels["ui-who-nobody"]);
  });

  test("a gate is waived by the PIN of somebody beside, who does not take over", async () => {
    const gate = stepSamples["reading-gate"]!;
    const bridge = await openStep({ ...gate, staff: staffOf(people, "RO") });
    await press("v");
    await click("who-MT");
    await type("secret", "2468");
    await type("reason", "floor crack");
    await click("confirm");
    const step = gate.screen.kind === "step" ? gate.screen.id : "";
    expect(bridge.told).toEqual([["waive", gate.revision, "MT", "2468", step, "floor crack"]]);
    expect(find("dialog-waive")).toBeNull();
  });

  test("a person is entered with a PIN by a supervisor's passphrase", async () => {
    const bridge = await openStep(stepSamples["by-pin"]!);
    await press("p");
    await click("add-person");
    for (const [id, text] of Object.entries({ "initials": "KS", "name": "Kim Sands", "pin": "8642", "pin-again": "8642", "passphrase": "rain on a tin roof" })) await type(id, text);
    await click("rank-technician");
    await click("confirm");
    const person = { initials: "KS", name: "Kim Sands", rank: "technician", alone: [] };
    expect(bridge.told).toEqual([["keepPeople", { by: "MT", passphrase: "rain on a tin roof", wish: { kind: "enrol", person, pin: "8642" } }]]);
  });
});

describe("the procedure of the next job", () => {
  test("a workshop's own is named, looked at, and its trust stands on the start screen", async () => {
    const bridge = await openStep(stepSamples.start!);
    expect(get("procedure").textContent).toContain("corner-balance-and-alignment");
    await click("open-procedure");
    expect(find("sign-procedure"), "the shipped one needs nobody to sign").toBeNull();
    await type("place", "/srv/workshop/our-procedure.json");
    await click("look-at-procedure");
    expect(bridge.told).toEqual([["lookAtProcedure", "/srv/workshop/our-procedure.json"]]);
  });

  test("one that is not proved says what it breaks, and a supervisor signs by passphrase", async () => {
    const bridge = await openStep(stepSamples["not-proved"]!);
    await click("open-procedure");
    expect(get("procedure-found").textContent).toContain("no car is sealed or driven that is not whole");
    await type("passphrase", "rain on a tin roof");
    await type("reason", "tried on the simulated car");
    await click("sign-procedure");
    expect(bridge.told).toEqual([["signForProcedure", "MT", "rain on a tin roof", "tried on the simulated car"]]);
    expect(get<HTMLInputElement>("passphrase").value, "it is not kept in the page").toBe("");
  });
});

describe("at the desk", () => {
  async function open(): Promise<StandIn> {
    const bridge = standIn({ labels, review: reviewSamples["by-pin"]! });
    render(ReviewWindow, { props: { bridge } });
    await settle();
    return bridge;
  }

  test("a seal carries the supervisor, the revision seen and the passphrase; it is not kept in the page", async () => {
    const bridge = await open();
    await click("seal");
    expect(find("who-RO"), "only supervisors are offered").toBeNull();
    await click("who-MT");
    await type("secret", "rain on a tin roof");
    await click("confirm");
    expect(bridge.told).toEqual([["seal", 3, 318, "MT", "rain on a tin roof"]]);
    expect(find("dialog-seal")).toBeNull();
    await click("seal");
    expect(get<HTMLInputElement>("secret").value).toBe("");
  });

  test("sending back carries the PIN", async () => {
    const bridge = await open();
    await click("send-back");
    await click("target-adjust.read");
    await click("who-MT");
    await type("reason", "settles too far apart");
    await type("secret", "2468");
    await click("confirm");
    expect(bridge.told).toEqual([["sendBack", 3, 318, "MT", "2468", "adjust.read", "settles too far apart"]]);
  });

  test("the list shows ranks, what a trainee may do alone, and keys", async () => {
    await open();
    await click("page-people");
    const row = (initials: string): string => document.querySelector(`[data-person="${initials}"]`)?.textContent ?? "";
    expect(row("RO")).toContain("Intake");
    expect(row("MT")).toContain("7QK2-M9XF-03VT-H8RD");
    expect(find("set-key-RO"), "a trainee has no key").toBeNull();
  });

  test("a trainee's list is changed, by passphrase", async () => {
    const bridge = await open();
    await click("page-people");
    await click("change-RO");
    await click("alone-walk");
    await type("passphrase", "rain on a tin roof");
    await click("confirm");
    const person = { initials: "RO", name: "Somebody RO", rank: "trainee", alone: ["intake", "walk"] };
    expect(bridge.told).toEqual([["keepPeople", { by: "MT", passphrase: "rain on a tin roof", wish: { kind: "change", person } }]]);
  });
});

describe("the book", () => {
  async function open(): Promise<StandIn> {
    const bridge = standIn({ labels, review: { ...reviewSamples["by-pin"]!, staff: staffOf([supervisor]) }, book: { copies_in: null, copy_told: null, imported: [{ id: 1, title: "Grey saloon, job 1", state: "sealed", says: "Sealed" }] } });
    render(ReviewWindow, { props: { bridge } });
    await settle();
    return bridge;
  }

  test("copies go to the place that is named, now and from then on", async () => {
    const bridge = await open();
    await click("page-book");
    await type("copies", "/mnt/other-disk");
    await click("copy-now");
    expect(bridge.told).toEqual([["copyTo", "/mnt/other-disk"]]);
    expect(get("said").textContent).toContain("/mnt/other-disk/jobs");
  });

  test("another bay's job is taken in by PIN, and looked at", async () => {
    const bridge = await open();
    await click("page-book");
    await type("import-place", "/mnt/usb/job-1.json");
    const by = get<HTMLSelectElement>("by");
    by.value = "MT";
    by.dispatchEvent(new Event("change", { bubbles: true }));
    await type("pin", "2468");
    await click("take-in");
    expect(bridge.told).toEqual([["importJob", "/mnt/usb/job-1.json", "MT", "2468"]]);
    expect(get<HTMLInputElement>("pin").value, "it is not kept in the page").toBe("");
    await click("imported-1");
    expect(document.querySelector('[data-part="imported"]')?.textContent).toContain("Step by step");
  });

  test("customer data is kept, and erased with a reason", async () => {
    const bridge = await open();
    await click("customer");
    expect(find("erase-customer"), "there is nothing to erase").toBeNull();
    await type("customer-text", "The owner, 12 Any Street");
    const by = get<HTMLSelectElement>("by");
    by.value = "MT";
    by.dispatchEvent(new Event("change", { bubbles: true }));
    await type("pin", "2468");
    await click("keep-customer");
    await type("pin", "2468");
    await type("reason", "asked for");
    await click("erase-customer");
    expect(bridge.told).toEqual([["setCustomer", 3, "MT", "2468", "The owner, 12 Any Street"], ["eraseCustomer", 3, "MT", "2468", "asked for"]]);
    expect(find("erase-customer")).toBeNull();
  });
});

describe("the record at the desk", () => {
  async function open(): Promise<StandIn> {
    const bridge = standIn({ labels, review: { ...reviewSamples["by-pin"]!, staff: staffOf([supervisor]) }, origin: originSample });
    render(ReviewWindow, { props: { bridge } });
    await settle();
    return bridge;
  }

  test("a text is corrected with a reason, by PIN; only what nothing rests on can be", async () => {
    const bridge = await open();
    expect(find("correct-292"), "a reading is not corrected but read again").toBeNull();
    await click("correct-294");
    expect(get<HTMLInputElement>("correct-text").value, "as it says now").toBe("same feel");
    await type("correct-text", "the same feel left and right");
    await type("reason", "a slip");
    const by = get<HTMLSelectElement>("by");
    by.value = "MT";
    by.dispatchEvent(new Event("change", { bubbles: true }));
    await type("pin", "2468");
    await click("confirm");
    expect(bridge.told).toEqual([["correct", { job: 3, revision: 318, entry: 294, key: "reason", text: "the same feel left and right", reason: "a slip", by: "MT", pin: "2468" }]]);
    expect(find("dialog-correct")).toBeNull();
  });

  test("an entry is withdrawn by doing its step again", async () => {
    await open();
    await click("withdraw-294");
    expect(get<HTMLInputElement>("target-adjust.read").checked, "its step is chosen").toBe(true);
  });

  test("a figure opens to its own readings, and they lead to their entries", async () => {
    const bridge = await open();
    await click("figure-front_diff_kg");
    expect(bridge.told).toEqual([["origin", 3, "front_diff_kg"]]);
    expect(get("origin-286").textContent).toContain("226.0 226.0 226.1 kg (mean 226.03 kg)");
    expect(get("origin-286").textContent).toContain("Pads: pad set 3");
    await click("origin-entry-304");
    expect(find("dialog-origin"), "the dialog makes way").toBeNull();
    expect(document.activeElement?.getAttribute("data-entry")).toBe("304");
  });

  test("jobs are listed by car, person, date and departure", async () => {
    const bridge = await open();
    await click("filter");
    await click("filter-departed");
    expect(bridge.told).toEqual([["filter", { car: "", person: "", from: "", until: "", departed: true }]]);
    await click("filter");
    expect(find("filter-car"), "and all of them again").toBeNull();
  });

  test("a person's record over all jobs", async () => {
    await open();
    await click("page-people");
    await click("record-MT");
    expect(get("record-says").textContent).toContain("3 tries held");
  });
});
