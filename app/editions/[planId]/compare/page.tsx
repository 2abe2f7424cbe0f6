/** Two editions of a plan compared, plate by plate. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { requirePerson } from "#app/_shell/person.ts";
import { Shell } from "#app/_shell/shell.tsx";
import { clockTime } from "#lib/plan/format.ts";
import { type Comparison, compareEditions, type PlateDifference } from "#server/editions/compare-editions.ts";
import { listPlanEditions } from "#server/editions/editions.ts";
import { type ClassPlates, classPlates, SmallPlate } from "../class-plates.tsx";
import { CompareForm } from "../compare-form.tsx";
import styles from "../editions.module.css";

export const metadata: Metadata = { title: "Editions compared" };

interface PageProps {
  readonly params: Promise<{ planId: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export default async function ComparePage({ params, searchParams }: PageProps) {
  const { planId } = await params;
  const { from, to } = await searchParams;
  const which = { planId, from: Number(from), to: Number(to) };
  const path = `/editions/${encodeURIComponent(planId)}`;
  const visit = await requirePerson(`${path}/compare?from=${which.from}&to=${which.to}`);
  const { app, who } = visit;
  const listed = listPlanEditions(app, who.actor, planId);
  const found = compareEditions(app, who.actor, which, visit.formats);
  if (!listed.ok || (!found.ok && found.error.code !== "edition-damaged")) notFound();
  return (
    <Shell visit={visit} section="desk">
      <Link href={path} className="link-line">
        All editions
      </Link>
      <h1>
        {found.ok ? `${found.value.after.title}: editions` : "Editions"} {which.from} and {which.to}
      </h1>
      <CompareForm action={`${path}/compare`} editions={listed.value.editions} from={which.from} to={which.to} />
      {found.ok ? <Differences of={found.value} /> : <p className="problem">{found.error.message}</p>}
    </Shell>
  );
}

function Differences({ of }: { readonly of: Comparison }) {
  const { before, after, whole, plates } = of;
  const [was, is] = [classPlates(before.card.card), classPlates(after.card.card)];
  if (whole.length === 0 && plates.length === 0) return <p>The two are the same class, word for word.</p>;
  return (
    <>
      <p>
        From edition {before.number} ({clockTime(before.card.card.clock.total)}) to edition {after.number} (
        {clockTime(after.card.card.clock.total)}).
      </p>
      {whole.length > 0 && (
        <section className={styles.difference} aria-labelledby="whole">
          <h2 id="whole">The class</h2>
          <Sentences of={whole} />
        </section>
      )}
      {plates.map((plate) => (
        <PlateCompared key={`${plate.id} ${plate.is}`} of={plate} {...{ was, is }} />
      ))}
    </>
  );
}

interface PlateComparedProps {
  readonly of: PlateDifference;
  readonly was: ClassPlates;
  readonly is: ClassPlates;
}

/** The plate as it is; as it was too where it is set up differently, or not there any more. */
function PlateCompared({
  of: { id, name, sentences, setUp, was: wasThere, is: isThere },
  was,
  is,
}: PlateComparedProps) {
  const before = (setUp || !isThere) && wasThere ? was.of(id) : undefined;
  const after = isThere ? is.of(id) : undefined;
  return (
    <section className={styles.difference} aria-label={name}>
      <h2>{name}</h2>
      {(before || after) && (
        <div className={styles.pair}>
          {before && (
            <figure>
              <figcaption>{isThere ? "before" : "was there"}</figcaption>
              <SmallPlate of={before} />
            </figure>
          )}
          {after && (
            <figure>
              {(before || !wasThere) && <figcaption>{before ? "after" : "new"}</figcaption>}
              <SmallPlate of={after} />
            </figure>
          )}
        </div>
      )}
      <Sentences of={sentences} />
    </section>
  );
}

const Sentences = ({ of }: { readonly of: readonly string[] }) => (
  <ul className={styles.sentences}>
    {of.map((sentence) => (
      <li key={sentence}>{sentence}</li>
    ))}
  </ul>
);
