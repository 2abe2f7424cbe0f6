/** What a rehearsal was, as plain data that goes with its log. One zod schema is the type and the parser. */
import * as z from "zod";
import { SPOKEN_KINDS } from "#lib/cues/types.ts";

const seconds = z.number().min(0).max(86_400);
const item = z.string().min(1).max(64);

export const rehearsedSchema = z.strictObject({
  changes: z
    .array(
      z.strictObject({
        item,
        /** The move before it. */
        after: item.nullable(),
        planned: seconds,
        /** What the actions of the change come to, in the rehearsed plan. */
        estimate: seconds,
        took: seconds,
      }),
    )
    .max(2_000),
  lines: z
    .array(
      z.strictObject({
        item,
        kind: z.enum(SPOKEN_KINDS),
        /** As it was said, live fields filled. */
        text: z.string().max(4_000),
        planned: seconds,
        took: seconds,
      }),
    )
    .max(4_000),
});
export type Rehearsed = z.infer<typeof rehearsedSchema>;
