/** The longest work without a rest, by muscle group and on wrists and knees, with a link to where it begins. */
import type { Balance, WorkRun } from "#lib/balance/balance.ts";
import { clockTime, secondsWords, tagWords } from "#lib/plan/format.ts";
import { GROUPS } from "#lib/plan/schema.ts";
import styles from "./balance.module.css";

interface LongestProps {
  readonly balance: Balance;
  /** What a person calls an item, and when it begins. */
  readonly nameOf: (item: string) => string;
  readonly startOf: (item: string) => number;
  readonly onGo: (item: string) => void;
}

interface Row {
  readonly label: string;
  readonly stretch: WorkRun;
}

export function Longest(props: LongestProps) {
  const rows = rowsOf(props.balance);
  const longest = Math.max(1, ...rows.map(({ stretch }) => stretch.seconds));
  if (rows.length === 0) return null;
  return (
    <table className={styles.longest}>
      <thead>
        <tr>
          <th scope="col">worked</th>
          <th scope="col" className="number">
            without a rest
          </th>
          <th scope="col">
            <span className="visually-hidden">Begins with</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <StretchRow key={row.label} {...props} {...row} longest={longest} />
        ))}
      </tbody>
    </table>
  );
}

function rowsOf({ longest, onWrists, onKnees }: Balance): Row[] {
  const groups = GROUPS.flatMap((group): Row[] => {
    const stretch = longest[group];
    return stretch ? [{ label: tagWords(group), stretch }] : [];
  }).sort((a, b) => b.stretch.seconds - a.stretch.seconds);
  const on = (label: string, stretch: WorkRun | undefined): Row[] => (stretch ? [{ label, stretch }] : []);
  return [...on("on the wrists", onWrists), ...on("on the knees", onKnees), ...groups];
}

function StretchRow({ label, stretch, longest, nameOf, startOf, onGo }: Row & LongestProps & { longest: number }) {
  const [first] = stretch.items;
  return (
    <tr>
      <th scope="row">{label}</th>
      <td className="number">
        {secondsWords(stretch.seconds)}
        <span className={styles.thread} aria-hidden="true">
          <span style={{ width: `${(stretch.seconds / longest) * 100}%` }} />
        </span>
      </td>
      <td>
        {first !== undefined && (
          <button type="button" className="text-button text-button-low" onClick={() => onGo(first)}>
            {`${nameOf(first)} at ${clockTime(startOf(first))}`}
          </button>
        )}
        {stretch.items.length > 1 && <span className="quiet">{` and ${stretch.items.length - 1} more`}</span>}
      </td>
    </tr>
  );
}
