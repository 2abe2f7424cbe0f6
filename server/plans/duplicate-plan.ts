/** A copy of a plan to write on: everything the document says, none of its past, threads, editions or shares. */
import { freshCopy } from "#lib/doc/fresh-copy.ts";
import { planParts } from "#lib/doc/layout.ts";
import { setText } from "#lib/doc/write.ts";
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import { mayCreate, storePlan } from "./create-plan.ts";
import { openPlan } from "./open-plan.ts";
import { withPlan } from "./plan-doc.ts";

const TITLE_MAX = 200;
const SUFFIX = " (copy)";

/**
 * Items taken out and keys this version does not know come along; what was overwritten does not, so that a plan that has
 * grown full of changes goes on as a copy. The copy belongs to whoever made it, is nobody else's yet, and counts as written by them. Errors: 401, 403, 404.
 */
export function duplicatePlan(app: Springline, actor: Actor, id: string): Result<{ id: string }> {
  const author = mayCreate(actor);
  if (!author.ok) return author;
  const opened = openPlan(app, actor, id, "plan.read");
  if (!opened.ok) return opened;
  const { row } = opened.value;
  const copied = withPlan(app, row, ({ plan }, source) => {
    return ok({ doc: freshCopy(source), lengthSeconds: plan.lengthSeconds, title: copyTitle(plan.title) });
  });
  if (!copied.ok) return copied;
  const { doc, lengthSeconds, title } = copied.value;
  setText({ doc, origin: "duplicate" }, planParts(doc).title, title);
  const head = { title, lengthSeconds, roomId: row.roomId, team: false };
  return storePlan(app, author.value, { doc, kind: "duplicated", note: id, ...head });
}

const copyTitle = (title: string): string =>
  title.endsWith(SUFFIX) ? title : `${wholeLetters(title.slice(0, TITLE_MAX - SUFFIX.length))}${SUFFIX}`;

/** Without the half of a letter that a cut may leave. */
const wholeLetters = (text: string): string => text.replace(/[\uD800-\uDBFF]$/, "");
