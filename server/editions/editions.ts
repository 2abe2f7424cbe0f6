/** Signed editions for people who may read them: lists, and each one as a plan, a cue card and tracks. */

import { type Edition, type EditionHead, listEditions } from "#db/repos/edition-repo.ts";
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import { listPlanRows, type PlanRow, readPlanRow } from "#db/repos/plan-repo.ts";
import { recordHead } from "#db/repos/record-repo.ts";
import { readWithdrawal } from "#db/repos/withdrawal-repo.ts";
import { shortName } from "#lib/card/short-name.ts";
import { withdrawnWords } from "#lib/card/withdrawn-words.ts";
import { classStrip, stripText } from "#lib/clock/class-strip.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { type Actor, can, canPlan, canReadEditions } from "#lib/policy/can.ts";
import type { Withdrawal } from "#lib/protocol/messages.ts";
import type { RecordHead } from "#lib/record/chain.ts";
import { chaptersVtt, cuesVtt } from "#lib/tracks/tracks.ts";
import { fail, NO_RIGHT, NOT_FOUND, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { withdrawalView } from "#server/news/plan-summaries.ts";
import { damagedEdition, type EditionReader, readSoundEdition } from "./sound-edition.ts";

/** A finding that a lead accepted as it stood, with why. */
export interface AcceptedThere {
  readonly message: string;
  readonly reason: string;
  readonly byName: string;
  /** ms since the epoch; null where that was not kept. */
  readonly at: number | null;
}

export interface EditionView extends Omit<EditionHead, "acceptedJson"> {
  readonly shortName: string;
  readonly signedByName: string;
  readonly withdrawn: Withdrawal | null;
  /** The stored edition is no longer what was signed, and is not served. */
  readonly damaged: boolean;
}

/** A signed plan, with its newest edition. */
export interface SignedPlan extends EditionView {
  readonly roomId: string;
}

/**
 * Editions of one plan, the newest first. Errors: 401, 403, 404 (also for a plan that was never signed and that the asker
 * may not read, so that ids reveal nothing).
 */
export function listPlanEditions(app: Springline, actor: Actor, planId: string): Result<{ editions: EditionView[] }> {
  const opened = openSigned(app, actor, planId);
  if (!opened.ok) return opened;
  const heads = listEditions(app.db, planId);
  if (heads.length === 0 && !canPlan(actor, "plan.read", opened.value)) return NOT_FOUND;
  const names = namesById(app.db);
  return ok({ editions: heads.map((head) => viewOf(app, head, names)) });
}

/** The newest edition of every plan whose editions the asker may read, the last signed first. Errors: 401, 403. */
export function listSignedPlans(app: Springline, actor: Actor): Result<{ plans: SignedPlan[] }> {
  if (actor === null) return NOT_SIGNED_IN;
  if (!can(actor, "edition.read")) return NO_RIGHT;
  const names = namesById(app.db);
  const plans = listPlanRows(app.db).flatMap((row): SignedPlan[] => {
    const reads = row.archivedAt === null && mayReadSigned(actor, row);
    const head = reads ? listEditions(app.db, row.id)[0] : undefined;
    if (!head) return [];
    return [{ ...viewOf(app, head, names), roomId: row.roomId }];
  });
  return ok({ plans: plans.sort((a, b) => b.signedAt - a.signedAt) });
}

/** A signed class in small, as `lib/clock/class-strip.ts` writes it; null for a damaged edition. */
export function signedStrip(
  app: EditionReader,
  { planId, number }: Pick<EditionHead, "planId" | "number">,
): string | null {
  const edition = readSoundEdition(app, planId, number);
  if (!edition || edition === "damaged") return null;
  const { plan, clock } = edition.card.card;
  return stripText(classStrip(plan, clock.rows));
}

export type EditionForm = "plan" | "card" | "cues.vtt" | "chapters.vtt";
export interface EditionFile {
  readonly text: string;
  readonly type: string;
  /** The suggested file name. */
  readonly fileName: string;
}

/** One edition with everything in it, and the head of the record as it is now, for sheets and for its page. Errors: 401, 403, 404, 409 edition-damaged. */
export function readSignedEdition(
  app: Springline,
  actor: Actor,
  planId: string,
  number: number,
): Result<Edition & EditionView & { readonly record: RecordHead }> {
  const opened = openSigned(app, actor, planId);
  if (!opened.ok) return opened;
  const edition = readSoundEdition(app, planId, number);
  if (!edition) return NOT_FOUND;
  if (edition === "damaged") return damagedEdition(number);
  return ok({ ...edition, ...viewOf(app, edition, namesById(app.db)), record: recordHead(app.db) });
}

/** The plan is sent byte for byte as it was hashed. Errors: 401, 403, 404, 409 edition-damaged; 409 withdrawn for a card. */
export function editionFile(
  app: Springline,
  actor: Actor,
  which: { planId: string; number: number; form: EditionForm },
): Result<EditionFile> {
  const found = readSignedEdition(app, actor, which.planId, which.number);
  if (!found.ok) return found;
  const { planJson, card, number, title, withdrawn } = found.value;
  const base = `${fileStem(title)}-edition-${number}`;
  switch (which.form) {
    case "plan":
      return ok({ text: planJson, type: "application/json", fileName: `${base}.plan.json` });
    case "card":
      // Withdrawn: no class may be started from it.
      if (withdrawn)
        return fail(
          409,
          "withdrawn",
          `${withdrawnWords(withdrawn, STANDARD_FORMATS)} Its card is no longer available.`,
        );
      return ok({ text: JSON.stringify(card), type: "application/json", fileName: `${base}.card.json` });
    case "cues.vtt":
      return ok({ text: cuesVtt(card.card), type: "text/vtt; charset=utf-8", fileName: `${base}.cues.vtt` });
    case "chapters.vtt":
      return ok({ text: chaptersVtt(card.card), type: "text/vtt; charset=utf-8", fileName: `${base}.chapters.vtt` });
  }
}

/** A title reduced to letters, digits and hyphens, for a file name. */
export function fileStem(title: string): string {
  const plain = title.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  return (
    plain
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^-+|-+$/g, "")
      .slice(0, 60) || "plan"
  );
}

const mayReadSigned = (actor: Actor, row: PlanRow): boolean => row.deletedAt === null && canReadEditions(actor, row);

function openSigned(app: Springline, actor: Actor, planId: string): Result<PlanRow> {
  if (actor === null) return NOT_SIGNED_IN;
  if (!can(actor, "edition.read")) return NO_RIGHT;
  const row = readPlanRow(app.db, planId);
  return row && mayReadSigned(actor, row) ? ok(row) : NOT_FOUND;
}

function viewOf(app: EditionReader, head: EditionHead, names: ReadonlyMap<string, string>): EditionView {
  const { planId, number, hash, signedBy, signedAt, note, round, title, lengthSeconds } = head;
  const out = readWithdrawal(app.db, planId, number);
  return {
    ...{ planId, number, hash, signedBy, signedAt, note, round, title, lengthSeconds },
    shortName: shortName(hash),
    signedByName: names.get(signedBy) ?? FORMER_MEMBER,
    withdrawn: out ? withdrawalView(out, names) : null,
    damaged: readSoundEdition(app, planId, number) === "damaged",
  };
}

/** What had been accepted when it was signed, in order; none in an edition from before that was kept. */
export function acceptedIn({ acceptedJson }: Pick<EditionHead, "acceptedJson">): AcceptedThere[] {
  const stored: unknown = acceptedJson === null ? [] : jsonOrNull(acceptedJson);
  if (!Array.isArray(stored)) return [];
  return stored.flatMap((one: Partial<AcceptedThere> | null) => {
    if (typeof one?.message !== "string" || typeof one.reason !== "string") return [];
    const { message, reason, byName, at } = one;
    return [{ message, reason, byName: byName ?? FORMER_MEMBER, at: typeof at === "number" ? at : null }];
  });
}

/** An altered row need not be JSON any more. */
function jsonOrNull(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** Whether the asker is shown what the rules found and what was accepted: whoever reads the plan, and managers. */
export function seesFindings(app: Pick<Springline, "db">, actor: Actor, planId: string): boolean {
  const row = readPlanRow(app.db, planId);
  const manager = actor?.kind === "person" && actor.roles.includes("manager");
  return row !== undefined && (manager || canPlan(actor, "plan.read", row));
}

/** Whether the asker may withdraw this plan's editions. */
export function mayWithdraw(app: Pick<Springline, "db">, actor: Actor, planId: string): boolean {
  const row = readPlanRow(app.db, planId);
  return row !== undefined && canPlan(actor, "plan.withdraw", row);
}
