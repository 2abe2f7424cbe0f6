/** Help: every text by what it is about, the keys, the words, the rules, and what Springline does not do. */
import type { Metadata } from "next";
import Link from "next/link";
import { HOW_TOS } from "#lib/help/help-pages.ts";
import { HELP_GROUPS } from "#lib/help/how-tos/types.ts";
import styles from "./help.module.css";
import { HelpFrame } from "./help-frame.tsx";

export const metadata: Metadata = { title: "Help" };

const LISTS = [
  {
    href: "/help/keys",
    title: "Keys",
    about: "Every key, place by place. On any page a question mark lists those that count there.",
  },
  { href: "/help/words", title: "Words", about: "What Springline’s words mean." },
  { href: "/help/rules", title: "Rules", about: "What a plan and a month are checked for." },
  { href: "/help/safety", title: "Safety", about: "What Springline does not do, and who comes first." },
];

export default function HelpPage() {
  return (
    <HelpFrame>
      <h1>Help</h1>
      <div className={styles.groups}>
        {HELP_GROUPS.map((group) => (
          <section key={group} aria-label={group}>
            <h2>{group}</h2>
            <Links
              of={HOW_TOS.filter((one) => one.group === group).map((one) => ({ ...one, href: `/help/${one.slug}` }))}
            />
          </section>
        ))}
        <section aria-label="To look up">
          <h2>To look up</h2>
          <Links of={LISTS} />
        </section>
      </div>
    </HelpFrame>
  );
}

interface LinksProps {
  readonly of: readonly { readonly href: string; readonly title: string; readonly about: string }[];
}

const Links = ({ of }: LinksProps) => (
  <ul className={styles.links}>
    {of.map(({ href, title, about }) => (
      <li key={href}>
        <Link href={href}>{title}</Link>
        <span className="quiet small">{about}</span>
      </li>
    ))}
  </ul>
);
