/** The backup cannot be made or used; the message says why and can be shown. */
export class BackupRefused extends Error {
  override readonly name = "BackupRefused";
}
