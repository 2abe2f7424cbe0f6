/** Plain JSON values kept whole in a document. Any writer may have put anything there, so they are checked on reading. */
import type { z } from "zod/mini";

/** The value when the schema accepts it, else undefined: as with every value of a wrong type, reading passes it over. A copy. */
export function stored<T>(schema: z.ZodMiniType<T>, value: unknown): T | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  const parsed = schema.safeParse(value);
  return parsed.success ? structuredClone(parsed.data) : undefined;
}
