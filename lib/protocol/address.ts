/**
 * What the server says about the address it was asked through (`/api/address`), for a page whose socket does not open
 * and for `npm run doctor`. Pure.
 */
import * as z from "zod/mini";

export const ADDRESS_PATH = "/api/address";

export const addressAnswerSchema = z.object({
  program: z.literal("springline"),
  /** Tells this studio's server from any other: the same after every start, and not secret. */
  server: z.string().check(z.maxLength(64)),
  /** The public address that is configured, e.g. `https://plans.quay.example`. */
  address: z.string().check(z.maxLength(300)),
  /** Whether a proxy named the client's address (`x-forwarded-for`) in this request, and whether that was believed. */
  forwarded: z.enum(["none", "ignored", "believed"]),
  /** The client address this request is attributed to. */
  client: z.string().check(z.maxLength(300)),
});
export type AddressAnswer = z.infer<typeof addressAnswerSchema>;

/** Null for anything that is not this program's answer, such as a proxy's error page or another server. */
export function readAddressAnswer(body: unknown): AddressAnswer | null {
  const read = addressAnswerSchema.safeParse(body);
  return read.success ? read.data : null;
}

/** Where an owner reads what to do: a section title of README.md. */
export const PROXY_SECTION = "Behind a proxy";
const WHAT_TO_DO = `run npm run -s doctor on the server and read "${PROXY_SECTION}" in its README`;

/**
 * Names the address that is configured and the one that was used: the first thing an owner meets who forgot to set it.
 */
export const wrongAddressWords = (home: string, opened: string): string =>
  `This studio's address is ${home}, but you opened it as ${opened}. Use the studio's address, or ask whoever runs the server to set SPRINGLINE_URL.`;

/** For a page that gets answers over HTTP but whose socket never opens. `opened`: the page's own origin. */
export const noLiveWords = (home: string, opened: string): string =>
  home === opened
    ? `This address does not carry live connections, so nothing can be opened or shared here. Whoever runs the server should ${WHAT_TO_DO}. This page keeps trying.`
    : `This address does not carry live connections. ${wrongAddressWords(home, opened)}`;
