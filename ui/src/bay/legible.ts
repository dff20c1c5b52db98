/** From the size of a capital in millimetres, which the program asks for, to a size of type in pixels. */

/** Height of a capital of the typeface, in sizes of its type (its OS/2 table: 668 of 1000). */
export const CAPITAL = 0.668;

/** The size of type on a screen, px, at which capitals are at least as high as the view asks for. */
export function typeSize(view: { capital_mm: number; diagonal_mm: number }, screen: { width: number; height: number }): number {
  const pxPerMm = Math.hypot(screen.width, screen.height) / view.diagonal_mm;
  return (view.capital_mm * pxPerMm) / CAPITAL;
}
