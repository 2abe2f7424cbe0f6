/** `npm run -s reset-password -- EMAIL`: makes a reset link, for a manager whom no other manager can help. */
import { openDatabase } from "#db/connection.ts";
import { readPersonByEmail } from "#db/repos/people-repo.ts";
import { readDataLocation } from "#server/base/env.ts";
import { BY_SERVER, storeReset } from "#server/people/reset-password.ts";
import { CommandRefused, runCommand } from "./run.ts";

await runCommand(([email, ...rest]) => {
  if (email === undefined || email.startsWith("-") || rest.length > 0)
    throw new CommandRefused("Name one person: reset-password EMAIL");
  const { databaseFile, origin, originGiven } = readDataLocation();
  const db = openDatabase(databaseFile, { beside: true });
  try {
    const made = db.raw
      .transaction(() => {
        const person = readPersonByEmail(db, email.trim().toLowerCase());
        if (!person) throw new CommandRefused(`Nobody in this studio has the address ${email}. Check the address.`);
        return storeReset(db, { person, by: BY_SERVER, at: Date.now(), origin });
      })
      .immediate();
    process.stdout.write(
      `${made.link}\nOpen it while the server is running. It works once, until ${new Date(made.expiresAt).toISOString()}.\n`,
    );
    if (!originGiven)
      process.stdout.write("For a link with the server's address, set SPRINGLINE_URL as the server has it.\n");
  } finally {
    db.close();
  }
});
