/**
 * Creates the invented demo studio in an empty database, through the same commands that pages use. Running it again adds
 * what is missing and changes nothing else.
 */

import { addMonths, dateOfDay, monthOf } from "#lib/calendar/days.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { readMonth } from "#lib/programme/read.ts";
import { writeContent } from "#lib/programme/write-content.ts";
import type { DocName } from "#lib/protocol/messages.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import type { Springline } from "#server/context/springline.ts";
import { putStepsAway, readFirstSteps } from "#server/desk/first-steps.ts";
import { putMoves, readLibrary } from "#server/library/library.ts";
import { readMonthSettings } from "#server/month-facts/month-settings.ts";
import { changeMonthSettings } from "#server/programme/change-month-settings.ts";
import { addRoom, listRooms } from "#server/rooms/manage-rooms.ts";
import { addClasses } from "./steps/add-classes.ts";
import { addPeople, type Cast, must } from "./steps/add-people.ts";
import { addPlans, type DemoRooms } from "./steps/add-plans.ts";
import { addRemarks } from "./steps/add-remarks.ts";
import { type MonthPeople, monthContent } from "./steps/month-slots.ts";
import { DEMO_PASSWORD, PEOPLE } from "./studio/people.ts";
import { ROOMS, type SeedRoom } from "./studio/rooms.ts";

const DAY_MS = 86_400_000;

export interface Seeded {
  readonly people: readonly { readonly name: string; readonly email: string; readonly roles: readonly string[] }[];
  readonly password: string;
}

/** Throws with the command's own message when one refuses. */
export async function seedStudio(app: Springline): Promise<Seeded> {
  const cast = await addPeople(app);
  const rooms = addRooms(app, cast);
  addLibrary(app, cast);
  addRemarks(app, cast);
  const plans = await addPlans(app, cast, rooms);
  const ids = {
    petra: cast.petra.id,
    ines: cast.ines.id,
    marta: cast.marta.id,
    jonas: cast.jonas.id,
    sam: cast.sam.id,
  };
  addClasses(app, plans.whole, rooms.loft);
  addMonthSettings(app, cast, rooms);
  fillMonths(app, { people: ids, rooms, plans });
  // This studio has its first hour behind it; they can be seen under Studio.
  if (!must(readFirstSteps(app, cast.petra)).away) must(putStepsAway(app, cast.petra, { away: true }));
  return { people: PEOPLE.map(({ name, email, roles }) => ({ name, email, roles })), password: DEMO_PASSWORD };
}

function addRooms(app: Springline, { petra }: Cast): DemoRooms {
  const roomId = (room: SeedRoom | undefined): string => {
    if (!room) throw new Error("A room of the demo studio is missing.");
    const there = must(listRooms(app, petra)).find((other) => other.name === room.name);
    return there?.id ?? must(addRoom(app, petra, { name: room.name, equipment: room.equipment })).id;
  };
  return {
    harbour: roomId(ROOMS.find((room) => room.key === "harbour")),
    loft: roomId(ROOMS.find((room) => room.key === "loft")),
  };
}

/** Moves that a lead has changed are left as they are. */
function addLibrary(app: Springline, { ines }: Cast): void {
  const { moves } = must(readLibrary(app, ines));
  const missing = Object.entries(STARTER_MOVES).filter(([id]) => !Object.hasOwn(moves, id));
  if (missing.length > 0) must(putMoves(app, ines, Object.fromEntries(missing)));
}

/** The month before, in which most of the classes with a log were, and the current one. */
function fillMonths(app: Springline, known: MonthPeople): void {
  const month = monthOf(dateOfDay(Math.floor(app.now() / DAY_MS)));
  for (const one of [addMonths(month, -1), month]) addMonth(app, one, known);
}

/** A month that has any class is left alone. */
function addMonth(app: Springline, month: string, known: MonthPeople): void {
  const name: DocName = { kind: "month", key: month };
  const content = monthContent(month, known);
  if (app.documents.generation(name) === undefined)
    app.documents.create(name, createMonthDoc(month, content), known.people.ines);
  else if (app.documents.withDoc(name, (doc) => readMonth(doc).slots.length) === 0)
    app.documents.transact(name, known.people.ines, (doc) => writeContent(doc, content, app.now()));
}

/** How many machines each room has; left alone once it was said. */
function addMonthSettings(app: Springline, { petra }: Cast, rooms: DemoRooms): void {
  const seen = must(readMonthSettings(app, petra));
  if (Object.keys(seen.machines).length > 0) return;
  must(
    changeMonthSettings(app, petra, {
      settings: { ...seen, machines: { [rooms.loft]: 12, [rooms.harbour]: 10 } },
      seen,
    }),
  );
}
