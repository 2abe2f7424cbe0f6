/** What follows from the server's check of a plan: open pages hear of it, and a signed plan that was written on goes back. */

import type { CheckAnswer } from "#server/context/checks.ts";
import { planDoc } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { announceState, checkedNews } from "#server/news/plan-news.ts";
import { noteWrittenOn } from "./written-on.ts";

/** Takes a check's answer to whoever it concerns. Call after the answer is kept. */
export function announceCheck(app: Pick<Springline, "db" | "rooms" | "now">, answer: CheckAnswer): void {
  const { planId, writtenOn } = answer;
  for (const news of checkedNews(answer)) app.rooms.announce(planDoc(planId), news);
  if (writtenOn !== null && noteWrittenOn(app, planId, writtenOn)) announceState(app, planId);
}
