"use client";
/** Mails that wait and mails that could not be sent, with what the mail server said. */
import { useRouter } from "next/navigation";
import type { UnsentMail } from "#server/mail/manage-mail.ts";
import { LocalTime } from "../_parts/local-time.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";
import { attemptsWords } from "./mail-words.ts";
import styles from "./studio.module.css";

export function MailQueue({ unsent }: { readonly unsent: readonly UnsentMail[] }) {
  const router = useRouter();
  const sending = useSend();
  const again = async (id: string) => {
    if ((await sending.run("POST", `/api/mail/${encodeURIComponent(id)}/try-again`)) !== undefined) router.refresh();
  };
  if (unsent.length === 0) return null;
  return (
    <>
      <h3 className={styles.mailHead}>Not sent</h3>
      <ul className={styles.devices}>
        {unsent.map((mail) => (
          <li key={mail.id}>
            <Facts mail={mail} />
            <button type="button" className="act" aria-disabled={sending.busy} onClick={() => again(mail.id)}>
              Try again<span className="visually-hidden"> to send the mail to {mail.to}</span>
            </button>
          </li>
        ))}
      </ul>
      <ProblemLine say={sending.problem} />
    </>
  );
}

function Facts({ mail: { to, madeAt, attempts, problem, nextAt } }: { readonly mail: UnsentMail }) {
  return (
    <div className={styles.mailFacts}>
      <p>
        <b>{nextAt === null ? "Failed" : "Waiting"}</b>: to {to}, <LocalTime at={madeAt} />, {attemptsWords(attempts)}
        {nextAt !== null && attempts > 0 ? (
          <>
            , again <LocalTime at={nextAt} />
          </>
        ) : null}
      </p>
      {problem ? <p className="quiet small">{problem}</p> : null}
    </div>
  );
}
