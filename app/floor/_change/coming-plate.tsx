"use client";
/** The end of a move is near: the plate of the change rises from below, with all its teeth. */
import { type ComingTrial, comingTrials } from "#lib/floor/change-fit.ts";
import type { FloorItem } from "#lib/floor/view.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { titled } from "../_parts/coming.tsx";
import { ActWords } from "./act-words.tsx";
import styles from "./change.module.css";
import { changeGaveWords, headsUpSecondsWords, springsOnWords, THEN_ON } from "./change-words.ts";
import { Comb } from "./comb.tsx";
import { useFit } from "./use-fit.ts";

interface Props {
  readonly item: FloorItem;
  readonly equipment: Equipment;
  readonly distanceM: number;
  /** Above the name: that it comes, or perhaps comes. */
  readonly label: string;
  readonly unsure?: boolean;
}

export function ComingPlate({ item, equipment, distanceM, label, unsure = false }: Props) {
  const seconds = item.changeSeconds;
  const box = useFit<ComingTrial>([item.id, item.side, unsure, distanceM].join("|"), {
    trials: (plate) => comingTrials(distanceM, plate.clientHeight / 3),
    take: (plate, { open, acts }) => {
      plate.style.setProperty("--open", `${open.toFixed(1)}px`);
      plate.style.setProperty("--acts", `${acts.toFixed(1)}px`);
      const note = plate.querySelector("[data-gave-way]");
      if (note) note.textContent = changeGaveWords(open, 0, distanceM);
    },
  });
  return (
    <section ref={box} className={styles.plate} aria-label="Next" data-coming={item.id} data-sure={!unsure}>
      {!unsure && <Comb left={seconds} of={seconds} />}
      <section className={styles.body} data-fit>
        {seconds > 0 && (
          <section className={styles.corner}>
            <p className={styles.seconds}>{headsUpSecondsWords(seconds)}</p>
          </section>
        )}
        <p className={styles.label}>{label}</p>
        <h2 className={styles.next}>{titled(item)}</h2>
      </section>
      {item.nowOn !== null && <Ahead item={item} nowOn={item.nowOn} {...{ equipment, label, unsure }} />}
    </section>
  );
}

interface AheadProps extends Pick<Props, "item" | "equipment" | "label"> {
  readonly nowOn: string;
  readonly unsure: boolean;
}

/** The acts of the change in the order of the call, and what will be on after it. */
function Ahead({ item, nowOn, equipment, label, unsure }: AheadProps) {
  return (
    <section className={styles.ahead} data-fit>
      <ol className={styles.acts} aria-label={label}>
        {item.acts.map((act) => (
          <li key={act.words}>
            <ActWords act={act} equipment={equipment} unsure={unsure} />
          </li>
        ))}
      </ol>
      <div className={styles.then}>
        <p>
          {THEN_ON} <strong>{springsOnWords(nowOn)}</strong>
          {unsure && "?"}
        </p>
        <p className={styles.note} data-gave-way />
      </div>
    </section>
  );
}
