/** The pure pieces: how fields are arranged, where labels stand, what is left of a wait. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { atAxles, atCorners, check, choice, number } from "../samples/parts";
import { arrange, asked, firstOpen, looksIn } from "../src/step/arrange";
import { placeLabels, widthOf } from "../src/parts/placing";
import { typeSize } from "../src/bay/legible";
import { DRAWN } from "../src/parts/signs/pictograms";
import { leftOf } from "../src/parts/waiting";

describe("arranging fields", () => {
  const shape = (blocks: ReturnType<typeof arrange>): string[] =>
    blocks.map((block) => (block.kind === "fields" ? block.fields.map((f) => f.key).join(" ") : `${block.rows.join(" ")}: ${block.columns.map((c) => c.title).join(", ")}`));

  test("corners are rows, groups are columns, at the place of the first", () => {
    const fields = [check("brake", "Brake off"), ...atCorners("loads", "Load", [["kg", "kg"]], 3, ""), ...atCorners("heights", "Height", [["mm", "mm"]], 1, ""), check("clear", "Chocks clear")];
    expect(shape(arrange(fields))).toEqual(["brake", "FL FR RL RR: Load, Height", "clear"]);
  });

  test("the axles are rows where several numbers are asked of them; one alone stands side by side", () => {
    const spring = atAxles("spring", "Spring rate", [["n-per-mm", "N/mm"]], "");
    const tyre = atAxles("tyre", "Tyre rate", [["n-per-mm", "N/mm"]], "");
    expect(shape(arrange([...spring, ...tyre]))).toEqual(["front rear: Spring rate, Tyre rate"]);
    expect(shape(arrange(spring))).toEqual(["spring.front spring.rear"]);
  });

  test("a field that another option would bring is not asked for", () => {
    const fields = [choice("next", "Next", null, ["Go on", "Turn"]), { ...number("place", "Place", [["percent", "%"]], ""), only_with: { key: "next", options: ["option-2"] } }];
    const keys = (next: string): string[] => asked(fields, { next: { text: next, unit: null } }).map((field) => field.key);
    expect(keys("option-1")).toEqual(["next"]);
    expect(keys("option-2")).toEqual(["next", "place"]);
  });

  test("five columns make two tables, shared out evenly", () => {
    const fields = ["a", "b", "c", "d", "e"].flatMap((key) => atCorners(key, key, [["mm", "mm"]], 1, ""));
    expect(shape(arrange(fields))).toEqual(["FL FR RL RR: a, b, c", "FL FR RL RR: d, e"]);
  });

  test("only the corners that are asked for are rows", () => {
    expect(shape(arrange(atCorners("turns", "Turns", [["turns", "turns"]], 1, "").slice(2)))).toEqual(["RL RR: Turns"]);
  });

  test("blanks alone are no answer, and looks are counted between blanks", () => {
    const fields = [number("a", "A", [["mm", "mm"]], ""), number("b", "B", [["mm", "mm"]], "")];
    expect(firstOpen(fields, { a: { text: " ", unit: "mm" } })?.key).toBe("a");
    expect(firstOpen(fields, { a: { text: "1", unit: "mm" }, b: { text: "2", unit: "mm" } })).toBeNull();
    expect(looksIn(" 221.4  221.5 ")).toBe(2);
  });
});

describe("labels beside a line", () => {
  const at = (x: number, text: string, strong = false): { x: number; text: string; strong: boolean } => ({ x, text, strong });

  test("that do not meet stand in the innermost row", () => {
    expect(placeLabels([at(100, "left"), at(500, "right")], 600, 20).map((p) => p.row)).toEqual([0, 0]);
  });

  test("that would meet step outwards, the strong one last", () => {
    expect(placeLabels([at(300, "cross wanted", true), at(310, "front even")], 600, 20).map((p) => p.row)).toEqual([1, 0]);
  });

  test("that a stem would cross move aside", () => {
    const [strong, inner] = placeLabels([at(300, "cross wanted", true), at(260, "front even")], 600, 20);
    expect(strong?.row).toBe(1);
    expect((inner?.x ?? 0) + widthOf("front even", 20, false) / 2, "its end stands clear of the stem").toBeLessThan(300);
  });

  test("stay inside the drawing", () => {
    const [first] = placeLabels([at(0, "front even")], 600, 20);
    expect(first?.x).toBeCloseTo(widthOf("front even", 20, false) / 2);
  });
});

describe("what is left of a wait", () => {
  const timer = { seconds: 120, began_ms: 1_000_000, label: "Settling" };
  const check = (afterMs: number, text: string): void => expect(leftOf(timer, timer.began_ms + afterMs).text).toBe(text);

  test("counts down in whole seconds and ends at nought", () => {
    check(0, "2:00");
    check(60_500, "1:00");
    check(119_999, "0:01");
    check(120_000, "0:00");
    check(500_000, "0:00");
  });

  test("a clock that was set back makes no wait longer", () => check(-60_000, "2:00"));
});

test("every hazard of the procedure has a picture of its own", () => {
  const document = JSON.parse(readFileSync("../procedures/corner-balance-and-alignment.json", "utf8")) as { hazards: { id: string }[] };
  expect(document.hazards.map((hazard) => hazard.id).filter((id) => !DRAWN.includes(id))).toEqual([]);
});

describe("type on the board", () => {
  test("about 69 px on a 55-inch screen of 1080 lines at 5 m", () => {
    // 20 minutes of arc at 5 m are 29.09 mm; by the typeface's own capital height 43.5 mm of type, at 1.577 px a millimetre.
    const px = typeSize({ capital_mm: 29.089, diagonal_mm: 1397 }, { width: 1920, height: 1080 });
    expect(px).toBeGreaterThan(68);
    expect(px).toBeLessThan(69);
  });
});
