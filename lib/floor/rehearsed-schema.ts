/** What was rehearsed, as plain data in the class log. The zod schema is both type and parser. */
import * as z from "zod/mini";
import { SPOKEN_KINDS } from "#lib/cues/types.ts";
import { numberFrom } from "#lib/plan/number-fields.ts";

const seconds = numberFrom(0, 86_400);
const item = z.string().check(z.minLength(1), z.maxLength(64));

export const rehearsedSchema = z.strictObject({
  changes: z
    .array(
      z.strictObject({
        item,
        /** The move before it. */
        after: z.nullable(item),
        planned: seconds,
        /** What the actions of the change add up to in the rehearsed plan for one person, however many were planned for. */
        estimate: seconds,
        took: seconds,
      }),
    )
    .check(z.maxLength(2_000)),
  lines: z
    .array(
      z.strictObject({
        item,
        kind: z.enum(SPOKEN_KINDS),
        /** As it was said, with live fields filled in. */
        text: z.string().check(z.maxLength(4_000)),
        planned: seconds,
        took: seconds,
      }),
    )
    .check(z.maxLength(4_000)),
});
export type Rehearsed = z.infer<typeof rehearsedSchema>;
