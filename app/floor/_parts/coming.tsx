/** The foot of the screen: what to change now, or what comes next and what it needs. */

import { useFormats } from "#app/_parts/formats.tsx";
import type { SetupChange } from "#lib/cues/changes.ts";
import type { FloorItem, FloorView } from "#lib/floor/view.ts";
import { offsetsIn } from "#lib/formats/units.ts";
import { sideWords } from "#lib/plan/format.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { FloorCoils } from "../../_parts/coils/floor-coils.tsx";
import styles from "../_class/live-class.module.css";

export function Coming({ view, equipment }: { view: FloorView; equipment: Equipment }) {
  const changing = view.phase === "change";
  const shown = changing ? view.item : view.next;
  if (!shown) return <section className={styles.coming} aria-label="Next" />;
  const label = changing ? "change now" : view.headsUp ? "coming up: say it now" : "next";
  return (
    <section
      className={styles.coming}
      data-near={view.headsUp || changing}
      aria-label={changing ? "Change now" : "Next"}
    >
      <div className={styles.next}>
        <p className={styles.label}>{label}</p>
        <p className={styles.nextName}>
          {changing ? <Steps changes={shown.changes.filter((c) => !isSpring(c))} /> : titled(shown)}
        </p>
      </div>
      {shown.kind === "move" && (
        <div className={styles.needs}>
          <p className={styles.label}>{changing ? "springs" : sameWords(shown)}</p>
          <p className={styles.nextName}>
            <Springs item={shown} equipment={equipment} />
          </p>
          {!changing && bodyOf(shown).length > 0 && <Steps changes={bodyOf(shown)} />}
        </div>
      )}
    </section>
  );
}

/** The name, with its side where it has one. */
export function titled(item: FloorItem): string {
  const oneSided = item.side === "left" || item.side === "right";
  return oneSided && item.side ? `${item.name}, ${sideWords(item.side)}` : item.name;
}

const isSpring = (change: SetupChange) => change.kind.startsWith("spring") || change.kind === "carriage";
/** Whether the set-up stays. A plan knows where the body is, not how arms are bent: hence "same place". */
function sameWords({ changes }: FloorItem): string {
  if (changes.length === 0) return "same place";
  return changes.every((change) => change.kind === "side") ? "other side" : "to change";
}
/** Without the side, which is beside the name already. */
const bodyOf = (item: FloorItem) => item.changes.filter((change) => !isSpring(change) && change.kind !== "side");

function Steps({ changes }: { changes: readonly SetupChange[] }) {
  return (
    <span className={styles.steps}>
      {offsetsIn(changes.map((change) => change.words).join(", "), useFormats()) || "same place"}
    </span>
  );
}

/** "carriage home, take off ~ one light, put on ~~ two firm", or that the springs stay. */
function Springs({ item, equipment }: { item: FloorItem; equipment: Equipment }) {
  const changes = item.changes.filter(isSpring);
  if (changes.length === 0) {
    return (
      <>
        <FloorCoils springs={item.springs} equipment={equipment} /> springs stay
      </>
    );
  }
  return changes.map((change, n) => (
    <span key={change.words}>
      {n > 0 && ", "}
      {change.springs && <FloorCoils springs={change.springs} equipment={equipment} />} {change.words}
    </span>
  ));
}
