/** A device tells what a class did. Told twice, by a device that never heard the answer, it is one class. */
import { insertClassLog, readLogJson } from "#db/repos/class-log-repo.ts";
import { readEdition } from "#db/repos/edition-repo.ts";
import { canonicalJson } from "#lib/canonical/canonical.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { canDevice, type Device } from "#lib/policy/can.ts";
import { fail, NO_RIGHT, ok, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";

const NO_EDITION = fail(
  404,
  "no-such-edition",
  "This log is of a class that this studio has not signed: it stays on the device.",
);
const OTHER_ITEMS = fail(422, "invalid", "This log tells of items that its class does not have.");
const DIFFERS = fail(
  409,
  "log-differs",
  "The studio has a log of this class already, and it differs: the first one stays.",
);

/**
 * Errors: 403 no-right, 404 no-such-edition, 422 invalid, 409 log-differs. A class may be taught in a room it was not signed
 * for: the log is kept under the device's own room.
 */
export function takeLog(
  app: Pick<Springline, "db" | "now">,
  device: Device,
  log: ClassLog,
): Result<{ sessionId: string }> {
  if (!canDevice(device, "log.send", device.roomId)) return NO_RIGHT;
  const edition = readEdition(app.db, log.edition.planId, log.edition.number);
  if (!edition || edition.hash !== log.edition.hash) return NO_EDITION;
  const known = new Set(edition.card.card.plan.items.map(({ id }) => id));
  const told = [...log.rows, ...(log.rehearsed?.changes ?? []), ...(log.rehearsed?.lines ?? [])];
  if (told.some(({ item }) => item !== null && !known.has(item))) return OTHER_ITEMS;
  const json = canonicalJson(log);
  const take = app.db.raw.transaction((): Result<{ sessionId: string }> => {
    const before = readLogJson(app.db, log.sessionId);
    if (before !== undefined) return before === json ? ok({ sessionId: log.sessionId }) : DIFFERS;
    insertClassLog(app.db, { log, roomId: device.roomId, deviceId: device.id, receivedAt: app.now() }, json);
    return ok({ sessionId: log.sessionId });
  });
  return take.immediate();
}
