/** Moves as lines to open. Arrows, Home and End go through them; each is a link like any other. */
import Link from "next/link";
import { type KeyboardEvent, memo, type Ref } from "react";
import { cautionList, muscleWords, STATION_WORDS } from "#lib/library/move-words.ts";
import type { FoundMove } from "#lib/library/search.ts";
import { tagWords } from "#lib/plan/format.ts";
import type { Move } from "#lib/plan/schema.ts";
import styles from "./library.module.css";

interface MoveListProps {
  readonly ref: Ref<HTMLUListElement>;
  readonly found: readonly FoundMove[];
  /** What was chosen, carried along so that the move's page can lead back to it. */
  readonly query: string;
}

/** Made anew only when the list itself is: a key press in the field does not wait for hundreds of lines. */
export const MoveList = memo(function MoveList({ ref, found, query }: MoveListProps) {
  return (
    <ul ref={ref} className={styles.moves} aria-label="Moves" onKeyDown={goThrough}>
      {found.map(({ id, move }) => (
        <li key={id}>
          <MoveLine id={id} move={move} query={query} />
        </li>
      ))}
    </ul>
  );
});

interface MoveLineProps {
  readonly id: string;
  readonly move: Move;
  readonly query: string;
}

const MoveLine = memo(function MoveLine({ id, move, query }: MoveLineProps) {
  const { prime, helpers } = muscleWords(move);
  const cautions = cautionList(move.cautions ?? []);
  return (
    // Hundreds of lines: nothing is fetched before somebody goes there.
    <Link className={styles.line} href={`/library/${id}${query}`} prefetch={false}>
      <span className={styles.tint} data-pattern={move.pattern}>
        {move.pattern}
      </span>
      <span>
        <span className={styles.name}>{move.name}</span>
        <span className={styles.stand}>
          {tagWords(move.position)} {STATION_WORDS[move.station]}
          {move.sides === "each" ? ", each side" : ""}
        </span>
      </span>
      <span className={styles.muscles}>
        {prime.join(", ")}
        {helpers.length > 0 ? <span className="quiet"> {`with ${helpers.join(", ")}`}</span> : null}
      </span>
      <span className={styles.cautions}>{cautions}</span>
    </Link>
  );
});

const STEPS: Readonly<Record<string, (at: number, last: number) => number>> = {
  ArrowDown: (at, last) => Math.min(last, at + 1),
  ArrowUp: (at) => at - 1,
  Home: () => 0,
  End: (_, last) => last,
};

/** Up from the first line leads back to the search field. */
function goThrough(event: KeyboardEvent<HTMLUListElement>): void {
  const step = STEPS[event.key];
  if (!step || event.ctrlKey || event.metaKey || event.altKey) return;
  const links = [...event.currentTarget.querySelectorAll("a")];
  const at = links.findIndex((link) => link.matches(":focus"));
  if (at < 0) return;
  event.preventDefault();
  const to = step(at, links.length - 1);
  const target = to < 0 ? document.querySelector<HTMLElement>("#library-search") : links[to];
  target?.focus();
}
