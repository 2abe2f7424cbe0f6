/** The words of a plate: its name with its side, then its numbers; and talk as ink at its edge. */

import type { ReactNode } from "react";
import { repsWords } from "#lib/plan/format.ts";
import type { Equipment, ItemSide } from "#lib/plan/schema.ts";
import { Coils } from "../coils/coil.tsx";
import { Seconds } from "../seconds.tsx";
import { OffsetMark } from "./offset-mark.tsx";
import styles from "./plate.module.css";
import type { PlateFacts } from "./plate-facts.ts";
import type { Stretch } from "./said.ts";

export function PlateName({ name, side = "both" }: { readonly name: string; readonly side?: ItemSide | undefined }) {
  return (
    <span className={styles.name}>
      {name}
      {side !== "both" && (
        <>
          {" "}
          <span className={styles.side} data-side={side}>
            {side}
          </span>
        </>
      )}
    </span>
  );
}

type Numbers = Pick<PlateFacts, "springs" | "offsetMm" | "reps"> & { readonly equipment: Equipment };

/** Springs as coils and in words, the place to start from where it is not the usual one, repetitions. */
export function PlateNumbers({ springs, equipment, offsetMm, reps }: Numbers) {
  return (
    <>
      <Coils springs={springs} equipment={equipment} words />
      {offsetMm !== 0 && <OffsetMark mm={offsetMm} />}
      {reps !== null && <span>{repsWords(reps)}</span>}
    </>
  );
}

export const PlateSeconds = ({ value }: { readonly value: number }) => (
  <Seconds className={styles.seconds} value={value} />
);

/** The line under the name. */
export const PlateMeta = ({ children }: { readonly children: ReactNode }) => (
  <span className={styles.meta}>{children}</span>
);

/** Ink at the right edge: a mark where each line is said, as long as it takes; hatched when there is more than fits. */
export function PlateInk({ said, over }: { readonly said: readonly Stretch[]; readonly over: boolean }) {
  return (
    <span className={styles.ink} data-over={over || undefined} aria-hidden="true">
      {said.map(({ from, to }) => (
        <span key={from} style={{ top: `${from * 100}%`, height: `${(to - from) * 100}%` }} />
      ))}
    </span>
  );
}
