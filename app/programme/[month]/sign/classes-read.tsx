"use client";
import { useFormats } from "#app/_parts/formats.tsx";
/** Every class of the month that is read, in order of time. */
import { shortDayWords, timeWords } from "#lib/formats/dates.ts";
import { expandMonth } from "#lib/month/expand.ts";
import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import { listWords, plural } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { ScrollingTable } from "../scrolling-table.tsx";

export function ClassesRead({ file }: { readonly file: MonthFile }) {
  const slots = expandMonth(file).filter(({ date }) => date >= file.dates.from);
  const on = slots.filter(({ out }) => !out);
  return (
    <section>
      <h2>{plural(on.length, "class", "classes")}</h2>
      <ScrollingTable title="Classes of the month">
        <table>
          <thead>
            <tr>
              {["Day", "Begins", "Minutes", "Room", "Coach", "Regulars", "Theme", "Plan", "Note"].map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {slots.map((slot) => (
              <ClassRow key={slot.id} slot={slot} file={file} />
            ))}
          </tbody>
        </table>
      </ScrollingTable>
    </section>
  );
}

function ClassRow({ slot, file }: { readonly slot: MonthSlot; readonly file: MonthFile }) {
  const f = useFormats();
  const { date, start, minutes, room, coach, regulars = [], theme, plan, note, out } = slot;
  return (
    <tr>
      <th scope="row">{shortDayWords(date, f)}</th>
      <td>{out ? <s>{timeWords(start, f)}</s> : timeWords(start, f)}</td>
      <td className="number">{out ? "called off" : minutes}</td>
      <td>{room ? own(file.rooms, room)?.name : "no room"}</td>
      <td>{coach ? own(file.coaches, coach)?.name : "no coach"}</td>
      <td>{listWords(regulars.map((id) => own(file.regulars, id)?.name ?? "a group that is gone"))}</td>
      <td>{theme ? own(file.themes, theme)?.name : ""}</td>
      <td>{plan ? planWords(file, plan) : "no plan"}</td>
      <td>{note}</td>
    </tr>
  );
}

function planWords({ plans }: MonthFile, id: string): string {
  const plan = own(plans, id);
  if (!plan || plan.known === false) return "a plan that is gone";
  return plan.signed ? `${plan.title}, edition ${plan.edition}` : `${plan.title}, not signed`;
}
