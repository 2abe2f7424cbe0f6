/**
 * Plain JSON values stored whole in a document. Any writer may have put anything there, so they are checked on reading.
 */
import type { z } from "zod/mini";

/** A copy of the value when the schema accepts it, else undefined: like every value of a wrong type it is skipped. */
export function stored<T>(schema: z.ZodMiniType<T>, value: unknown): T | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  const parsed = schema.safeParse(value);
  return parsed.success ? structuredClone(parsed.data) : undefined;
}
