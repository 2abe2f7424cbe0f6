/** A day's classes as lines of words, for a phone. */

import { useFormats } from "#app/_parts/formats.tsx";
import { timeWords } from "#lib/formats/dates.ts";
import type { TideMark } from "#lib/tide/types.ts";
import { type DayPlaceProps, markData, markWords } from "./day-rail.tsx";
import styles from "./sheet.module.css";

export function ClassLines({ day, shown, hands }: DayPlaceProps) {
  if (shown.layout.rail === 0) return null;
  if (day.marks.length === 0) return <p className={styles.noClass}>{day.holiday ?? "no class"}</p>;
  return (
    <ul className={styles.lines}>
      {day.holiday !== null && <li className={styles.noClass}>{day.holiday}</li>}
      {day.marks.map((mark) => (
        <li key={mark.slot.id}>
          <button
            type="button"
            className={styles.line}
            {...markData(mark, shown)}
            tabIndex={shown.tabStop === mark.slot.id ? 0 : -1}
            aria-label={markWords(mark, shown)}
            aria-expanded={shown.openSlot === mark.slot.id}
            onClick={() => hands.onOpen(mark.slot.id)}
            onFocus={() => hands.onFocusSlot(mark.slot.id)}
          >
            <Words mark={mark} />
            {shown.changed.has(mark.slot.id) && <span className={styles.since}>{shown.changed.get(mark.slot.id)}</span>}
          </button>
        </li>
      ))}
    </ul>
  );
}

function Words({ mark: { slot, title, who, open } }: { readonly mark: TideMark }) {
  const f = useFormats();
  return (
    <>
      <span className={styles.block} />
      <span className="mono">{timeWords(slot.start, f)}</span> <span className={styles.theme}>{title}</span>{" "}
      <span className={styles.who}>{who.slice(0, 2)}</span> {open && <b className={styles.open}>{open}</b>}
    </>
  );
}
