/**
 * Every route with the right that it asks, in the policy's own words: what the matrix of rights is made from. A route that
 * is not listed here fails `tests/sync/rights-matrix.test.ts`.
 */
import type { PlanAction, StudioAction } from "#lib/policy/can.ts";

/** Who gets through. */
export type RouteRight =
  | { readonly plan: PlanAction; readonly and?: StudioAction }
  | { readonly studio: StudioAction }
  /** Of one plan's editions. */
  | { readonly editions: true; readonly and?: StudioAction }
  /** Everybody who is signed in, whatever their roles. */
  | { readonly signedIn: true }
  /** One of these rights. */
  | { readonly oneOf: readonly StudioAction[] }
  /** A paired device alone. */
  | { readonly device: true }
  /** Anybody: it answers by a secret of its own, or with nothing that is private. */
  | { readonly anybody: string };

interface RouteCase {
  readonly right: RouteRight;
  /** Sent as JSON. A body that the schema refuses shows the right and changes nothing; left out where there is none. */
  readonly body?: unknown;
}

const WRONG = { "no such key": true };
const plan = (action: PlanAction, body?: unknown): RouteCase => ({ right: { plan: action }, body });
const studio = (action: StudioAction, body?: unknown): RouteCase => ({ right: { studio: action }, body });
const editions: RouteCase = { right: { editions: true } };
const signedIn: RouteCase = { right: { signedIn: true } };
const device: RouteCase = { right: { device: true } };
const anybody = (why: string): RouteCase => ({ right: { anybody: why } });

/** By method and path, as in the folders of `app/api`. */
export const ROUTE_RIGHTS: Readonly<Record<string, RouteCase>> = {
  "POST acceptances/[id]/end": plan("plan.accept-finding"),
  "GET address": anybody("what address the program believes it has"),
  ...Object.fromEntries(
    ["GET", "POST", "PUT", "PATCH", "DELETE"].map((method) => [
      `${method} auth/[...all]`,
      anybody("the sign-in library decides"),
    ]),
  ),
  "GET calendar/[file]": anybody("a secret address"),
  "GET feeds": { right: { oneOf: ["feed.own", "feeds.manage"] } },
  "POST feeds": { right: { oneOf: ["feed.own", "feeds.manage"] }, body: WRONG },
  "POST feeds/[id]/renew": { right: { oneOf: ["feed.own", "feeds.manage"] } },
  "DELETE feeds/[id]": { right: { oneOf: ["feed.own", "feeds.manage"] } },
  // A coach says only that they led it themselves.
  "POST class-logs/[key]/remarks": studio("look-back.read", WRONG),
  "GET devices": studio("devices.manage"),
  "POST devices": studio("devices.manage", WRONG),
  "DELETE devices/[id]": studio("devices.manage"),
  "GET devices/cards": device,
  "POST devices/logs": device,
  "POST devices/pair": anybody("a pairing code"),
  "GET editions": studio("edition.read"),
  "GET editions/[planId]/[number]/card": editions,
  "GET editions/[planId]/[number]/chapters.vtt": editions,
  "GET editions/[planId]/[number]/cues.vtt": editions,
  "GET editions/[planId]/[number]/plan": editions,
  "POST editions/[planId]/[number]/template": { right: { editions: true, and: "plan.create" } },
  "POST editions/[planId]/[number]/withdraw": plan("plan.withdraw", { reason: "The straps are worn." }),
  "GET find": signedIn,
  "GET find/at-hand": signedIn,
  "POST first-run": anybody("only where there is no studio yet"),
  "GET health": anybody("nothing private"),
  "GET join/[invitationId]": anybody("an invitation"),
  "POST join/[invitationId]": anybody("an invitation"),
  "GET library": studio("library.read"),
  "POST library": studio("library.write", WRONG),
  "PUT library": studio("library.write", WRONG),
  "GET library/[id]": studio("library.read"),
  "PUT library/[id]": studio("library.write", WRONG),
  "POST library/[id]/archive": studio("library.write", WRONG),
  "GET library/[id]/used": studio("library.read"),
  "POST library/compare": studio("library.write", WRONG),
  "GET people": studio("people.manage"),
  "PATCH people/[userId]": studio("people.manage", WRONG),
  "PUT studio/name": studio("standards.manage", WRONG),
  "PUT studio/first-steps": studio("people.manage", WRONG),
  "GET me/formats": signedIn,
  "PUT me/formats": { ...signedIn, body: WRONG },
  "GET studio/formats": studio("standards.manage"),
  "PUT studio/formats": studio("standards.manage", WRONG),
  "PUT me/name": { ...signedIn, body: WRONG },
  "PUT me/email": { ...signedIn, body: WRONG },
  "POST people/teach": studio("people.manage", WRONG),
  "PUT mail": studio("mail.manage", WRONG),
  "DELETE mail": studio("mail.manage"),
  "POST mail/test": studio("mail.manage"),
  "POST mail/[id]/try-again": studio("mail.manage"),
  "PUT notices/choice": { right: { signedIn: true }, body: WRONG },
  "POST notices/seen": { right: { signedIn: true }, body: WRONG },
  "GET people/[userId]/deletion": studio("people.manage"),
  "POST people/[userId]/deletion": studio("people.manage", WRONG),
  "DELETE people/[userId]": studio("people.manage"),
  "POST people/[userId]/end-sessions": studio("people.manage"),
  "POST people/[userId]/reset-link": studio("people.manage"),
  "GET people/invitations": studio("people.manage"),
  "POST people/invitations": studio("people.manage", WRONG),
  "DELETE people/invitations/[invitationId]": studio("people.manage"),
  "GET people/reset-links": studio("people.manage"),
  "DELETE people/reset-links/[id]": studio("people.manage"),
  "GET plans": signedIn,
  "POST plans": studio("plan.create", WRONG),
  "GET plans/archived": signedIn,
  "GET plans/deleted": signedIn,
  "POST plans/example": studio("plan.create"),
  "POST plans/import": studio("plan.create", WRONG),
  "GET plans/[id]": plan("plan.read"),
  "PATCH plans/[id]": plan("plan.read", WRONG),
  "DELETE plans/[id]": plan("plan.delete"),
  "POST plans/[id]/archive": plan("plan.delete", WRONG),
  "POST plans/[id]/duplicate": { right: { plan: "plan.read", and: "plan.create" } },
  "GET plans/[id]/editions": editions,
  "GET plans/[id]/file": plan("plan.read"),
  "GET plans/[id]/findings": plan("plan.read"),
  "POST plans/[id]/hand-back": plan("plan.hand-back", WRONG),
  "POST plans/[id]/hand-in": plan("plan.hand-in", WRONG),
  "GET plans/[id]/acceptances": plan("plan.read"),
  "POST plans/[id]/acceptances": plan("plan.accept-finding", WRONG),
  "GET plans/[id]/moments/[momentId]": plan("plan.read"),
  "POST plans/[id]/plates-read": plan("plan.sign", WRONG),
  "GET plans/[id]/proposals": plan("plan.read"),
  "POST plans/[id]/proposals": plan("plan.propose", WRONG),
  "GET plans/[id]/readers": plan("plan.comment"),
  "GET plans/[id]/rounds": plan("plan.read"),
  "POST plans/[id]/take-up": plan("plan.hand-back", WRONG),
  "GET plans/[id]/threads.jsonld": plan("plan.read"),
  "POST proposals/[id]/take": plan("plan.write", WRONG),
  "POST proposals/[id]/decline": plan("plan.write", WRONG),
  // Only by who made it, who is asking here.
  "POST proposals/[id]/withdraw": plan("plan.read"),
  "GET record/proof": studio("record.read"),
  "POST record/proof": studio("record.read"),
  "GET remarks": studio("remarks.read"),
  "POST remarks": studio("remarks.write", WRONG),
  "PATCH remarks/[id]": studio("remarks.write", WRONG),
  "POST threads/[id]/seen": plan("plan.comment", WRONG),
  "GET plans/[id]/marks": plan("plan.mark"),
  "POST plans/[id]/marks": plan("plan.mark", WRONG),
  "POST plans/[id]/read": plan("plan.sign"),
  "GET plans/[id]/record": plan("plan.read"),
  "GET plans/[id]/rehearsals": plan("plan.read"),
  "POST plans/[id]/restore": plan("plan.delete"),
  "POST plans/[id]/share": plan("plan.share", WRONG),
  "POST plans/[id]/sign": plan("plan.sign", WRONG),
  "GET plans/[id]/studio": plan("plan.read"),
  "POST plans/[id]/take-back": plan("plan.hand-in"),
  "GET plans/[id]/threads": plan("plan.read"),
  "POST plans/[id]/threads": plan("plan.comment", WRONG),
  "GET programme/[month]": studio("programme.read"),
  "GET programme/[month]/acceptances": studio("programme.read"),
  "POST programme/[month]/acceptances": studio("month.sign", WRONG),
  "POST programme/[month]/acceptances/[id]/end": studio("month.sign"),
  "GET programme/[month]/editions": studio("programme.read"),
  "GET programme/[month]/editions/[number]": studio("programme.read"),
  "GET programme/[month]/editions/[number]/changes": studio("programme.read"),
  "POST programme/[month]/fill": studio("programme.write"),
  "GET programme/[month]/looking-back": studio("look-back.read"),
  "POST programme/[month]/read": studio("month.sign"),
  "POST programme/[month]/sign": studio("month.sign", WRONG),
  "GET programme/[month]/csv": studio("programme.read"),
  "POST programme/[month]/csv": studio("programme.write", WRONG),
  "GET programme/[month]/file": studio("programme.read"),
  "PUT programme/[month]/file": studio("programme.write", WRONG),
  "POST reset": anybody("an address; the answer is the same for all"),
  "GET reset/[token]": anybody("a reset link"),
  "POST reset/[token]": anybody("a reset link"),
  "GET rooms": signedIn,
  "POST rooms": studio("rooms.manage", WRONG),
  "PATCH rooms/[id]": studio("rooms.manage", WRONG),
  "PUT rooms/[id]/springs/[spring]/readings": studio("rooms.manage", WRONG),
  "PUT rooms/[id]/timings": studio("rooms.manage", WRONG),
  "POST rooms/[id]/timings/taught": studio("rooms.manage", WRONG),
  "GET rubric": { right: { oneOf: ["remarks.read", "rubric.write"] } },
  "PUT rubric": studio("rubric.write", WRONG),
  "GET schema/plan.json": anybody("the published schema"),
  "GET standards/[rule]": studio("library.read"),
  "PUT standards/[rule]": studio("standards.manage", WRONG),
  "POST standards/[rule]/trial": studio("standards.manage", WRONG),
  "GET studio/backups": studio("backups.manage"),
  "PUT studio/backups": studio("backups.manage", WRONG),
  "POST studio/backups/now": studio("backups.manage"),
  "GET studio/export": studio("studio.export"),
  "GET studio/health": studio("health.read"),
  "GET studio/month": studio("programme.read"),
  "PUT studio/month": studio("month.manage", WRONG),
  "PATCH studio": studio("standards.manage", WRONG),
  "POST threads/[id]/comments": plan("plan.comment", { body: "Seen." }),
  "POST threads/[id]/settle": plan("plan.comment", { settled: false }),
};
