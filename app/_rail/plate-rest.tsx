"use client";
/** What a closed plate says beside its name: its script, or the worst that was found. */
import { KIND_WORDS } from "#lib/plan/cue-words.ts";
import type { ItemMarks } from "./marks.ts";
import styles from "./plate.module.css";
import type { RestLine } from "./rest-lines.ts";

/** Kinds that are told apart by a word; the others speak for themselves. */
const NAMED = ["safety", "easier", "harder"];

export function PlateRest({
  lines,
  marks,
}: {
  readonly lines: readonly RestLine[];
  readonly marks?: ItemMarks | undefined;
}) {
  const found = marks && marks.worst !== null;
  return (
    <div className={styles.rest}>
      {lines.length > 0 && (
        <p className={styles.script} data-preview="">
          {lines.map(({ kind, text }, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two lines may say the same
            <span key={i} data-kind={kind}>
              {i > 0 && !NAMED.includes(kind) && NAMED.includes(lines[i - 1]?.kind ?? kind) && "· "}
              {NAMED.includes(kind) && <b>{KIND_WORDS[kind].toLowerCase()} </b>}
              {text}{" "}
            </span>
          ))}
        </p>
      )}
      {found && <Found marks={marks} />}
    </div>
  );
}

function Found({ marks }: { readonly marks: ItemMarks }) {
  const more = marks.must + marks.look - 1;
  const level = marks.must > 0 ? "must" : "look";
  return (
    <p className={styles.found} data-level={level}>
      <b>{level === "must" ? "must fix" : "look again"}</b> {marks.worst}
      {more > 0 && ` and ${more} more`}
    </p>
  );
}
