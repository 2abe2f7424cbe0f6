"use client";
/** What changed between two texts of a plan, as a list: the class as a whole, then plate by plate. */
import { useMemo } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import type { Plan } from "#lib/plan/schema.ts";
import { changedPlates } from "#lib/plan-diff/changed-plates.ts";
import { changesBesides } from "#lib/plan-diff/plan-changes.ts";
import { ChangeWords } from "./change-words.tsx";
import styles from "./rounds.module.css";
import { CHANGES } from "./rounds-words.ts";

interface PlateChangeListProps {
  readonly before: Plan;
  readonly after: Plan;
  /** Opens a plate that is in the plan now; undefined where the later text is not the plan's own. */
  readonly onOpen?: ((itemId: string) => void) | undefined;
}

const SIGNS = { new: "new", changed: "changed", moved: "moved", gone: "removed" } as const;

export function PlateChangeList({ before, after, onOpen }: PlateChangeListProps) {
  const f = useFormats();
  const plates = useMemo(() => changedPlates(before, after, f), [before, after, f]);
  const besides = useMemo(() => changesBesides(before, after, f), [before, after, f]);
  if (plates.length + besides.length === 0) return <p>{CHANGES.same}</p>;
  return (
    <ol className={styles.list} aria-label={CHANGES.label}>
      {besides.length > 0 && (
        <li>
          <h4>{CHANGES.besides}</h4>
          <ul className={styles.sentences}>
            {besides.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </li>
      )}
      {plates.map((plate) => (
        <li key={plate.id} data-what={plate.what}>
          <h4>
            {onOpen && plate.what !== "gone" ? (
              <button type="button" className="text-button" onClick={() => onOpen(plate.id)}>
                {plate.name}
              </button>
            ) : (
              plate.name
            )}{" "}
            <span className={styles.sign}>{SIGNS[plate.what]}</span>
          </h4>
          <ChangeWords plate={plate} equipment={after.equipment} />
        </li>
      ))}
    </ol>
  );
}
