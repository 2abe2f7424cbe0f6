/** Old and new seconds of every move item, block by block; what stays is quiet, both sides of a move stand together. */
import { plainNumber, secondsWords, sideWords } from "#lib/plan/format.ts";
import { BoundsBar } from "./bounds-bar.tsx";
import styles from "./fit.module.css";
import { type FitPreview, rowsOf, type TimeGroup, type TimeRow } from "./preview.ts";
import { difference, heldWords, rangeWords } from "./words.ts";

interface TableProps {
  readonly preview: FitPreview;
  /** Left out for somebody who may only look. */
  readonly onLock: ((row: TimeRow, on: boolean) => void) | undefined;
  /** Where the names lead to their items: given when they are what stops the fit. */
  readonly onGo: ((itemId: string) => void) | undefined;
}

export function TimeTable(props: TableProps) {
  const { preview } = props;
  const fits = preview.fit.possible;
  const longest = Math.max(...rowsOf(preview).map((row) => Math.max(row.bounds[1], row.from)), 1);
  return (
    <table className={styles.times}>
      <caption className="visually-hidden">
        {fits ? "Times now and then, in seconds" : "Times and their bounds, in seconds"}
      </caption>
      <thead>
        <tr>
          <th scope="col">Move</th>
          <th scope="col" className="number">
            Now
          </th>
          {fits && (
            <>
              <th scope="col" className="number">
                Then
              </th>
              <th scope="col" className="number">
                <span className="visually-hidden">Difference</span>
                <span aria-hidden="true">±</span>
              </th>
            </>
          )}
          <th scope="col" className={fits ? styles.wideOnly : undefined}>
            May be
          </th>
          <th scope="col">Keep</th>
        </tr>
      </thead>
      {preview.blocks.map((block) => (
        <tbody key={block.id}>
          {block.title !== null && (
            <tr className={styles.block}>
              <th scope="rowgroup" colSpan={fits ? 6 : 4}>
                {block.title.trim() || "Heading without words"}
              </th>
            </tr>
          )}
          {block.groups.map((group) => (
            <Group key={group.rows[0]?.id} {...props} group={group} longest={longest} />
          ))}
        </tbody>
      ))}
    </table>
  );
}

interface GroupProps extends TableProps {
  readonly group: TimeGroup;
  /** Seconds that the bars reach to. */
  readonly longest: number;
}

function Group({ group, preview, longest, onLock, onGo }: GroupProps) {
  const pair = group.rows.length > 1;
  return group.rows.map((row, i) => {
    const changes = row.to !== row.from;
    const fits = preview.fit.possible;
    const held = heldWords(row);
    const name = row.side === "both" ? group.name : `${group.name}, ${sideWords(row.side)}`;
    return (
      <tr
        key={row.id}
        data-changes={changes || undefined}
        data-stops={row.stops || undefined}
        data-pair={pair ? (i === 0 ? "first" : "second") : undefined}
      >
        <th scope="row">
          <span className={styles.name}>
            {onGo ? (
              <button type="button" className="text-button" onClick={() => onGo(row.id)}>
                {name}
              </button>
            ) : (
              name
            )}
          </span>
          {row.at !== null && <span className={styles.held}>at {row.at}</span>}
          {held && <span className={styles.held}>{held}</span>}
        </th>
        <td className="number">{plainNumber(row.from)}</td>
        {fits && (
          <>
            <td className="number">{plainNumber(row.to)}</td>
            <td className="number">{changes ? difference(row.to - row.from) : <span aria-hidden="true">·</span>}</td>
          </>
        )}
        <td className={fits ? styles.wideOnly : undefined}>
          <span className={styles.bounds}>
            <BoundsBar row={row} longest={longest} />
            <span>{row.locked ? secondsWords(row.from) : rangeWords(row.bounds)}</span>
          </span>
        </td>
        <td>
          <label className={styles.keep}>
            <input
              type="checkbox"
              checked={row.locked}
              disabled={!onLock}
              onChange={(event) => onLock?.(row, event.target.checked)}
            />
            <span className="visually-hidden">{`Keep ${secondsWords(row.from)} for ${name}${row.at === null ? "" : ` at ${row.at}`}`}</span>
          </label>
        </td>
      </tr>
    );
  });
}
