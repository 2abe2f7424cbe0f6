"use client";
/** What a fill keeps to: how often a plan may come, from which plans and for which classes it chooses, wishes, locked classes. */
import { useMemo, useState } from "react";
import { dayAndTime } from "#lib/formats/dates.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import { plural } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import { setFillList, setMostUses, setWish } from "#lib/programme/write-lists.ts";
import { classTitle } from "#lib/tide/day-marks.ts";
import { NumberOrNone, SlotChoice } from "./labelled.tsx";
import type { MonthDesk } from "./month-desk.ts";
import styles from "./panel.module.css";

type Named = readonly [id: string, words: string];

export function FillSettings({ desk }: { readonly desk: MonthDesk }) {
  const { month, acts } = desk;
  const { empty, locked, plans } = useOffered(desk);
  const fill = month.file.fill ?? {};
  return (
    <details>
      <summary>What the fill keeps to</summary>
      <div className={styles.form}>
        <NumberOrNone
          label="One plan at most so many times"
          hint="in this month; empty: as often as it fits"
          value={fill.mostUses}
          range={{ min: 1, max: 99 }}
          onChange={(most) => acts.run((w) => setMostUses(w, most))}
        />
        <Members
          legend="Plans to choose from"
          all="every signed plan that fits"
          options={plans}
          chosen={fill.plans}
          onChange={(list) => acts.run((w) => setFillList(w, "plans", list))}
        />
        <Members
          legend="Classes to fill"
          all="every empty one"
          options={empty}
          chosen={fill.slots}
          onChange={(list) => acts.run((w) => setFillList(w, "slots", list))}
        />
        <Wishes desk={desk} empty={empty} plans={plans} />
        <Locked desk={desk} locked={locked} />
        <p className="quiet small">
          These count for everybody in this month, from the next time on that it is worked out.
        </p>
      </div>
    </details>
  );
}

function useOffered({ month: { file, look }, formats: f }: MonthDesk) {
  return useMemo(() => {
    const on = look.slots.flatMap(({ slot }) => (slot.out || slot.date < file.dates.from ? [] : [slot]));
    const named = (slot: MonthSlot): Named => [
      slot.id,
      `${dayAndTime(slot.date, slot.start, f)}, ${classTitle(file, { ...slot, plan: null })}`,
    ];
    const plans = Object.entries(file.plans).flatMap(([id, plan]): Named[] =>
      plan.known !== false && plan.signed ? [[id, planTitle(plan.title)]] : [],
    );
    return {
      empty: on.filter(({ plan, locked }) => plan == null && !locked).map(named),
      locked: on.filter(({ locked }) => locked).map(named),
      plans: plans.sort(([, a], [, b]) => (a < b ? -1 : 1)),
    };
  }, [file, look, f]);
}

interface MembersProps {
  readonly legend: string;
  /** Words for no list. */
  readonly all: string;
  readonly options: readonly Named[];
  readonly chosen: readonly string[] | undefined;
  readonly onChange: (list: readonly string[] | null) => void;
}

/** All of them, or a list. */
function Members({ legend, all, options, chosen, onChange }: MembersProps) {
  const ids = options.map(([id]) => id);
  const toggle = (id: string) => {
    const list = chosen ?? ids;
    onChange(list.includes(id) ? list.filter((other) => other !== id) : [...list, id]);
  };
  return (
    <fieldset>
      <legend>{legend}</legend>
      <label className="check">
        <input type="checkbox" checked={!chosen} onChange={() => onChange(chosen ? null : ids)} />
        {all}
      </label>
      {chosen && (
        <div className={styles.list}>
          {options.map(([id, words]) => (
            <label key={id} className="check">
              <input type="checkbox" checked={chosen.includes(id)} onChange={() => toggle(id)} />
              {words}
            </label>
          ))}
        </div>
      )}
    </fieldset>
  );
}

interface WishesProps {
  readonly desk: MonthDesk;
  readonly empty: readonly Named[];
  readonly plans: readonly Named[];
}

/** That a class gets a certain plan, if nothing worse comes of it. Long because: the list and its two choices. */
function Wishes({ desk: { month, acts, slot: slotOf, formats: f }, empty, plans }: WishesProps) {
  const [slot, setSlot] = useState<string | null>(null);
  const [plan, setPlan] = useState<string | null>(null);
  const wishes = month.file.fill?.wishes ?? [];
  const add = () => {
    if (slot !== null && plan !== null)
      acts.run((w) => setWish(w, slot, plan, {}), "The wish counts from the next time on.");
    setPlan(null);
  };
  const words = (wish: (typeof wishes)[number]) => {
    const at = slotOf(wish.slot);
    const title = planTitle(own(month.file.plans, wish.plan)?.title ?? "");
    return `${at ? dayAndTime(at.date, at.start, f) : "A class"}: ${title}`;
  };
  return (
    <fieldset className={styles.form}>
      <legend>Wishes</legend>
      {wishes.length > 0 && (
        <ul className={styles.rows}>
          {wishes.map((wish) => (
            <li key={`${wish.slot} ${wish.plan}`} className="spread">
              <span>{words(wish)}</span>
              <button
                type="button"
                className="act"
                onClick={() => acts.run((w) => setWish(w, wish.slot, wish.plan, null))}
              >
                Take it back<span className="visually-hidden">: {words(wish)}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <SlotChoice label="Class" none="choose a class" value={slot} options={empty} onChange={setSlot} />
      <SlotChoice label="Wished plan" none="choose a plan" value={plan} options={plans} onChange={setPlan} />
      <div>
        <button type="button" className="button" disabled={slot === null || plan === null} onClick={add}>
          Add the wish
        </button>
      </div>
    </fieldset>
  );
}

/** Their plan, or that they have none, stays; the class's own panel unlocks it. */
function Locked({ desk, locked }: { readonly desk: MonthDesk; readonly locked: readonly Named[] }) {
  if (locked.length === 0) return null;
  return (
    <details>
      <summary>{plural(locked.length, "locked class stays", "locked classes stay")} as they are</summary>
      <ul className={styles.rows}>
        {locked.map(([id, words]) => (
          <li key={id}>
            <button
              type="button"
              className="act"
              onClick={() => desk.choose({ panel: { kind: "class", slot: id }, proposed: {} })}
            >
              {words}
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
