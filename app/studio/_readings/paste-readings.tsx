"use client";
/** Readings pasted from a spreadsheet: shown line by line as they were understood, then taken into the form. */
import { useId, useRef, useState } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import { plainNumber, plural } from "#lib/plan/format.ts";
import { type PastedRow, readPastedReadings } from "#lib/springs/pasted-readings.ts";
import { Dialog } from "../../_parts/dialog.tsx";
import { pastedDraft } from "./pasted-draft.ts";
import styles from "./readings.module.css";
import { MOST_ROWS, readSheetDraft, type SheetDraft } from "./sheet-draft.ts";
import { UnitChoice } from "./unit-choice.tsx";

interface PasteProps {
  readonly draft: SheetDraft;
  /** How far the room's carriage travels. */
  readonly carriageMm: number;
  readonly onTake: (draft: SheetDraft) => void;
}

export function PasteReadings(props: PasteProps) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="button" onClick={() => setOpen(true)}>
        Paste readings
      </button>
      {open ? (
        <Dialog title="Paste readings" onClose={() => setOpen(false)}>
          <PasteForm {...props} onDone={() => setOpen(false)} />
        </Dialog>
      ) : null}
    </>
  );
}

function PasteForm({ draft, carriageMm, onTake, onDone }: PasteProps & { readonly onDone: () => void }) {
  const id = useId();
  const said = useRef<HTMLParagraphElement>(null);
  const [text, setText] = useState("");
  const [units, setUnits] = useState<Pick<SheetDraft, "travelUnit" | "forceUnit">>(draft);
  const pasted = readPastedReadings(text);
  const taken = pastedDraft(pasted, units);
  const read = readSheetDraft(taken, carriageMm, useFormats());
  const wrong = [...read.rows.values()].map((row) => (row.kind === "wrong" ? row.say : null));
  const count = wrong.filter((say) => say === null).length;
  const inForm = draft.rows.filter(({ travel, force }) => travel !== "" || force !== "").length;
  const take = () => {
    if (count === 0) return said.current?.focus();
    onTake({ ...taken, rows: taken.rows.filter((_, i) => wrong[i] === null) });
    onDone();
  };
  return (
    <div className={styles.paste}>
      <div className="field">
        <label htmlFor={id}>Copy two columns from your spreadsheet, travel and force, and paste them here</label>
        <textarea id={id} data-first="" rows={6} value={text} onChange={(event) => setText(event.target.value)} />
        <span className="hint">Names above the columns, units, decimal commas and points are all understood.</span>
      </div>
      <UnitChoice draft={taken} onChange={setUnits} />
      {text.trim() === "" ? null : <Understood rows={pasted.rows} wrong={wrong} taken={taken} />}
      <p ref={said} role="status" tabIndex={-1}>
        {takenWords(count, pasted.rows.length, inForm)}
      </p>
      <button type="button" className="button button-strong" aria-disabled={count === 0} onClick={take}>
        {count === 0 ? "Take the readings" : `Take ${plural(count, "reading")}`}
      </button>
    </div>
  );
}

interface UnderstoodProps {
  readonly rows: readonly PastedRow[];
  /** Of each row that is taken, why the room cannot have it; null where it can. */
  readonly wrong: readonly (string | null)[];
  readonly taken: SheetDraft;
}

function Understood({ rows, wrong, taken: { travelUnit, forceUnit } }: UnderstoodProps) {
  const good = rows.filter(({ say }) => say === null);
  return (
    <div className={styles.scroll}>
      <table>
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col" className="number">
              Travel, {travelUnit}
            </th>
            <th scope="col" className="number">
              Force, {forceUnit}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => {
            const say = row.say ?? (good.indexOf(row) < MOST_ROWS ? wrong[good.indexOf(row)] : MORE_THAN_FIT);
            return (
              <tr key={row.line}>
                <th scope="row">{row.line}</th>
                {say ? (
                  <td colSpan={2} className={styles.wrong}>
                    “{row.text.slice(0, 60)}”: {say}
                  </td>
                ) : (
                  <>
                    <td className="number">{plainNumber(Number(row.travel))}</td>
                    <td className="number">{plainNumber(Number(row.force))}</td>
                  </>
                )}
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

const MORE_THAN_FIT = `A spring keeps at most ${MOST_ROWS} readings. This line is left out.`;

function takenWords(count: number, lines: number, inForm: number): string {
  if (lines === 0) return "";
  if (count === 0) return "None of these lines is a reading.";
  const left = lines - count;
  const rest = left === 0 ? "" : ` ${plural(left, "line")} ${left === 1 ? "is" : "are"} left out.`;
  const instead = inForm === 0 ? "" : ` They take the place of the ${plural(inForm, "reading")} in the form.`;
  return `${plural(count, "reading")} can be taken.${rest}${instead}`;
}
