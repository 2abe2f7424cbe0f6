/** Asks the server over HTTP which address it is served at, when the socket does not open. For browsers. */
import { ADDRESS_PATH, noLiveWords, readAddressAnswer } from "#lib/protocol/address.ts";

const PATIENCE_MS = 5_000;

/** A sentence for the person when the server answers; null when it does not. Rejects when the network fails. */
export async function explainAddress(): Promise<string | null> {
  const signal = AbortSignal.timeout(PATIENCE_MS);
  const response = await fetch(ADDRESS_PATH, { cache: "no-store", signal });
  const answer = readAddressAnswer(await response.json());
  return answer && noLiveWords(answer.address, location.origin);
}
