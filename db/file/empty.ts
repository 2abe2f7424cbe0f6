/** Whether a database file that nobody has open holds a studio, or anything that is not known to be empty. */
import Database from "better-sqlite3";

export function holdsStudio(file: string): boolean {
  let raw: Database.Database | undefined;
  try {
    raw = new Database(file, { readonly: true });
    const made = raw.prepare("SELECT 1 FROM sqlite_master WHERE name = 'studio'").get() !== undefined;
    if (!made) return raw.prepare("SELECT 1 FROM sqlite_master WHERE type = 'table'").get() !== undefined;
    return (
      raw.prepare("SELECT 1 FROM studio UNION SELECT 1 FROM user UNION SELECT 1 FROM document").get() !== undefined
    );
  } catch {
    return true; // what cannot be read may hold anything
  } finally {
    raw?.close();
  }
}
