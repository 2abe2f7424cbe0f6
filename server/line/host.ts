/** What the line needs from the program: the device behind a token, and whether this studio signed an edition. */
import { readDevice } from "#db/repos/device-repo.ts";
import { countEditions } from "#db/repos/edition-repo.ts";
import { deviceByTokenHash } from "#db/repos/session-repo.ts";
import { countWithdrawals } from "#db/repos/withdrawal-repo.ts";
import type { LineClass } from "#lib/line/messages.ts";
import { canDevice } from "#lib/policy/can.ts";
import { hashToken } from "#server/auth/device.ts";
import { type EditionReader, readSoundEdition } from "#server/editions/sound-edition.ts";

export interface LineDevice {
  readonly id: string;
  readonly name: string;
  readonly roomId: string;
}
export interface LineHost {
  /** The device as it is now; null for an unknown token and for a removed device. Cheap: asked twice a second. */
  deviceOf(token: string): LineDevice | null;
  isSigned(edition: LineClass["edition"]): boolean;
  /** Changes when editions are signed or withdrawn, so that devices fetch their cards again. Cheap: asked twice a second. */
  cardsMark(): string;
}

export const createLineHost = (app: EditionReader): LineHost => ({
  deviceOf(token) {
    const known = deviceByTokenHash(app.db, hashToken(token));
    const row = known && readDevice(app.db, known.id);
    if (!row || !canDevice({ kind: "device", id: row.id, roomId: row.roomId }, "line.join", row.roomId)) return null;
    return { id: row.id, name: row.name, roomId: row.roomId };
  },
  cardsMark: () => `${countEditions(app.db)}.${countWithdrawals(app.db)}`,
  isSigned({ planId, number, hash }) {
    const edition = readSoundEdition(app, planId, number);
    return edition !== undefined && edition !== "damaged" && edition.hash === hash;
  },
});
