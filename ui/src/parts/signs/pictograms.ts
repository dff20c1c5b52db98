/**
 * Pictograms of the hazards, in the sense of the warning signs of ISO 7010 and drawn by us: what hurts, and what it does.
 * Each stands in a triangle of 48 by 44, between 12 and 36 across and 16 and 38 down. Lines are 2.4 wide.
 */
export interface Pictogram {
  /** Filled shapes. */
  fill?: string;
  /** Lines. */
  line?: string;
}

const CAR = "M14.5 27 l2.5-5 h12 l4 5 h2.5 v5 h-3.2 a2.6 2.6 0 0 0-5.2 0 h-6.6 a2.6 2.6 0 0 0-5.2 0 h-3.3 v-5z";
const LYING = "M16.2 33.6 a2.1 2.1 0 1 1 .1 0z";
const NUT = "M24 18.5 l7 4 v8 l-7 4 -7-4 v-8z M24 22.7 a3.8 3.8 0 1 0 .01 0z";
const STANDING = "M24 17 a2.4 2.4 0 1 1-.01 0z M20.5 23 h7 v8 h-1.8 v6.5 h-3.4 v-6.5 h-1.8z";

const PICTOGRAMS: Record<string, Pictogram> = {
  "raised-vehicle": { fill: `M14 18 h20 v6.5 h-20z M18.5 34.6 h16 v3 h-16z M22 25.5 h4 v3 h2.6 l-4.6 4.4 -4.6-4.4 h2.6z ${LYING}` },
  "lowering": { fill: "M15 17 h18 v4 h-18z M22 22 h4 v5 h3.4 l-5.4 5.4 -5.4-5.4 h3.4z M13 34.4 h22 v3 h-22z" },
  "crush-low": { fill: "M13 22 h22 v4 h-22z M13 35 h22 v3 h-22z M15 29 h9.5 l4-1.6 v5.6 l-4-1.6 h-9.5z" },
  "people-aboard": { fill: "M25 17.6 a2.6 2.6 0 1 1-.01 0z M21.4 23.4 h5.4 l1 6.4 h5 v7.6 h-3.2 v-4.4 h-6.8z", line: "M17.4 22 l2.4 13.6 h6" },
  "high-voltage": { fill: "M26.5 15.5 l-8.5 12 h5 l-3.4 10.2 10-13 h-5.4 l4.4-9.2z" },
  "balance-shift": { fill: "M24 29.5 l5 8.2 h-10z M29.5 18 l5.6 2.4 -2.6 6 -5.6-2.4z", line: "M13 24.5 L35 33.4" },
  "self-levelling": { fill: "M24 16.4 l5 5.2 h-10z M24 38 l5-5.2 h-10z", line: "M24 20 v14 M14 27 h5 M29 27 h5" },
  "stored-spring": { fill: "M31 16.4 l4.6 5 h-9.2z", line: "M31 21 v5 M15 35 h14 M15 31.5 l13-2.4 M15 28 l13-2.4 M15 24.5 l9-1.6" },
  "wound-bar": { fill: "M36 25.6 l-6.6 1.4 2.6-6.4z", line: "M13.5 37 h13 c4 0 5.6-4 4.4-9 M13.5 33.5 v4.4 M17 30 a8 8 0 0 1 13-4.6" },
  "pinch": { fill: "M13 20 h22 v4.6 h-22z M13 33 h22 v4.6 h-22z M14 27.2 h8.6 l2.6 1.6 6-.4 v2 l-6 .4 -2.6-.6 h-8.6z" },
  "loose-nuts": { fill: NUT, line: "M33.5 19.5 a12 12 0 0 1 1.6 9" },
  "loose-fasteners": { fill: "M16.5 19 h15 v5 h-15z M21 25.5 h6 v12 h-6z", line: "M19.5 29 l9-2 M19.5 33 l9-2" },
  "fuel-fire": { fill: "M24 15.5 c1.4 5.4 8 7.6 7.4 14.4 a7.4 7.4 0 0 1-14.8 0 c0-3 1.8-4.4 2.8-7 1.6 1.2 2 2.6 2 4.2 2.4-2.8 3-6.6 2.6-11.6z M14 36.2 h20 v1.8 h-20z" },
  "airbag-seat": { fill: "M19.4 18.4 a2.5 2.5 0 1 1-.01 0z M30.6 21 a6 6 0 1 1-.01 0z M16.4 24 h4.8 l1 5.6 4 .4 v3 h-7.6 l-2.2-3.4z" },
  "moving-car": { fill: CAR, line: "M13 36.6 h22 M11.4 24.6 h2.6" },
  "road-test": { fill: "M21.6 17 h4.8 l6.8 20.6 h-18.4z M23.5 19 h1 l.3 4.4 h-1.6z M23 26 h2 l.3 4.6 h-2.6z M22.4 33 h3.2 l.3 4.6 h-3.8z" },
  "parking-brake": { fill: "M27.4 20 h7 v14.6 h-7z", line: "M21.5 18.6 a8.6 8.6 0 1 0 0 17.2 M23.4 27.2 h3" },
  "platform-fall": { fill: `M12.5 31 h13 v7 h-13z M29 20.6 a2.3 2.3 0 1 1-.01 0z`, line: "M28 24.6 l-3.4 5.4 4.4 1 M29 25 l4 4 M26 33 l4.6 4.4" },
  "extinguisher": { fill: "M20 24 h8 a1.6 1.6 0 0 1 1.6 1.6 v12.4 h-11.2 v-12.4 a1.6 1.6 0 0 1 1.6-1.6z", line: "M24 24 v-4.4 M20 19.4 h8 M28 20 c5 .4 6 3.4 6 6.6" },
  "hot-parts": { fill: "M13.4 34 h21.2 v3.6 h-21.2z", line: "M18 31 c-2.4-4 2.4-5.4 0-10 M24 31 c-2.4-5 2.4-7 0-12 M30 31 c-2.4-4 2.4-5.4 0-10" },
  "trip": { fill: "M28.4 18.6 a2.3 2.3 0 1 1-.01 0z M31.4 34 h4 v4 h-4z", line: "M27 22.6 l-4.4 7 -6.4 1.4 M22.6 29.6 l5.2 2.6 1 4 M27 23 l5.6 1.6 M13 38 h13" },
  "laser": { fill: "M31 23.6 l1.2 3 3-1 -1.6 2.8 2.4 2 -3.2.4 .2 3.2 -2.4-2.2 -2.2 2.4 -.2-3.2 -3.2-.4 2.4-2 -1.6-2.8 3 1z", line: "M12.5 28.8 h14" },
  "lifting-weight": { fill: "M17.6 31 h12.8 v7 h-12.8z M24 16.6 a2.3 2.3 0 1 1-.01 0z", line: "M24 21.4 v5 M24 22.4 l-5 4.6 v4 M24 22.4 l5 4.6 v4" },
};

/** The pictogram of a hazard; of one that has none yet, the general one: somebody, and a stroke over them. */
export function pictogramOf(id: string): Pictogram {
  return PICTOGRAMS[id] ?? { fill: STANDING };
}

/** The hazards that have one of their own. */
export const DRAWN: string[] = Object.keys(PICTOGRAMS);
