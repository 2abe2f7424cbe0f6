/** When the coach is asked about an edition that was withdrawn during its class: beside work, never over a change. */
import { useState } from "react";
import type { WithdrawnCard } from "#lib/floor/keep-cards.ts";
import type { FloorView } from "#lib/floor/view.ts";
import type { OpenSheet } from "./use-sheet.ts";

export interface WithdrawalQuestion {
  /** The sheet that was opened, or the question where none is. */
  readonly open: OpenSheet;
  /** They have decided; the question is not asked again in this class. */
  answer(): void;
}

export function useWithdrawal(
  open: OpenSheet,
  withdrawn: WithdrawnCard | undefined,
  { phase, headsUp }: FloorView,
): WithdrawalQuestion {
  const [answered, setAnswered] = useState(false);
  const asks = withdrawn !== undefined && !answered && open.sheet === null && phase !== "change" && !headsUp;
  return { open: asks ? { ...open, sheet: "withdrawn" } : open, answer: () => setAnswered(true) };
}
