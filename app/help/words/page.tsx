/** What the product's words mean: the users' part of the one glossary. */
import type { Metadata } from "next";
import { USER_GLOSSARY, wordId } from "#lib/help/help-pages.ts";
import styles from "../help.module.css";
import { BackToHelp, HelpFrame } from "../help-frame.tsx";

export const metadata: Metadata = { title: "Help: Words" };

export default function WordsPage() {
  const words = [...USER_GLOSSARY].sort((a, b) => (a.word < b.word ? -1 : 1));
  return (
    <HelpFrame>
      <BackToHelp />
      <h1>Words</h1>
      <p className={styles.about}>One word for one thing, on every screen.</p>
      <dl className={styles.words}>
        {words.map(({ word, means }) => (
          <div key={word} id={wordId(word)}>
            <dt>{word}</dt>
            <dd>
              <Means text={means} />
            </dd>
          </div>
        ))}
      </dl>
    </HelpFrame>
  );
}

/** What stands between underscores stands on screens like that. */
const Means = ({ text }: { readonly text: string }) => {
  const parts = text.split("_").map((part, at) => ({ part, at }));
  return parts.map(({ part, at }) => (at % 2 === 1 ? <i key={at}>{part}</i> : part));
};
