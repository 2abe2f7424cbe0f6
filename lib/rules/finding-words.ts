/** A finding as its reader has units. What is stored, hashed and compared is the finding's own `message`, the same for everybody. */
import type { Formats } from "#lib/formats/formats.ts";
import type { Finding } from "./define/types.ts";
import { fillMessage } from "./fill-message.ts";
import { STARTING_RULES } from "./starting-rules.ts";

type Told = Pick<Finding, "rule" | "message" | "values"> & { readonly key?: string | undefined };

/**
 * The finding's sentence. Words of a rule that brings a reader of claims (they name no unit), or that another version of the
 * rule wrote, stay as they are.
 */
export function findingWords({ rule, message, values, key = "" }: Told, f: Pick<Formats, "force" | "length">): string {
  if (f.force === "N" && f.length === "cm") return message;
  const template = STARTING_RULES.find(({ id }) => id === rule)?.messages[key.split(":")[1] ?? ""];
  if (template === undefined || fillMessage(template, values) !== message) return message;
  return fillMessage(template, values, f);
}
