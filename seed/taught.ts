/** A class of the demo as it might have been taught: held for a late arrival, ended on time by new seconds for the rest. */
import { listClassLogs } from "#db/repos/class-log-repo.ts";
import { newestEdition, readEdition } from "#db/repos/edition-repo.ts";
import { endOnTimeAt, extension, retimeEvent } from "#lib/floor/acts.ts";
import { classLog } from "#lib/floor/class-log.ts";
import type { FloorLog } from "#lib/floor/log.ts";
import { takeLog } from "#server/class-log/take-log.ts";
import type { Springline } from "#server/springline.ts";
import { must } from "./people-in.ts";

const DAY_MS = 86_400_000;
const SESSION = "demo0000000000000000000000000001";

/** Idempotent: a plan with any class told is left alone. */
export function putClassIn(app: Springline, planId: string, roomId: string): void {
  const head = newestEdition(app.db, planId);
  const edition = head && readEdition(app.db, planId, head.number);
  if (!edition || listClassLogs(app.db, planId, edition.number).length > 0) return;
  const { card } = edition.card;
  const at = (seconds: number): number => seconds * 1000;
  const middle = card.clock.total / 2;
  let log: FloorLog = [
    { type: "start", at: 0 },
    { type: "hold", at: at(60) },
    { type: "resume", at: at(95) },
  ];
  const longer = extension(card, log, 15, at(middle / 2));
  if (longer) log = [...log, longer.event];
  const answer = endOnTimeAt(card, log, at(middle));
  if (answer.possible) log = [...log, retimeEvent(answer, at(middle))];
  const clock = { mono: 0, wall: app.now() - 2 * DAY_MS };
  const told = classLog(card, log, at(card.clock.total * 2), { sessionId: SESSION, kind: "class", clock });
  if (told) must(takeLog(app, { kind: "device", id: "demo-tablet", roomId }, told));
}
