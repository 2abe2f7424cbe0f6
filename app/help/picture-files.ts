/** Pictures of help as the build names them: by day and by night. `npm run -s pictures:help` makes them anew. */
import type { StaticImageData } from "next/image";
import type { PictureName } from "#lib/help/how-tos/types.ts";
import balanceDark from "./pictures/balance-dark.webp";
import balanceLight from "./pictures/balance-light.webp";
import changeDark from "./pictures/change-dark.webp";
import changeLight from "./pictures/change-light.webp";
import fitDark from "./pictures/fit-dark.webp";
import fitLight from "./pictures/fit-light.webp";
import floorDark from "./pictures/floor-dark.webp";
import floorLight from "./pictures/floor-light.webp";
import monthDark from "./pictures/month-dark.webp";
import monthLight from "./pictures/month-light.webp";
import railDark from "./pictures/rail-dark.webp";
import railLight from "./pictures/rail-light.webp";
import readingsDark from "./pictures/readings-dark.webp";
import readingsLight from "./pictures/readings-light.webp";
import reviewDark from "./pictures/review-dark.webp";
import reviewLight from "./pictures/review-light.webp";

interface ByScheme {
  readonly light: StaticImageData;
  readonly dark: StaticImageData;
}

export const PICTURE_FILES: Readonly<Record<PictureName, ByScheme>> = {
  rail: { light: railLight, dark: railDark },
  fit: { light: fitLight, dark: fitDark },
  change: { light: changeLight, dark: changeDark },
  balance: { light: balanceLight, dark: balanceDark },
  review: { light: reviewLight, dark: reviewDark },
  month: { light: monthLight, dark: monthDark },
  floor: { light: floorLight, dark: floorDark },
  readings: { light: readingsLight, dark: readingsDark },
};
