/** The studio cannot be exported or imported; the message is one sentence for the person who asked. Recognised by its name. */
export class StudioFilesRefused extends Error {
  override readonly name = "StudioFilesRefused";
}
