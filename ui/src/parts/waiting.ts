/** What is left of a wait. */
import type { TimerView } from "../generated/TimerView";

/** Whole seconds left, never below 0, and as minutes and seconds. `nowMs`: ms since 1970 UTC. */
export function leftOf(timer: TimerView, nowMs: number): { seconds: number; text: string } {
  const left = Math.ceil(timer.seconds - (nowMs - timer.began_ms) / 1000);
  // A clock that was set back never makes the wait longer than it is.
  const seconds = Math.min(Math.max(left, 0), timer.seconds);
  return { seconds, text: `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}` };
}
