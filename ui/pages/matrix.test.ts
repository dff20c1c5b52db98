/**
 * The pages as they are drawn, in a browser: every sample and every moment of a whole job, measured. A spread of sizes,
 * light and dark in the usual form; all of them with `BAYHAND_LONG`.
 */
import { readdirSync } from "node:fs";
import axe from "axe-core";
import { chromium, type Browser, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { baySamples, reviewSamples } from "../samples/desk";
import { stepSamples } from "../samples/step";
import { typeSize } from "../src/bay/legible";
import { measure, type Measured, type Wanted } from "./measure";
import { serve, VIEWS } from "./serve";

const LONG = process.env.BAYHAND_LONG !== undefined;

interface Look {
  width: number;
  height: number;
  scheme: "light" | "dark";
}

/** 775: a screen of 800 px less the frame of a window. */
const SIZES = [[1280, 800], [1280, 775], [1920, 1080], [3840, 2160]] as const;
const LOOKS: Look[] = SIZES.flatMap(([width, height]) => (["light", "dark"] as const).map((scheme) => ({ width, height, scheme })));

/** What is shown: a query of the gallery and the window that it opens. */
interface Shown {
  query: string;
  window: "step" | "bay" | "review";
}

/** The moments of the whole job; those that come again look alike, so one of each is enough. */
function moments(): Shown[] {
  const names = readdirSync(VIEWS).filter((name) => name !== "labels.json").sort().map((name) => name.replace(".json", ""));
  expect(names.length, `views of a whole job in ${VIEWS}: BAYHAND_VIEWS and the Rust test \`views\` write them`).toBeGreaterThan(60);
  const seen = new Set<string>();
  const first = names.filter((name) => !seen.has(name.slice(4)) && seen.add(name.slice(4)));
  const both = (["step", "bay"] as const).flatMap((window) => first.map((name) => ({ query: `moment=${name}&window=${window}`, window })));
  const reviewed = names.filter((name) => name.endsWith("loop-judge") || name.endsWith("review-seal"));
  const sealed = names.filter((name) => name.endsWith("-sealed")).flatMap((name) => ["page-cars", "page-instruments", "page-manual", "figure-toe.FL"].map((page) => `${name}&click=${page}`));
  return [...both, ...[...reviewed, ...sealed].map((name) => ({ query: `moment=${name}&window=review`, window: "review" as const }))];
}

const samples: Shown[] = [
  ...Object.keys(stepSamples).map((name) => ({ query: `step=${name}`, window: "step" as const })),
  ...Object.keys(baySamples).map((name) => ({ query: `bay=${name}`, window: "bay" as const })),
  ...Object.keys(reviewSamples).map((name) => ({ query: `review=${name}`, window: "review" as const })),
  { query: "step=reading&heard", window: "step" as const },
  ...["g", "h", "o", "p", "v"].map((key) => ({ query: `step=reading-gate&key=${key}`, window: "step" as const })),
  ...["person-RO", "add-person", "person-RO,forgot-pin", "person-MT,forgot-pin", "person-RO,change-pin"].map((click) => ({ query: `step=by-pin&key=p&click=${click}`, window: "step" as const })),
  ...["start", "not-proved"].map((name) => ({ query: `step=${name}&click=open-procedure`, window: "step" as const })),
  ...["page-people", "page-people,add-person", "page-people,change-RO", "page-people,let-go-LB", "page-people,set-key-MT", "page-people,recover", "page-cars", "page-instruments", "page-manual", "page-book", "filter", "figure-front_diff_kg", "correct-294", "page-people,record-RO", "customer", "seal", "send-back"].map((click) => ({
    query: `review=by-pin&click=${click}`,
    window: "review" as const,
  })),
];

/** The look that a sample gets in the usual form: all come round. */
const turnOf = (i: number): Look[] => (LONG ? LOOKS : [LOOKS[i % LOOKS.length]!]);

let browser: Browser;
let pages: Awaited<ReturnType<typeof serve>>;

beforeAll(async () => {
  pages = await serve();
  const executablePath = process.env.BAYHAND_BROWSER ?? "/usr/bin/chromium";
  browser = await chromium.launch({ executablePath, args: ["--no-sandbox"] });
});

afterAll(async () => {
  await browser?.close();
  pages?.server.close();
});

const open = new Map<string, Page>();

async function draw({ query }: Shown, look: Look): Promise<Page> {
  const key = JSON.stringify(look);
  let page = open.get(key);
  if (page === undefined) {
    page = await browser.newPage({ viewport: { width: look.width, height: look.height }, colorScheme: look.scheme, reducedMotion: "reduce" });
    open.set(key, page);
  }
  await page.goto(`${pages.at}/gallery.html?${query}`);
  await page.waitForSelector("main[data-revision]:not([data-screen=loading])");
  if (query.includes("key=")) await page.waitForSelector("dialog[open]");
  if (query.includes("click=")) await page.waitForSelector("html[data-clicked]");
  await page.evaluate(async () => {
    await document.fonts.ready;
    // What is fitted after it was drawn has then been fitted.
    for (let frame = 0; frame < 8; frame += 1) await new Promise((then) => requestAnimationFrame(then));
  });
  return page;
}

/** What each window must keep to. */
async function wanted(shown: Shown, page: Page): Promise<Wanted> {
  if (shown.window === "step") return { target: 64, contrast: 7, least: 0, scrolls: "dialog, .targets, ul.list" };
  if (shown.window === "review") return { target: 24, contrast: 4.5, least: 0, scrolls: ".scroll, .evidence, .jobs" };
  const view = await page.evaluate(() => ({ width: screen.width, height: screen.height }));
  // Every sample and moment hangs as a new board does: 55 inches, 5 m.
  return { target: 0, contrast: 7, least: typeSize({ capital_mm: 5000 * 2 * Math.tan(Math.PI / 1080 / 2), diagonal_mm: 55 * 25.4 }, view), scrolls: "" };
}

const NONE: Measured = { overflow: [], cut: [], overlap: [], small: [], faint: [], tiny: [] };

async function check(shown: Shown, look: Look): Promise<void> {
  const page = await draw(shown, look);
  expect(await page.evaluate(measure, await wanted(shown, page)), `${shown.query} at ${look.width} x ${look.height}, ${look.scheme}`).toEqual(NONE);
}

/** Rules of axe that are not about a page of an app: landmarks of a web site, and what the measures above already do. */
const LEFT_OUT = ["region", "landmark-one-main", "page-has-heading-one", "color-contrast"];

async function checkAccess(shown: Shown, look: Look): Promise<void> {
  const page = await draw(shown, look);
  await page.evaluate(axe.source);
  const found = await page.evaluate(async (leftOut) => {
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
      rules: Object.fromEntries(leftOut.map((rule) => [rule, { enabled: false }])),
    });
    return violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.html.slice(0, 160)}`));
  }, LEFT_OUT);
  expect(found, shown.query).toEqual([]);
}

describe("samples", () => {
  samples.forEach((shown, i) => turnOf(i).forEach((look) => test(`${shown.query}, ${look.width}, ${look.scheme}`, () => check(shown, look))));
});

describe("a whole job", () => {
  moments().forEach((shown, i) => turnOf(i).forEach((look) => test(`${shown.query}, ${look.width}, ${look.scheme}`, () => check(shown, look))));
});

describe("access", () => {
  samples.forEach((shown, i) => test(`${shown.query}`, () => checkAccess(shown, LOOKS[i % 2]!)));
});

test("the measures find what is wrong: a page spoiled on purpose", async () => {
  const page = await draw({ query: "step=plain", window: "step" }, LOOKS[0]!);
  await page.evaluate(() => {
    const main = document.querySelector("main")!;
    main.insertAdjacentHTML("beforeend", `<p style="position:absolute;left:300px;top:60px;color:#aaa">over the headline</p><button class="button" style="min-height:20px;height:20px;padding:0">small</button><div style="overflow:hidden;height:10px"><p>cut</p></div>`);
  });
  const found = await page.evaluate(measure, { target: 64, contrast: 7, least: 30, scrolls: "" });
  for (const [what, list] of Object.entries(found)) expect(list.length, what).toBeGreaterThan(0);
});
