/**
 * An edition, only while it is what was signed: its plan has its hash, its card the studio's signature, and both speak of
 * each other. Whoever can write in the database file could alter a row; what is then in it goes to nobody.
 */
import { createHash } from "node:crypto";
import { type Edition, type EditionText, readEditionText } from "#db/repos/edition-repo.ts";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import { type CardEnvelope, envelopeSchema, verifyCard } from "#lib/card/card.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { fail, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";

export type EditionReader = Pick<Springline, "db" | "keys" | "log">;

/** Verdicts by all that the row holds: a row that changes is another one, and is looked at again. */
const verdicts = new WeakMap<Springline["db"], Map<string, boolean>>();
const KEPT = 2000;
/** Before every card's end: that a card is too old to be started is no damage. */
const NO_TIME = 0;

/** Undefined when there is no such edition; "damaged" when it is not what was signed. */
export function readSoundEdition(app: EditionReader, planId: string, number: number): Edition | "damaged" | undefined {
  const text = Number.isInteger(number) ? readEditionText(app.db, planId, number) : undefined;
  if (!text) return undefined;
  if (!isSound(app, text)) return "damaged";
  const { cardJson, findingsJson, ...rest } = text;
  return { ...rest, card: JSON.parse(cardJson) as CardEnvelope, findings: JSON.parse(findingsJson) as Finding[] };
}

/** The sentence for whoever asks for a damaged edition. */
export const damagedEdition = (number: number): Result<never> =>
  fail(
    409,
    "edition-damaged",
    `Edition ${number} is damaged: what the database holds is not what was signed, so it is shown, printed and sent to no device. Restore it from a backup, or have the plan signed again.`,
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
    app.log.error({ planId, number }, "a signed edition is damaged: it is served nowhere");
  }
  if (known.size >= KEPT) known.clear();
  known.set(key, sound);
  return sound;
}

function holds(app: EditionReader, { planJson, cardJson, findingsJson, planId, number, hash }: EditionText): boolean {
  const envelope = envelopeSchema.safeParse(parsed(cardJson)).data;
  if (sha256Hex(planJson) !== hash || parsed(findingsJson) === undefined || !envelope) return false;
  const publicKey = app.keys.publicKeyOf(envelope.keyId);
  const verified = publicKey === undefined ? undefined : verifyCard(envelope, publicKey, NO_TIME);
  if (!verified?.ok) return false;
  const { edition } = verified.card;
  return edition.planId === planId && edition.number === number && edition.hash === hash;
}

function parsed(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return undefined; // the answer: it was JSON when it was stored
  }
}
