"use client";
/** One changed plate in words: its sentences, its lines with the words that went and came, its figures before and after. */
import { LatePlateFigure } from "#app/_parts/plate/late-plate-figure.tsx";
import { springWords } from "#lib/plan/format.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import type { ChangedLine, ChangedPlate, SetUp } from "#lib/plan-diff/changed-plates.ts";
import type { WordsPart } from "#lib/plan-diff/word-changes.ts";
import styles from "./rounds.module.css";
import { CHANGES } from "./rounds-words.ts";

interface ChangeWordsProps {
  readonly plate: ChangedPlate;
  readonly equipment: Equipment;
}

export function ChangeWords({ plate: { sentences, lines, setUps }, equipment }: ChangeWordsProps) {
  return (
    <div className={styles.change}>
      {sentences.length > 0 && (
        <ul className={styles.sentences}>
          {sentences.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      {lines.map((line, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two lines may say the same
        <Line key={i} line={line} />
      ))}
      {setUps && (
        <div className={styles.setUps}>
          <Shown title={CHANGES.was} setUp={setUps.was} equipment={equipment} />
          <Shown title={CHANGES.is} setUp={setUps.is} equipment={equipment} />
        </div>
      )}
    </div>
  );
}

function Line({ line: { kind, parts, begins, moved } }: { readonly line: ChangedLine }) {
  return (
    <p className={styles.line}>
      <span className={styles.kind}>{kind}</span>
      <span>
        {parts.map((part, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the parts of one line, in order
          <Part key={i} part={part} />
        ))}
        {begins !== null && <span className="quiet"> · {begins}</span>}
        {moved !== null && <span className="quiet"> · moved {moved}</span>}
      </span>
    </p>
  );
}

/** Struck or underlined for the eye, said for who listens. */
function Part({ part: { how, words } }: { readonly part: WordsPart }) {
  if (how === "same") return <>{words} </>;
  const Mark = how === "went" ? "del" : "ins";
  return (
    <>
      <Mark className={styles[how]}>
        <span className="visually-hidden">{how === "went" ? "removed: " : "added: "}</span>
        {words}
      </Mark>{" "}
    </>
  );
}

const FIGURE_PX = 124;

function Shown({ title, setUp: { item, move }, equipment }: { title: string; setUp: SetUp; equipment: Equipment }) {
  const { side, facing, springs } = item;
  return (
    <figure className={styles.setUp}>
      <div className={styles.drawn}>
        <LatePlateFigure {...{ move, side, facing }} px={FIGURE_PX} />
      </div>
      <figcaption>
        <b>{title}</b> {move?.name ?? item.move}
        <br />
        {springWords(equipment, springs)}
      </figcaption>
    </figure>
  );
}
