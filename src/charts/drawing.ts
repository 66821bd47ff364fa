import type { TopLevelSpec } from "vega-lite";

/** Rows by the name of the data set that the specification draws them from. */
export type DrawingRows = Readonly<Record<string, readonly object[]>>;

/**
 * A picture: the specification, in which colours are CSS variables, and its rows beside it. Two drawings with equal
 * specifications differ in their rows only, so that a page can redraw by changing the data of the view.
 */
export interface Drawing {
  readonly spec: TopLevelSpec;
  readonly rows: DrawingRows;
}

/** Said with every picture: its name and what it shows, for files and for those who cannot see it. */
export interface PictureText {
  readonly title: string;
  readonly description: string;
}

/** Width of a saved figure in pixels of 1/96 inch: about 170 mm, two columns of a journal. */
export const figureWidth = 640;
