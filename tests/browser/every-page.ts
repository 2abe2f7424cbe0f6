/** Every page of the invented studio, for tests and pictures that walk them all. */
import type { Page } from "@playwright/test";
import type { Who } from "./kit.ts";

const MONTH = new Date().toISOString().slice(0, 7);
export const SIGNED_PLAN = "Whole body, steady";

/** Every page of `app/`, who opens it, and the parts of its address that are asked: "{plan}" is a plan's, "{edition}" an edition's. */
export const EVERY_PAGE: Readonly<Record<string, readonly [who: Who | null, path: string]>> = {
  "/desk": ["marta", "/desk"],
  "/editions/[planId]": ["ines", "/editions/{id}"],
  "/editions/[planId]/[number]": ["ines", "/editions/{id}/1"],
  "/editions/[planId]/[number]/classes": ["ines", "/editions/{id}/1/classes"],
  "/editions/[planId]/[number]/crew": ["sam", "/editions/{id}/1/crew"],
  "/editions/[planId]/[number]/print": ["ines", "/editions/{id}/1/print"],
  "/editions/[planId]/compare": ["ines", "/editions/{id}/compare"],
  "/help": [null, "/help"],
  "/help/[topic]": [null, "/help/sign-off"],
  "/help/keys": ["marta", "/help/keys"],
  "/help/rules": [null, "/help/rules"],
  "/help/safety": [null, "/help/safety"],
  "/help/words": [null, "/help/words"],
  "/join/[invitationId]": [null, "/join/none"],
  "/library": ["marta", "/library"],
  "/library/[id]": ["marta", "/library/row-kneeling"],
  "/library/[id]/edit": ["ines", "/library/row-kneeling/edit"],
  "/library/bring": ["ines", "/library/bring"],
  "/library/new": ["ines", "/library/new"],
  "/notices": ["marta", "/notices"],
  "/people": ["petra", "/people"],
  "/people/[userId]": ["jonas", "{own}"],
  "/plans/[id]": ["marta", "/plans/{id}"],
  "/plans/[id]/marks": ["ines", "/plans/{id}/marks"],
  "/plans/[id]/rehearse": ["marta", "/plans/{id}/rehearse"],
  "/programme/[month]": ["marta", `/programme/${MONTH}`],
  "/programme/[month]/looking-back": ["ines", `/programme/${MONTH}/looking-back`],
  "/programme/[month]/sign": ["ines", `/programme/${MONTH}/sign`],
  "/programme/feeds": ["petra", "/programme/feeds"],
  "/record": ["petra", "/record"],
  "/remarks": ["ines", "/remarks"],
  "/reset/[token]": [null, "/reset/none"],
  "/rubric": ["ines", "/rubric"],
  "/rules": ["ines", "/rules"],
  "/rules/[id]": ["petra", "/rules/caution-without-safety-line"],
  "/rules/month/[id]": ["ines", "{monthRule}"],
  "/settings": ["sam", "/settings"],
  "/sign-in": [null, "/sign-in"],
  "/studio": ["petra", "/studio"],
  "/studio/health": ["petra", "/studio/health"],
  "/studio/rooms/[id]/springs/[spring]": ["petra", "{spring}"],
  "/studio/rooms/[id]/timings": ["petra", "{timings}"],
  // Outside `app/`'s own pages: a device's.
  "/floor": [null, "/floor"],
};
/** They lead to another at once, where there is a studio, or where it sends no e-mail. */
export const LEADS_ON = ["/", "/first-run", "/programme", "/sign-in/forgotten"];

/** A link of a page that begins and ends so. */
async function linkOn(page: Page, from: string, pattern: RegExp): Promise<string> {
  const html = await (await page.request.get(from)).text();
  const found = [...html.matchAll(/href="([^"]+)"/g)].map(([, href = ""]) => href).find((href) => pattern.test(href));
  if (!found) throw new Error(`no link like ${pattern} on ${from}`);
  return found;
}

/** The address of a path of `EVERY_PAGE`, for who has this page open. `signedId`: of the plan `SIGNED_PLAN`. */
export async function addressOf(page: Page, path: string, signedId: string): Promise<string> {
  if (path === "{own}") return linkOn(page, "/desk", /^\/people\/[^/]+$/);
  if (path === "{monthRule}") return linkOn(page, "/rules", /^\/rules\/month\/.+/);
  if (path === "{spring}") return linkOn(page, "/studio", /\/springs\/[^/]+$/);
  if (path === "{timings}") return linkOn(page, "/studio", /\/timings$/);
  return path.replace("{id}", signedId);
}
