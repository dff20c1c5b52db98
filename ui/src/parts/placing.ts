/** Where labels beside a line may stand without covering one another. Lengths are in the drawing's own units. */

/** A label that wishes to stand centred over a place. */
export interface Wanted {
  /** Centre wished for. */
  x: number;
  text: string;
  /** Set in the bold weight, which is wider. */
  strong: boolean;
}

/** Where it stands: its centre, and its row counted from the line outwards. */
export interface Placed {
  x: number;
  row: number;
}

/** Advance of a letter of the typeface, in type sizes: narrow ones, wide ones, the others; and how much wider the bold is. */
const NARROW = "ijlftrI.,:;'’ -()";
const WIDE = "mwMW";
const ADVANCE = { narrow: 0.31, wide: 0.84, other: 0.545, bold: 1.07 };

/** Estimated width of a label, rather too wide than too narrow. */
export function widthOf(text: string, size: number, strong: boolean): number {
  const advance = (letter: string): number => (NARROW.includes(letter) ? ADVANCE.narrow : WIDE.includes(letter) ? ADVANCE.wide : ADVANCE.other);
  return [...text].reduce((sum, letter) => sum + advance(letter), 0) * size * (strong ? ADVANCE.bold : 1);
}

/**
 * Places labels inside 0 to `width`, each in the innermost row where it covers no other. Those that are not strong
 * come first, so that the strong one steps outwards and stands free.
 */
export function placeLabels(labels: Wanted[], width: number, size: number): Placed[] {
  const gap = size * 0.6;
  const rows: { from: number; to: number }[][] = [];
  const placed: Placed[] = labels.map((label) => ({ x: label.x, row: 0 }));
  const order = labels.map((_, i) => i).sort((a, b) => Number(labels[a]?.strong) - Number(labels[b]?.strong));
  for (const i of order) {
    const label = labels[i];
    const place = placed[i];
    if (label === undefined || place === undefined) continue;
    const half = widthOf(label.text, size, label.strong) / 2;
    place.x = Math.min(Math.max(label.x, half), Math.max(half, width - half));
    const [from, to] = [place.x - half - gap / 2, place.x + half + gap / 2];
    while ((rows[place.row] ?? []).some((other) => from < other.to && other.from < to)) place.row += 1;
    (rows[place.row] ??= []).push({ from, to });
  }
  keepOffStems(labels, placed, width, size);
  return placed;
}

/**
 * A label that steps outwards is joined to its place by a stem; those in the rows that it crosses move aside, to the other
 * side where the drawing ends.
 */
function keepOffStems(labels: Wanted[], placed: Placed[], width: number, size: number): void {
  for (const [i, outer] of placed.entries()) {
    const stem = labels[i]?.x;
    if (outer.row === 0 || stem === undefined) continue;
    for (const [j, inner] of placed.entries()) {
      const label = labels[j];
      if (inner.row >= outer.row || label === undefined) continue;
      const half = widthOf(label.text, size, label.strong) / 2;
      const reach = half + size * 0.25;
      if (Math.abs(inner.x - stem) >= reach) continue;
      const before = stem + reach + half > width || (inner.x < stem && stem - reach - half >= 0);
      inner.x = stem + (before ? -reach : reach);
    }
  }
}

/** Where a key moves a place on the line: arrows finely, page keys coarsely, home and end to its ends; null: nowhere. */
export function moved(at: number, event: { key: string; shiftKey: boolean }): number | null {
  const fine = event.shiftKey ? 0.025 : 0.005;
  const by: Record<string, number> = { ArrowLeft: -fine, ArrowDown: -fine, ArrowRight: fine, ArrowUp: fine, PageDown: -0.1, PageUp: 0.1 };
  if (event.key === "Home") return 0;
  if (event.key === "End") return 1;
  const step = by[event.key];
  return step === undefined ? null : Math.min(Math.max(at + step, 0), 1);
}
