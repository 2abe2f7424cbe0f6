/** A refused step in words, with when it happened where the server says so: the page knows its reader's formats. */
import * as z from "zod/mini";
import { momentWords } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";
import type { RefusedRequest } from "../_parts/send.ts";

const endedSchema = z.object({ endedAt: z.int() });

export function stepRefusedWords(
  { message, details }: Pick<RefusedRequest, "message" | "details">,
  f: Formats,
): string {
  const ended = endedSchema.safeParse(details);
  return ended.success ? `${message} (That was on ${momentWords(ended.data.endedAt, f)}.)` : message;
}
