/** The studio's rooms and their machines. */
import { asc, eq, sql } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { roomTable } from "#db/schema.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import type { RoomReadings } from "#lib/springs/readings.ts";

/** Shown instead of a name when the room is gone. */
export const MISSING_ROOM = "a room that no longer exists";

export interface StudioRoom {
  readonly id: string;
  readonly name: string;
  readonly equipment: Equipment;
  /** Scale readings by spring id; left out when there are none. */
  readonly readings?: RoomReadings;
}

/** Runs for every page that joins a plan. */
const statements = oncePerDatabase(({ orm }) => ({
  all: orm.select().from(roomTable).orderBy(asc(roomTable.name), asc(roomTable.id)).prepare(),
  one: orm
    .select()
    .from(roomTable)
    .where(eq(roomTable.id, sql.placeholder("id")))
    .prepare(),
}));

export const listStudioRooms = (db: Db): StudioRoom[] => statements(db).all.all().map(toRoom);

export function readRoom(db: Db, id: string): StudioRoom | undefined {
  const row = statements(db).one.get({ id });
  return row && toRoom(row);
}

export function insertRoom(db: Db, made: StudioRoom): void {
  db.orm
    .insert(roomTable)
    .values({ id: made.id, ...toColumns(made) })
    .run();
}

/** Replaces the whole room. False when there is no such room. */
export function updateRoom(db: Db, changed: StudioRoom): boolean {
  return db.orm.update(roomTable).set(toColumns(changed)).where(eq(roomTable.id, changed.id)).run().changes > 0;
}

const toColumns = ({ name, equipment, readings }: StudioRoom) => ({
  name,
  equipmentJson: JSON.stringify(equipment),
  readingsJson: readings === undefined ? null : JSON.stringify(readings),
});

/** Both columns were checked when they were written. */
function toRoom(row: typeof roomTable.$inferSelect): StudioRoom {
  const equipment = JSON.parse(row.equipmentJson) as Equipment;
  const base = { id: row.id, name: row.name, equipment };
  return row.readingsJson === null ? base : { ...base, readings: JSON.parse(row.readingsJson) as RoomReadings };
}
