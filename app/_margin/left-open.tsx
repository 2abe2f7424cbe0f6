"use client";
/** Before a sign-off: the *look again* findings that nobody has accepted, and a tick that leaves them open. */
import { FindingList } from "#app/_parts/finding-list.tsx";
import type { Finding } from "#lib/rules/define/types.ts";
import { leaveOpenWords, SIGN_OFF } from "./sign-off-words.ts";

export const LEFT_OPEN_ID = "left-open";

interface LeftOpenProps {
  readonly findings: readonly Finding[];
  /** It was asked before, of another text. */
  readonly isAgain: boolean;
  readonly leaves: boolean;
  readonly onLeaves: (leaves: boolean) => void;
}

export function LeftOpen({ findings, isAgain, leaves, onLeaves }: LeftOpenProps) {
  return (
    <div className="notice">
      <p id={LEFT_OPEN_ID}>{SIGN_OFF.leaveOpen}</p>
      <FindingList findings={findings} />
      {isAgain && <p>{SIGN_OFF.askedAgain}</p>}
      <label className="check">
        <input type="checkbox" checked={leaves} onChange={(event) => onLeaves(event.target.checked)} />
        {leaveOpenWords(findings.length)}
      </label>
    </div>
  );
}
