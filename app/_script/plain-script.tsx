/** A script for reading only, made from the document without an editor. */
import { readerOf } from "#lib/cues/as-read.ts";
import { KIND_WORDS } from "#lib/plan/cue-words.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import styles from "./script.module.css";

interface Of {
  readonly plan: Plan;
  readonly item: MoveItem;
}

export function PlainScript({ plan, item, misfit }: Of & { readonly misfit: string }) {
  return (
    <section aria-label="Script">
      <p className="notice">
        This script holds {misfit}, which this version of the program cannot show. It can be read here but not changed,
        so that nothing of it is lost. Reload the page; if that does not help, the server needs its update.
      </p>
      <Lines plan={plan} item={item} />
    </section>
  );
}

/** What stands there until the editor is here: the words at once, and where the editor will stand. */
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
