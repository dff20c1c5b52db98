/** How the fields of a step stand: alone, side by side, or as a table with the corners as rows. */
import type { CornerCode } from "../generated/CornerCode";
import type { Display } from "../generated/Display";
import type { Entry } from "../generated/Entry";
import type { Field } from "../generated/Field";

/** The order of rows. */
export const CORNERS: CornerCode[] = ["FL", "FR", "RL", "RR"];

/** At most this many columns stand side by side; more make a further table. */
export const COLUMNS = 4;

/** One column: what is asked for at each corner. */
export interface Column {
  title: string;
  /** Fields by corner; a corner may have several. */
  cells: Partial<Record<CornerCode, Field[]>>;
  /** All of them, in order. */
  fields: Field[];
}

/** Fields that stand side by side (one field stands alone), or a table. */
export type Block = { kind: "fields"; fields: Field[] } | { kind: "table"; rows: CornerCode[]; columns: Column[] };

/**
 * Fields with a corner and a group go into tables, where the first of them stands. Others of one group, such as those
 * of the two axles, stand side by side; all others stand alone.
 */
export function arrange(fields: Field[]): Block[] {
  const blocks: Block[] = [];
  const columns: Column[] = [];
  let at: number | null = null;
  for (const field of fields) {
    if (field.corner === null || field.group === null) {
      const before = blocks.at(-1);
      if (before?.kind === "fields" && field.group !== null && before.fields[0]?.group === field.group) before.fields.push(field);
      else blocks.push({ kind: "fields", fields: [field] });
      continue;
    }
    at ??= blocks.length;
    let column = columns.find((c) => c.title === field.group);
    if (column === undefined) {
      column = { title: field.group, cells: {}, fields: [] };
      columns.push(column);
    }
    (column.cells[field.corner] ??= []).push(field);
    column.fields.push(field);
  }
  if (at !== null) blocks.splice(at, 0, ...tables(columns));
  return blocks;
}

/** As few tables as hold the columns, with the columns shared out evenly. */
function tables(columns: Column[]): Block[] {
  const each = Math.ceil(columns.length / Math.ceil(columns.length / COLUMNS));
  const blocks: Block[] = [];
  for (let from = 0; from < columns.length; from += each) {
    const part = columns.slice(from, from + each);
    const rows = CORNERS.filter((corner) => part.some((column) => column.cells[corner] !== undefined));
    blocks.push({ kind: "table", rows, columns: part });
  }
  return blocks;
}

/** What all fields of a column say alike, or null when they differ. */
export function alike(column: Column, of: (field: Field) => string | null): string | null {
  const first = column.fields[0];
  if (first === undefined) return null;
  const text = of(first);
  return column.fields.every((field) => of(field) === text) ? text : null;
}

/** True for a choice whose cards need room: long words, or words about what would follow. */
export function needsRoom(field: Field): boolean {
  return field.kind.kind === "choice" && field.kind.options.some((option) => option.follows !== null || option.label.length > 24);
}

/** Displays that belong to a field. */
export function displaysOf(displays: Display[], key: string): Display[] {
  return displays.filter((display) => display.key === key);
}

/** Displays that belong to no field of the step. */
export function looseDisplays(displays: Display[], fields: Field[]): Display[] {
  return displays.filter((display) => !fields.some((field) => field.key === display.key));
}

/** How many looks stand in a text: words between blanks. */
export function looksIn(text: string): number {
  return text.split(/\s+/).filter((look) => look !== "").length;
}

/** True when something is entered for a field. */
export function isAnswered(entry: Entry | undefined): boolean {
  return entry !== undefined && entry.text.trim() !== "";
}

/** The first field without an answer, or null. */
export function firstOpen(fields: Field[], entries: Record<string, Entry>): Field | null {
  return fields.find((field) => !isAnswered(entries[field.key])) ?? null;
}

/** Code of the unit that is preset for a field; null where there is none. */
export function presetUnit(field: Field): string | null {
  return field.kind.kind === "number" ? (field.kind.units[0]?.code ?? null) : null;
}
