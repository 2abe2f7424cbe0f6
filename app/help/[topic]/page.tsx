/** One text of help. */
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { howToBySlug } from "#lib/help/help-pages.ts";
import styles from "../help.module.css";
import { BackToHelp, HelpFrame } from "../help-frame.tsx";
import { chosenScheme } from "../help-scheme.ts";
import { HelpText } from "../help-text.tsx";

interface PageProps {
  readonly params: Promise<{ readonly topic: string }>;
}

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  const found = howToBySlug((await params).topic);
  return { title: found ? `Help: ${found.title}` : "No such help" };
}

export default async function HowToPage({ params }: PageProps) {
  const found = howToBySlug((await params).topic);
  if (!found) notFound();
  return (
    <HelpFrame>
      <BackToHelp />
      <article className={styles.text}>
        <h1>{found.title}</h1>
        <p className={styles.about}>{found.about}</p>
        <HelpText body={found.body} scheme={await chosenScheme()} />
      </article>
    </HelpFrame>
  );
}
