"use client";
/** Which group is lit, in the figure and in the words: what is pointed at, else what was pressed last. */
import { useState } from "react";
import type { Group } from "#lib/plan/schema.ts";

export interface Light {
  readonly lit: Group | null;
  readonly held: Group | null;
  /** Points at a group, or at none. */
  readonly point: (group: Group | null) => void;
  /** Keeps a group lit until it is pressed again. */
  readonly press: (group: Group) => void;
}

export function useLight(): Light {
  const [over, point] = useState<Group | null>(null);
  const [held, setHeld] = useState<Group | null>(null);
  const press = (group: Group) => setHeld((before) => (before === group ? null : group));
  return { lit: over ?? held, held, point, press };
}
