/**
 * Calendar addresses: making one (shown once), renewing, withdrawing, listing. A coach has their own, a manager the studio's and
 * the rooms', and a manager may withdraw anybody's.
 */
import * as z from "zod";
import {
  type FeedKind,
  type FeedRow,
  type FeedSubject,
  feedOf,
  insertFeed,
  listFeedRows,
  readFeedRow,
  withdrawFeedRow,
} from "#db/repos/calendar-feed-repo.ts";
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { listStudioRooms, readRoom } from "#db/repos/room-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { type Actor, can, type Person } from "#lib/policy/can.ts";
import { hashToken } from "#server/auth/device.ts";
import { newDeviceToken } from "#server/auth/pairing-code.ts";
import { NO_RIGHT, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { FEED_ROOM_UNKNOWN, FEED_STANDS } from "./refusals.ts";

type Studio = Pick<Springline, "db" | "env" | "now" | "newId">;

export const newFeedSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.enum(["studio", "coach"]) }),
  z.strictObject({ kind: z.literal("room"), subject: z.string().min(1).max(64) }),
]);

export interface NewAddress {
  readonly id: string;
  /** Shown once: only the hash of its secret part is stored. */
  readonly address: string;
}

/** Errors: 403 no-right, 404 no-room, 409 calendar-stands. */
export function makeFeed(app: Studio, actor: Actor, made: z.infer<typeof newFeedSchema>): Result<NewAddress> {
  if (actor?.kind !== "person") return NO_RIGHT;
  const of = subjectOf(actor, made);
  if (!mayMake(actor, of)) return NO_RIGHT;
  if (of.kind === "room" && !readRoom(app.db, of.subject)) return FEED_ROOM_UNKNOWN;
  return inTransaction(app.db, (): Result<NewAddress> => {
    if (feedOf(app.db, of)) return FEED_STANDS;
    return ok(insertNew(app, actor, { of, kind: "feed-made" }));
  });
}

/** A new address; the old one stops working at once. Errors: 403 no-right, 404 not-found. */
export function renewFeed(app: Studio, actor: Actor, id: string): Result<NewAddress> {
  if (actor?.kind !== "person") return NO_RIGHT;
  return inTransaction(app.db, (): Result<NewAddress> => {
    const feed = readFeedRow(app.db, id);
    if (!feed || !maySee(actor, feed)) return NOT_FOUND;
    if (!mayMake(actor, feed)) return NO_RIGHT;
    withdrawFeedRow(app.db, id, { actorId: actor.id, at: app.now() });
    return ok(insertNew(app, actor, { of: feed, kind: "feed-renewed" }));
  });
}

/** Its address stops working at once. Errors: 403 no-right, 404 not-found. */
export function withdrawFeed(app: Studio, actor: Actor, id: string): Result<null> {
  if (actor?.kind !== "person") return NO_RIGHT;
  return inTransaction(app.db, (): Result<null> => {
    const feed = readFeedRow(app.db, id);
    if (!feed || !maySee(actor, feed)) return NOT_FOUND;
    withdrawFeedRow(app.db, id, { actorId: actor.id, at: app.now() });
    note(app, actor, { of: feed, kind: "feed-withdrawn" });
    return ok(null);
  });
}

export interface FeedPlace extends FeedSubject {
  /** Of the studio, the person or the room. */
  readonly name: string;
  /** Whether the reader may make and renew it, not only withdraw it. */
  readonly mayMake: boolean;
  readonly own: boolean;
  /** Null while there is no address. */
  readonly feed: {
    readonly id: string;
    readonly madeBy: string;
    readonly madeAt: number;
    readonly lastReadAt: number | null;
  } | null;
}

/**
 * The calendars that somebody may have an address of: their own, then the studio's and the rooms', then those that others have.
 * Errors: 403 no-right.
 */
export function listFeeds(app: Pick<Studio, "db">, actor: Actor): Result<readonly FeedPlace[]> {
  if (actor?.kind !== "person" || !(can(actor, "feed.own") || can(actor, "feeds.manage"))) return NO_RIGHT;
  const names = namesById(app.db);
  const nameOf = (id: string) => names.get(id) ?? FORMER_MEMBER;
  const rows = listFeedRows(app.db);
  const place = (kind: FeedKind, subject: string, name: string): FeedPlace => {
    const row = rows.find((one) => one.kind === kind && one.subject === subject);
    const own = kind === "coach" && subject === actor.id;
    return {
      kind,
      subject,
      name,
      mayMake: mayMake(actor, { kind, subject }),
      own,
      feed: row ? shown(row, nameOf) : null,
    };
  };
  const mine = can(actor, "feed.own") ? [place("coach", actor.id, nameOf(actor.id))] : [];
  if (!can(actor, "feeds.manage")) return ok(mine);
  const studio = place("studio", "", readStudio(app.db)?.name ?? "");
  const rooms = listStudioRooms(app.db).map(({ id, name }) => place("room", id, name));
  const others = rows.filter(({ kind, subject }) => kind === "coach" && subject !== actor.id);
  return ok([...mine, studio, ...rooms, ...others.map(({ subject }) => place("coach", subject, nameOf(subject)))]);
}

const shown = ({ id, madeBy, madeAt, lastReadAt }: FeedRow, nameOf: (id: string) => string) => ({
  id,
  madeBy: nameOf(madeBy),
  madeAt,
  lastReadAt,
});

const subjectOf = (actor: Person, made: z.infer<typeof newFeedSchema>): FeedSubject =>
  made.kind === "room" ? made : { kind: made.kind, subject: made.kind === "coach" ? actor.id : "" };

const mayMake = (actor: Person, { kind, subject }: FeedSubject): boolean =>
  kind === "coach" ? can(actor, "feed.own") && subject === actor.id : can(actor, "feeds.manage");

const maySee = (actor: Person, of: FeedSubject): boolean => can(actor, "feeds.manage") || mayMake(actor, of);

interface Done {
  readonly of: FeedSubject;
  readonly kind: "feed-made" | "feed-renewed" | "feed-withdrawn";
}

/** The secret has 256 random bits. */
function insertNew(app: Studio, actor: Person, done: Done): NewAddress {
  const [id, secret] = [app.newId(), newDeviceToken()];
  const { kind, subject } = done.of;
  insertFeed(app.db, { id, kind, subject, secretHash: hashToken(secret), madeBy: actor.id, madeAt: app.now() });
  note(app, actor, done);
  return { id, address: `${app.env.origin}/api/calendar/${secret}.ics` };
}

function note(app: Studio, actor: Person, { of, kind }: Done): void {
  const subject = of.kind === "studio" ? "studio" : `${of.kind === "coach" ? "person" : "room"}/${of.subject}`;
  addToRecord(app.db, { at: app.now(), actorId: actor.id, subject, kind, body: { calendar: of.kind } });
}
