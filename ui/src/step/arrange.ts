/** How the fields of a step stand: alone, side by side, or as a table with the corners as rows. */
import type { CornerCode } from "../generated/CornerCode";
import type { Display } from "../generated/Display";
import type { Entry } from "../generated/Entry";
import type { Field } from "../generated/Field";

/** A row of a table: a corner, or an axle. */
export type Row = CornerCode | "front" | "rear";

/** The order of rows. */
export const ROWS: Row[] = ["front", "rear", "FL", "FR", "RL", "RR"];

/** At most this many columns stand side by side; more make a further table. */
export const COLUMNS = 4;

/** One column: what is asked for at each corner, or at each axle. */
export interface Column {
  title: string;
  /** Fields by row; a row may have several. */
  cells: Partial<Record<Row, Field[]>>;
  /** All of them, in order. */
  fields: Field[];
}

/** Fields that stand side by side (one field stands alone), or a table. */
export type Block = { kind: "fields"; fields: Field[] } | { kind: "table"; rows: Row[]; columns: Column[] };

/** The row that a field stands in: its corner, or for a number of an axle that axle; null: it stands alone. */
function rowOf(field: Field): Row | null {
  if (field.group === null) return null;
  if (field.corner !== null) return field.corner;
  if (field.kind.kind !== "number") return null;
  const suffix = field.key.split(".")[1];
  return suffix === "front" || suffix === "rear" ? suffix : null;
}

/**
 * Fields with a row and a group go into tables, corners and axles apart, where the first of them stands. Others of one
 * group, such as the choices of the two axles, stand side by side; all others stand alone.
 */
export function arrange(fields: Field[]): Block[] {
  const blocks: Block[] = [];
  const found: Record<"corners" | "axles", { columns: Column[]; at: Block | null }> = {
    corners: { columns: [], at: null },
    axles: { columns: [], at: null },
  };
  const axles = new Set(fields.filter((field) => field.corner === null && rowOf(field) !== null).map((field) => field.group));
  for (const field of fields) {
    // One number of both axles alone needs no table.
    const row = field.corner === null && axles.size < 2 ? null : rowOf(field);
    if (row === null || field.group === null) {
      const before = blocks.at(-1);
      if (before?.kind === "fields" && field.group !== null && before.fields[0]?.group === field.group) before.fields.push(field);
      else blocks.push({ kind: "fields", fields: [field] });
      continue;
    }
    const table = found[field.corner === null ? "axles" : "corners"];
    if (table.at === null) {
      table.at = { kind: "table", rows: [], columns: [] };
      blocks.push(table.at);
    }
    let column = table.columns.find((c) => c.title === field.group);
    if (column === undefined) {
      column = { title: field.group, cells: {}, fields: [] };
      table.columns.push(column);
    }
    (column.cells[row] ??= []).push(field);
    column.fields.push(field);
  }
  for (const { columns, at } of Object.values(found)) {
    if (at !== null) blocks.splice(blocks.indexOf(at), 1, ...tables(columns));
  }
  return blocks;
}

/** As few tables as hold the columns, with the columns shared out evenly. */
function tables(columns: Column[]): Block[] {
  const each = Math.ceil(columns.length / Math.ceil(columns.length / COLUMNS));
  const blocks: Block[] = [];
  for (let from = 0; from < columns.length; from += each) {
    const part = columns.slice(from, from + each);
    const rows = ROWS.filter((row) => part.some((column) => column.cells[row] !== undefined));
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

/** Letters that the cards of a choice hold together in half the width of the window. */
const ROOM = 60;

/** True for a choice whose cards need the whole width: many words. */
export function needsRoom(field: Field): boolean {
  return field.kind.kind === "choice" && field.kind.options.reduce((letters, option) => letters + option.label.length, 0) > ROOM;
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

/** The fields that belong to the step as it is answered so far. */
export function asked(fields: Field[], entries: Record<string, Entry>): Field[] {
  return fields.filter(({ only_with: only }) => only === null || only.options.includes(entries[only.key]?.text ?? ""));
}

/** The choice of a place on the trade line: its field, its option, and the field that holds the place. */
export function placeChoice(fields: Field[]): { field: Field; option: string; place: Field } | null {
  const place = fields.find((field) => field.only_with !== null && field.kind.kind === "number");
  const field = fields.find((one) => one.key === place?.only_with?.key);
  const option = place?.only_with?.options[0];
  return place && field && option !== undefined ? { field, option, place } : null;
}

/** The first field without an answer, or null. */
export function firstOpen(fields: Field[], entries: Record<string, Entry>): Field | null {
  return asked(fields, entries).find((field) => !isAnswered(entries[field.key])) ?? null;
}

/** Code of the unit that is preset for a field; null where there is none. */
export function presetUnit(field: Field): string | null {
  return field.kind.kind === "number" ? (field.kind.units[0]?.code ?? null) : null;
}
