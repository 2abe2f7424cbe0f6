/** How varied the moves of some classes are. */
import type { MonthClass, Variety } from "../sums-types.ts";
import { planWork } from "./plan-work.ts";

/** `effective`: as many moves as if all took equally long, the inverse Simpson index (Hill number of order 2: from memory). */
export function varietyOf(classes: readonly MonthClass[]): Variety {
  const seconds = new Map<string, number>();
  for (const { plan } of classes) {
    if (!plan) continue;
    for (const move of planWork(plan).moves) seconds.set(move.id, (seconds.get(move.id) ?? 0) + move.seconds);
  }
  let total = 0;
  for (const s of seconds.values()) total += s;
  let squares = 0;
  for (const s of seconds.values()) squares += (s / total) ** 2;
  return { distinct: seconds.size, effective: seconds.size > 0 ? 1 / squares : null };
}
