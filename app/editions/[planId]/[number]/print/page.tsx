/** One signed class on one page, for the wall of the room. */
import type { Metadata } from "next";
import { readSheet, type SheetProps, titleOf } from "../read-sheet.ts";
import { Sheet } from "./sheet.tsx";

export const generateMetadata = async (props: SheetProps): Promise<Metadata> => ({ title: await titleOf(props, "") });

export default async function PrintPage(props: SheetProps) {
  const found = await readSheet(props, "print");
  if (!found.ok) {
    return (
      <main style={{ padding: "2rem" }}>
        <p className="problem">{found.error.message}</p>
      </main>
    );
  }
  const { card, signedAt, signedByName, withdrawn } = found.value;
  return <Sheet card={card.card} signedAt={signedAt} signedBy={signedByName} withdrawn={withdrawn} />;
}
