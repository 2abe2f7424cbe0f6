"use client";
/** The script of the copy, line by line: kind and words, and lines that come, go or change places. */
import { useRef } from "react";
import { newId } from "#app/_parts/new-id.ts";
import { KIND_WORDS } from "#lib/plan/cue-words.ts";
import { CUE_KINDS, type CueKind } from "#lib/plan/schema.ts";
import { MOST_LINE_CHARACTERS, MOST_LINES } from "#lib/proposal/parts.ts";
import { type CopyLine, moved, type PlateCopy, withAddedLine, withLine, withoutLine } from "./plate-copy.ts";
import styles from "./propose.module.css";
import { PROPOSE } from "./propose-words.ts";
import { useFocusNext } from "./use-focus-next.ts";

interface CopyScriptProps {
  readonly copy: PlateCopy;
  readonly onChange: (copy: PlateCopy) => void;
}

export function CopyScript({ copy, onChange }: CopyScriptProps) {
  const list = useRef<HTMLFieldSetElement>(null);
  const focusNext = useFocusNext(list);
  const add = () => {
    const key = newId();
    focusNext(`[data-line="${key}"] textarea`);
    onChange(withAddedLine(copy, key));
  };
  const remove = (at: number) => {
    const next = copy.lines[at + 1] ?? copy.lines[at - 1];
    focusNext(next ? `[data-line="${next.key}"] textarea` : "[data-add]");
    onChange(withoutLine(copy, copy.lines[at]?.key ?? ""));
  };
  const move = (at: number, by: -1 | 1) => {
    const lines = moved(copy.lines, at, by);
    const atEnd = at + by === 0 || at + by === lines.length - 1;
    const way = atEnd ? -by : by;
    focusNext(`[data-line="${copy.lines[at]?.key}"] [data-by="${way}"]`);
    onChange({ ...copy, lines });
  };
  return (
    <fieldset ref={list} className={styles.lines}>
      <legend>{PROPOSE.lines}</legend>
      {copy.lines.map((line, at) => (
        <Line
          key={line.key}
          {...{ line, at }}
          isLast={at === copy.lines.length - 1}
          onChange={(change) => onChange(withLine(copy, line.key, change))}
          onMove={(by) => move(at, by)}
          onRemove={() => remove(at)}
        />
      ))}
      <button type="button" data-add className="button" disabled={copy.lines.length >= MOST_LINES} onClick={add}>
        {PROPOSE.addLine}
      </button>
    </fieldset>
  );
}

interface LineProps {
  readonly line: CopyLine;
  readonly at: number;
  readonly isLast: boolean;
  readonly onChange: (change: Partial<Pick<CopyLine, "kind" | "text">>) => void;
  readonly onMove: (by: -1 | 1) => void;
  readonly onRemove: () => void;
}

function Line({ line, at, isLast, onChange, onMove, onRemove }: LineProps) {
  const n = at + 1;
  return (
    <div className={styles.line} data-line={line.key}>
      <select
        aria-label={PROPOSE.kindOf(n)}
        value={line.kind}
        onChange={(event) => onChange({ kind: event.target.value as CueKind })}
      >
        {CUE_KINDS.map((kind) => (
          <option key={kind} value={kind}>
            {KIND_WORDS[kind]}
          </option>
        ))}
      </select>
      <textarea
        aria-label={PROPOSE.wordsOf(n)}
        rows={2}
        maxLength={MOST_LINE_CHARACTERS}
        value={line.text}
        onChange={(event) => onChange({ text: event.target.value.replace(/[\r\n]+/g, " ") })}
      />
      <LineActs {...{ at, isLast, onMove, onRemove }} />
    </div>
  );
}

function LineActs({ at, isLast, onMove, onRemove }: Pick<LineProps, "at" | "isLast" | "onMove" | "onRemove">) {
  const n = at + 1;
  const way = (by: -1 | 1, disabled: boolean) => (
    <button
      type="button"
      className="square-button"
      data-by={by}
      aria-label={(by === -1 ? PROPOSE.up : PROPOSE.down)(PROPOSE.line(n))}
      disabled={disabled}
      onClick={() => onMove(by)}
    >
      {by === -1 ? "↑" : "↓"}
    </button>
  );
  return (
    <span className={styles.lineActs}>
      {way(-1, at === 0)}
      {way(1, isLast)}
      <button type="button" className="square-button" aria-label={PROPOSE.remove(n)} onClick={onRemove}>
        ×
      </button>
    </span>
  );
}
