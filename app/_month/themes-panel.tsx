"use client";
import { percent } from "#lib/formats/percent.ts";
/** Themes of the month: how many classes of each are promised, and what share of its work a class of it must have. */
import type { MonthTheme } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import { GROUPS, type Group } from "#lib/plan/schema.ts";
import { addTheme, setLeastShare, setPromised, takeOutEntry } from "#lib/programme/write-lists.ts";
import { groupWords } from "#lib/tide/columns.ts";
import { newId } from "../_parts/new-id.ts";
import { NumberOrNone } from "./labelled.tsx";
import type { MonthDesk } from "./month-desk.ts";
import styles from "./panel.module.css";
import { NameField } from "./regulars-panel.tsx";
import { useGoToAdded } from "./use-go-to-added.ts";

export function ThemesPanel({ desk }: { readonly desk: MonthDesk }) {
  const { month, acts } = desk;
  const [list, goTo] = useGoToAdded<HTMLUListElement>();
  const add = () => {
    const id = newId();
    if (acts.run((w) => addTheme(w, id, { name: "New theme" }), "Added a theme.")) goTo(id);
  };
  return (
    <>
      <ul ref={list} className={styles.rows}>
        {Object.entries(month.state.themes).map(([id, theme]) => (
          <ThemeRow key={id} desk={desk} id={id} theme={theme} />
        ))}
      </ul>
      {month.writes && (
        <button type="button" className="button" onClick={add}>
          Add a theme
        </button>
      )}
    </>
  );
}

interface ThemeRowProps {
  readonly desk: MonthDesk;
  readonly id: string;
  readonly theme: MonthTheme;
}

/** Long because: the fields of a theme, in the order of the form. */
function ThemeRow({ desk, id, theme }: ThemeRowProps) {
  const { month, acts } = desk;
  const sums = own(month.look.sums.themes, id);
  return (
    <li data-row={id}>
      <div className={styles.two}>
        <NameField desk={desk} of="themes" id={id} label="Name" />
        <NumberOrNone
          label="Classes promised"
          hint={sums ? `${sums.slots} in the month, ${sums.kept} keep it` : ""}
          value={theme.promised}
          range={{ min: 0, max: 1000 }}
          onChange={(promised) => acts.run((w) => setPromised(w, id, promised))}
        />
      </div>
      <details>
        <summary>Least shares of its work{theme.shares ? `: ${sharesWords(theme.shares)}` : ""}</summary>
        <div className={styles.three}>
          {GROUPS.map((group) => (
            <NumberOrNone
              key={group}
              label={`${groupWords(group)}, %`}
              value={theme.shares?.[group] === undefined ? undefined : Math.round(theme.shares[group] * 100)}
              range={{ min: 0, max: 100 }}
              onChange={(hundredths) =>
                acts.run((w) => setLeastShare(w, id, group, hundredths === null ? null : hundredths / 100))
              }
            />
          ))}
        </div>
      </details>
      {month.writes && (
        <button
          type="button"
          className="act"
          onClick={() => acts.run((w) => takeOutEntry(w, "themes", id, Date.now()), `Taken out: ${theme.name}.`)}
        >
          Take out<span className="visually-hidden"> {theme.name}</span>
        </button>
      )}
    </li>
  );
}

const sharesWords = (shares: Partial<Record<Group, number>>): string =>
  Object.entries(shares)
    .map(([group, share]) => `${group.replaceAll("-", " ")} ${percent(share)}`)
    .join(", ");
