/** A refused step in words, with when it happened where the server says so: only the page knows its reader's zone. */
import * as z from "zod/mini";
import { momentWords } from "#app/_parts/time-words.ts";
import type { RefusedRequest } from "../_parts/send.ts";

const endedSchema = z.object({ endedAt: z.int() });

export function stepRefusedWords({ message, details }: Pick<RefusedRequest, "message" | "details">): string {
  const ended = endedSchema.safeParse(details);
  return ended.success ? `${message} (That was on ${momentWords(ended.data.endedAt)}.)` : message;
}
