/**
 * A finding's sentence that was kept without its values (one that was accepted and is found no more), in one reader's units: its
 * numbers are read back from the sentence by the rule's own template.
 */
import type { Formats } from "#lib/formats/formats.ts";
import { fillMessage, MESSAGE_HOLE } from "./fill-message.ts";
import { STARTING_RULES } from "./starting-rules.ts";

interface Kept {
  readonly rule: string;
  readonly message: string;
}

/** As it was kept where no template, or more than one, could have made it: another version of the rule wrote it. */
export function keptFindingWords({ rule, message }: Kept, f: Pick<Formats, "force" | "length">): string {
  if (f.force === "N" && f.length === "cm") return message;
  const templates = Object.values(STARTING_RULES.find(({ id }) => id === rule)?.messages ?? {});
  const read = templates.flatMap((template) => {
    const found = asked(template).exec(message);
    return found ? [{ template, values: found.slice(1) }] : [];
  });
  const [one] = read;
  return one && read.length === 1 ? filled(one.template, one.values, f) : message;
}

/** What each unit looks like in a canonical sentence; others are words. */
const SHAPES: Readonly<Record<string, string>> = {
  ...{ N: "(-?[\\d.]+) N", force: "(-?[\\d.]+)", cm: "(-?[\\d.]+) cm", mm: "(-?[\\d.]+) mm", kg: "([\\d.]+) kg" },
};

function asked(template: string): RegExp {
  const plain = template.replace(/\s+/gu, " ").trim();
  const shape = plain
    .split(MESSAGE_HOLE)
    // Text, name and unit of a hole in turn.
    .map((part, i) => (i % 3 === 0 ? escaped(part ?? "") : i % 3 === 2 ? ((part && SHAPES[part]) ?? "(.+?)") : ""))
    .join("");
  // The first letter was made a capital.
  return new RegExp(`^${shape}$`, "isu");
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&");

/** Each hole with what stood in it, whatever its name. */
function filled(template: string, values: readonly string[], f: Pick<Formats, "force" | "length">): string {
  let at = -1;
  const named = Object.fromEntries(values.map((value, i) => [letters(i), value]));
  const numbered = template.replace(MESSAGE_HOLE, (_, _name: string, unit: string | undefined) => {
    at += 1;
    return `{${letters(at)}${unit === undefined ? "" : `:${unit}`}}`;
  });
  return fillMessage(numbered, named, f);
}

/** A name of a hole: letters alone. */
const letters = (i: number): string => `v${"x".repeat(i)}`;
