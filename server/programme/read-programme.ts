/** A month as plain data, for readers without a socket and for the first display of its page. */

import { type Actor, can } from "#lib/policy/can.ts";
import type { Slot } from "#lib/programme/layout.ts";
import { readMonth } from "#lib/programme/read.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import type { PlansKnown } from "#lib/protocol/messages.ts";
import { fail, NO_RIGHT, NOT_FOUND, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import { monthDoc, unavailableReason } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { plansOfMonth } from "#server/news/month-news.ts";
import { planSummaries } from "#server/news/plan-summaries.ts";
import { monthIsNear } from "./month-range.ts";

export interface Programme extends PlansKnown {
  readonly month: string;
  readonly slots: readonly Slot[];
}

/** Empty for a month that nobody has written in. Errors: 401, 403, 404 for a month out of range, 409, 503. */
export function readProgramme(app: Springline, actor: Actor, month: string): Result<Programme> {
  if (actor === null) return NOT_SIGNED_IN;
  if (!can(actor, "programme.read")) return NO_RIGHT;
  if (!monthIsNear(month, app.now())) return NOT_FOUND;
  try {
    return app.documents.withDoc(monthDoc(month), (doc) =>
      ok({ month, slots: readMonth(doc).slots, ...planSummaries(app, actor, plansOfMonth(doc)) }),
    );
  } catch (error) {
    const reason = unavailableReason(error);
    if (reason === undefined) throw error;
    if (reason === "unknownDocument") return ok({ month, slots: [], plans: [], hidden: [] });
    return fail(reason === "newerDocument" ? 409 : 503, `document-${reason}`, CLOSE[reason].text);
  }
}
