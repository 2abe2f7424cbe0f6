/** One sentence about what an undo could not change, shown for a moment or until the person does something else. */
import type { UndoOutcome } from "../act-undo.ts";
import type { ValueAt } from "./description.ts";
import type { Edge, Unsubscribe } from "./edge.ts";
import type { WordsOf } from "./overtaken.ts";
import type { BlockedValueWords } from "./undo-words.ts";
import type { Values } from "./values.ts";

/** How long the sentence is shown, in ms. Common practice, no source. */
const SHOWN_MS = 12_000;

export class NotUndone {
  sentence: string | null = null;
  private stop: Unsubscribe = () => undefined;
  private readonly later: Edge["later"];
  private readonly onChange: () => void;

  constructor(later: Edge["later"], onChange: () => void) {
    this.later = later;
    this.onChange = onChange;
  }

  show(sentence: string | null): void {
    this.stop();
    this.sentence = sentence;
    if (sentence === null) return;
    this.stop = this.later(() => {
      this.sentence = null;
      this.onChange();
    }, SHOWN_MS);
  }

  end(): void {
    this.stop();
  }
}

interface Named {
  readonly values: Values;
  readonly wordsOf: WordsOf;
  nameOf(clientId: number): string | undefined;
}

/**
 * What kept undo from changing a value, in words. Values that others had already undone are mentioned only where
 * nothing else happened.
 */
export function blockedValueWords(
  { done, stood }: UndoOutcome,
  { values, wordsOf, nameOf }: Named,
): BlockedValueWords[] {
  return stood
    .filter(({ why }) => why !== "already" || !done)
    .map(({ entry, key, why, by }) => {
      const at: Pick<ValueAt, "id" | "key"> = {
        id: entry ?? "",
        key: why === "gone" || key === null ? "deleted" : key,
      };
      return { why, words: wordsOf(values.now(at)), who: by === undefined ? undefined : nameOf(by) };
    });
}
