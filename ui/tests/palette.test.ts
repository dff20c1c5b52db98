/**
 * Contrast of every pair of text and ground that the windows use, at least 7:1 (WCAG 2.2, success criterion 1.4.6,
 * level AAA), with its formula for relative luminance. Marks that carry no words need 3:1 (criterion 1.4.11).
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const css = readFileSync("src/style/palette.css", "utf8");
const colours = (text: string): Record<string, string> =>
  Object.fromEntries([...text.matchAll(/--([a-z0-9-]+): (#[0-9a-f]{6});/g)].map((found) => [found[1], found[2]]));
const [lightText = "", darkText = ""] = css.split("@media");
const light = colours(lightText);
const dark = { ...light, ...colours(darkText) };

function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(one: string, other: string): number {
  const [a, b] = [luminance(one), luminance(other)].sort((x, y) => y - x) as [number, number];
  return (a + 0.05) / (b + 0.05);
}

const TEXT = [
  ["ink", "paper"],
  ["ink", "paper-2"],
  ["ink-2", "paper"],
  ["ink-2", "paper-2"],
  ["ink", "amber-soft"],
  ["ink", "blue-pale"],
  ["ink-2", "blue-pale"],
  ["amber", "paper"],
  ["amber", "paper-2"],
  ["blue", "paper"],
  ["on-blue", "blue"],
  ["paper", "ink"],
  ["on-face", "face"],
  ["on-danger", "danger"],
  ["on-warning", "warning"],
  ["on-caution", "caution"],
  ["on-notice", "notice"],
];
const MARKS = [
  ["amber-mark", "paper"],
  ["amber-mark", "paper-2"],
  ["amber-mark", "amber-soft"],
  ["blue", "blue-pale"],
];

test("the formula gives the standard's own ends", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 6);
  expect(contrast("#ffffff", "#ffffff")).toBeCloseTo(1, 6);
});

describe.each([
  ["light", light],
  ["dark", dark],
])("%s", (_, palette) => {
  const of = (name: string): string => palette[name] ?? expect.fail(`no colour ${name}`);
  test.each(TEXT)("%s on %s can be read", (text, ground) => expect(contrast(of(text!), of(ground!))).toBeGreaterThanOrEqual(7));
  test.each(MARKS)("%s on %s can be seen", (mark, ground) => expect(contrast(of(mark!), of(ground!))).toBeGreaterThanOrEqual(3));
});
