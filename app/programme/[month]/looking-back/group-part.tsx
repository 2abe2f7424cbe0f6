/** What each group of muscles was to do and did: on two figures for all classes, in words and as a table for each regulars. */
import { BodyMap } from "#app/_body-map/body-map.tsx";
import type { GroupSum } from "#lib/look-back/groups.ts";
import { sentenceCase, tagWords } from "#lib/plan/format.ts";
import { ScrollingTable } from "../scrolling-table.tsx";
import { allGroups, groupsSentence, shareDone, sharesOf, workWords } from "./group-words.ts";
import { LOOK_BACK } from "./look-back-words.ts";
import styles from "./looking-back.module.css";

interface Column {
  readonly id: string;
  readonly name: string;
  readonly groups: readonly GroupSum[];
}
interface GroupPartProps {
  readonly all: readonly GroupSum[];
  readonly byRegulars: readonly Column[];
}

export function GroupPart({ all, byRegulars }: GroupPartProps) {
  if (all.length === 0)
    return (
      <section>
        <h2>{LOOK_BACK.groups}</h2>
        <p className="quiet">{LOOK_BACK.none}</p>
      </section>
    );
  return (
    <section>
      <h2>{LOOK_BACK.groups}</h2>
      <p className={styles.lead}>{groupsSentence(all)}</p>
      <p className={`quiet ${styles.lead}`}>{LOOK_BACK.groupsWhat}</p>
      <div className={styles.figures}>
        {(["planned", "taught"] as const).map((of) => {
          const name = of === "planned" ? LOOK_BACK.planned : LOOK_BACK.done;
          return (
            <figure key={of}>
              <figcaption>{name}</figcaption>
              <BodyMap
                shares={sharesOf(all, of)}
                layout="lying"
                title={`${name}: a person, shaded by each muscle’s share`}
              />
            </figure>
          );
        })}
      </div>
      <GroupTable columns={[{ id: "all", name: LOOK_BACK.allClasses, groups: all }, ...onlyRegulars(byRegulars)]} />
    </section>
  );
}

/** Classes of no regulars alone would repeat the column of all. */
const onlyRegulars = (columns: readonly Column[]): readonly Column[] =>
  columns.some(({ id }) => id !== "") ? columns : [];

function GroupTable({ columns }: { readonly columns: readonly Column[] }) {
  const groups = columns[0]?.groups.map(({ group }) => group) ?? [];
  return (
    <ScrollingTable title={LOOK_BACK.groups}>
      <table aria-label={LOOK_BACK.groups} className={styles.groups}>
        <thead>
          <tr>
            <th scope="col">Group</th>
            {columns.map(({ id, name }) => (
              <th key={id} scope="col" className="number">
                {sentenceCase(name)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {groups.map((group) => (
            <tr key={group}>
              <th scope="row">{sentenceCase(tagWords(group))}</th>
              {columns.map((column) => (
                <Cell key={column.id} work={column.groups.find((one) => one.group === group)} />
              ))}
            </tr>
          ))}
          <tr>
            <th scope="row">{LOOK_BACK.allGroups}</th>
            {columns.map((column) => (
              <Cell key={column.id} work={allGroups(column.groups)} />
            ))}
          </tr>
        </tbody>
      </table>
    </ScrollingTable>
  );
}

function Cell({ work }: { readonly work: Pick<GroupSum, "planned" | "taught"> | undefined }) {
  if (!work) return <td className="number quiet">no work</td>;
  return (
    <td className="number">
      <span className="quiet">{workWords(work)},</span> {shareDone(work)}
    </td>
  );
}
