/** A finding as it stands in a server's answer. */
import * as z from "zod/mini";
import { FINDING_LEVELS } from "#lib/plan/schema.ts";

export const findingSchema = z.object({
  rule: z.string(),
  level: z.enum(FINDING_LEVELS),
  items: z.array(z.string()),
  message: z.string(),
  values: z.record(z.string(), z.unknown()),
  key: z.optional(z.string()),
});
