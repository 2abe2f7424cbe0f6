/** The stored rows that the record speaks of: the columns that their entries are made from. Times are ms since the epoch. */

interface PlanEventColumns {
  readonly id: number;
  readonly planId: string;
  readonly at: number;
  readonly actorId: string;
  readonly kind: string;
  readonly note: string | null;
  readonly hash: string | null;
}
interface StudioEventColumns {
  readonly id: number;
  readonly at: number;
  readonly actorId: string;
  readonly kind: string;
  readonly subject: string;
  readonly dataJson: string;
}
interface MoveEventColumns {
  readonly id: number;
  readonly moveId: string;
  readonly at: number;
  readonly actorId: string;
  readonly kind: string;
  readonly dataJson: string;
}
interface EditionColumns {
  readonly planId: string;
  readonly number: number;
  readonly hash: string;
  readonly planJson: string;
  readonly cardJson: string;
  readonly findingsJson: string;
  readonly signedBy: string;
  readonly signedAt: number;
  readonly note: string | null;
  readonly acceptedJson: string | null;
  readonly round: number | null;
}
interface WithdrawalColumns {
  readonly planId: string;
  readonly number: number;
  readonly withdrawnBy: string;
  readonly withdrawnAt: number;
  readonly reason: string;
}
interface ClassLogColumns {
  readonly sessionId: string;
  readonly planId: string;
  readonly number: number;
  readonly roomId: string;
  readonly deviceId: string;
  readonly kind: string;
  readonly startedAt: number;
  readonly receivedAt: number;
  readonly logJson: string;
}

/** With the text that is kept beside the moments, once for each hash. */
interface MomentColumns {
  readonly id: number;
  readonly planId: string;
  readonly round: number;
  readonly kind: string;
  readonly at: number;
  readonly actorId: string;
  readonly note: string | null;
  readonly hash: string;
  readonly findingsJson: string;
  readonly threadsJson: string;
  readonly planJson: string | null;
}
interface MarksColumns {
  readonly id: string;
  readonly userId: string;
  readonly planId: string;
  readonly round: number | null;
  readonly sessionId: string | null;
  readonly byId: string;
  readonly at: number;
  readonly rubricJson: string;
  readonly levelsJson: string;
  readonly sentence: string;
}
/** Without who ended it and when: that has an entry of its own. */
interface AcceptanceColumns {
  readonly id: string;
  readonly planId: string;
  readonly ruleId: string;
  readonly findingKey: string;
  readonly message: string;
  readonly reason: string;
  readonly byId: string;
  readonly at: number;
}
interface MonthEditionColumns {
  readonly month: string;
  readonly number: number;
  readonly hash: string;
  readonly fileJson: string;
  readonly findingsJson: string;
  readonly acceptedJson: string;
  readonly signedBy: string;
  readonly signedAt: number;
  readonly note: string | null;
}
interface ClassLogRemarkColumns {
  readonly id: number;
  readonly sessionId: string;
  readonly kind: string;
  readonly coachId: string | null;
  readonly reason: string | null;
  readonly actorId: string;
  readonly at: number;
}

/** The rows that the record speaks of, by the word that stands as `of` in the body of their entries. */
export interface SourceColumns {
  "plan event": PlanEventColumns;
  "studio event": StudioEventColumns;
  "move event": MoveEventColumns;
  edition: EditionColumns;
  withdrawal: WithdrawalColumns;
  "class log": ClassLogColumns;
  moment: MomentColumns;
  marks: MarksColumns;
  acceptance: AcceptanceColumns;
  "month edition": MonthEditionColumns;
  "class log remark": ClassLogRemarkColumns;
}
export type SourceName = keyof SourceColumns;
/** Those that the first records spoke of. */
export const FIRST_SOURCES: readonly SourceName[] = [
  ...(["plan event", "studio event", "move event", "edition", "withdrawal", "class log"] as const),
];
export const SOURCE_NAMES: readonly SourceName[] = [
  ...FIRST_SOURCES,
  ...(["moment", "marks", "acceptance", "month edition", "class log remark"] as const),
];
