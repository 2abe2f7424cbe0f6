/** A change on paper: its acts in order, each spring drawn, and where there is room the figure of it. */

import { ChangePicture } from "#app/_parts/change-figure.tsx";
import { FloorCoils } from "#app/_parts/coils/floor-coils.tsx";
import { OffsetText } from "#app/_parts/reader-words.tsx";
import type { SetupChange } from "#lib/cues/changes.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import type { DrawnChanges } from "./drawn-changes.ts";
import styles from "./printed-class.module.css";

interface ActsProps {
  readonly acts: readonly SetupChange[];
  readonly equipment: Equipment;
}

/** Numbered, since hands do them in this order. */
export function PaperActs({ acts, equipment }: ActsProps) {
  if (acts.length === 0) return <p>stay as you are</p>;
  return (
    <ol className={styles.acts}>
      {acts.map((act) => (
        <li key={act.words}>
          <Act act={act} equipment={equipment} />
        </li>
      ))}
    </ol>
  );
}

/** A coil stays on the line of its last word. */
function Act({
  act: { kind, words, springs = [] },
  equipment,
}: {
  readonly act: SetupChange;
  readonly equipment: Equipment;
}) {
  if (springs.length === 0) return <OffsetText words={words} />;
  const last = words.lastIndexOf(" ") + 1;
  return (
    <>
      {words.slice(0, last)}
      <span className={styles.together}>
        {words.slice(last)} <FloorCoils springs={springs} equipment={equipment} struck={kind === "spring-off"} />
      </span>
    </>
  );
}

/** The old set-up pale, the new one in ink; the springs are drawn beside their acts. */
export function PaperChangePicture({ changes, item }: { readonly changes: DrawnChanges; readonly item: string }) {
  const drawing = changes.of(item);
  return (
    drawing && (
      <span className={styles.changed}>
        <ChangePicture drawing={drawing} px={changes.px} />
      </span>
    )
  );
}
