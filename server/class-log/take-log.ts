/** A device tells what a class did. Told twice, by a device that never heard the answer, it is one class. */
import { countLogsOf, insertClassLog, readLogRow } from "#db/repos/class-log-repo.ts";
import { canonicalJson } from "#lib/canonical/canonical.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { canDevice, type Device } from "#lib/policy/can.ts";
import { fail, NO_RIGHT, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { type EditionReader, readSoundEdition } from "#server/editions/sound-edition.ts";

const NO_EDITION = fail(
  404,
  "no-such-edition",
  "This log is of a class that this studio has not signed: it stays on the device.",
);
const OTHER_ITEMS = fail(422, "invalid", "This log tells of items that its class does not have.");
const TOO_MANY = fail(
  429,
  "too-many-logs",
  "This device has told of more classes today than a day holds: it keeps this log and tells it tomorrow.",
);
/** Common sense, no source: a class an hour, rehearsals between, twice over. */
const LOGS_A_DAY = 60;
const DAY_MS = 86_400_000;
const DIFFERS = fail(
  409,
  "log-differs",
  "The studio has a log of this class already, and it differs: the first one stays.",
);

/**
 * Errors: 403 no-right, 404 no-such-edition, 422 invalid, 409 log-differs, 429 too-many-logs. What another device told under
 * the same session takes nothing away from this one: both are kept, and people see which is true. A class may be taught in a room it was not signed
 * for: the log is kept under the device's own room.
 */
export function takeLog(
  app: EditionReader & Pick<Springline, "now">,
  device: Device,
  log: ClassLog,
): Result<{ sessionId: string }> {
  if (!canDevice(device, "log.send", device.roomId)) return NO_RIGHT;
  const edition = readSoundEdition(app, log.edition.planId, log.edition.number);
  if (!edition || edition === "damaged" || edition.hash !== log.edition.hash) return NO_EDITION;
  const known = new Set(edition.card.card.plan.items.map(({ id }) => id));
  const told = [...log.rows, ...(log.rehearsed?.changes ?? []), ...(log.rehearsed?.lines ?? [])];
  if (told.some(({ item }) => item !== null && !known.has(item))) return OTHER_ITEMS;
  // A change and the work of every item, the opening and the closing.
  if (log.rows.length > 2 * known.size + 2) return OTHER_ITEMS;
  const logJson = canonicalJson(log);
  const { sessionId } = log;
  const taken = ok({ sessionId });
  const take = app.db.raw.transaction((): Result<{ sessionId: string }> => {
    const now = app.now();
    for (const key of [sessionId, `${sessionId}.${device.id}`]) {
      const before = readLogRow(app.db, key);
      if (before?.logJson === logJson) return taken;
      if (before?.deviceId === device.id) return DIFFERS;
      if (before) continue;
      if (countLogsOf(app.db, device.id, now - DAY_MS) >= LOGS_A_DAY) return TOO_MANY;
      insertClassLog(app.db, { log, roomId: device.roomId, deviceId: device.id, receivedAt: now }, { key, logJson });
      return taken;
    }
    return DIFFERS;
  });
  return take.immediate();
}
