/** Moves as lines to open. Arrows, Home and End go through them; each is a link like any other. */
import Link from "next/link";
import { type KeyboardEvent, memo, type Ref } from "react";
import { keyHandler } from "#app/_parts/commands/keys.ts";
import { SeenFigure } from "#app/_parts/seen-figure.tsx";
import { cautionList, muscleWords, STATION_WORDS } from "#lib/library/move-words.ts";
import type { FoundMove } from "#lib/library/search.ts";
import { tagWords } from "#lib/plan/format.ts";
import type { Move } from "#lib/plan/schema.ts";
import styles from "./library.module.css";
import { LIBRARY_COMMANDS, type MoveListCommand } from "./library-commands.ts";

/** Start and end in one picture, with the arrow of the carriage. */
const FIGURE_PX = 120;
const SHEET_PX = 200;

interface MoveListProps {
  readonly ref: Ref<HTMLUListElement>;
  readonly found: readonly FoundMove[];
  /** What was chosen, carried along so that the move's page can lead back to it. */
  readonly query: string;
  /** Tiles to look through, instead of lines to read. */
  readonly sheet: boolean;
}

/** Made anew only when the list itself is: a key press in the field does not wait for hundreds of lines. */
export const MoveList = memo(function MoveList({ ref, found, query, sheet }: MoveListProps) {
  return (
    <ul ref={ref} className={styles.moves} data-sheet={sheet || undefined} aria-label="Moves" onKeyDown={goThrough}>
      {found.map(({ id, move }) => (
        <li key={id}>
          <MoveLine id={id} move={move} query={query} sheet={sheet} />
        </li>
      ))}
    </ul>
  );
});

interface MoveLineProps {
  readonly id: string;
  readonly move: Move;
  readonly query: string;
  readonly sheet: boolean;
}

const MoveLine = memo(function MoveLine({ id, move, query, sheet }: MoveLineProps) {
  const { prime, helpers } = muscleWords(move);
  const cautions = cautionList(move.cautions ?? []);
  return (
    // Hundreds of lines: nothing is fetched before somebody goes there.
    <Link className={styles.line} href={`/library/${id}${query}`} prefetch={false}>
      <span className={styles.picture}>
        <SeenFigure move={move} key={sheet ? "tile" : "line"} px={sheet ? SHEET_PX : FIGURE_PX} decoration />
      </span>
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

/** Up from the first line leads back to the search field. */
function goThrough(event: KeyboardEvent<HTMLUListElement>): void {
  const links = [...event.currentTarget.querySelectorAll("a")];
  const at = links.findIndex((link) => link.matches(":focus"));
  const goTo = (index: number) => () => links[index]?.focus();
  const run: Readonly<Record<MoveListCommand, () => void>> = {
    "move-before": at === 0 ? () => document.querySelector<HTMLElement>("#library-search")?.focus() : goTo(at - 1),
    "move-after": goTo(Math.min(links.length - 1, at + 1)),
    "first-move": goTo(0),
    "last-move": goTo(links.length - 1),
  };
  if (at >= 0) keyHandler(LIBRARY_COMMANDS, "moves", { run })(event);
}
