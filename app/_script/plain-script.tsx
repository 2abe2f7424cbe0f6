/** A script for reading only, made from the document without an editor. */
import { readerOf } from "#lib/cues/as-read.ts";
import { KIND_WORDS } from "#lib/plan/cue-words.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import styles from "./script.module.css";

/** Here and not in `script-words.ts`, which is fetched with the editor. `what` is what this version cannot show. */
const misfitWords = (what: string): string =>
  `This script holds ${what}, which this version of the program cannot show. You can read it but not edit it, so that nothing is lost. Reload the page; if that does not help, update the server.`;

interface Of {
  readonly plan: Plan;
  readonly item: MoveItem;
}

export function PlainScript({ plan, item, misfit }: Of & { readonly misfit: string }) {
  return (
    <section aria-label="Script">
      <p className="notice">{misfitWords(misfit)}</p>
      <Lines plan={plan} item={item} />
    </section>
  );
}

/** Shown until the editor is fetched: the words, where the editor will be. */
export function ScriptLines({ plan, item, label }: Of & { readonly label: string }) {
  return (
    <section className={styles.script} aria-label={label} aria-busy="true">
      <Lines plan={plan} item={item} />
    </section>
  );
}

function Lines({ plan, item }: Of) {
  const asRead = readerOf(plan);
  return (
    <dl className={styles.plain}>
      {(item.script ?? []).map((line, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lines of a script have no other identity here
        <div key={i}>
          <dt>{KIND_WORDS[line.kind]}</dt>
          <dd>{asRead(item, line.text)}</dd>
        </div>
      ))}
    </dl>
  );
}
