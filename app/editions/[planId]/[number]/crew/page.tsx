/** One signed class on one page for camera crew and demonstrator; on a phone it reads as a list. */

import type { Metadata } from "next";
import { FormatsProvider } from "#app/_parts/formats.tsx";
import { readSignedCard, type SheetProps, titleOf } from "../read-signed-card.ts";
import { PrintedCrewSheet } from "./crew-sheet.tsx";

export const generateMetadata = async (props: SheetProps): Promise<Metadata> => ({
  title: await titleOf(props, ", crew sheet"),
});

export default async function CrewPage(props: SheetProps) {
  const found = await readSignedCard(props, "crew");
  if (!found.ok) {
    return (
      <main style={{ padding: "2rem" }}>
        <p className="problem">{found.error.message}</p>
      </main>
    );
  }
  const { card, signedAt, signedByName, withdrawn, record, formats } = found.value;
  return (
    <FormatsProvider formats={formats}>
      <PrintedCrewSheet
        card={card.card}
        signedAt={signedAt}
        signedBy={signedByName}
        withdrawn={withdrawn}
        record={record}
      />
    </FormatsProvider>
  );
}
