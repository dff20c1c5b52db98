/** The windows' words come from the Fluent text alone: every id that is used exists, and every one that exists is used. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { labelsOf } from "../samples/standin";
import { setLabels, t } from "../src/labels.svelte";
import { englishText } from "./windows";

const used = new Set(
  readdirSync("src", { recursive: true, encoding: "utf8" })
    .filter((name) => /\.(svelte|ts)$/.test(name) && !name.startsWith("generated"))
    .flatMap((name) => [...readFileSync(join("src", name), "utf8").matchAll(/"(ui-[a-z-]+)"/g)].map((found) => found[1] ?? "")),
);
const written = Object.keys(labelsOf(englishText));

test("each label that a window uses is written", () => {
  expect(used.size, "the search finds the labels at all").toBeGreaterThan(50);
  expect([...used].filter((id) => !written.includes(id)), "used but not written").toEqual([]);
});

test("each label that is written is used, once", () => {
  expect(written.filter((id) => !used.has(id)), "written but not used").toEqual([]);
  const lines = [...englishText.matchAll(/^(ui-[a-z-]+) =/gm)].map((found) => found[1]);
  expect(lines.length, "no id stands twice, and none is lost by being written over several lines").toBe(written.length);
});

test("a missing label shows its id, and places are filled", () => {
  setLabels({ "ui-known": "I, [who], have read this" });
  expect(t("ui-unknown"), "so that it is seen and reported").toBe("ui-unknown");
  expect(t("ui-known", { who: "RO" }), "initials stand where the text wants them").toBe("I, RO, have read this");
});
