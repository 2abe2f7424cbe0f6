/** The names that sentences of the record are made with, as they are now. */
import type { Db } from "#db/connection.ts";
import { nameOfDevice } from "#db/repos/device-repo.ts";
import { readMoveRow } from "#db/repos/move-repo.ts";
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import { readPlanRow } from "#db/repos/plan-repo.ts";
import { MISSING_ROOM, readRoom } from "#db/repos/room-repo.ts";
import { type RecordNames, splitSubject } from "#lib/record/kinds.ts";
import { RULES } from "#lib/rules/registry.ts";

export function recordNames(db: Db): RecordNames {
  const people = namesById(db);
  return {
    person: (id) => people.get(id) ?? FORMER_MEMBER.toLowerCase(),
    plan: (id) => (readPlanRow(db, id)?.title ?? "a plan").trim() || "a plan without a title",
    move: (id) => readMoveRow(db, id)?.move.name ?? id,
    room: (id) => readRoom(db, id)?.name ?? MISSING_ROOM,
    rule: (id) => RULES.find((rule) => rule.id === id)?.title ?? id,
    device: (id) => nameOfDevice(db, id) ?? "",
  };
}

/** "server" is the program itself, or a command on the server. */
export function whoDid(actorId: string, names: RecordNames): string {
  const { what, id } = splitSubject(actorId);
  if (what === "device") return `The device “${names.device(id)}”`.replace(" “”", "");
  return actorId === "server" ? "The server" : names.person(actorId);
}
