/** One act: what to do in heavy capitals, the rest as it is said, and the springs that it is about. */

import { useFormats } from "#app/_parts/formats.tsx";
import { actParts, type SetupChange } from "#lib/cues/changes.ts";
import { offsetsIn } from "#lib/formats/units.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { FloorCoils } from "../../_parts/coils/floor-coils.tsx";
import styles from "./change.module.css";

interface Props {
  readonly act: SetupChange;
  readonly equipment: Equipment;
  /** Nobody confirms that this is the change. */
  readonly unsure: boolean;
}

export function ActWords({ act, equipment, unsure }: Props) {
  const [verb, rest] = actParts({ kind: act.kind, words: offsetsIn(act.words, useFormats()) });
  return (
    <>
      <strong className={styles.verb}>{verb}</strong>
      {rest && <span className={styles.rest}> {rest}</span>}
      {unsure && "?"}
      {act.springs && act.springs.length > 0 && (
        <span className={styles.ofAct}>
          {" "}
          <FloorCoils springs={act.springs} equipment={equipment} struck={act.kind === "spring-off"} />
        </span>
      )}
    </>
  );
}
