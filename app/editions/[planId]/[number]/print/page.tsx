/** One signed class on one page, for the wall of the room. */
import type { Metadata } from "next";
import { headers } from "next/headers";
import { redirect } from "next/navigation";
import { actorFromHeaders } from "#server/auth/actor.ts";
import { readSignedEdition } from "#server/plans/editions.ts";
import { springline } from "#server/springline.ts";
import { Sheet } from "./sheet.tsx";

interface PageProps {
  readonly params: Promise<{ planId: string; number: string }>;
}

async function read({ params }: PageProps) {
  const { planId, number } = await params;
  const who = await actorFromHeaders(await headers());
  const found = readSignedEdition(springline(), who?.actor ?? null, planId, Number(number));
  return { who, found, path: `/editions/${planId}/${number}/print` };
}

export async function generateMetadata(props: PageProps): Promise<Metadata> {
  const { found } = await read(props);
  return {
    title: found.ok ? `${found.value.card.card.edition.title}, edition ${found.value.number}` : "No such edition",
  };
}

export default async function PrintPage(props: PageProps) {
  const { who, found, path } = await read(props);
  if (!who) redirect(`/sign-in?to=${encodeURIComponent(path)}`);
  if (!found.ok) {
    return (
      <main style={{ padding: "2rem" }}>
        <p className="problem">{found.error.message}</p>
      </main>
    );
  }
  const { card, signedAt, signedByName } = found.value;
  return <Sheet card={card.card} signedAt={signedAt} signedBy={signedByName} />;
}
