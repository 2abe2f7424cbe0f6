/** Checks one rule's studio standard and keeps what differs from the rule's own values. */
import * as z from "zod/mini";
import { sameData } from "#lib/plan/same-data.ts";
import { type Standards, standardSchema } from "#lib/plan/schema.ts";
import { badLimits } from "./bad-limits.ts";
import type { AnyRule } from "./define/types.ts";

export type StudioStandard = Standards[string];
export const studioStandardSchema = standardSchema;

export type StandardCheck =
  /** Null when nothing differs from the rule's own values. */
  | { readonly ok: true; readonly standard: StudioStandard | null }
  | { readonly ok: false; readonly limit: string | null; readonly say: string };

/** Checks the limits against the rule's schema and leaves out values that equal the rule's own. */
export function checkStandard(rule: AnyRule, wanted: StudioStandard): StandardCheck {
  const read = rule.limits.safeParse(wanted.limits ?? {});
  if (!read.success) return refused(rule, wanted, read.error);
  const usual: Readonly<Record<string, unknown>> = rule.limits.parse({});
  const limits = Object.fromEntries(
    Object.entries(read.data).filter(([name, value]) => value !== undefined && !sameData(value, usual[name])),
  );
  const standard = {
    ...(wanted.level === undefined ? {} : { level: wanted.level }),
    ...(Object.keys(limits).length === 0 ? {} : { limits }),
  };
  return { ok: true, standard: Object.keys(standard).length === 0 ? null : standard };
}

function refused(rule: AnyRule, wanted: StudioStandard, error: z.core.$ZodError): StandardCheck {
  const [first] = badLimits(rule, wanted.limits);
  const name = first?.path[3];
  const problem = first?.problem ?? z.prettifyError(error);
  const limit = typeof name === "string" ? name : null;
  return { ok: false, limit, say: limit === null ? `The limits ${problem}.` : `The limit ${limit} ${problem}.` };
}
