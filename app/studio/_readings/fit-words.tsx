"use client";
/** What the line through the readings says, in words, and what to do about a doubtful one. */
import { plainNumber } from "#lib/plan/format.ts";
import styles from "./readings.module.css";
import type { SheetRead } from "./sheet-draft.ts";

interface FitWordsProps {
  readonly read: SheetRead;
  readonly onLeaveOut: (row: number) => void;
}

export function FitWords({ read, onLeaveOut }: FitWordsProps) {
  const { fit, doubtful, counted } = read;
  const worth = fit.ok && fit.straight ? "done" : "notice";
  return (
    <div className={styles.words}>
      <p role="status" className={counted.length === 0 ? "quiet" : worth}>
        {fit.say}
      </p>
      {doubtful !== null && (
        <button type="button" className="button" onClick={() => onLeaveOut(doubtful)}>
          Leave reading {counted.indexOf(doubtful) + 1} out
        </button>
      )}
      {fit.ok && (
        <dl className={styles.numbers}>
          <div>
            <dt>Stiffness</dt>
            <dd>
              {fit.stiffnessNPerMm.toFixed(3)} N per mm{" "}
              <span className="quiet">give or take {sdWords(fit.sdStiffness, 4)}</span>
            </dd>
          </div>
          <div>
            <dt>Preload</dt>
            <dd>
              {fit.preloadN.toFixed(1)} N <span className="quiet">give or take {sdWords(fit.sdPreload, 1)}</span>
            </dd>
          </div>
          <div>
            <dt>Off the line</dt>
            <dd>
              {plainNumber(fit.residualSdN)} N{" "}
              <span className="quiet">typical distance of a reading (standard deviation of {counted.length})</span>
            </dd>
          </div>
        </dl>
      )}
    </div>
  );
}

const sdWords = (sd: number, digits: number): string => sd.toFixed(digits);
