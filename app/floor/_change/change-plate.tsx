"use client";
/**
 * A change: a light plate with ink on it, its top edge a comb of seconds. The acts stand in order, the one being said
 * largest; below, the springs before and after. What gives way where there is no room: `lib/floor/change-fit.ts`.
 */
import { CHANGE_GIVES, type ChangeTrial, changeTrials } from "#lib/floor/change-fit.ts";
import { secondsFigure } from "#lib/floor/time-words.ts";
import type { FloorItem, FloorView } from "#lib/floor/view.ts";
import type { Equipment, Plan } from "#lib/plan/schema.ts";
import { titled } from "../_parts/coming.tsx";
import { ActWords } from "./act-words.tsx";
import styles from "./change.module.css";
import { ChangeTime } from "./change-time.tsx";
import { CHANGE_NOW, changeGaveWords, NOW_ON, PERHAPS_CHANGE, springsOnWords, WAS } from "./change-words.ts";
import { CoilStrip } from "./coil-rows.tsx";
import { Comb } from "./comb.tsx";
import { DrawnChange } from "./drawn-change.tsx";
import { useFit } from "./use-fit.ts";

interface Props {
  readonly view: FloorView;
  readonly item: FloorItem;
  readonly plan: Plan;
  readonly distanceM: number;
  readonly unsure?: boolean;
  /** What stands beside it, if anything: it is fitted again at once when that changes. */
  readonly beside?: string | null;
}

/** The item that is changed into; null where this moment is no change of set-up. */
export const changedInto = ({ phase, item }: FloorView): FloorItem | null =>
  phase === "change" && item?.nowOn !== null ? item : null;

/** The largest type that acts are shown in, as a share of the screen's height. */
const MOST_SHARE = 0.16;

export function ChangePlate({ view, item, plan, distanceM, unsure = false, beside = null }: Props) {
  const { equipment } = plan;
  const open = view.openAct ?? 0;
  const check = open >= item.acts.length;
  const long = secondsFigure(view.secondsLeft).length;
  const box = useFit<ChangeTrial>([item.id, item.side, open, long, view.held, unsure, beside, distanceM].join("|"), {
    trials: ({ clientHeight }) => changeTrials({ distanceM, most: clientHeight * MOST_SHARE, check }),
    take: (plate, trial) => take(plate, trial, { distanceM, check }),
  });
  return (
    <section
      ref={box}
      className={styles.plate}
      aria-label="Now"
      data-change={item.id}
      data-stopped={view.held}
      data-sure={!unsure}
    >
      {!view.held && !unsure && <Comb left={view.secondsLeft} of={view.secondsOfPhase} />}
      <section className={styles.body} data-fit>
        <section className={styles.corner}>
          {!unsure && <DrawnChange plan={plan} item={item.id} />}
          <div className={styles.name} data-part="name">
            {titled(item)}
          </div>
          <ChangeTime view={view} unsure={unsure} />
        </section>
        <ol className={styles.acts} aria-label={unsure ? PERHAPS_CHANGE : CHANGE_NOW}>
          {item.acts.map((one, n) => (
            <li key={one.words} data-open={n === open} aria-current={n === open ? "step" : undefined}>
              <ActWords act={one} equipment={equipment} unsure={unsure} />{" "}
            </li>
          ))}
        </ol>
      </section>
      <On item={item} equipment={equipment} unsure={unsure} open={check} />
    </section>
  );
}

interface OnProps {
  readonly item: FloorItem;
  readonly equipment: Equipment;
  readonly unsure: boolean;
  /** The springs are checked now. */
  readonly open: boolean;
}

/** The springs before and after, and their names. */
function On({ item, equipment, unsure, open }: OnProps) {
  const stay = item.acts.some(({ kind }) => kind === "stay");
  return (
    <div className={styles.on} data-open={open} data-fit>
      <span className={styles.rows}>
        {!stay && item.was.length > 0 && (
          <span className={styles.row} data-part="was">
            <span>{WAS}</span>
            <CoilStrip item={item} equipment={equipment} row="was" />
          </span>
        )}
        <span className={styles.row}>
          <strong>{NOW_ON}</strong>
          <CoilStrip item={item} equipment={equipment} row="now" />
        </span>
      </span>
      <strong className={styles.names}>
        {springsOnWords(item.nowOn ?? "")}
        {unsure && "?"}
      </strong>
      <p className={styles.note} data-gave-way />
    </div>
  );
}

interface Shown {
  readonly distanceM: number;
  readonly check: boolean;
}

/** Parts that gave way stay in the page for whoever has it read out. */
function take(plate: HTMLElement, trial: ChangeTrial, { distanceM, check }: Shown): void {
  const { open, rest, acts, on, seconds, gone } = trial;
  for (const [name, size] of Object.entries({ open, rest, acts, on, seconds })) {
    plate.style.setProperty(`--${name}`, `${size.toFixed(1)}px`);
  }
  plate.toggleAttribute("data-tight", rest < open);
  for (const [n, part] of CHANGE_GIVES.entries()) {
    plate.toggleAttribute(`data-no-${part}`, n < gone);
    for (const element of plate.querySelectorAll(`[data-part="${part}"]`)) {
      element.classList.toggle("visually-hidden", n < gone);
    }
  }
  const note = plate.querySelector("[data-gave-way]");
  if (!note) return;
  // It has no room of its own where the springs are checked or a long act is squeezed.
  note.classList.toggle("visually-hidden", rest < open || check);
  note.textContent = changeGaveWords(open, gone, distanceM);
}
