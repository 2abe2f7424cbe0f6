/** The class as it was signed, item by item. */
import { BodyMap } from "#app/_body-map/body-map.tsx";
import { SafetyNote } from "#app/_parts/safety-note.tsx";
import { balance, workShares } from "#lib/balance/balance.ts";
import type { Card } from "#lib/card/schema.ts";
import { clockTime } from "#lib/plan/format.ts";
import type { PlanItem } from "#lib/plan/schema.ts";
import { type ClassPlates, classPlates, SmallPlate } from "../class-plates.tsx";
import styles from "../editions.module.css";

export function SignedClass({ card }: { readonly card: Card }) {
  const plates = classPlates(card);
  const shares = workShares(balance(card.plan));
  return (
    <section aria-labelledby="class">
      <h2 id="class">The class</h2>
      <ol className={styles.class}>
        {card.plan.items.map((item) => (
          <Item key={item.id} item={item} plates={plates} />
        ))}
      </ol>
      {Object.keys(shares).length > 0 && (
        <div className={styles.trains}>
          <h3>Share of the work</h3>
          <BodyMap shares={shares} layout="standing" />
        </div>
      )}
      <SafetyNote sentences={card.cautions.note} />
    </section>
  );
}

function Item({ item, plates }: { readonly item: PlanItem; readonly plates: ClassPlates }) {
  const plate = plates.of(item.id);
  if (plate)
    return (
      <li>
        <SmallPlate of={plate} />
      </li>
    );
  return (
    <li className={styles.still} data-kind={item.kind}>
      {item.kind === "heading" && <h3>{item.title}</h3>}
      {item.kind === "pause" && (
        <p>
          <span className="mono">{clockTime(item.seconds)}</span> {item.text || "A pause"}
        </p>
      )}
    </li>
  );
}
