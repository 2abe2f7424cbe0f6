/** A command on a host's studios cannot be carried out; the message is one sentence for the person who called it. */
export class HostRefused extends Error {
  override readonly name = "HostRefused";
}
