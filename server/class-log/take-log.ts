/** Stores the log of a class that a device sends. A log sent twice, because the answer was lost, is stored once. */
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
  "This studio has not signed the edition of this log. The log stays on the device.",
);
const OTHER_ITEMS = fail(
  422,
  "invalid",
  "This log contains items that its edition does not have. The log stays on the device.",
);
const TOO_MANY = fail(
  429,
  "too-many-logs",
  "This device has sent too many logs today. It keeps this one and sends it tomorrow.",
);
/** Our own choice: twice a class an hour with rehearsals in between. */
const LOGS_A_DAY = 60;
const DAY_MS = 86_400_000;
/** A device may lie in a cupboard for a year, and its clock may be a time zone off. Our own choices, days. */
const OLDEST_DAYS = 400;
const AHEAD_DAYS = 1;
const WRONG_TIME = fail(
  422,
  "wrong-time",
  "This log says that its class began more than a year ago, or tomorrow. Set the device's clock. The log stays on the device.",
);
const DIFFERS = fail(
  409,
  "log-differs",
  "The studio already has a different log of this class. The first one is kept.",
);

/**
 * Logs of two devices for the same session are both kept: only people can tell which is true. A class may be taught in a
 * room that it was not signed for: the log belongs to the device's room. Errors: 403 no-right, 404 no-such-edition, 422
 * invalid, wrong-time, 409 log-differs, 429 too-many-logs.
 */
export function takeLog(
  app: EditionReader & Pick<Springline, "now">,
  device: Device,
  log: ClassLog,
): Result<{ sessionId: string }> {
  if (!canDevice(device, "log.send", device.roomId)) return NO_RIGHT;
  if (!isLikely(Date.parse(log.startedAt), app.now())) return WRONG_TIME;
  const edition = readSoundEdition(app, log.edition.planId, log.edition.number);
  if (!edition || edition === "damaged" || edition.hash !== log.edition.hash) return NO_EDITION;
  const known = new Set(edition.card.card.plan.items.map(({ id }) => id));
  const told = [...log.rows, ...(log.rehearsed?.changes ?? []), ...(log.rehearsed?.lines ?? [])];
  if (told.some(({ item }) => item !== null && !known.has(item))) return OTHER_ITEMS;
  // Every item has a change and its work, plus the opening and the closing.
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

const isLikely = (startedAt: number, receivedAt: number): boolean =>
  startedAt >= receivedAt - OLDEST_DAYS * DAY_MS && startedAt <= receivedAt + AHEAD_DAYS * DAY_MS;
