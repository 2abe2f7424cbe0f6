/** A plan as it is about to be signed: what stands in the way, the class word for word, its findings. */
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import { FindingList } from "../_parts/finding-list.tsx";
import { FromFileView } from "./from-file-view.tsx";
import styles from "./margin.module.css";
import { SignOffClass } from "./sign-off-class.tsx";
import type { SignOffReading } from "./sign-off-reading.ts";

export function SignOffReadingView({ reading }: { readonly reading: SignOffReading }) {
  const { plan, findings, blockers, changedSince, fromFile } = reading;
  return (
    <div className={styles.dialog}>
      {blockers.length > 0 && (
        <div id="sign-off-blockers" className="problem">
          <p>It cannot be signed off yet:</p>
          <ul>
            {blockers.map((blocker) => (
              <li key={blocker.code}>{blocker.message}</li>
            ))}
          </ul>
        </div>
      )}
      {changedSince && changedSince.length > 0 && (
        <div className="notice">
          <p>Changed since you read it last:</p>
          <ul>
            {changedSince.map((change) => (
              <li key={change.message}>{change.message}</li>
            ))}
          </ul>
        </div>
      )}
      <FromFileView fromFile={fromFile} />
      {plan && <SignOffClass plan={plan} />}
      {(["must", "look", "info"] as const).map((level) => {
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
      })}
      {findings.length === 0 && <p>The checks found nothing.</p>}
      <p className="quiet small mono">this exact plan: {reading.hash.slice(0, 12)}</p>
    </div>
  );
}
