/** For whoever shows the moves: the set-up as it should stand now; in a change, and before it, what to change. */
import type { FloorItem } from "#lib/floor/view.ts";
import { crewSheet } from "#lib/line/crew.ts";
import { setupWords } from "#lib/line/setup-words.ts";
import { sideWords } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { FloorCoils } from "../../_parts/coils/floor-coils.tsx";
import { Board } from "./board.tsx";
import styles from "./follow.module.css";
import type { ViewProps } from "./view-props.ts";

export function DemonstratorView(props: ViewProps) {
  const { card, view, now, position, unsure } = props;
  const { plan } = now;
  const notes = crewSheet(now, position).now.map(({ text }) => text);
  const care = view.phase === "opening" ? card.cautions.note : [];
  const shown = (
    <>
      {notes.map((text) => (
        <p key={text} className={styles.note} data-fit>
          {text}
        </p>
      ))}
      {care.length > 0 && (
        <ul className={styles.care} aria-label="With care">
          {care.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
    </>
  );
  const standing = view.item?.kind === "move" ? <SetUp plan={plan} item={view.item} unsure={unsure} /> : null;
  return (
    <Board {...props} kind="demonstrator" standing={standing} aside={{ words: [...notes, ...care].join("|"), shown }} />
  );
}

function SetUp({ plan, item, unsure }: { plan: Plan; item: FloorItem; unsure: boolean }) {
  const words = setupWords(plan, item.id);
  if (!words) return null;
  const rows: readonly (readonly [string, React.ReactNode])[] = [
    [
      "springs",
      <span key="springs">
        <FloorCoils springs={item.springs} equipment={plan.equipment} /> {item.nowOn?.replace("now on: ", "")}
        {unsure && "?"}
      </span>,
    ],
    ["body", words.body],
    ["facing", words.facing],
    ["hands", words.hands],
    ["feet", words.feet],
    ...(item.side && item.side !== "both" ? [["side", sideWords(item.side)] as const] : []),
  ];
  return (
    <dl className={styles.setup}>
      {rows.map(([name, value]) => (
        <div key={name} data-fit>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
