/** What follows from a check: open pages are told, and a signed plan that was written on is in writing again. */

import type { CheckAnswer } from "#server/context/checks.ts";
import { planDoc } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { announceState, checkedNews } from "#server/news/plan-news.ts";
import { noteWrittenOn } from "./written-on.ts";

/** Call after the result is stored. */
export function announceCheck(app: Pick<Springline, "db" | "documents" | "now">, answer: CheckAnswer): void {
  const { planId, writtenOn } = answer;
  for (const news of checkedNews(answer)) app.documents.announce(planDoc(planId), news);
  if (writtenOn !== null && noteWrittenOn(app, planId, writtenOn)) announceState(app, planId);
}
