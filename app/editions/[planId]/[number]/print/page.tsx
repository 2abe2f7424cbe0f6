/** One signed class on one page, for the wall of the room. */

import type { Metadata } from "next";
import { FormatsProvider } from "#app/_parts/formats.tsx";
import { readSignedCard, type SheetProps, titleOf } from "../read-signed-card.ts";
import { PrintedClass } from "./printed-class.tsx";

export const generateMetadata = async (props: SheetProps): Promise<Metadata> => ({ title: await titleOf(props, "") });

export default async function PrintPage(props: SheetProps) {
  const found = await readSignedCard(props, "print");
  if (!found.ok) {
    return (
      <main style={{ padding: "2rem" }}>
        <p className="problem">{found.error.message}</p>
      </main>
    );
  }
  const { card, signedAt, signedByName, withdrawn, record, note, formats } = found.value;
  return (
    <FormatsProvider formats={formats}>
      <PrintedClass card={card.card} signedBy={signedByName} {...{ signedAt, withdrawn, record, note }} />
    </FormatsProvider>
  );
}
