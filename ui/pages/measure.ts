/**
 * What a page looks like, measured where it is drawn. These functions run in the browser, so each is whole in itself.
 */

/** What is wrong with a page, in words. */
export interface Measured {
  /** Something scrolls or reaches beyond its box. */
  overflow: string[];
  /** Words that are cut off. */
  cut: string[];
  /** Words or controls that lie over one another. */
  overlap: string[];
  /** Controls smaller than `target`, with their sizes in px. */
  small: string[];
  /** Words with less contrast than wanted. */
  faint: string[];
  /** Words set smaller than `least`. */
  tiny: string[];
}

/** What is wanted of a page. */
export interface Wanted {
  /** Least width and height of a control, px. */
  target: number;
  /** Least contrast of words. */
  contrast: number;
  /** Least size of type, px; 0: any. */
  least: number;
  /** Boxes that may scroll, as a selector. */
  scrolls: string;
}

export function measure(wanted: Wanted): Measured {
  const found: Measured = { overflow: [], cut: [], overlap: [], small: [], faint: [], tiny: [] };
  const name = (e: Element): string => `${e.tagName.toLowerCase()}${e.getAttribute("data-id") ? `[${e.getAttribute("data-id")}]` : ""} "${(e.textContent ?? "").trim().replace(/\s+/g, " ").slice(0, 40)}"`;
  const shown = (e: Element): boolean => {
    const box = e.getBoundingClientRect();
    const style = getComputedStyle(e);
    // What stands in closed details has a box and is not drawn.
    return box.width > 1 && box.height > 1 && e.checkVisibility() && style.visibility !== "hidden" && !e.closest(".unseen");
  };
  const dialog = document.querySelector("dialog[open]");
  const root: Element = dialog ?? document.body;
  const scroller = (e: Element): Element | null => {
    for (let at: Element | null = e; at; at = at.parentElement) if (wanted.scrolls && at.matches(wanted.scrolls)) return at;
    return null;
  };

  // The page as a whole, and every box that hides or scrolls what does not fit.
  const all = [...root.querySelectorAll("*")].filter((e) => !(e instanceof SVGElement));
  for (const e of [document.documentElement, ...all]) {
    const style = getComputedStyle(e);
    if (!shown(e) || scroller(e) === e || e instanceof HTMLTextAreaElement) continue;
    const hides = style.overflowX !== "visible" || style.overflowY !== "visible" || e === document.documentElement;
    if (hides && (e.scrollHeight > e.clientHeight + 1 || e.scrollWidth > e.clientWidth + 1)) {
      found.overflow.push(`${name(e)} by ${e.scrollWidth - e.clientWidth} x ${e.scrollHeight - e.clientHeight}`);
    }
  }

  // Every run of words: inside the window and inside all boxes that clip it.
  const words: { text: string; box: DOMRect; owner: Element }[] = [];
  const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const owner = node.parentElement;
    const text = (node.textContent ?? "").trim();
    if (!owner || text === "" || !shown(owner) || owner.closest("option, style, script, noscript")) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const box = range.getBoundingClientRect();
    if (box.width < 1) continue;
    if (!scroller(owner)) {
      if (box.left < -1 || box.top < -1 || box.right > innerWidth + 1 || box.bottom > innerHeight + 1) found.cut.push(`${text.slice(0, 40)} leaves the window`);
      for (let at: Element | null = owner; at && at !== document.body; at = at.parentElement) {
        const style = getComputedStyle(at);
        if (style.overflowX === "visible" && style.overflowY === "visible") continue;
        if (at instanceof SVGElement) continue;
        const edge = at.getBoundingClientRect();
        if (box.left < edge.left - 1 || box.top < edge.top - 1 || box.right > edge.right + 1 || box.bottom > edge.bottom + 1) {
          found.cut.push(`${text.slice(0, 40)} in ${name(at).slice(0, 30)}`);
          break;
        }
      }
    }
    const control = owner.closest("button, label, .button")?.getBoundingClientRect();
    if (control && (box.left < control.left - 1 || box.right > control.right + 1)) found.cut.push(`${text.slice(0, 40)} reaches beyond its control`);
    words.push({ text, box, owner });

    const size = parseFloat(getComputedStyle(owner).fontSize) * (owner instanceof SVGElement ? ((owner.ownerSVGElement?.getScreenCTM()?.a ?? 1)) : 1);
    if (wanted.least > 0 && size < wanted.least - 0.01) found.tiny.push(`${text.slice(0, 40)}: ${size.toFixed(2)} px of ${wanted.least.toFixed(2)}`);
  }

  // Words over words. Rows of one paragraph are one run; a half-transparent pixel at an edge is no overlap.
  const lines = words.flatMap(({ text, owner }) => {
    const range = document.createRange();
    range.selectNodeContents(owner);
    return [...range.getClientRects()].filter((r) => r.width > 2 && r.height > 2).map((r) => ({ text, owner, r }));
  });
  // From the top down, so that each is held only against those that begin before it ends: a record has thousands.
  lines.sort((a, b) => a.r.top - b.r.top);
  for (let i = 0; i < lines.length; i += 1) {
    for (let j = i + 1; j < lines.length; j += 1) {
      const [a, b] = [lines[i]!, lines[j]!];
      if (b.r.top > a.r.bottom) break;
      if (scroller(a.owner) !== scroller(b.owner) || a.owner === b.owner || a.owner.contains(b.owner) || b.owner.contains(a.owner)) continue;
      const across = Math.min(a.r.right, b.r.right) - Math.max(a.r.left, b.r.left);
      const down = Math.min(a.r.bottom, b.r.bottom) - Math.max(a.r.top, b.r.top);
      // A line's box is taller than its letters: a third of the lower one may be shared.
      if (across > 2 && down > 0.34 * Math.min(a.r.height, b.r.height)) found.overlap.push(`${a.text.slice(0, 30)} / ${b.text.slice(0, 30)}`);
    }
  }

  // Controls: size, and not over one another.
  const controls = [...root.querySelectorAll<HTMLElement>("button, input, select, textarea, a, summary, [role=slider]")]
    .filter(shown)
    .map((e) => ({ e, box: (e.matches("input[type=radio], input[type=checkbox]") ? (e.closest("label") ?? e) : (e.querySelector(".hold") ?? e)).getBoundingClientRect() }));
  controls.sort((a, b) => a.box.top - b.box.top);
  for (const { e, box } of controls) {
    if (Math.min(box.width, box.height) < wanted.target - 0.5) found.small.push(`${name(e)}: ${box.width.toFixed(0)} x ${box.height.toFixed(0)}`);
  }
  for (let i = 0; i < controls.length; i += 1) {
    for (let j = i + 1; j < controls.length; j += 1) {
      const [a, b] = [controls[i]!, controls[j]!];
      if (b.box.top > a.box.bottom) break;
      if (a.e.contains(b.e) || b.e.contains(a.e) || scroller(a.e) !== scroller(b.e)) continue;
      const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
      const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
      if (across > 1 && down > 1 && !(a.e.getAttribute("role") === "slider" || b.e.getAttribute("role") === "slider")) found.overlap.push(`${name(a.e)} / ${name(b.e)}`);
    }
  }

  // Contrast of every run of words with what is drawn behind it.
  const rgba = (css: string): [number, number, number, number] => {
    const numbers = (css.match(/[\d.]+/g) ?? []).map(Number);
    return [numbers[0] ?? 0, numbers[1] ?? 0, numbers[2] ?? 0, numbers.length > 3 ? (numbers[3] ?? 1) : 1];
  };
  const luminance = ([r, g, b]: number[]): number => {
    const part = (v: number): number => ((v /= 255) <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
    return 0.2126 * part(r ?? 0) + 0.7152 * part(g ?? 0) + 0.0722 * part(b ?? 0);
  };
  for (const { text, owner } of words) {
    const style = getComputedStyle(owner);
    const ink = rgba(owner instanceof SVGElement ? style.fill : style.color);
    let ground = [255, 255, 255];
    for (let at: Element | null = owner; at; at = at.parentElement) {
      const colour = rgba(getComputedStyle(at).backgroundColor);
      if (colour[3] > 0.99) {
        ground = colour.slice(0, 3);
        break;
      }
    }
    const [low, high] = [luminance(ink), luminance(ground)].sort((x, y) => x - y) as [number, number];
    const contrast = (high + 0.05) / (low + 0.05);
    if (contrast < wanted.contrast - 0.01) found.faint.push(`${text.slice(0, 40)}: ${contrast.toFixed(2)}`);
  }
  return found;
}
