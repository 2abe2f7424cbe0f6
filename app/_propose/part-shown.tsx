"use client";
/** What a part changes: the value now beside the proposed one, the words that go and come, or both orders. */
import { useFormats } from "#app/_parts/formats.tsx";
import { placedName } from "#app/_session/placed-name.ts";
import { readerOf } from "#lib/cues/as-read.ts";
import { itemById } from "#lib/plan/lookup.ts";
import { movedIds } from "#lib/plan/moved.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { blockIds } from "#lib/proposal/block-order.ts";
import type { JudgedPart } from "#lib/proposal/fits.ts";
import { currentValue, partValues } from "#lib/proposal/part-words.ts";
import type { LineRef, PartOf, ProposalPart } from "#lib/proposal/parts.ts";
import { stretchesOf } from "#lib/proposal/words-diff.ts";
import styles from "./propose.module.css";
import { TAKE } from "./propose-words.ts";

interface PartShownProps {
  readonly plan: Plan;
  readonly one: JudgedPart;
}

export function PartShown({ plan, one }: PartShownProps) {
  const { part, step } = one;
  const f = useFormats();
  if (part.kind === "order") return <Orders plan={plan} part={part} fitting={step?.on === "order" ? step.ids : null} />;
  const values = partValues(part, f);
  if (values !== null) return <Values now={currentValue(plan, part, f) ?? values[0]} proposed={values[1]} />;
  const item = itemById(plan, part.item);
  return item?.kind === "move" ? <Line {...{ plan, item, one }} /> : null;
}

function Values({ now, proposed }: { readonly now: string; readonly proposed: string }) {
  return (
    <dl className={styles.values}>
      <div>
        <dt>{TAKE.now}</dt>
        <dd>{now}</dd>
      </div>
      <div>
        <dt>{TAKE.proposed}</dt>
        <dd>
          <b>{proposed}</b>
        </dd>
      </div>
    </dl>
  );
}

/** Words as they are read, live fields filled in. A line that was changed meanwhile shows what would come of both changes. */
function Line({ plan, item, one }: PartShownProps & { readonly item: MoveItem }) {
  const { part, step } = one;
  const read = readerOf(plan);
  const script = item.script ?? [];
  const does = step?.on === "script" ? step.step : undefined;
  const words = (text: string) => read(item, text);
  if (part.kind === "line") {
    const row = does?.does === "change" ? script[does.row] : undefined;
    const [from, to] = [row?.text ?? part.line.text, does?.does === "change" ? does.words.text : part.becomes.text];
    return (
      <p className={styles.words}>
        {stretchesOf(from, to).map(({ text, how }, i) => {
          const Mark = how === "gone" ? "del" : how === "come" ? "ins" : "span";
          // biome-ignore lint/suspicious/noArrayIndexKey: stretches have no names, and are drawn anew with the words
          return <Mark key={i}>{words(text)}</Mark>;
        })}
      </p>
    );
  }
  return <Placed part={part} words={words} />;
}

/** A line that comes, goes, or goes elsewhere. */
function Placed({ part, words }: { readonly part: ProposalPart; readonly words: (text: string) => string }) {
  const where = (after: LineRef | null) => (after === null ? TAKE.first : TAKE.after(words(after.text)));
  if (part.kind === "line-removed")
    return (
      <p className={styles.words}>
        <del>{words(part.line.text)}</del>
      </p>
    );
  if (part.kind !== "line-added" && part.kind !== "line-moved") return null;
  return (
    <p className={styles.words}>
      {part.kind === "line-added" ? <ins>{words(part.becomes.text)}</ins> : words(part.line.text)}{" "}
      <span className="quiet small">{where(part.after)}</span>
    </p>
  );
}

interface OrdersProps {
  readonly plan: Plan;
  readonly part: PartOf<"order">;
  /** Null where it no longer fits. */
  readonly fitting: readonly string[] | null;
}

function Orders({ plan, part, fitting }: OrdersProps) {
  const now = blockIds(plan, part.heading) ?? [];
  const proposed = fitting ?? part.becomes;
  const moved = movedIds(now, proposed);
  return (
    <div className={styles.orders}>
      <Order title={TAKE.now} plan={plan} ids={now} moved={moved} />
      <Order title={TAKE.proposed} plan={plan} ids={proposed} moved={moved} />
    </div>
  );
}

interface OrderProps {
  readonly title: string;
  readonly plan: Plan;
  readonly ids: readonly string[];
  readonly moved: ReadonlySet<string>;
}

function Order({ title, plan, ids, moved }: OrderProps) {
  const items = ids.flatMap((id) => itemById(plan, id) ?? []);
  return (
    <div>
      <p className="quiet small">{title}</p>
      <ol>
        {items.map((item) => (
          <li key={item.id}>
            {moved.has(item.id) ? (
              <>
                <b>{placedName(plan, item)}</b> <span className="quiet small">moves</span>
              </>
            ) : (
              placedName(plan, item)
            )}
          </li>
        ))}
      </ol>
    </div>
  );
}
