import type { SectionPicture } from "../../section-pictures.js";

/** A picture of a screen, before it is told which. */
export type ClubPicture = Pick<SectionPicture, "name" | "caption" | "drawing">;
