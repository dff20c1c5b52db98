/**
 * The pages as they are drawn, in a browser: every sample and every moment of a whole job, measured. The usual form gives
 * each a look in turn, and the window at the car one in each language; the long form (`BAYHAND_LONG`) draws every size, light
 * and dark, in both languages and both sets of units.
 */
import { readdirSync } from "node:fs";
import { join } from "node:path";
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

/** The folders of moments: language and units. */
const LANGUAGES = ["en", "de"];
const UNITS = ["kg", "lb"];

/** What is shown: a query of the gallery and the window that it opens. */
interface Shown {
  query: string;
  window: "step" | "bay" | "review";
}

/** What is pressed and clicked at a window where people sign on by PIN. */
const AT_CAR = ["person-RO", "add-person", "person-RO,forgot-pin", "person-MT,forgot-pin", "person-RO,change-pin"];
const AT_DESK = ["page-people", "page-people,add-person", "page-people,change-RO", "page-people,let-go-LB", "page-people,set-key-MT", "page-people,recover", "page-cars", "page-instruments", "page-manual", "page-book", "filter", "page-people,record-RO", "customer", "seal", "send-back"];

/** The moments of the whole job; those that come again look alike, so one of each is enough. */
function moments(): Shown[] {
  const names = readdirSync(join(VIEWS, "en-kg")).filter((name) => /^\d/.test(name)).sort().map((name) => name.replace(".json", ""));
  expect(names.length, `views of a whole job in ${VIEWS}: BAYHAND_VIEWS and the Rust test \`views\` write them`).toBeGreaterThan(60);
  const seen = new Set<string>();
  const first = names.filter((name) => !seen.has(name.slice(4)) && seen.add(name.slice(4)));
  const whole = (name: string): string => names.find((one) => one.slice(4) === name)!;
  const at = (window: Shown["window"], name: string, also = ""): Shown => ({ query: `moment=${name}&window=${window}${also}`, window });
  const judged = names.filter((name) => name.endsWith("loop-judge"));
  return [
    ...first.map((name) => at("step", name)),
    ...first.map((name) => at("bay", name)),
    ...judged.flatMap((name) => ["turn-cross", "turn-place"].map((option) => at("step", name, `&click=option-next-${option}`))),
    ...[...judged, ...["review-seal", "start-first", "held", "sealed"].map(whole)].map((name) => at("review", name)),
    ...["page-cars", "page-instruments", "page-manual", "figure-toe.FL", "coach"].map((click) => at("review", whole("sealed"), `&click=${click}`)),
    ...["g", "h", "o", "p", "v"].map((key) => at("step", whole("rough-angles-gate"), `&key=${key}`)),
    at("step", whole("notice"), "&click=notice"),
    ...AT_CAR.map((click) => at("step", whole("pin-start"), `&key=p&click=${click}`)),
    at("step", whole("pin-start"), "&click=open-procedure"),
    ...[...AT_DESK, "correct-*", "figure-*"].map((click) => at("review", whole("pin-review"), `&click=${click}`)),
  ];
}

const samples: Shown[] = [
  ...Object.keys(stepSamples).map((name) => ({ query: `step=${name}`, window: "step" as const })),
  ...Object.keys(baySamples).map((name) => ({ query: `bay=${name}`, window: "bay" as const })),
  ...Object.keys(reviewSamples).map((name) => ({ query: `review=${name}`, window: "review" as const })),
  { query: "step=reading&heard", window: "step" as const },
  ...["g", "h", "o", "p", "v"].map((key) => ({ query: `step=reading-gate&key=${key}`, window: "step" as const })),
  ...AT_CAR.map((click) => ({ query: `step=by-pin&key=p&click=${click}`, window: "step" as const })),
  ...["start", "not-proved"].map((name) => ({ query: `step=${name}&click=open-procedure`, window: "step" as const })),
  ...[...AT_DESK, "figure-front_diff_kg", "correct-294"].map((click) => ({ query: `review=by-pin&click=${click}`, window: "review" as const })),
];

/** The looks that a sample gets: in the usual form one, and all come round. */
const looksOf = (i: number): Look[] => (LONG ? LOOKS : [LOOKS[i % LOOKS.length]!]);

/** The looks and folders that a moment gets: in the usual form German and English by turns, at the car both; all come round. */
function waysOf(window: Shown["window"], i: number): [Look, string][] {
  if (LONG) return LOOKS.flatMap((look) => LANGUAGES.flatMap((language) => UNITS.map((unit): [Look, string] => [look, `${language}-${unit}`])));
  const half = LOOKS.length / 2;
  const both = LANGUAGES.map((language, l): [Look, string] => [LOOKS[(Math.floor(i / 2) + l * half) % LOOKS.length]!, `${language}-${UNITS[(Math.floor(i / LOOKS.length) + l) % 2]}`]);
  return window === "step" ? both : [both[i % 2]!];
}

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
  if (shown.window === "review") return { target: 24, contrast: 4.5, least: 0, scrolls: ".scroll, .evidence, .jobs, .targets, dialog[data-id=dialog-origin]" };
  const view = await page.evaluate(() => ({ width: screen.width, height: screen.height }));
  // Every sample and moment hangs as a new board does: 55 inches, 5 m.
  return { target: 0, contrast: 7, least: typeSize({ capital_mm: 5000 * 2 * Math.tan(Math.PI / 1080 / 2), diagonal_mm: 55 * 25.4 }, view), scrolls: "" };
}

const NONE: Measured = { overflow: [], cut: [], overlap: [], small: [], faint: [], tiny: [] };

async function check(shown: Shown, look: Look, access = false): Promise<void> {
  const page = await draw(shown, look);
  const what = `${shown.query} at ${look.width} x ${look.height}, ${look.scheme}`;
  expect(await page.evaluate(measure, await wanted(shown, page)), what).toEqual(NONE);
  if (access) expect(await inaccessible(page), what).toEqual([]);
}

/** Rules of axe that are not about a page of an app: landmarks of a web site, and what the measures above already do. */
const LEFT_OUT = ["region", "landmark-one-main", "page-has-heading-one", "color-contrast"];

/** What axe finds wrong with the page. */
async function inaccessible(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async (leftOut) => {
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
      rules: Object.fromEntries(leftOut.map((rule) => [rule, { enabled: false }])),
    });
    return violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.html.slice(0, 160)}`));
  }, LEFT_OUT);
}

describe("samples", () => {
  samples.forEach((shown, i) => looksOf(i).forEach((look) => test(`${shown.query}, ${look.width} x ${look.height}, ${look.scheme}`, () => check(shown, look, true))));
});

describe("a whole job", () => {
  moments().forEach((shown, i) =>
    waysOf(shown.window, i).forEach(([look, way]) => test(`${shown.query}, ${way}, ${look.width} x ${look.height}, ${look.scheme}`, () => check({ ...shown, query: `${shown.query}&way=${way}` }, look))),
  );
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
