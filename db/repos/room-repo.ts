/** The studio's rooms and the machines that stand in them. */
import { asc, eq } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { room } from "#db/schema.ts";
import type { Equipment } from "#lib/plan/schema.ts";

export interface StudioRoom {
  readonly id: string;
  readonly name: string;
  readonly equipment: Equipment;
}

export function listRooms(db: Db): StudioRoom[] {
  return db.orm.select().from(room).orderBy(asc(room.name), asc(room.id)).all().map(toRoom);
}

export function readRoom(db: Db, id: string): StudioRoom | undefined {
  const row = db.orm.select().from(room).where(eq(room.id, id)).get();
  return row && toRoom(row);
}

export function insertRoom(db: Db, made: StudioRoom): void {
  db.orm
    .insert(room)
    .values({ id: made.id, name: made.name, equipmentJson: JSON.stringify(made.equipment) })
    .run();
}

/** False when there is no such room. */
export function updateRoom(db: Db, changed: StudioRoom): boolean {
  const set = { name: changed.name, equipmentJson: JSON.stringify(changed.equipment) };
  return db.orm.update(room).set(set).where(eq(room.id, changed.id)).run().changes > 0;
}

function toRoom(row: typeof room.$inferSelect): StudioRoom {
  return { id: row.id, name: row.name, equipment: JSON.parse(row.equipmentJson) as Equipment }; // checked when written
}
