"use client";
/** The readings to type, one a row. Enter goes on: from travel to force, from force to the next row. */
import { type KeyboardEvent, type Ref, useEffect, useRef } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import type { Formats } from "#lib/formats/formats.ts";
import { forceNumber } from "#lib/formats/units.ts";
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
  const { add, goOn } = useWayThrough(draft, onChange);
  const changeRow = (row: number, part: Partial<RowDraft>) =>
    onChange({ ...draft, rows: draft.rows.map((r) => (r.row === row ? { ...r, ...part } : r)) });
  return (
    <>
      <div className={styles.scroll}>
        <table ref={ref} className={styles.table}>
          <caption className="visually-hidden">Readings of the scale</caption>
          <Head draft={draft} />
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

/** From row to row by the keyboard: the next one, or a new one after the last. */
function useWayThrough(draft: SheetDraft, onChange: TableProps["onChange"]) {
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
  return { add, goOn };
}

function Head({ draft: { travelUnit, forceUnit } }: { readonly draft: SheetDraft }) {
  const { force } = useFormats();
  return (
    <thead>
      <tr>
        <th scope="col">Reading</th>
        <th scope="col">Travel, {travelUnit}</th>
        <th scope="col">Force, {forceUnit}</th>
        {forceUnit !== force && (
          <th scope="col" className={`number ${styles.newtons}`}>
            In {force}
          </th>
        )}
        <th scope="col" className="number">
          Off the line, {force}
        </th>
        <th scope="col">
          <span className="visually-hidden">Acts</span>
        </th>
      </tr>
    </thead>
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

function Row(props: RowProps) {
  const { row, draft, read } = props;
  const f = useFormats();
  const typed = read.rows.get(row.row);
  const number = read.counted.indexOf(row.row) + 1;
  const doubtful = read.doubtful === row.row;
  const say = typed?.kind === "wrong" ? typed.say : null;
  return (
    <>
      <tr data-left-out={row.leftOut || undefined} data-doubtful={doubtful || undefined}>
        <th scope="row">{row.leftOut ? "left out" : number > 0 ? number : ""}</th>
        <td>
          <Cell {...props} of="travel" words={`Travel in ${draft.travelUnit}`} say={say} />
        </td>
        <td>
          <Cell {...props} of="force" words={`Force in ${draft.forceUnit}`} say={say} />
        </td>
        {draft.forceUnit !== f.force && (
          <td className={`number ${styles.newtons}`}>
            {typed?.kind === "reading" ? plainNumber(forceNumber(typed.reading.newtons, f, true)) : ""}
          </td>
        )}
        <td className="number">
          {offWords(read, row.row, f)}
          {doubtful && <span className={styles.doubtful}>doubtful</span>}
        </td>
        <td>
          <RowActs {...props} isReading={typed?.kind === "reading"} number={number} />
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

interface CellProps extends Pick<RowProps, "row" | "place" | "onChange" | "onNext"> {
  readonly of: "travel" | "force";
  readonly words: string;
  readonly say: string | null;
}

function Cell({ row, place, onChange, onNext, of, words, say }: CellProps) {
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key !== "Enter") return;
    event.preventDefault();
    if (of === "travel") document.getElementById(`force-${row.row}`)?.focus();
    else onNext();
  };
  return (
    <input
      id={`${of}-${row.row}`}
      inputMode="decimal"
      autoComplete="off"
      aria-label={`${words} of row ${place}`}
      aria-invalid={say !== null}
      aria-describedby={say ? `say-${row.row}` : undefined}
      value={row[of]}
      onChange={(event) => onChange({ [of]: event.target.value })}
      onKeyDown={onKeyDown}
    />
  );
}

interface RowActsProps extends Pick<RowProps, "row" | "place" | "onLeaveOut" | "onTakeOut"> {
  readonly isReading: boolean;
  /** Among the readings that count, from 1; 0 for a row that does not. */
  readonly number: number;
}

function RowActs({ row, place, onLeaveOut, onTakeOut, isReading, number }: RowActsProps) {
  const name = number > 0 ? `reading ${number}` : `row ${place}`;
  return (
    <>
      {isReading && (
        <button type="button" className={`act ${styles.act}`} onClick={() => onLeaveOut(!row.leftOut)}>
          {row.leftOut ? "Count it" : "Leave out"}
          <span className="visually-hidden">: {name}</span>
        </button>
      )}
      {(!isReading || row.leftOut) && (
        <button type="button" className={`act ${styles.act}`} onClick={onTakeOut}>
          Delete<span className="visually-hidden"> {name}</span>
        </button>
      )}
    </>
  );
}

/** "+0.4", "−2": above or below the line. */
function offWords(read: SheetRead, row: number, f: Formats): string {
  const typed = read.rows.get(row);
  if (!read.line || typed?.kind !== "reading") return "";
  const { travelMm, newtons } = typed.reading;
  const off = newtons - (read.line.preloadN + read.line.stiffnessNPerMm * travelMm);
  const shown = forceNumber(off, f, true);
  return `${shown < 0 ? "−" : "+"}${plainNumber(Math.abs(shown))}`;
}
