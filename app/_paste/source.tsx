"use client";
/** Where the list is entered: pasted, typed, chosen as a file or dropped. */
import { type DragEvent, type ReactNode, useRef, useState } from "react";
import { decodeText, MAX_BYTES } from "#lib/paste/decode.ts";
import { MAX_TEXT, tooLongWords } from "#lib/paste/limits.ts";
import type { PasteContext } from "#lib/paste/types.ts";
import styles from "./paste.module.css";
import { fileReadWords, WHAT_IS_READ } from "./paste-words.ts";

interface SourceProps {
  readonly text: string;
  readonly setText: (text: string) => void;
  readonly context: PasteContext;
}

export function Source({ text, setText, context }: SourceProps) {
  const [said, setSaid] = useState<string | null>(null);
  const field = useRef<HTMLTextAreaElement>(null);
  const take = async (chosen: File | undefined) => {
    if (!chosen) return;
    const read = await textOfFile(chosen);
    setSaid(read.ok ? (read.note ?? fileReadWords(chosen.name)) : read.say);
    if (read.ok) setText(read.text);
  };
  const typed = (value: string) => {
    setSaid(null);
    setText(value);
  };
  const clear = () => {
    setText("");
    field.current?.focus();
  };
  return (
    <DropPlace take={take}>
      <label htmlFor="paste-text">Your list or table</label>
      <textarea
        ref={field}
        data-first=""
        id="paste-text"
        className={styles.text}
        rows={text === "" ? 6 : 4}
        wrap="off"
        spellCheck={false}
        autoComplete="off"
        maxLength={MAX_TEXT * 20}
        placeholder={exampleOf(context)}
        aria-describedby="paste-hint"
        value={text}
        onChange={(event) => typed(event.target.value)}
      />
      <SourceActs take={take} said={said} onClear={text === "" ? undefined : clear} />
    </DropPlace>
  );
}

const textOfFile = async (file: File): Promise<ReturnType<typeof decodeText>> =>
  file.size > MAX_BYTES ? { ok: false, say: tooLongWords(file.size) } : decodeText(await bytesOf(file));

interface ActsProps {
  readonly take: (file: File | undefined) => Promise<void>;
  readonly said: string | null;
  /** Left out while the field is empty. */
  readonly onClear: (() => void) | undefined;
}

/** Under the field: what it reads, and the other ways to fill or empty it. */
function SourceActs({ take, said, onClear }: ActsProps) {
  return (
    <>
      <p id="paste-hint" className="small quiet">
        {WHAT_IS_READ}
      </p>
      <div className="acts light">
        <FileButton take={take} />
        <span className={`small quiet ${styles.drop}`}>or drop a .csv or .txt file here</span>
        {onClear && (
          <button type="button" className="button button-quiet" onClick={onClear}>
            Clear the field
          </button>
        )}
        <span role="status" className="small">
          {said}
        </span>
      </div>
    </>
  );
}

/** Takes a file that is dropped anywhere on it. */
function DropPlace({ take, children }: Pick<ActsProps, "take"> & { readonly children: ReactNode }) {
  const [dragging, setDragging] = useState(false);
  const onDrop = (event: DragEvent) => {
    setDragging(false);
    if (event.dataTransfer.files.length === 0) return;
    event.preventDefault();
    void take(event.dataTransfer.files[0]);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is one more way; the file button does the same
    <div
      className={styles.source}
      data-dragging={dragging || undefined}
      onDragOver={(event) => {
        if (!event.dataTransfer.types.includes("Files")) return;
        event.preventDefault();
        setDragging(true);
      }}
      onDragLeave={() => setDragging(false)}
      onDrop={onDrop}
    >
      {children}
    </div>
  );
}

function FileButton({ take }: { take: (file: File | undefined) => Promise<void> }) {
  const file = useRef<HTMLInputElement>(null);
  return (
    <>
      <input
        ref={file}
        type="file"
        className="visually-hidden"
        tabIndex={-1}
        aria-hidden="true"
        accept=".csv,.tsv,.txt,.md,text/plain,text/csv,text/tab-separated-values"
        onChange={(event) => {
          void take(event.target.files?.[0]);
          event.target.value = "";
        }}
      />
      <button type="button" className="button" onClick={() => file.current?.click()}>
        Choose a file
      </button>
    </>
  );
}

const bytesOf = async (file: File): Promise<Uint8Array> => new Uint8Array(await file.arrayBuffer());

/** Rows in the studio's own words: a move with a time and springs, one that is done on each side. */
function exampleOf({ moves, equipment }: PasteContext): string {
  const short = Object.values(moves).filter((move) => !move.name.includes(","));
  const both = short.find((move) => move.sides === "both")?.name ?? "Plank hold";
  const each = short.find((move) => move.sides === "each")?.name;
  const label = equipment.springs[0]?.label ?? "light";
  const rows = [`${both}  60 s  2 ${label}`, ...(each ? [`${each}  0:45  ${label} x1  each side`] : []), "Water  30 s"];
  return ["For example:", ...rows].join("\n");
}
