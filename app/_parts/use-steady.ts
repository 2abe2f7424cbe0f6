/** Values by name that stay the same object for as long as they say the same: a plate is drawn again only when something in it did. */
import { useState } from "react";
import { sameData } from "#lib/plan/same-data.ts";

export type Steady = <T>(name: string, value: T) => T;

export function useSteady(): Steady {
  const [kept] = useState(() => new Map<string, unknown>());
  return <T>(name: string, value: T): T => {
    const before = kept.get(name) as T | undefined; // written below, by the one caller that has this map
    if (before !== undefined && sameData(before, value)) return before;
    kept.set(name, value);
    return value;
  };
}
