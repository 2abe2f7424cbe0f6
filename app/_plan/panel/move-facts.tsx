/** What the library says of a move: how it stands, what it trains, who takes care, easier and harder ways. */
import Link from "next/link";
import { CAUTION_WORDS, muscleList } from "#lib/library/move-words.ts";
import { plainNumber, plural, tagWords } from "#lib/plan/format.ts";
import type { Move } from "#lib/plan/schema.ts";
import { CAUTION_NOTE } from "../words.ts";
import styles from "./panel.module.css";

/** `page`: where the library says everything about it; null for a move that only this plan has. */
export function MoveFacts({ move, page }: { move: Move; page: string | null }) {
  return (
    <>
      <dl className={styles.facts}>
        <dt>Stand</dt>
        <dd>{`${tagWords(move.position)}, ${move.station}; hands ${held(move.hands)}, feet ${held(move.feet)}`}</dd>
        <dt>Trains</dt>
        <dd>{muscleList(move) || "nothing named"}</dd>
        <dt>Tempo</dt>
        <dd>{tempoWords(move)}</dd>
        <Ways term="Easier" ways={move.easier} />
        <Ways term="Harder" ways={move.harder} />
      </dl>
      <Cautions move={move} />
      {page && (
        <p>
          <Link className={styles.about} href={page} prefetch={false}>
            Everything about this move, and where it is used
          </Link>
        </p>
      )}
    </>
  );
}

const held = (place: string) => (place === "free" ? "free" : `on the ${tagWords(place)}`);

function tempoWords({ tempo, exhaleOn }: Move): string {
  if ("holdSeconds" in tempo) return "held";
  const hold = (seconds: number | undefined) => (seconds ? `, hold ${plainNumber(seconds)}` : "");
  const out = `out ${plainNumber(tempo.outSeconds)}${hold(tempo.outHoldSeconds)}`;
  const back = `back ${plainNumber(tempo.backSeconds)}${hold(tempo.backHoldSeconds)} s`;
  return `${out}, ${back}${exhaleOn ? `; breathe out on the way ${exhaleOn}` : ""}`;
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
    <div className={styles.cautions}>
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
