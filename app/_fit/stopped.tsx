/** The class cannot be fitted: what prevents it, in one sentence and by name, and what would help. */

import { placedName } from "#app/_session/placed-name.ts";
import type { FitHelp } from "#lib/fit/help.ts";
import type { ImpossibleFit } from "#lib/fit/impossible-fit.ts";
import { agree, clockTime } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import styles from "./fit.module.css";
import { helpWords, lockedWords, NO_SINGLE_HELP } from "./fit-words.ts";
import { type FitPreview, rowsOf } from "./preview.ts";

interface StoppedProps {
  readonly plan: Plan;
  readonly preview: FitPreview;
  readonly fit: ImpossibleFit;
  readonly onGo: (itemId: string | null) => void;
  /** Left out for somebody who may only look. */
  readonly onUnlock: ((ids: readonly string[]) => void) | undefined;
}

/** Names listed here; the table below has all of them. */
const NAMED = 6;

export function Stopped({ plan, preview, fit, onGo, onUnlock }: StoppedProps) {
  const locked = rowsOf(preview).filter((row) => row.locked);
  return (
    <div className={styles.summary}>
      <p className="problem" role="status">
        {fit.say}
      </p>
      <dl className={styles.figures}>
        <Figure term="At its shortest" seconds={fit.shortest} />
        <Figure term="At its longest" seconds={fit.longest} />
        <Figure term="Planned length" seconds={preview.length} />
      </dl>
      <Names title="What prevents it" ids={fit.stoppedBy} plan={plan} onGo={onGo} />
      {locked.length > 0 && <p>{lockedWords(locked.length)}</p>}
      <Helps {...{ plan, preview, onGo, onUnlock }} />
    </div>
  );
}

function Figure({ term, seconds }: { readonly term: string; readonly seconds: number }) {
  return (
    <div>
      <dt>{term}</dt>
      <dd>{clockTime(seconds)}</dd>
    </div>
  );
}

interface NamesProps extends Pick<StoppedProps, "plan" | "onGo"> {
  readonly title: string;
  readonly ids: readonly string[];
}

function Names({ title, ids, plan, onGo }: NamesProps) {
  const items = ids.flatMap((id) => itemById(plan, id) ?? []);
  const more = items.length - NAMED;
  if (items.length === 0) return null;
  return (
    <div>
      <h3 className={styles.small}>{title}</h3>
      <ul className={styles.names} aria-label={title}>
        {items.slice(0, NAMED).map((item) => (
          <li key={item.id}>
            <button type="button" className="text-button" onClick={() => onGo(item.id)}>
              {placedName(plan, item)}
            </button>
          </li>
        ))}
        {more > 0 && <li className="quiet">and {more} more, in the table below</li>}
      </ul>
    </div>
  );
}

function Helps({ plan, preview, onGo, onUnlock }: Omit<StoppedProps, "fit">) {
  if (preview.helps.length === 0) {
    return <p>{NO_SINGLE_HELP}</p>;
  }
  return (
    <div>
      <h3 className={styles.small}>Any one of these would help</h3>
      <ul className={`light ${styles.helps}`}>
        {preview.helps.map((help) => (
          <li key={JSON.stringify(help)}>
            <span>{helpWords(plan, help)}</span>
            <HelpAct help={help} onGo={onGo} onUnlock={onUnlock} />
          </li>
        ))}
      </ul>
    </div>
  );
}

/** A kept time is let go right here; everything else is typed where it belongs. */
function HelpAct({ help, onGo, onUnlock }: { readonly help: FitHelp } & Pick<StoppedProps, "onGo" | "onUnlock">) {
  if (help.by === "unlock") {
    return onUnlock ? (
      <button type="button" className="button" onClick={() => onUnlock(help.items)}>
        {agree(help.items.length, "Let it change", "Let them change")}
      </button>
    ) : null;
  }
  // Moves are added on the plan itself, behind the preview.
  if (help.by === "moves") return null;
  const item = help.by === "range" ? (help.items[0] ?? null) : null;
  return (
    <button type="button" className="button" onClick={() => onGo(item)}>
      {item === null ? "Go to the class" : "Go to it"}
    </button>
  );
}
