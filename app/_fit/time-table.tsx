/** Old and new seconds of every move item, block by block; both sides of a move stand together. */
import { plainNumber, secondsWords, sideWords } from "#lib/plan/format.ts";
import { BoundsBar } from "./bounds-bar.tsx";
import styles from "./fit.module.css";
import { boundsWords, difference, heldWords } from "./fit-words.ts";
import { type FitPreview, rowsOf, type TimeGroup, type TimeRow } from "./preview.ts";

interface TableProps {
  readonly preview: FitPreview;
  /** Left out for somebody who may only look. */
  readonly onLock: ((row: TimeRow, on: boolean) => void) | undefined;
  /** Where the names lead to their items: given when they are what prevents the fit. */
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
      <Head fits={fits} />
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

function Head({ fits }: { readonly fits: boolean }) {
  return (
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
  );
}

interface GroupProps extends TableProps {
  readonly group: TimeGroup;
  /** Seconds that the bars reach to. */
  readonly longest: number;
}

function Group(props: GroupProps) {
  const { group } = props;
  const pair = group.rows.length > 1;
  return group.rows.map((row, i) => (
    <Row
      key={row.id}
      {...props}
      row={row}
      name={row.side === "both" ? group.name : `${group.name}, ${sideWords(row.side)}`}
      pair={pair ? (i === 0 ? "first" : "second") : undefined}
    />
  ));
}

interface RowProps extends GroupProps {
  readonly row: TimeRow;
  /** With its side. */
  readonly name: string;
  /** Which of the two rows of a pair it is. */
  readonly pair: "first" | "second" | undefined;
}

function Row({ row, name, pair, preview, longest, onLock, onGo }: RowProps) {
  const changes = row.to !== row.from;
  const fits = preview.fit.possible;
  return (
    <tr data-changes={changes || undefined} data-stops={row.stops || undefined} data-pair={pair}>
      <Name row={row} name={name} onGo={onGo} />
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
          <span>{row.locked ? secondsWords(row.from) : boundsWords(row.bounds)}</span>
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
}

function Name({ row, name, onGo }: Pick<RowProps, "row" | "name" | "onGo">) {
  const held = heldWords(row);
  return (
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
  );
}
