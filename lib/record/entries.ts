/**
 * What the record says about a row of another table. An entry is made from the stored row alone, so that it can be made
 * again later and compared: a row that was altered no longer gives the entry that the chain holds.
 */
import { sha256Hex } from "#lib/canonical/canonical.ts";
import { type Digest, recordJson } from "./chain.ts";
import { SOURCE_NAMES, type SourceColumns, type SourceName } from "./sources.ts";

/** A row of the record before it has its place in the chain. */
export interface EntryOfRow {
  readonly at: number;
  readonly actorId: string;
  readonly subject: string;
  readonly kind: string;
  /** Canonical JSON. */
  readonly bodyJson: string;
}

/** Springs, timings and machines are of a room, standards of a rule; everything else is about a person. */
const STUDIO_SUBJECTS: Readonly<Record<string, string>> = {
  standard: "rule",
  machines: "room",
  spring: "room",
  "spring-out": "room",
  timings: "room",
  "timings-taken": "room",
};

type Maker<N extends SourceName> = (row: SourceColumns[N], digest: Digest) => EntryOfRow;

const MAKERS: { readonly [N in SourceName]: Maker<N> } = {
  "plan event": ({ id, planId, at, actorId, kind, note, hash }) => ({
    ...{ at, actorId, kind, subject: `plan/${planId}` },
    bodyJson: recordJson({ of: "plan event", row: id, note, hash }),
  }),
  "studio event": ({ id, at, actorId, kind, subject, dataJson }, digest) => ({
    ...{ at, actorId, kind, subject: `${STUDIO_SUBJECTS[kind] ?? "person"}/${subject}` },
    bodyJson: recordJson({ of: "studio event", row: id, data: parsed(dataJson), sha256: digest(dataJson) }),
  }),
  "move event": ({ id, moveId, at, actorId, kind, dataJson }, digest) => ({
    ...{ at, actorId, kind, subject: `move/${moveId}` },
    bodyJson: recordJson({ of: "move event", row: id, sha256: digest(dataJson) }),
  }),
  edition: (row, digest) => ({
    ...{ at: row.signedAt, actorId: row.signedBy, kind: "edition", subject: `plan/${row.planId}` },
    bodyJson: recordJson({
      ...{ of: "edition", number: row.number, hash: row.hash, note: row.note, round: row.round },
      ...{ plan: digest(row.planJson), card: digest(row.cardJson), findings: digest(row.findingsJson) },
      accepted: row.acceptedJson === null ? null : parsed(row.acceptedJson),
      acceptedSha256: row.acceptedJson === null ? null : digest(row.acceptedJson),
    }),
  }),
  withdrawal: ({ planId, number, withdrawnBy, withdrawnAt, reason }) => ({
    ...{ at: withdrawnAt, actorId: withdrawnBy, kind: "edition-withdrawn", subject: `plan/${planId}` },
    bodyJson: recordJson({ of: "withdrawal", number, reason }),
  }),
  "class log": ({ sessionId, planId, number, roomId, deviceId, kind, startedAt, receivedAt, logJson }, digest) => ({
    ...{ at: receivedAt, actorId: `device/${deviceId}`, kind: "class-log", subject: `plan/${planId}` },
    bodyJson: recordJson({
      ...{ of: "class log", session: sessionId, number, room: roomId, ran: kind, startedAt },
      sha256: digest(logJson),
    }),
  }),
  moment: ({ id, planId, round, kind, at, actorId, note, hash, ...texts }, digest) => ({
    ...{ at, actorId, kind: "moment", subject: `plan/${planId}` },
    bodyJson: recordJson({
      ...{ of: "moment", row: id, round, step: kind, note, hash },
      ...{ findings: digest(texts.findingsJson), threads: digest(texts.threadsJson) },
      plan: texts.planJson === null ? null : digest(texts.planJson),
    }),
  }),
  marks: ({ id, userId, planId, round, sessionId, byId, at, rubricJson, levelsJson, sentence }, digest) => ({
    ...{ at, actorId: byId, kind: "marks", subject: `plan/${planId}` },
    bodyJson: recordJson({
      ...{ of: "marks", id, userId, round, sessionId, sentence, rubric: digest(rubricJson) },
      ...{ levels: parsed(levelsJson), levelsSha256: digest(levelsJson) },
    }),
  }),
  acceptance: ({ id, planId, ruleId, findingKey, message, reason, byId, at }) => ({
    ...{ at, actorId: byId, kind: "finding-accepted", subject: `plan/${planId}` },
    bodyJson: recordJson({ of: "acceptance", id, rule: ruleId, findingKey, message, reason }),
  }),
  "month edition": ({ month, number, hash, signedBy, signedAt, note, ...texts }, digest) => ({
    ...{ at: signedAt, actorId: signedBy, kind: "month-signed", subject: `month/${month}` },
    bodyJson: recordJson({
      ...{ of: "month edition", month, edition: number, hash, note, file: digest(texts.fileJson) },
      ...{ findings: digest(texts.findingsJson), accepted: digest(texts.acceptedJson) },
    }),
  }),
  "class log remark": ({ id, sessionId, kind, coachId, reason, actorId, at }) => ({
    ...{ at, actorId, kind: `class-log-${kind}`, subject: `class/${sessionId}` },
    bodyJson: recordJson({ of: "class log remark", row: id, coachId, reason }),
  }),
};

/** The entry that the record holds, or has to hold, about a stored row. */
export const entryOf = <N extends SourceName>(name: N, row: SourceColumns[N], digest: Digest = sha256Hex): EntryOfRow =>
  (MAKERS[name] as Maker<N>)(row, digest);

/** An altered row need not be JSON any more; the digest beside it tells. */
function parsed(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return null;
  }
}

/** Which row of another table an entry is about: its table, and its key there. Null for an entry that stands for itself. */
export interface SourceKey {
  readonly of: SourceName;
  readonly planId: string;
  /** Of events, moments and remarks. */
  readonly row: number;
  /** Of editions and withdrawals. */
  readonly number: number;
  /** Of class logs. */
  readonly session: string;
  /** Of marks and acceptances. */
  readonly id: string;
  /** Of signed months. */
  readonly month: string;
  readonly edition: number;
}

/** Reads the body of an entry; null when it is about no other row. */
export function sourceKeyOf({ subject, bodyJson }: Pick<EntryOfRow, "subject" | "bodyJson">): SourceKey | null {
  if (!bodyJson.includes('"of":')) return null;
  const body = parsed(bodyJson) as Partial<SourceKey> | null;
  if (body === null || typeof body !== "object" || !SOURCE_NAMES.includes(body.of as SourceName)) return null;
  const { of, row = 0, number = 0, session = "", id = "", month = "", edition = 0 } = body;
  return { of: of as SourceName, planId: subject.slice("plan/".length), row, number, session, id, month, edition };
}
