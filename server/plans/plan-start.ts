/**
 * What a plan's page begins with, before its socket is open: the class in words, the document, what the last check found, and
 * what the page is told as it joins. The socket then brings what has changed since.
 */
import * as Y from "yjs";
import { countPieces } from "#lib/doc/bounds.ts";
import { docVersion } from "#lib/doc/layout.ts";
import { openThreadsByItem } from "#lib/margin/open-threads.ts";
import { type OutlinePart, outlineOf } from "#lib/plan/outline.ts";
import type { Actor } from "#lib/policy/can.ts";
import type { News } from "#lib/protocol/messages.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { planWelcome } from "#server/news/plan-news.ts";
import { openPlan } from "./open-plan.ts";
import { withPlan } from "./plan-doc.ts";

/** The document as it is on disk. */
export interface DocStart {
  /** An update that holds all of it. */
  readonly bytes: Uint8Array;
  readonly version: number;
  /** What the server finds in it with the studio data of `studioMark`; undefined where it has to be checked again. */
  readonly findings?: readonly Finding[];
  /** The news that a page hears as it joins, as the text of a JSON list; undefined where they are too many. */
  readonly news?: string;
  /** Where the threads are too many to be among them: how many are open about each item. */
  readonly openThreads?: Readonly<Record<string, number>>;
}

export interface PlanStart {
  readonly outline: readonly OutlinePart[];
  /** Undefined for a plan that is too large to be sent with its page. */
  readonly doc?: DocStart;
}

/** Beyond either, a page takes the document from its socket. */
const MOST_PIECES = 10_000;
const MOST_BYTES = 100_000;
/** Characters. Every page is sent its data twice, for the words and for the script; 200 threads of five comments are 350 kB. */
const MOST_NEWS = 50_000;

/** Errors: 401, 403, 404; 409 or 503 when the document cannot be read at the moment. */
export function readStart(app: Springline, actor: Actor, id: string, studioMark: string): Result<PlanStart> {
  const opened = openPlan(app, actor, id, "plan.read");
  if (!opened.ok) return opened;
  const { row } = opened.value;
  return withPlan(app, row, ({ plan }, doc) => {
    const outline = outlineOf(plan);
    const bytes = countPieces(doc) > MOST_PIECES ? null : Y.encodeStateAsUpdate(doc);
    if (bytes === null || bytes.length > MOST_BYTES) return ok({ outline });
    const findings = app.checks.found(row, studioMark);
    if (!findings) app.checks.soon(id); // for who opens it next
    const known = { ...(findings ? { findings } : {}), ...newsAtStart(planWelcome(app, id)) };
    return ok({ outline, doc: { bytes, version: docVersion(doc), ...known } });
  });
}

/** What plates show of threads is enough to draw them; the threads themselves come with the socket. */
function newsAtStart(welcome: readonly News[]): Pick<DocStart, "news" | "openThreads"> {
  const whole = JSON.stringify(welcome);
  if (whole.length <= MOST_NEWS) return { news: whole };
  const news = JSON.stringify(welcome.filter(({ t }) => t !== "threads"));
  return news.length <= MOST_NEWS ? { news, openThreads: openThreadsByItem(threadsIn(welcome)) } : {};
}

const threadsIn = (welcome: readonly News[]) => welcome.flatMap((news) => (news.t === "threads" ? news.threads : []));
