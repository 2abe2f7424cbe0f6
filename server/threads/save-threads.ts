/** A plan's threads as a file: Web Annotations in JSON-LD. */
import { listThreads } from "#db/repos/thread-repo.ts";
import { type QuotedWords, threadsAsAnnotations } from "#lib/annotation/annotation.ts";
import { scriptOf } from "#lib/doc/read.ts";
import { flatScript, quoteBetween } from "#lib/margin/flat-script.ts";
import { pinIn, type WordsAnchor } from "#lib/margin/pin.ts";
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { openPlan } from "#server/plans/open-plan.ts";
import { withPlan } from "#server/plans/plan-doc.ts";

/** UTF-16 units before and after the words; common practice, no source. */
const AROUND = 32;

/** Errors: those of `openPlan` and `withPlan`. */
export function saveThreads(
  app: Pick<Springline, "db" | "documents"> & { readonly env: Pick<Springline["env"], "origin"> },
  actor: Actor,
  planId: string,
): Result<{ readonly title: string; readonly data: unknown }> {
  const opened = openPlan(app, actor, planId, "plan.read");
  if (!opened.ok) return opened;
  return withPlan(app, opened.value.row, ({ plan: { title } }, doc) => {
    const quoteOf = (anchor: WordsAnchor): QuotedWords => quoted(doc, anchor);
    const { origin } = app.env;
    return ok({
      title,
      data: threadsAsAnnotations({ origin, planId, title, threads: listThreads(app.db, planId), quoteOf }),
    });
  });
}

/** The words as they were commented on, with their surroundings while they still stand there. */
function quoted(doc: Parameters<typeof scriptOf>[0], anchor: WordsAnchor): QuotedWords {
  const exact = anchor.quote;
  const fragment = scriptOf(doc, anchor.itemId);
  if (!fragment) return { exact };
  const flat = flatScript(fragment);
  const pin = pinIn(fragment, flat, anchor);
  if (pin.state !== "here") return { exact };
  return {
    exact,
    prefix: quoteBetween(flat, Math.max(0, pin.from - AROUND), pin.from),
    suffix: quoteBetween(flat, pin.to, Math.min(flat.text.length, pin.to + AROUND)),
  };
}

/** The file byte for byte, wherever one is written. */
export const threadsFileText = (data: unknown): string => `${JSON.stringify(data, null, 2)}\n`;
