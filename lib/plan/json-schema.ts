/** The plan file's JSON Schema (2020-12), generated from the one zod schema that also parses it. */
import * as z from "zod/mini";
import { PLAN_FORMAT, planSchema } from "./schema.ts";

export type JsonSchema = { readonly [key: string]: unknown };

/** Only a name: nothing is fetched from it. */
const PLAN_SCHEMA_ID = "https://springline.invalid/schema/plan-1.json";

let made: JsonSchema | undefined;

/**
 * The schema as plain JSON, the same object each time. `parsePlan` also checks what JSON Schema cannot express: that ids
 * exist, that ranges go upwards, that a rule has the limits.
 */
export function planJsonSchema(): JsonSchema {
  made ??= {
    ...z.toJSONSchema(planSchema, { target: "draft-2020-12", io: "input" }),
    $id: PLAN_SCHEMA_ID,
    title: `Springline plan file (${PLAN_FORMAT})`,
    description:
      "One timed class with the moves, equipment and studio standards it uses. Units: seconds, millimetres, newtons, kilograms, metres.",
  };
  return made;
}
