"use client";
/** What the line through the readings says, in words, and what to do about a doubtful one. */
import { useFormats } from "#app/_parts/formats.tsx";
import { forceNumber, forceWords, stiffnessNumber, stiffnessWords } from "#lib/formats/units.ts";
import type { SpringFit } from "#lib/springs/spring-fit.ts";
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
      {fit.ok && <Numbers fit={fit} count={counted.length} />}
    </div>
  );
}

interface NumbersProps {
  readonly fit: SpringFit & { readonly ok: true };
  readonly count: number;
}

function Numbers({ fit, count }: NumbersProps) {
  const f = useFormats();
  return (
    <dl className={styles.numbers}>
      <div>
        <dt>Stiffness</dt>
        <dd>
          {stiffnessWords(fit.stiffnessNPerMm, f)}{" "}
          <span className="quiet">give or take {stiffnessNumber(fit.sdStiffness, f).toFixed(4)}</span>
        </dd>
      </div>
      <div>
        <dt>Preload</dt>
        <dd>
          {forceWords(fit.preloadN, f, true)}{" "}
          <span className="quiet">give or take {forceNumber(fit.sdPreload, f, true)}</span>
        </dd>
      </div>
      <div>
        <dt>Off the line</dt>
        <dd>
          {forceWords(fit.residualSdN, f, true)}{" "}
          <span className="quiet">typical distance of a reading (standard deviation of {count})</span>
        </dd>
      </div>
    </dl>
  );
}
