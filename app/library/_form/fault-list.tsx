/** Everything that is wrong now, each as a link to its field; read aloud as it changes. */
import { factLabel, MOVE_KEYS } from "#lib/library/changes.ts";
import { CORRECTION_WORDS } from "#lib/library/correction-words.ts";
import type { Fault, MoveFieldPath } from "#lib/library/faults.ts";
import { agree, plural, tagWords } from "#lib/plan/format.ts";
import styles from "./form.module.css";
import { fieldId } from "./form-fields.tsx";
import { RANGE_WORDS, TEMPO_WORDS } from "./part-words.ts";

const PARTS: Readonly<Record<string, string>> = { ...TEMPO_WORDS, ...RANGE_WORDS, ...CORRECTION_WORDS };

/** "tempo, out"; "springs, most, light"; "easier, 2". */
function faultPlaceWords(place: MoveFieldPath): string {
  const [top = "", ...rest] = place.split(".");
  const key = MOVE_KEYS.find((known) => known === top);
  const words = rest.flatMap((part) => {
    if (top === "handsShare" || (/^\d$/.test(part) && !["easier", "harder"].includes(top))) return [];
    return [/^\d+$/.test(part) ? String(Number(part) + 1) : (PARTS[part] ?? tagWords(part))];
  });
  return [key ? factLabel(key) : "the move", ...words].join(", ");
}

/** Goes to the field of a place, or to its group of fields. */
export function goToField(place: MoveFieldPath): void {
  const field = document.getElementById(fieldId(place));
  const folded = field?.closest("details");
  if (folded) folded.open = true;
  field?.scrollIntoView({ block: "center" });
  field?.focus({ preventScroll: true });
}

export function FaultList({ faults }: { readonly faults: readonly Fault[] }) {
  return (
    <div role="status">
      {faults.length > 0 ? (
        <>
          <p className="must">
            <strong>{plural(faults.length, "field")}</strong> {agree(faults.length, "needs", "need")} a change:
          </p>
          <ul className={styles.faults}>
            {faults.map(({ place, say }) => (
              <li key={`${place} ${say}`}>
                <button type="button" className="text-button" onClick={() => goToField(place)}>
                  {faultPlaceWords(place)}
                </button>
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </div>
  );
}
