/** The plan file's JSON Schema (2020-12), generated from the one zod schema that also parses it. */
import * as z from "zod/mini";
import { PLAN_FORMAT, planSchema } from "./schema.ts";

export type JsonSchema = { readonly [key: string]: unknown };

/** A name, not an address: nothing is fetched from it. */
const PLAN_SCHEMA_ID = "https://springline.invalid/schema/plan-1.json";

let made: JsonSchema | undefined;

/**
 * The schema as plain JSON, the same object each time. What JSON Schema cannot say (that an id named somewhere is there,
 * that a range goes upwards, that a rule's limits exist) `parsePlan` checks on top.
 */
export function planJsonSchema(): JsonSchema {
  made ??= {
    ...z.toJSONSchema(planSchema, { target: "draft-2020-12", io: "input" }),
    $id: PLAN_SCHEMA_ID,
    title: `Springline plan file (${PLAN_FORMAT})`,
    description:
      "One timed class with the moves, equipment and house standards it uses. Units: seconds, millimetres, newtons, kilograms, metres.",
  };
  return made;
}
