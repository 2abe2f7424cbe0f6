"use client";
/** The readings to type, one a row. Enter goes on: from travel to force, from force to the next row. */
import { type KeyboardEvent, type Ref, useEffect, useRef } from "react";
import { plainNumber } from "#lib/plan/format.ts";
import styles from "./readings.module.css";
import { MOST_ROWS, type RowDraft, type SheetDraft, type SheetRead, withRow } from "./sheet-draft.ts";

interface TableProps {
  readonly ref: Ref<HTMLTableElement>;
  readonly draft: SheetDraft;
  readonly read: SheetRead;
  readonly onChange: (draft: SheetDraft) => void;
  readonly onLeaveOut: (row: number, leftOut: boolean) => void;
}

export function ReadingsTable({ ref, draft, read, onChange, onLeaveOut }: TableProps) {
  const wanted = useRef<string | null>(null);
  useEffect(() => {
    if (wanted.current) document.getElementById(wanted.current)?.focus();
    wanted.current = null;
  });
  const add = () => {
    const next = withRow(draft);
    wanted.current = `travel-${next.rows.at(-1)?.row}`;
    onChange(next);
  };
  const goOn = (at: RowDraft) => {
    const next = draft.rows[draft.rows.indexOf(at) + 1];
    if (next) document.getElementById(`travel-${next.row}`)?.focus();
    else add();
  };
  const changeRow = (row: number, part: Partial<RowDraft>) =>
    onChange({ ...draft, rows: draft.rows.map((r) => (r.row === row ? { ...r, ...part } : r)) });
  return (
    <>
      <div className={styles.scroll}>
        <table ref={ref} className={styles.table}>
          <caption className="visually-hidden">Readings of the scale</caption>
          <thead>
            <tr>
              <th scope="col">Reading</th>
              <th scope="col">Travel, {draft.travelUnit}</th>
              <th scope="col">Force, {draft.forceUnit}</th>
              {draft.forceUnit === "kgf" && (
                <th scope="col" className={`number ${styles.newtons}`}>
                  in N
                </th>
              )}
              <th scope="col" className="number">
                off the line, N
              </th>
              <th scope="col">
                <span className="visually-hidden">Acts</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {draft.rows.map((row, i) => (
              <Row
                key={row.row}
                row={row}
                place={i + 1}
                draft={draft}
                read={read}
                onChange={(part) => changeRow(row.row, part)}
                onLeaveOut={(leftOut) => onLeaveOut(row.row, leftOut)}
                onTakeOut={() => onChange({ ...draft, rows: draft.rows.filter((r) => r !== row) })}
                onNext={() => goOn(row)}
              />
            ))}
          </tbody>
        </table>
      </div>
      <button type="button" className="button" onClick={add} disabled={draft.rows.length >= MOST_ROWS}>
        Add a reading
      </button>
    </>
  );
}

interface RowProps {
  readonly row: RowDraft;
  /** Place among all rows, from 1. */
  readonly place: number;
  readonly draft: SheetDraft;
  readonly read: SheetRead;
  readonly onChange: (part: Partial<RowDraft>) => void;
  readonly onLeaveOut: (leftOut: boolean) => void;
  readonly onTakeOut: () => void;
  readonly onNext: () => void;
}

function Row({ row, place, draft, read, onChange, onLeaveOut, onTakeOut, onNext }: RowProps) {
  const typed = read.rows.get(row.row);
  const number = read.counted.indexOf(row.row) + 1;
  const name = number > 0 ? `reading ${number}` : `row ${place}`;
  const doubtful = read.doubtful === row.row;
  const say = typed?.kind === "wrong" ? typed.say : null;
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key !== "Enter") return;
    event.preventDefault();
    if (event.currentTarget.id === `travel-${row.row}`) document.getElementById(`force-${row.row}`)?.focus();
    else onNext();
  };
  const field = (key: "travel" | "force", words: string) => (
    <input
      id={`${key}-${row.row}`}
      inputMode="decimal"
      autoComplete="off"
      aria-label={`${words} of row ${place}`}
      aria-invalid={say !== null}
      aria-describedby={say ? `say-${row.row}` : undefined}
      value={row[key]}
      onChange={(event) => onChange({ [key]: event.target.value })}
      onKeyDown={onKeyDown}
    />
  );
  return (
    <>
      <tr data-left-out={row.leftOut || undefined} data-doubtful={doubtful || undefined}>
        <th scope="row">{row.leftOut ? "left out" : number > 0 ? number : ""}</th>
        <td>{field("travel", `Travel in ${draft.travelUnit}`)}</td>
        <td>{field("force", `Force in ${draft.forceUnit}`)}</td>
        {draft.forceUnit === "kgf" && (
          <td className={`number ${styles.newtons}`}>
            {typed?.kind === "reading" ? plainNumber(typed.reading.newtons) : ""}
          </td>
        )}
        <td className="number">
          {offWords(read, row.row)}
          {doubtful && <span className={styles.doubtful}>doubtful</span>}
        </td>
        <td>
          {typed?.kind === "reading" && (
            <button type="button" className={`act ${styles.act}`} onClick={() => onLeaveOut(!row.leftOut)}>
              {row.leftOut ? "Count it" : "Leave out"}
              <span className="visually-hidden">: {name}</span>
            </button>
          )}
          {(typed?.kind !== "reading" || row.leftOut) && (
            <button type="button" className={`act ${styles.act}`} onClick={onTakeOut}>
              Delete<span className="visually-hidden"> {name}</span>
            </button>
          )}
        </td>
      </tr>
      {say && (
        <tr>
          <td colSpan={6} id={`say-${row.row}`} className={styles.wrong} role="alert">
            {say}
          </td>
        </tr>
      )}
    </>
  );
}

/** "+0.4", "−2": newtons above or below the line. */
function offWords(read: SheetRead, row: number): string {
  const typed = read.rows.get(row);
  if (!read.line || typed?.kind !== "reading") return "";
  const { travelMm, newtons } = typed.reading;
  const off = newtons - (read.line.preloadN + read.line.stiffnessNPerMm * travelMm);
  return `${off < -0.05 ? "−" : "+"}${plainNumber(Math.abs(off))}`;
}
