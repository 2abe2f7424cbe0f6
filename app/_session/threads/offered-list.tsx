/** The list under a comment field. The caret stays in the text, which names the chosen one; the keys are the text's. */
import { OFFERED_NAME, offeredWords } from "./comment-words.ts";
import styles from "./threads.module.css";
import type { OfferList } from "./use-offers.ts";

export function OfferedList({ id, list }: { readonly id: string; readonly list: OfferList }) {
  const { offers, chosen, take } = list;
  return (
    <>
      <p className="visually-hidden" role="status">
        {offers ? offeredWords(offers) : ""}
      </p>
      {offers && (
        <div role="listbox" id={id} aria-label={OFFERED_NAME[offers.kind]} className={styles.offered}>
          {offers.choices.map((choice, i) => (
            // biome-ignore lint/a11y/useFocusableInteractive: the caret stays in the text, which names the chosen one
            // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are the text's
            <div
              key={choice.id}
              role="option"
              id={`${id}-${i}`}
              aria-selected={i === chosen}
              className={styles.choice}
              onPointerDown={(event) => event.preventDefault()}
              onClick={() => take(choice)}
            >
              {choice.words}
            </div>
          ))}
        </div>
      )}
    </>
  );
}
