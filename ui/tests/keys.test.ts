/** Keys at the car: every action has one, none fires while typing, none acknowledges a hazard. */
import { cleanup } from "@testing-library/svelte";
import { afterEach, describe, expect, test } from "vitest";
import { acknowledged, raised, step, stepView, technician, trainee } from "../samples/parts";
import { stepSamples } from "../samples/step";
import type { HeardView } from "../src/generated/HeardView";
import { LETTER } from "../src/step/keys";
import { SETTINGS } from "../samples/standin";
import { click, find, get, openStep, press, record, settle, type } from "./windows";

afterEach(cleanup);

describe("letters", () => {
  test("each opens what its button opens", async () => {
    await openStep(stepSamples["reading-gate"]!);
    await press("p");
    await click("person-RO");
    for (const [key, dialog] of [["h", "hold"], ["S", "stop"], ["o", "reopen"], ["v", "waive"], ["p", "who"]] as const) {
      await press(key);
      expect(find(`dialog-${dialog}`), `${key} opens ${dialog}`).not.toBeNull();
      await click("cancel");
    }
    await press("w");
    expect(find("detail"), "W shows the why").not.toBeNull();
    await press("w");
    expect(find("detail"), "and hides it").toBeNull();
  });

  test("no two actions share a letter", () => {
    const letters = Object.values(LETTER);
    expect(new Set(letters).size).toBe(letters.length);
  });

  test("they are letters while somebody types", async () => {
    const bridge = await openStep(stepSamples.checks!);
    const field = get("field-notes");
    expect(field.tagName).toBe("TEXTAREA");
    for (const letter of Object.values(LETTER)) {
      const event = await press(letter.toLowerCase(), field);
      expect(event.defaultPrevented, `${letter} goes into the text`).toBe(false);
    }
    expect(document.querySelector("dialog"), "no dialog opens").toBeNull();
    expect(bridge.asked, "and nothing is asked").toEqual([]);
  });

  test("and in the field of a reading", async () => {
    await openStep(stepSamples.reading!);
    const event = await press("h", get("field-loads.FL"));
    expect(event.defaultPrevented).toBe(false);
    expect(document.querySelector("dialog"), "no dialog opens").toBeNull();
  });

  test("nor with a modifier, nor held down", async () => {
    await openStep(stepSamples.plain!);
    await press("h", document.body, { ctrlKey: true });
    await press("h", document.body, { repeat: true });
    expect(document.querySelector("dialog")).toBeNull();
  });

  test("nor behind a dialog", async () => {
    const bridge = await openStep(stepSamples.plain!);
    await press("h");
    await press("a");
    expect(bridge.asked, "A does not set the job aside").toEqual([]);
  });
});

describe("hazards", () => {
  const open = stepView(step({ hazards: [raised], hazards_open: true }));

  test("no key acknowledges one", async () => {
    const bridge = await openStep(open);
    const keys = [..."abcdefghijklmnopqrstuvwxyz0123456789", " ", "Enter", "F1", "F12", "PageDown", "ArrowRight", "MediaPlayPause"];
    for (const key of keys) {
      await press(key);
      if (document.querySelector("dialog")) await click("cancel");
    }
    expect(bridge.asked.filter((ask) => ask.wish.kind === "acknowledge" || ask.wish.kind === "record")).toEqual([]);
  });

  test("a held key does not press the button that it meets", async () => {
    await openStep(open);
    const event = await press("Enter", get("ack-raised-vehicle"), { repeat: true });
    expect(event.defaultPrevented).toBe(true);
    const fresh = await press("Enter", get("ack-raised-vehicle"));
    expect(fresh.defaultPrevented, "a fresh press on the focused button is the person's own").toBe(false);
  });

  test("a hand does, with its name, and the step then opens", async () => {
    const bridge = await openStep(open, () => stepView(step({ hazards: [acknowledged(raised)] }), "baseline", { revision: 42 }));
    expect(get("ack-raised-vehicle").textContent?.trim()).toBe("I, RO, have read this");
    expect(get<HTMLButtonElement>("record").disabled, "nothing is recorded before").toBe(true);
    await click("ack-raised-vehicle");
    expect(bridge.asked).toEqual([{ revision: 41, by: "RO", wish: { kind: "acknowledge", step: "baseline.centre", hazard: "raised-vehicle" } }]);
    expect(find("ack-raised-vehicle")).toBeNull();
    expect(get<HTMLButtonElement>("record").disabled).toBe(false);
  });

  test("the focus never waits on the button", async () => {
    await openStep(open);
    expect(document.activeElement?.getAttribute("data-id")).toBe("instruction");
  });
});

describe("Enter", () => {
  test("goes to what is still open, then records", async () => {
    const bridge = await openStep(stepView(step({ fields: stepSamples.turn!.screen.kind === "step" ? stepSamples.turn!.screen.fields : [] })));
    await press("Enter");
    expect(document.activeElement, "the open field").toBe(get("field-turned.FR"));
    expect(bridge.asked).toEqual([]);
    await type("field-turned.FR", "0,25");
    await press("Enter", get("field-turned.FR"));
    expect(get("read-back").textContent, "a number is read back first").toContain("0,25");
    expect(bridge.asked, "and does not count yet").toEqual([]);
    await press("Escape");
    expect(get<HTMLInputElement>("field-turned.FR").value, "Escape leads back to it").toBe("0,25");
    await press("Enter");
    await press("Enter");
    expect(bridge.asked[0]?.wish, "exactly as typed").toEqual({
      kind: "record",
      step: "baseline.centre",
      entries: { "turned.FR": { text: "0,25", unit: "turns" } },
    });
  });

  test("on a button is that button's own", async () => {
    const bridge = await openStep(stepSamples.plain!);
    await press("Enter", get("hold"));
    expect(bridge.asked).toEqual([]);
    await press("Enter");
    expect(bridge.asked.map((ask) => ask.wish.kind)).toEqual(["record"]);
  });

  test("a figure begins the first open reading", async () => {
    await openStep(stepSamples.reading!);
    await press("2");
    expect(document.activeElement).toBe(get("field-loads.FL"));
  });
});

describe("the pedal", () => {
  const taught = { ...SETTINGS, set: { ...SETTINGS.set, pedal: "F13" } };
  const tread = (on: HTMLElement = document.body): Promise<KeyboardEvent> => press("F13", on, { code: "F13" });

  test("goes on with the step, also while somebody types", async () => {
    const bridge = await openStep(stepSamples.turn!, undefined, taught);
    await tread();
    expect(document.activeElement, "to the open field").toBe(get("field-turned.FR"));
    await type("field-turned.FR", "0.25");
    await tread(get("field-turned.FR"));
    expect(find("read-back"), "then reads back").not.toBeNull();
    await tread();
    expect(bridge.asked.map((ask) => ask.wish.kind), "then records").toEqual(["record"]);
  });

  test("acknowledges no hazard, even on its button, and answers no dialog", async () => {
    const bridge = await openStep(stepView(step({ hazards: [raised], hazards_open: true })), undefined, taught);
    const event = await tread(get("ack-raised-vehicle"));
    expect(event.defaultPrevented, "its key never reaches the button").toBe(true);
    await press("h");
    await tread(get("confirm"));
    expect(bridge.asked).toEqual([]);
  });

  test("is taught in the settings, and not a key that types or moves", async () => {
    const bridge = await openStep(stepSamples.plain!);
    await press("g");
    await settle();
    await click("settings-speak");
    await click("learn-pedal");
    await press("b", document.body, { code: "KeyB" });
    expect(bridge.shown.settings?.set.pedal, "a letter types").toBeNull();
    await press("PageDown", document.body, { code: "PageDown" });
    expect(bridge.shown.settings?.set.pedal).toBe("PageDown");
  });
});

describe("the voice", () => {
  test("says the step again, by key and by button, to whoever acts", async () => {
    const bridge = await openStep(stepSamples.plain!);
    await press("r");
    await click("again");
    expect(bridge.said).toEqual(["RO", "RO"]);
  });

  test("is chosen by each person, and says nothing again where somebody wants silence", async () => {
    const bridge = await openStep(stepSamples.plain!);
    await press("g");
    await settle();
    await click("settings-speak");
    await click("set-say-off");
    expect(bridge.shown.settings?.set.speech_of.RO?.say, "RO's own").toBe(false);
    expect(bridge.shown.settings?.set.speech.say, "the workshop's stays").toBe(true);
    await click("cancel");
    await press("r");
    expect(bridge.said).toEqual([]);
    expect(find("again")).toBeNull();
  });

  test("tells once what is missing for it", async () => {
    await openStep({ ...stepSamples.plain!, notice: "Nothing can be said here." });
    await click("notice");
    expect(get("notice-says").textContent).toContain("Nothing can be said here.");
    await click("notice-seen");
    expect(find("notice")).toBeNull();
  });
});

describe("spoken answers", () => {
  const nothing: HeardView = { act: { kind: "nothing" }, says: "", loud: null, pending: null };
  const waits: HeardView = { ...nothing, says: "Load, front left: 221.4 kg.", pending: { key: "loads.FL", label: "Load, front left", text: "221.4 kg" } };
  const fill: HeardView = { ...nothing, act: { kind: "fill", key: "loads.FL", text: "221.4", unit: "kg" }, says: "Load, front right?" };
  const hold = (kind: "keydown" | "keyup", more: KeyboardEventInit = {}): void => {
    window.dispatchEvent(new KeyboardEvent(kind, { key: "F8", code: "F8", bubbles: true, cancelable: true, ...more }));
  };

  test("are listened to while the key is held, wherever the focus is, and the window says what it waits for", async () => {
    const bridge = await openStep(stepSamples.reading!);
    hold("keydown");
    hold("keydown", { repeat: true });
    hold("keyup");
    expect(bridge.talked).toEqual([true, false]);
    await type("field-loads.FR", "213");
    await settle();
    expect(bridge.attended.at(-1)).toEqual({ by: "RO", step: "adjust.read", entries: { "loads.FR": { text: "213", unit: "kg" } }, reading_back: false });
    await press("h");
    await settle();
    expect(bridge.attended.at(-1)?.step, "in a dialog for nothing").toBe("");
    hold("keydown");
    expect(bridge.talked, "and the key then does nothing").toEqual([true, false]);
  });

  test("a number waits until a key says that it is right, and is a draft only then", async () => {
    const bridge = await openStep(stepSamples.reading!);
    bridge.shown.confirmed = (right) => (right ? fill : nothing);
    bridge.hear(waits);
    await settle();
    expect(get("heard-pending").textContent).toContain("221.4 kg");
    expect(get<HTMLInputElement>("field-loads.FL").value, "not entered yet").toBe("");
    expect(find("record"), "nothing is recorded meanwhile").toBeNull();
    await press("Enter");
    expect(get<HTMLInputElement>("field-loads.FL").value).toBe("221.4");
    expect(get("heard").textContent).toContain("Load, front right?");
    bridge.hear(waits);
    await settle();
    await press("Escape");
    expect(find("heard-pending"), "Escape takes it back").toBeNull();
    expect(bridge.asked, "nothing was recorded by any of it").toEqual([]);
  });

  test("confirm reads back first and then records, as the main action does", async () => {
    const bridge = await openStep(stepSamples.turn!);
    await type("field-turned.FR", "0.25");
    bridge.hear({ ...nothing, act: { kind: "confirm" } });
    await settle();
    expect(find("read-back")).not.toBeNull();
    bridge.hear({ ...nothing, act: { kind: "confirm" } });
    await settle();
    expect(bridge.asked.map((ask) => ask.wish.kind)).toEqual(["record"]);
  });

  test("acknowledge nothing: whatever is told, the hazard's button waits for a hand", async () => {
    const bridge = await openStep(stepView(step({ hazards: [raised], hazards_open: true })));
    for (const kind of ["confirm", "change", "undo", "again", "nothing"] as const) bridge.hear({ ...nothing, act: { kind } });
    await settle();
    hold("keydown");
    hold("keyup");
    expect(bridge.asked).toEqual([]);
    expect(find("ack-raised-vehicle")).not.toBeNull();
  });

  test("are off where keys only are chosen", async () => {
    const settings = { ...SETTINGS, set: { ...SETTINGS.set, hearing: { ...SETTINGS.set.hearing, by: "keys" as const } } };
    const bridge = await openStep(stepSamples.reading!, undefined, settings);
    hold("keydown");
    expect(find("talk")).toBeNull();
    expect([bridge.talked, bridge.attended]).toEqual([[], []]);
  });
});

describe("the draft", () => {
  test("is taken back change by change, by key and by button", async () => {
    await openStep(stepSamples.reading!);
    await type("field-loads.FL", "221");
    await type("field-loads.FL", "221.4");
    await type("field-loads.FR", "213");
    await press("z", get("field-loads.FR"), { ctrlKey: true });
    expect(get<HTMLInputElement>("field-loads.FR").value).toBe("");
    expect(get<HTMLInputElement>("field-loads.FL").value, "the field before keeps what was typed").toBe("221.4");
    await click("undo");
    expect(get<HTMLInputElement>("field-loads.FL").value, "typing on in one field is one change").toBe("");
    expect(find("undo"), "nothing is left to take back").toBeNull();
  });
});

describe("the place on the trade line", () => {
  test("is dragged by keys, asked for, and recorded as it was answered", async () => {
    const bridge = await openStep(stepSamples.choose!);
    const knob = document.querySelector<HTMLElement>('[data-id="aim"]')!;
    expect(knob.getAttribute("role")).toBe("slider");
    await press("End", knob);
    expect(document.querySelector<HTMLInputElement>('[data-id="option-next-turn-place"]')?.checked, "the option is chosen").toBe(true);
    await press("ArrowLeft", knob);
    expect(get("aimed").textContent, "the program's own words for the place").toContain("48.16");
    await type("field-reason", "driven axle first");
    await record();
    expect(bridge.asked[0]?.wish).toMatchObject({
      kind: "record",
      entries: { next: { text: "turn-place" }, place: { text: "48.16", unit: "percent" }, reason: { text: "driven axle first" } },
    });
  });

  test("is forgotten when another option is chosen", async () => {
    const bridge = await openStep(stepSamples.choose!);
    await press("End", document.querySelector<HTMLElement>('[data-id="aim"]')!);
    await click("option-next-turn-cross");
    expect(get("outlook-why").textContent, "what would follow stands there").toContain("Turning");
    await type("field-reason", "none");
    await record();
    expect(Object.keys(bridge.asked[0]?.wish.kind === "record" ? bridge.asked[0].wish.entries : {})).toEqual(["next", "reason"]);
  });
});

test("nothing is done by nobody: of several people somebody first says who acts", async () => {
  const bridge = await openStep(stepView(step({}), "baseline", { people: [trainee, technician] }));
  await click("record");
  expect(bridge.asked).toEqual([]);
  await click("person-LB");
  await click("record");
  await settle();
  expect(bridge.asked[0]?.by).toBe("LB");
});
