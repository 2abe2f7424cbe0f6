/**
 * Reads an edition only if it is still what was signed: its plan has its hash, its card has the studio's signature, and the
 * two belong together. Somebody who can write to the database file could alter a row; an altered edition is not served
 * (INV-13).
 */
import { createHash } from "node:crypto";
import { type Edition, type EditionText, readEditionText } from "#db/repos/edition-repo.ts";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import { type CardEnvelope, envelopeSchema, verifyCard } from "#lib/card/card.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { fail, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { checkSignature } from "#server/signing/ed25519.ts";

export type EditionReader = Pick<Springline, "db" | "log"> & {
  readonly keys: Pick<Springline["keys"], "publicKeyOf">;
};

/** Results by a hash of the whole row: a row that has changed is verified again. */
const verdicts = new WeakMap<Springline["db"], Map<string, boolean>>();
const KEPT = 2000;
/** A time before any card expires: an expired card is not a damaged one. */
const NO_TIME = 0;

/** Undefined when there is no such edition; "damaged" when it is not what was signed. */
export function readSoundEdition(app: EditionReader, planId: string, number: number): Edition | "damaged" | undefined {
  const text = Number.isInteger(number) ? readEditionText(app.db, planId, number) : undefined;
  if (!text) return undefined;
  if (!isSound(app, text)) return "damaged";
  const { cardJson, findingsJson, ...rest } = text;
  return { ...rest, card: JSON.parse(cardJson) as CardEnvelope, findings: JSON.parse(findingsJson) as Finding[] };
}

/** The error for a request for a damaged edition. */
export const damagedEdition = (number: number): Result<never> =>
  fail(
    409,
    "edition-damaged",
    `Edition ${number} is damaged: the database no longer holds what was signed. It is not shown, printed or sent to devices. Restore it from a backup, or have the plan signed off again.`,
  );

function isSound(app: EditionReader, text: EditionText): boolean {
  const known = verdicts.get(app.db) ?? new Map<string, boolean>();
  verdicts.set(app.db, known);
  const key = createHash("sha256").update(JSON.stringify(text)).digest("base64");
  const found = known.get(key);
  if (found !== undefined) return found;
  const sound = holds(app, text);
  if (!sound) {
    const { planId, number } = text;
    app.log.error({ planId, number }, "a signed edition is damaged and is not served");
  }
  if (known.size >= KEPT) known.clear();
  known.set(key, sound);
  return sound;
}

function holds(app: EditionReader, { planJson, cardJson, findingsJson, planId, number, hash }: EditionText): boolean {
  const envelope = envelopeSchema.safeParse(parsed(cardJson)).data;
  if (sha256Hex(planJson) !== hash || parsed(findingsJson) === undefined || !envelope) return false;
  const publicKey = app.keys.publicKeyOf(envelope.keyId);
  const verified = publicKey === undefined ? undefined : verifyCard(envelope, publicKey, NO_TIME, checkSignature);
  if (!verified?.ok) return false;
  const { edition } = verified.card;
  return edition.planId === planId && edition.number === number && edition.hash === hash;
}

function parsed(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return undefined; // it was JSON when it was stored, so the row is damaged
  }
}
