/** A plan as it is about to be signed: what prevents the sign-off, the class word for word, its findings. */

import type { Finding } from "#lib/rules/define/types.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import { FindingList } from "../_parts/finding-list.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";
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
  readonly onReadAgain: () => void;
}

export function SignOffReadingView({ reading, me, onGo, onReadAgain }: ViewProps) {
  const { plan, findings, blockers, changedSince = [], itemsRead, fromFile } = reading;
  return (
    <div className={styles.dialog}>
      <Blockers blockers={blockers} onGo={onGo} onAllowed={onReadAgain} />
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

interface BlockersProps {
  readonly blockers: ReadingToSign["blockers"];
  readonly onGo: () => void;
  readonly onAllowed: () => void;
}

/** What prevents the sign-off, each with the way out of it where there is one. */
function Blockers({ blockers, onGo, onAllowed }: BlockersProps) {
  if (blockers.length === 0) return null;
  return (
    <div id="sign-off-blockers" className="problem">
      <p>{SIGN_OFF.blocked}</p>
      <ul>
        {blockers.map(({ code, message, details }) => (
          <li key={code}>
            {code === "open-threads" ? (
              <button type="button" className="text-button" onClick={onGo}>
                {message}
              </button>
            ) : (
              message
            )}
            {details?.mayAllow && <AllowOwn onAllowed={onAllowed} />}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** The studio's policy, offered where it stops the only person who could change it. */
function AllowOwn({ onAllowed }: { readonly onAllowed: () => void }) {
  const sending = useSend();
  const allow = async () => {
    if ((await sending.run("PATCH", "/api/studio", { soleAuthorMaySign: true })) !== undefined) onAllowed();
  };
  return (
    <div className={styles.allow}>
      <p className="small">{SIGN_OFF.allowAbout}</p>
      <button type="button" className="button" onClick={allow} aria-disabled={sending.busy}>
        {SIGN_OFF.allow}
      </button>
      <ProblemLine say={sending.problem} />
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
