/** Plain JSON values kept whole in a document. Any writer may have put anything there, so they are checked on reading. */
import type { z } from "zod";

const checked = new WeakMap<object, WeakMap<z.ZodType, { value: unknown }>>();

/**
 * The value when the schema accepts it, else undefined: as with every value of a wrong type, reading passes it over.
 * A copy each time. A stored value never changes in place, so each is checked once.
 */
export function stored<T>(schema: z.ZodType<T>, value: unknown): T | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  const known = checked.get(value) ?? new WeakMap<z.ZodType, { value: unknown }>();
  checked.set(value, known);
  let result = known.get(schema);
  if (!result) {
    const parsed = schema.safeParse(value);
    result = { value: parsed.success ? parsed.data : undefined };
    known.set(schema, result);
  }
  return structuredClone(result.value) as T | undefined;
}
