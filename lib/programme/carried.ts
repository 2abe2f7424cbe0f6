/**
 * What came with an imported file and is not the studio's: rooms, coaches and plans that it does not know, and the classes of the
 * days before. They are kept, shown as such, and exported again. Only the server writes here.
 */

import type * as Y from "yjs";
import * as z from "zod/mini";
import { type ById, COACH_ROLES, type MonthPlan, type MonthRoom, type MonthSlot } from "#lib/month/types.ts";
import { GROUPS } from "#lib/plan/schema.ts";
import { DOT } from "./layout.ts";
import { idOf } from "./values.ts";

export interface CarriedCoach {
  readonly name: string;
  readonly roles: readonly (typeof COACH_ROLES)[number][];
}

export interface CarriedParts {
  readonly rooms: ById<MonthRoom>;
  readonly coaches: ById<CarriedCoach>;
  readonly plans: ById<MonthPlan>;
  /** Classes of the days before the month, and the first of those days. */
  readonly earlier?: EarlierClasses;
}

export interface EarlierClasses {
  /** 'YYYY-MM-DD', at most 28 days before the month. */
  readonly known: string;
  readonly slots: readonly MonthSlot[];
}

const amounts = z.record(z.string(), z.number());
const room = z.object({ name: z.string(), machines: z.number(), equipment: z.string() });
const coach = z.object({ name: z.string(), roles: z.array(z.enum(COACH_ROLES)) });
const unknownPlan = z.object({ title: z.string(), known: z.literal(false) });
const knownPlan = z.object({
  title: z.string(),
  known: z.optional(z.literal(true)),
  seconds: z.number(),
  signed: z.boolean(),
  edition: z.optional(z.number()),
  sha256: z.optional(z.string()),
  equipment: z.string(),
  groups: z.partialRecord(z.enum(GROUPS), z.number()),
  moves: amounts,
  push: z.number(),
  pull: z.number(),
  metMinutes: z.number(),
  talkSeconds: z.number(),
});
const slot = z.looseObject({ id: z.string(), date: z.string(), start: z.string(), minutes: z.number() });
const earlierSchema = z.object({ known: z.string(), slots: z.array(slot) });

const KINDS = { room, coach, plan: z.union([unknownPlan, knownPlan]) } as const;

export const carriedKey = (kind: keyof typeof KINDS, id: string): string => kind + DOT + id;
export const EARLIER = "earlier";

/** A damaged entry is skipped. */
export function readCarriedParts(map: Y.Map<unknown>): CarriedParts {
  const of = <T>(kind: keyof typeof KINDS, schema: z.ZodMiniType<T>): Record<string, T> => {
    const start = carriedKey(kind, "");
    const found: [string, T][] = [];
    for (const [key, value] of map) {
      const parsed = key.startsWith(start) ? schema.safeParse(value) : undefined;
      if (parsed?.success && idOf(key.slice(start.length)) !== undefined)
        found.push([key.slice(start.length), parsed.data]);
    }
    return Object.fromEntries(found.sort(([a], [b]) => (a < b ? -1 : 1)));
  };
  const earlier = earlierSchema.safeParse(map.get(EARLIER));
  return {
    rooms: of("room", room),
    coaches: of("coach", coach),
    plans: of("plan", KINDS.plan) as Record<string, MonthPlan>,
    ...(earlier.success ? { earlier: earlier.data as EarlierClasses } : {}),
  };
}
