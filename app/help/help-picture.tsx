/** A picture of the product, by day or by night as the page is. Made anew by `npm run -s pictures:help`. */
import { PICTURES, type PictureName } from "#lib/help/how-tos/types.ts";
import styles from "./help.module.css";
import { PICTURE_FILES } from "./picture-files.ts";

interface HelpPictureProps {
  readonly name: PictureName;
  /** What the reader has chosen; null: as their system is. */
  readonly scheme: "light" | "dark" | null;
}

export function HelpPicture({ name, scheme }: HelpPictureProps) {
  const { light, dark } = PICTURE_FILES[name];
  const first = scheme === "dark" ? dark : light;
  return (
    <picture className={styles.picture}>
      {scheme === null && <source srcSet={dark.src} media="(prefers-color-scheme: dark)" />}
      <img src={first.src} width={first.width} height={first.height} alt={PICTURES[name]} loading="lazy" />
    </picture>
  );
}
