/** What people have said about a class log: who led the class, and whether it counts. */

export interface LogRemark {
  readonly kind: "coach" | "struck" | "counted";
  readonly coachId: string | null;
  readonly reason: string | null;
  readonly actorId: string;
  /** ms since the epoch. */
  readonly at: number;
}

export interface LogStanding {
  /** Who was named last. */
  readonly named: LogRemark | null;
  /** The striking that stands. */
  readonly struck: LogRemark | null;
}

/** `remarks`: the oldest first; the newest of a kind counts. */
export function logStanding(remarks: readonly LogRemark[]): LogStanding {
  const last = remarks.findLast(({ kind }) => kind !== "coach");
  return {
    named: remarks.findLast(({ kind }) => kind === "coach") ?? null,
    struck: last?.kind === "struck" ? last : null,
  };
}
