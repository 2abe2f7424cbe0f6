/**
 * What the server says of the address it was asked through (`/api/address`): for a page whose socket does not open, and
 * for `npm run doctor`. Pure.
 */
import * as z from "zod/mini";

export const ADDRESS_PATH = "/api/address";

export const addressAnswerSchema = z.object({
  program: z.literal("springline"),
  /** Tells this studio's server from another one: the same after every start, nothing secret. */
  server: z.string().check(z.maxLength(64)),
  /** The public address that is set, e.g. `https://plans.quay.example`. */
  address: z.string().check(z.maxLength(300)),
  /** Whether a proxy named the client's address (`x-forwarded-for`) in this very request, and whether that was believed. */
  forwarded: z.enum(["none", "ignored", "believed"]),
  /** The address that this request counts as coming from. */
  client: z.string().check(z.maxLength(300)),
});
export type AddressAnswer = z.infer<typeof addressAnswerSchema>;

/** Null for whatever is no answer of this program: a proxy's own error page, another server. */
export function readAddressAnswer(body: unknown): AddressAnswer | null {
  const read = addressAnswerSchema.safeParse(body);
  return read.success ? read.data : null;
}

/** Where an owner reads what to do; the section's title in README.md. */
export const PROXY_SECTION = "Behind a proxy";
const WHAT_TO_DO = `run npm run -s doctor on the server and read "${PROXY_SECTION}" in its README`;

/** Which address is set and which was used. An owner who forgot the public address meets this first. */
export const wrongAddressWords = (home: string, opened: string): string =>
  `This studio is served as ${home}; you opened it as ${opened}. Open it at its own address, or tell whoever runs the server to set SPRINGLINE_URL.`;

/** A page that was answered, and whose socket nevertheless never opens. `opened`: the page's own origin. */
export const noLiveWords = (home: string, opened: string): string =>
  home === opened
    ? `This address does not carry live connections, so nothing can be opened or shared here. Whoever runs the server should ${WHAT_TO_DO}. This page keeps trying.`
    : `This address does not carry live connections. ${wrongAddressWords(home, opened)}`;
