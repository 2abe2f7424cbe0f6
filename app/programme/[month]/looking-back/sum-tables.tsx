/** Classes taught against planned, by what they have in common; in the order of names. */
import { ScrollingTable } from "../scrolling-table.tsx";
import { LOOK_BACK } from "./look-back-words.ts";

interface SumRow {
  readonly id: string;
  readonly name: string;
  readonly planned: number;
  readonly taught: number;
  readonly abandoned: number;
  readonly noLog: number;
  readonly plannedMinutes: number;
  readonly taughtMinutes: number;
}

const COLUMNS = [
  ["planned", "Planned"],
  ["taught", "Taught"],
  ["abandoned", "Only begun"],
  ["noLog", "No log"],
  ["plannedMinutes", "Minutes planned"],
  ["taughtMinutes", "Minutes taught"],
] as const;

export function SumTable(props: { readonly title: string; readonly head: string; readonly sums: readonly SumRow[] }) {
  const { title, head, sums } = props;
  return (
    <section>
      <h2>{title}</h2>
      {sums.length === 0 ? (
        <p className="quiet">{LOOK_BACK.none}</p>
      ) : (
        <ScrollingTable title={title}>
          <table aria-label={title}>
            <thead>
              <tr>
                <th scope="col">{head}</th>
                {COLUMNS.map(([key, name]) => (
                  <th key={key} scope="col" className="number">
                    {name}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {sums.map((sum) => (
                <tr key={sum.id}>
                  <th scope="row">{sum.name}</th>
                  {COLUMNS.map(([key]) => (
                    <td key={key} className="number">
                      {sum[key]}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollingTable>
      )}
    </section>
  );
}
