/** The first steps of a studio, for its managers, and of somebody who writes their first class: what the database tells of them. */
import * as z from "zod";
import { readCheck } from "#db/repos/check-repo.ts";
import { countLogsOfKind } from "#db/repos/class-log-repo.ts";
import { listDeviceRows } from "#db/repos/device-repo.ts";
import { planIdsMade } from "#db/repos/event-repo.ts";
import { listMembers, listPendingInvitations } from "#db/repos/people-repo.ts";
import { listPlanRows, type PlanRow } from "#db/repos/plan-repo.ts";
import { listStudioRooms } from "#db/repos/room-repo.ts";
import { readSetting, writeSetting } from "#db/repos/setting-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { readStrip } from "#lib/clock/class-strip.ts";
import {
  allDone,
  coachSteps,
  type FirstClass,
  type FirstStep,
  isOwnClass,
  type StudioFacts,
  studioSteps,
} from "#lib/desk/first-steps.ts";
import type { Spring } from "#lib/plan/schema.ts";
import { type Actor, can, canPlan, type Person } from "#lib/policy/can.ts";
import { STARTER_EQUIPMENT } from "#lib/starter/room.ts";
import { lastBackupAt } from "#server/backup/last-backup.ts";
import { NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { summariesOf } from "#server/news/plan-summaries.ts";

type App = Pick<Springline, "db" | "now" | "env">;

export interface FirstSteps {
  readonly steps: readonly FirstStep[];
  /** A manager has put them away, or all are done: they stand under Studio alone. */
  readonly away: boolean;
}

/** For managers. Errors: 403 no-right. */
export function readFirstSteps(app: App, actor: Actor): Result<FirstSteps> {
  if (actor?.kind !== "person" || !can(actor, "people.manage")) return NO_RIGHT;
  const steps = studioSteps(studioFacts(app, actor));
  return ok({ steps, away: isAway(app) || allDone(steps) });
}

/** For somebody who writes plans and does not manage: null once they have written a class of their own. */
export function readOwnFirstSteps(app: App, actor: Actor): readonly FirstStep[] | null {
  if (actor?.kind !== "person" || !can(actor, "plan.create") || can(actor, "people.manage")) return null;
  const { examples, classes, rows } = plansOf(app, actor, (row) => row.ownerId === actor.id);
  if (classes.some(isOwnClass)) return null;
  const ids = rows.map(({ id }) => id);
  return coachSteps({
    exampleMade: planIdsMade(app.db, "from-example", actor.id).size > 0,
    examplePlan: examples[0] ?? null,
    classes,
    rehearsals: ids.length === 0 ? 0 : countLogsOfKind(app.db, "rehearsal", ids),
  });
}

export const stepsAwaySchema = z.strictObject({ away: z.boolean() });

/** Puts the list away from the managers' desks, or back onto them. Errors: 403 no-right. */
export function putStepsAway(
  app: Pick<Springline, "db" | "now">,
  actor: Actor,
  { away }: z.infer<typeof stepsAwaySchema>,
): Result<{ away: boolean }> {
  if (!can(actor, "people.manage")) return NO_RIGHT;
  writeSetting(app.db, "first-steps", { data: { away }, updatedAt: app.now() });
  return ok({ away });
}

const isAway = (app: Pick<Springline, "db">): boolean =>
  stepsAwaySchema.safeParse(readSetting(app.db, "first-steps")?.data).data?.away ?? false;

function studioFacts(app: App, actor: Person): StudioFacts {
  const members = listMembers(app.db);
  const writers = members.filter(({ id, roles }) => can({ kind: "person", id, roles }, "plan.create"));
  const alone = writers.length === 1 && writers[0]?.id === actor.id && readStudio(app.db)?.soleAuthorMaySign === true;
  const { examples, classes } = plansOf(app, actor, () => true);
  const devices = listDeviceRows(app.db);
  return {
    writes: can(actor, "plan.create"),
    signs: actor.roles.includes("lead"),
    people: members.length,
    openInvitations: listPendingInvitations(app.db).filter(({ expiresAt }) => expiresAt > app.now()).length,
    worksAlone: alone,
    rooms: listStudioRooms(app.db).map(({ id, name, equipment, readings }) => ({
      ...{ id, name },
      springs: equipment.springs.map((spring) => ({
        id: spring.id,
        measured: (readings?.[spring.id]?.readings.length ?? 0) > 0,
        typical: isTypical(spring),
      })),
    })),
    example: { made: planIdsMade(app.db, "from-example").size > 0, plan: examples[0] ?? null },
    classes,
    devices: {
      paired: devices.filter(({ pairedAt }) => pairedAt !== null).length,
      waiting: devices.filter(({ pairedAt, codeExpiresAt }) => pairedAt === null && (codeExpiresAt ?? 0) > app.now())
        .length,
    },
    taught: countLogsOfKind(app.db, "class"),
    lastBackupAt: lastBackupAt(app),
    now: app.now(),
  };
}

/** As the starting room has it, which nobody has measured. */
const isTypical = ({ id, stiffnessNPerMm, preloadN }: Spring): boolean =>
  STARTER_EQUIPMENT.springs.some(
    (own) => own.id === id && own.stiffnessNPerMm === stiffnessNPerMm && own.preloadN === preloadN,
  );

/** The plans on desks that pass, the newest first: example classes apart from the others. */
function plansOf(app: App, actor: Person, wanted: (row: PlanRow) => boolean) {
  const made = planIdsMade(app.db, "from-example");
  const copies = new Set([...planIdsMade(app.db, "duplicated"), ...planIdsMade(app.db, "from-edition")]);
  const summary = summariesOf(app);
  const rows = listPlanRows(app.db)
    .filter((row) => row.deletedAt === null && row.archivedAt === null && wanted(row))
    .sort((a, b) => b.createdAt - a.createdAt);
  const classOf = (row: PlanRow): FirstClass => {
    const { edition, withdrawn } = summary(row);
    const strip = readStrip(readCheck(app.db, row.id)?.strip ?? "");
    return {
      id: row.id,
      title: canPlan(actor, "plan.read", row) ? row.title : null,
      moves: strip.filter(({ pattern }) => pattern !== null).length,
      // What is written in a plan, and nothing else, moves this time on.
      copied: copies.has(row.id) && row.updatedAt === row.createdAt,
      state: row.state,
      edition: withdrawn ? 0 : edition,
    };
  };
  const isExample = ({ id }: PlanRow) => made.has(id);
  return {
    rows,
    examples: rows.filter(isExample).map(classOf),
    classes: rows.filter((row) => !isExample(row)).map(classOf),
  };
}
