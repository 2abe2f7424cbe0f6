/** `npm run -s import -- FOLDER or FILE.zip [--with-faults]`: puts an exported studio into an empty one, with the server stopped. */
import { openDatabase } from "#db/connection.ts";
import { listMembers, type StudioPerson } from "#db/repos/people-repo.ts";
import { type DataLocation, readDataLocation } from "#server/base/env.ts";
import { BY_SERVER, storeReset } from "#server/people/reset-password.ts";
import { importStudio } from "#server/studio-files/import-studio.ts";
import { shownFaults } from "#server/studio-files/manifest.ts";
import { CommandRefused, runCommand } from "./run.ts";

const WITH_FAULTS = "--with-faults";

await runCommand(async (words) => {
  const [from, ...rest] = words.filter((word) => word !== WITH_FAULTS);
  if (from === undefined || from.startsWith("-") || rest.length > 0)
    throw new CommandRefused("Name one export, a folder or a zip file: import FOLDER [--with-faults]");
  const place = readDataLocation();
  const manifest = await importStudio(place, from, { withFaults: words.includes(WITH_FAULTS) });
  const { studio, madeAt } = manifest;
  process.stdout.write(`“${studio}” is as it was at ${madeAt}. Start the server. Nobody has a password yet.\n`);
  for (const fault of shownFaults(manifest)) process.stdout.write(`Taken though it does not hold: ${fault}\n`);
  for (const { name, link } of managersLinks(place)) process.stdout.write(`${name}: ${link}\n`);
  process.stdout.write(
    "Each link works once, for a day; later: npm run -s reset-password -- EMAIL. A manager makes links for everybody else under People, pairs the cue devices again, renews calendar addresses, and sets e-mail and backups.\n",
  );
  if (!place.originGiven)
    process.stdout.write("For links with the server's address, set SPRINGLINE_URL as the server has it.\n");
});

function managersLinks({ databaseFile, origin }: DataLocation): { name: string; link: string }[] {
  const db = openDatabase(databaseFile);
  try {
    const managers = listMembers(db).filter(({ roles }) => roles.includes("manager"));
    const linkFor = (person: StudioPerson) => storeReset(db, { person, by: BY_SERVER, at: Date.now(), origin });
    return db.raw
      .transaction(() => managers.map((person) => ({ name: person.name, link: linkFor(person).link })))
      .immediate();
  } finally {
    db.close();
  }
}
