/** What the server says of a proof. */
import * as z from "zod/mini";

export const proofSchema = z.discriminatedUnion("state", [
  z.object({ state: z.literal("none") }),
  z.object({ state: z.literal("running"), rows: z.number(), of: z.number() }),
  z.object({ state: z.literal("holds"), head: z.object({ seq: z.number(), hash: z.string() }), at: z.number() }),
  z.object({ state: z.literal("broken"), fault: z.object({ say: z.string() }), at: z.number() }),
  z.object({ state: z.literal("failed") }),
]);
export type ShownProof = z.infer<typeof proofSchema>;
