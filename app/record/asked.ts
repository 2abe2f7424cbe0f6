/** The filter of the record as it stands in the page's address. */
import { RECORD_GROUPS, type RecordGroup } from "#lib/record/kinds.ts";
import type { RecordQuery } from "#server/record/read-record.ts";

export type SearchParams = Readonly<Record<string, string | string[] | undefined>>;

export interface Asked {
  readonly plan?: string | undefined;
  readonly person?: string | undefined;
  readonly kind?: RecordGroup | undefined;
  /** Days, as "2026-11-30". */
  readonly from?: string | undefined;
  readonly until?: string | undefined;
  /** The row before which to begin. */
  readonly before?: string | undefined;
}

/** What cannot be read counts as not asked for. */
export function askedOf(params: SearchParams): Asked {
  const word = (name: string) => {
    const value = params[name];
    return typeof value === "string" && value !== "" && value.length <= 200 ? value : undefined;
  };
  const kind = word("kind");
  return {
    plan: word("plan"),
    person: word("person"),
    kind: kind !== undefined && Object.hasOwn(RECORD_GROUPS, kind) ? (kind as RecordGroup) : undefined,
    from: dayIn(word("from")),
    until: dayIn(word("until")),
    before: /^\d{1,12}$/.test(word("before") ?? "") ? word("before") : undefined,
  };
}

const dayIn = (text: string | undefined): string | undefined =>
  text !== undefined && /^\d{4}-\d\d-\d\d$/.test(text) && !Number.isNaN(Date.parse(text)) ? text : undefined;

export function addressOf(asked: Asked): string {
  const given = Object.entries(asked).filter(([, value]) => value !== undefined);
  const query = new URLSearchParams(given as [string, string][]).toString();
  return query === "" ? "/record" : `/record?${query}`;
}

export const queryOf = ({ plan, person, kind, from, until, before }: Asked): RecordQuery => ({
  planId: plan,
  personId: person,
  group: kind,
  from: from === undefined ? undefined : startOf(from, 0),
  until: until === undefined ? undefined : startOf(until, 1),
  before: before === undefined ? undefined : Number(before),
});

/** Days begin on the server's clock, which has to have the studio's time zone. */
function startOf(day: string, plus: number): number {
  const [year = 0, month = 1, date = 1] = day.split("-").map(Number);
  return new Date(year, month - 1, date + plus).getTime();
}
