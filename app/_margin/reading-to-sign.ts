/** What the server shows a lead before a sign-off, read from its answer. */
import * as z from "zod/mini";
import type { Formats } from "#lib/formats/formats.ts";
import { itemSchema, type Plan, planSchema } from "#lib/plan/schema.ts";
import { planChanges } from "#lib/plan-diff/plan-changes.ts";
import { findingSchema } from "#lib/protocol/finding.ts";

const fromFileSchema = z.object({
  kind: z.enum(["machines", "move", "stranger"]),
  name: z.string(),
  differences: z.array(z.object({ label: z.string(), plan: z.string(), studio: z.string() })),
});
const blockerSchema = z.object({
  code: z.string(),
  message: z.string(),
  /** `mayAllow`: this person may change what prevents it. */
  details: z.catch(z.optional(z.object({ mayAllow: z.optional(z.boolean()) })), undefined),
});
/** One change in a sentence. */
const changeSchema = z.pipe(
  z.string(),
  z.transform((message) => ({ message })),
);

export const readingToSignSchema = z.object({
  hash: z.string(),
  /** Null for an incomplete plan, whose blockers say what is missing. */
  plan: z.catch(z.nullable(planSchema), null),
  findings: z.array(findingSchema),
  blockers: z.array(blockerSchema),
  fromFile: z.array(fromFileSchema),
  lookAgain: z.array(findingSchema),
  /** What the changes are told from. */
  since: z.optional(z.object({ kind: z.string(), byId: z.string(), byName: z.string() })),
  changedSince: z.optional(z.array(changeSchema)),
  /** The items as they were when this person last read the plan; without them nothing is marked. */
  itemsRead: z.catch(z.optional(z.array(itemSchema)), undefined),
  nextEdition: z.int(),
});
export type ReadingToSign = z.infer<typeof readingToSignSchema>;

const refusalSchema = z.object({
  changes: z.optional(z.array(changeSchema)),
  blockers: z.optional(z.array(blockerSchema)),
});

/**
 * What this page's plan has that the reading has not. Machines, standards and moves are the server's in both: a page may have them in
 * another form.
 */
export function sinceRead(read: Plan | null, now: Plan, f: Formats): { readonly message: string }[] {
  if (read === null) return [];
  const { equipment, standards, moves } = read;
  const { standards: _own, ...rest } = now;
  const same = { ...rest, equipment, moves: { ...now.moves, ...moves }, ...(standards ? { standards } : {}) };
  return planChanges({ ...read, moves: same.moves }, same, f).map((message) => ({ message }));
}

/** From a refused sign-off: what changed, or what prevents it. */
export function refusalOf(details: unknown): z.infer<typeof refusalSchema> {
  const parsed = refusalSchema.safeParse(details);
  return parsed.success ? parsed.data : {};
}
