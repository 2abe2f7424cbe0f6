/** What the library says of a move: its set-up, what it trains, its tempo, easier and harder ways, its cautions. */
import Link from "next/link";
import { CAUTION_WORDS, muscleList } from "#lib/library/move-words.ts";
import { plural } from "#lib/plan/format.ts";
import type { Move } from "#lib/plan/schema.ts";
import styles from "../../_parts/panel.module.css";
import { CAUTION_NOTE } from "../../_session/item-words.ts";
import { MOVE_WORDS, standWords, tempoInShort } from "./panel-words.ts";

/** `page`: the move’s page in the library; null for a move that only this plan has. */
export function ItemMoveFacts({ move, page }: { move: Move; page: string | null }) {
  return (
    <>
      <dl className={styles.facts}>
        <dt>{MOVE_WORDS.setUp}</dt>
        <dd>{standWords(move)}</dd>
        <dt>{MOVE_WORDS.trains}</dt>
        <dd>{muscleList(move) || MOVE_WORDS.noMuscle}</dd>
        <dt>{MOVE_WORDS.tempo}</dt>
        <dd>{tempoInShort(move)}</dd>
        <Ways term={MOVE_WORDS.easier} ways={move.easier} />
        <Ways term={MOVE_WORDS.harder} ways={move.harder} />
      </dl>
      <Cautions move={move} />
      {page && (
        <p>
          <Link className="link-line" href={page} prefetch={false}>
            {MOVE_WORDS.page}
          </Link>
        </p>
      )}
    </>
  );
}

function Ways({ term, ways }: { term: string; ways: readonly string[] | undefined }) {
  if (!ways || ways.length === 0) return null;
  return (
    <>
      <dt>{term}</dt>
      <dd>{ways.join("; ")}</dd>
    </>
  );
}

function Cautions({ move }: { move: Move }) {
  const cautions = move.cautions ?? [];
  if (cautions.length === 0) return null;
  return (
    <div className={`notice small ${styles.cautions}`}>
      <h3>{plural(cautions.length, "caution")}</h3>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{CAUTION_WORDS[caution]}</li>
        ))}
      </ul>
      <p>{CAUTION_NOTE}</p>
    </div>
  );
}
