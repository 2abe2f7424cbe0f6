/** The studio's stock remarks: written by leads, linked to a rule or a move, taken out of use and brought back. */
import * as z from "zod";
import { readMoveRow } from "#db/repos/move-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { insertRemark, listRemarkRows, type RemarkRow, readRemark, updateRemark } from "#db/repos/remark-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { ID_PATTERN } from "#lib/plan/schema.ts";
import { type Actor, can, type Person, type StudioAction } from "#lib/policy/can.ts";
import type { Remark } from "#lib/remarks/match-remarks.ts";
import { ruleTitle } from "#lib/rules/rule-title.ts";
import { fail, NO_RIGHT, NOT_FOUND, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import { typedText } from "#server/base/typed-text.ts";
import type { Springline } from "#server/context/springline.ts";

const WORDS_MAX = 600;
const id = z.string().regex(ID_PATTERN);
const fields = {
  words: typedText.min(1, "Write the remark first.").max(WORDS_MAX, `A remark has at most ${WORDS_MAX} characters.`),
  ruleId: id.nullable(),
  moveId: id.nullable(),
};
/** A remark belongs to a rule, to a move, or to neither. */
export const newRemarkSchema = z.strictObject(fields);
export const changeRemarkSchema = z.strictObject({ ...fields, inUse: z.boolean() }).partial();

/** A remark as the page of remarks shows it. */
export interface StudioRemark extends Remark {
  readonly inUse: boolean;
}

const NOT_BOTH = fail(422, "rule-and-move", "Link the remark to a rule or to a move, not to both.");
const RULE_UNKNOWN = fail(422, "no-such-rule", "There is no such rule. Choose one from the list.");
const MOVE_UNKNOWN = fail(422, "no-such-move", "The library does not have this move. Choose one from the list.");

/** Those in use, for a comment field; with `all`, those out of use too. Errors: 401, 403. */
export function listRemarks(
  app: Pick<Springline, "db">,
  actor: Actor,
  all = false,
): Result<{ remarks: StudioRemark[] }> {
  const asker = personWith(actor, all ? "remarks.write" : "remarks.read");
  if (!asker.ok) return asker;
  const remarks = listRemarkRows(app.db).map(toRemark);
  return ok({ remarks: all ? remarks : remarks.filter(({ inUse }) => inUse) });
}

/** Errors: 401, 403; 422 rule-and-move, no-such-rule, no-such-move. */
export function addRemark(
  app: Springline,
  actor: Actor,
  made: z.infer<typeof newRemarkSchema>,
): Result<{ id: string }> {
  const asker = personWith(actor, "remarks.write");
  if (!asker.ok) return asker;
  const linked = checkLinks(app, made);
  if (!linked.ok) return linked;
  const row = { ...made, id: app.newId(), createdBy: asker.value.id, updatedAt: app.now(), archivedAt: null };
  store(app, asker.value, "remark-added", row, () => insertRemark(app.db, row));
  return ok({ id: row.id });
}

/** Changes words and links, takes a remark out of use or brings it back. Errors: 401, 403, 404; 422 as in `addRemark`. */
export function changeRemark(
  app: Springline,
  actor: Actor,
  remarkId: string,
  { inUse, ...changed }: z.infer<typeof changeRemarkSchema>,
): Result<{ id: string }> {
  const asker = personWith(actor, "remarks.write");
  if (!asker.ok) return asker;
  const before = readRemark(app.db, remarkId);
  if (!before) return NOT_FOUND;
  const words = Object.fromEntries(Object.entries(changed).filter(([, value]) => value !== undefined));
  const archivedAt = inUse === undefined ? before.archivedAt : inUse ? null : (before.archivedAt ?? app.now());
  const now: RemarkRow = { ...before, ...words, archivedAt, updatedAt: app.now() };
  const linked = checkLinks(app, now);
  if (!linked.ok) return linked;
  const kind = inUse === undefined ? "remark-changed" : inUse ? "remark-in-use-again" : "remark-out-of-use";
  store(app, asker.value, kind, now, () => updateRemark(app.db, remarkId, now));
  return ok({ id: remarkId });
}

function personWith(actor: Actor, action: StudioAction): Result<Person> {
  if (actor === null) return NOT_SIGNED_IN;
  return actor.kind === "person" && can(actor, action) ? ok(actor) : NO_RIGHT;
}

function checkLinks(
  app: Pick<Springline, "db">,
  { ruleId, moveId }: Pick<RemarkRow, "ruleId" | "moveId">,
): Result<null> {
  if (ruleId !== null && moveId !== null) return NOT_BOTH;
  if (ruleId !== null && ruleTitle(ruleId) === undefined) return RULE_UNKNOWN;
  return moveId !== null && !readMoveRow(app.db, moveId) ? MOVE_UNKNOWN : ok(null);
}

function store(app: Springline, by: Person, kind: string, row: RemarkRow, write: () => void): void {
  const { words, ruleId, moveId } = row;
  inTransaction(app.db, () => {
    write();
    const body = { id: row.id, words, ruleId, moveId };
    addToRecord(app.db, { at: row.updatedAt, actorId: by.id, subject: "studio", kind, body });
  });
}

const toRemark = ({ id, words, ruleId, moveId, archivedAt }: RemarkRow): StudioRemark => ({
  ...{ id, words, ruleId, moveId },
  inUse: archivedAt === null,
});
