/** What the parts of the month's page share: the month as it is shown, what is chosen in it, and what can be done. */
import type { Formats } from "#lib/formats/formats.ts";
import type { MonthLook } from "#lib/month/check/analyst.ts";
import type { MonthFile, MonthFinding, MonthSlot } from "#lib/month/types.ts";
import type { Moving } from "#lib/tide/preview.ts";
import type { MonthActs } from "./month-acts.ts";
import type { MonthSession } from "./month-session.ts";
import type { MonthPageProps, MonthSnapshot } from "./month-types.ts";
import type { OpenFindings } from "./use-open-findings.ts";
import type { SinceSigned } from "./use-since-signed.ts";

/** What lies beside the sheet. */
export type PanelOf =
  /** `follows`: it shows the class that has the focus in the sheet, and leaves it there. */
  | { readonly kind: "class"; readonly slot: string; readonly follows?: true }
  | { readonly kind: "new"; readonly date: string }
  | { readonly kind: "pattern" | "regulars" | "themes" | "coaches" | "taken-out" | "copy" | "fill" }
  /** `day`: the holiday that somebody was led to, 'YYYY-MM-DD'. */
  | { readonly kind: "holidays"; readonly day?: string }
  | { readonly kind: "changes" | "accepted" }
  | { readonly kind: "accept"; readonly findings: readonly string[] };

/** What the person has chosen. */
export interface MonthChoice {
  readonly regulars: string | null;
  /** Rooms that are shown. */
  readonly rooms: readonly string[];
  readonly allGroups: boolean;
  readonly allCoaches: boolean;
  readonly finding: string | null;
  readonly panel: PanelOf | null;
  /** What Tab reaches: a class, or a day. */
  readonly at: { readonly date: string; readonly slot: string | null };
  readonly moving: Moving | null;
  readonly lit: string | null;
  readonly onlyCoach: string | null;
  /** Plans that a fill proposes and that are not in the month yet, by class. */
  readonly proposed: Readonly<Record<string, string | null>>;
}

export interface MonthDesk {
  readonly session: MonthSession;
  readonly month: MonthSnapshot;
  readonly props: MonthPageProps;
  readonly acts: MonthActs;
  /** The reader's. */
  readonly formats: Formats;
  readonly choice: MonthChoice;
  readonly choose: (part: Partial<MonthChoice>) => void;
  /** The month with what is on its way: a class being moved, plans that are proposed. */
  readonly shown: { readonly file: MonthFile; readonly look: MonthLook };
  /** What is found in the month as it is; `shown` and this are without what is accepted as it stands. */
  readonly open: MonthLook;
  readonly accepted: OpenFindings["accepted"];
  readonly since: SinceSigned;
  /** A class as the month has it; undefined when it is gone. */
  readonly slot: (id: string) => MonthSlot | undefined;
  /** The chosen finding and those that are one thing to mend with it. */
  readonly chosen: readonly MonthFinding[];
}
