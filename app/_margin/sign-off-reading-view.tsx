/** A plan as it is about to be signed: what prevents the sign-off, the class word for word, its findings. */

import type { Finding } from "#lib/rules/define/types.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import { FindingList } from "../_parts/finding-list.tsx";
import { FromFileView } from "./from-file-view.tsx";
import styles from "./margin.module.css";
import type { ReadingToSign } from "./reading-to-sign.ts";
import { SignOffClass } from "./sign-off-class.tsx";
import { changedSinceWords, hashWords, SIGN_OFF } from "./sign-off-words.ts";

interface ViewProps {
  readonly reading: ReadingToSign;
  readonly me: string;
  /** Leaves the dialog for the first open thread. */
  readonly onGo: () => void;
}

export function SignOffReadingView({ reading, me, onGo }: ViewProps) {
  const { plan, findings, blockers, changedSince = [], itemsRead, fromFile } = reading;
  return (
    <div className={styles.dialog}>
      {blockers.length > 0 && (
        <div id="sign-off-blockers" className="problem">
          <p>{SIGN_OFF.blocked}</p>
          <ul>
            {blockers.map((blocker) => (
              <li key={blocker.code}>
                {blocker.code === "open-threads" ? (
                  <button type="button" className="text-button" onClick={onGo}>
                    {blocker.message}
                  </button>
                ) : (
                  blocker.message
                )}
              </li>
            ))}
          </ul>
        </div>
      )}
      {changedSince.length > 0 && (
        <div className="notice">
          <p>{changedSinceWords(reading.since, me)}</p>
          <ul>
            {changedSince.map((change) => (
              <li key={change.message}>{change.message}</li>
            ))}
          </ul>
        </div>
      )}
      <FromFileView fromFile={fromFile} />
      {plan && <SignOffClass plan={plan} read={itemsRead} />}
      <FindingsByLevel findings={findings} />
      <p className="quiet small mono">{hashWords(reading.hash)}</p>
    </div>
  );
}

function FindingsByLevel({ findings }: { readonly findings: readonly Finding[] }) {
  if (findings.length === 0) return <p>{SIGN_OFF.noFindings}</p>;
  return (["must", "look", "info"] as const).map((level) => {
    const own = findings.filter((f) => f.level === level);
    if (own.length === 0) return null;
    return (
      <div key={level}>
        <h3>
          {LEVEL_WORDS[level]}: {own.length}
        </h3>
        <FindingList findings={own} />
      </div>
    );
  });
}
