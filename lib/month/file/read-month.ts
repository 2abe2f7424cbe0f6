/** The only way in for month files: text becomes a valid month, or one line that says what is wrong and where. */
import * as z from "zod/mini";
import type { JsonSchema } from "#lib/plan/json-schema.ts";
import { readJsonText } from "#lib/plan/json-text.ts";
import { findFlaw } from "#lib/plan/plain-data.ts";
import { type PlanProblem, problemLine } from "#lib/plan/pointer.ts";
import { firstProblem } from "#lib/plan/schema-problem.ts";
import type { MonthFile } from "../types.ts";
import { crossCheckMonth } from "./cross-check.ts";
import { monthSchema } from "./schema.ts";

export type MonthRead =
  | { readonly ok: true; readonly month: MonthFile }
  /** One line that begins with the JSON Pointer (RFC 6901) of the place. */
  | { readonly ok: false; readonly say: string };

/** Never throws. */
export function readMonthFile(text: string): MonthRead {
  const json = readJsonText(text);
  if (json.ok) return readMonthValue(json.value);
  const repeated = json.problem === "is given twice" ? "is a repeated key: it is given twice" : json.problem;
  return refused({ path: json.path, problem: repeated });
}

/** The same for a value that has been parsed already. The month is the value itself. Never throws. */
export function readMonthValue(value: unknown): MonthRead {
  const flaw = findFlaw(value);
  if (flaw) return refused(flaw);
  const read = monthSchema.safeParse(value);
  if (!read.success)
    return refused(
      firstProblem(read.error.issues, value, monthJsonSchema()) ?? { path: [], problem: "should be a month file" },
    );
  const month = value as MonthFile;
  const problem = crossCheckMonth(month);
  return problem ? refused(problem) : { ok: true, month };
}

const refused = (problem: PlanProblem): MonthRead => ({ ok: false, say: problemLine(problem, "the month file") });

let made: JsonSchema | undefined;
function monthJsonSchema(): JsonSchema {
  made ??= { ...z.toJSONSchema(monthSchema, { target: "draft-2020-12", io: "input" }) };
  return made;
}
