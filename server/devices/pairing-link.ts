/** How a pairing code travels without being typed: an address that holds it, and that address as a QR code. */
import { encode } from "uqr";
import { FLOOR_CODE_KEY } from "#lib/protocol/places.ts";

export interface PairingLink {
  /** The floor's address with the code behind the #, which browsers send to no server. */
  readonly link: string;
  /** The link as a QR code (ISO/IEC 18004): squares on a side, quiet zone included, and the dark ones as the path of an SVG. */
  readonly squares: { readonly side: number; readonly path: string };
  /** Other machines cannot open it: the program only knows itself as this machine. */
  readonly onlyHere: boolean;
}

/** The quiet zone that the standard asks for, in squares. */
const QUIET = 4;

/** `origin`: the address that people use, as the program knows it. */
export function pairingLink(origin: string, code: string): PairingLink {
  const link = `${origin}/floor#${FLOOR_CODE_KEY}=${code}`;
  const { data, size } = encode(link, { ecc: "M", border: QUIET });
  const dark = data.flatMap((row, y) => row.flatMap((on, x) => (on ? [`M${x} ${y}h1v1h-1z`] : [])));
  return { link, squares: { side: size, path: dark.join("") }, onlyHere: isThisMachine(new URL(origin).hostname) };
}

const isThisMachine = (host: string): boolean =>
  host === "localhost" || host.endsWith(".localhost") || host === "[::1]" || /^127\./.test(host);
