/** Values that pages are made of, checked before they are put in: pages trust what the program itself wrote. */
import * as z from "zod";
import { extend } from "zod/mini";
import type { Cell, TableRow } from "#db/file/table-rows.ts";
import { equipmentSchema, moveSchema, standardSchema } from "#lib/plan/schema.ts";
import { ROLES } from "#lib/policy/can.ts";
import type { PlanState } from "#lib/protocol/messages.ts";
import { rubricSchema } from "#lib/rubric/rubric.ts";
import { sheetSchema } from "#lib/springs/readings.ts";
import { stepsAwaySchema } from "#server/desk/first-steps.ts";
import { formatFields } from "#server/formats/formats.ts";
import { monthSettingsSchema } from "#server/month-facts/month-settings.ts";
import { emailAddress, personName, studioName, studioTown } from "#server/people/fields.ts";
import { StudioFilesRefused } from "./refused.ts";

type Check = z.core.$ZodType;

/** By the schema of what people type, which tidies; what it would have tidied away is no value of the program's. */
const asTyped = (schema: z.ZodType<string>): Check =>
  z.string().refine((text) => !/[\p{Cc}\u2028\u2029]/u.test(text) && schema.safeParse(text).success);

const PLAN_STATES = { "in-writing": 1, "handed-in": 1, "handed-back": 1, "signed-off": 1 } satisfies Record<
  PlanState,
  1
>;
const roles = z.string().refine((list) => list.split(",").every((role) => (ROLES as readonly string[]).includes(role)));
const { weekStart: _, ...studioFormatFields } = formatFields;

/** What a cell holds; of a column whose name ends in _json, what its JSON holds. Null is never checked. */
const CHECKS: Readonly<Record<string, Check>> = {
  "studio.name": asTyped(studioName),
  "studio.town": asTyped(studioTown),
  "studio.standards_json": z.record(z.string(), standardSchema),
  "user.name": asTyped(personName),
  "user.email": asTyped(emailAddress),
  "member.role": roles,
  // As the page of rooms takes it.
  "room.name": asTyped(z.string().trim().min(1).max(80)),
  "room.equipment_json": equipmentSchema,
  "room.readings_json": z.record(z.string(), extend(sheetSchema, { at: z.number() })),
  "move.data_json": moveSchema,
  "plan.state": z.string().refine((state) => Object.hasOwn(PLAN_STATES, state)),
};

/** By the name of the setting. */
const SETTINGS: Readonly<Record<string, Check>> = {
  formats: z.strictObject(studioFormatFields).partial(),
  // The first months had no first day of the week.
  month: monthSettingsSchema.extend({
    uid: z.string().min(1),
    weekStart: monthSettingsSchema.shape.weekStart.optional(),
  }),
  rubric: rubricSchema,
  "first-steps": stepsAwaySchema,
  "told-classes": z.looseObject({ until: z.string(), classes: z.record(z.string(), z.unknown()) }),
};

/** `where`: the file and its line. Throws StudioFilesRefused with one sentence. */
export function checkRow(table: string, row: TableRow, where: string): void {
  for (const [name, cell] of Object.entries(row)) {
    const check =
      table === "studio_setting" && name === "data_json"
        ? own(SETTINGS, String(row.name))
        : own(CHECKS, `${table}.${name}`);
    const place = check && cell !== null ? wrongPlace(check, name, cell) : undefined;
    if (place !== undefined)
      throw new StudioFilesRefused(
        `${where}: "${name}" is not what Springline writes there${place}. Nothing was imported. Export the studio again.`,
      );
  }
}

const own = (checks: Readonly<Record<string, Check>>, name: string): Check | undefined =>
  Object.hasOwn(checks, name) ? checks[name] : undefined;

/** Where in the value, in words; undefined when the value fits. */
function wrongPlace(check: Check, name: string, cell: Cell): string | undefined {
  const value: unknown = name.endsWith("_json") ? JSON.parse(String(cell)) : cell;
  const read = z.safeParse(check, value);
  if (read.success) return undefined;
  const path = read.error.issues[0]?.path.join(".").replace(/\p{Cc}+/gu, " ") ?? "";
  return path === "" ? "" : `, at "${path}"`;
}
