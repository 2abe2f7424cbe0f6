/** A text of help as it is read: steps, keys, buttons, links and pictures. */
import Link from "next/link";
import type { ReactNode } from "react";
import { type HelpPiece, helpPieces } from "#lib/help/help-text.ts";
import type { HelpBlock } from "#lib/help/how-tos/types.ts";
import styles from "./help.module.css";
import { HelpPicture } from "./help-picture.tsx";
import { namedButton, namedKey } from "./named-keys.ts";

interface HelpTextProps {
  readonly body: readonly HelpBlock[];
  readonly scheme: "light" | "dark" | null;
}

export function HelpText({ body, scheme }: HelpTextProps) {
  return body.map((block) => <Block key={JSON.stringify(block)} block={block} scheme={scheme} />);
}

function Block({ block, scheme }: { readonly block: HelpBlock; readonly scheme: HelpTextProps["scheme"] }) {
  if (typeof block === "string")
    return (
      <p>
        <Pieces text={block} />
      </p>
    );
  if ("picture" in block) return <HelpPicture name={block.picture} scheme={scheme} />;
  if ("note" in block)
    return (
      <p className="notice">
        <Pieces text={block.note} />
      </p>
    );
  return (
    <ol className={styles.steps}>
      {block.steps.map((step) => (
        <li key={step}>
          <Pieces text={step} />
        </li>
      ))}
    </ol>
  );
}

function Pieces({ text }: { readonly text: string }) {
  const pieces = helpPieces(text).map((piece, at) => ({ piece, at }));
  return pieces.map(({ piece, at }) => <Piece key={at} piece={piece} />);
}

function Piece({ piece }: { readonly piece: HelpPiece }): ReactNode {
  switch (piece.kind) {
    case "words":
      return piece.text;
    case "key":
      return <kbd>{namedKey(piece.path)}</kbd>;
    case "do":
      return <b>{namedButton(piece.path)}</b>;
    case "says":
      return <b>{piece.text}</b>;
    case "to":
      return <Link href={piece.href}>{piece.text}</Link>;
  }
}
