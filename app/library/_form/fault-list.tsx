/** Everything that is wrong just now, each a way to its field; spoken politely as it changes. */
import { factLabel, MOVE_KEYS } from "#lib/library/changes.ts";
import type { Fault, MoveFieldPath } from "#lib/library/faults.ts";
import { agree, plural, tagWords } from "#lib/plan/format.ts";
import styles from "./form.module.css";
import { fieldId } from "./form-fields.tsx";

const PARTS: Readonly<Record<string, string>> = {
  outSeconds: "out",
  outHoldSeconds: "hold there",
  backSeconds: "back",
  backHoldSeconds: "hold at home",
  min: "least",
  max: "most",
};

/** "tempo, out"; "springs, most, light"; "easier, 2". */
export function placeWords(place: MoveFieldPath): string {
  const [top = "", ...rest] = place.split(".");
  const key = MOVE_KEYS.find((known) => known === top);
  const words = rest.flatMap((part) => {
    if (top === "handsShare" || (/^\d$/.test(part) && !["easier", "harder"].includes(top))) return [];
    return [/^\d+$/.test(part) ? String(Number(part) + 1) : (PARTS[part] ?? tagWords(part))];
  });
  return [key ? factLabel(key) : "the move", ...words].join(", ");
}

/** Goes to the field of a place; a place of the whole is its group. */
export function goToField(place: MoveFieldPath): void {
  const field = document.getElementById(fieldId(place));
  field?.scrollIntoView({ block: "center" });
  field?.focus({ preventScroll: true });
}

export function FaultList({ faults }: { readonly faults: readonly Fault[] }) {
  return (
    <div role="status">
      {faults.length > 0 ? (
        <>
          <p className="must">
            <strong>{plural(faults.length, "field")}</strong> {agree(faults.length, "needs", "need")} a look:
          </p>
          <ul className={styles.faults}>
            {faults.map(({ place, say }) => (
              <li key={`${place} ${say}`}>
                <button type="button" className={styles.link} onClick={() => goToField(place)}>
                  {placeWords(place)}
                </button>
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </div>
  );
}
