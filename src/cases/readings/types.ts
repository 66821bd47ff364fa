/** Who read a column, and which time. */
export interface ReadingColumn {
  /** Heading in the file. */
  readonly name: string;
  readonly rater: string;
  readonly occasion: number;
}

export interface Radiograph {
  /** Name in the file, or "row 7" when it has none. */
  readonly id: string;
  /** 1-based row in the file; of its first reading when a row is one reading. */
  readonly row: number;
}

interface ReadingsShared {
  readonly file: string;
  readonly radiographs: readonly Radiograph[];
  readonly columns: readonly ReadingColumn[];
  /** What was taken for granted, to be shown: kind, order of grades, occasions, columns left out. */
  readonly notes: readonly string[];
}

export interface GradedReadings extends ReadingsShared {
  readonly kind: "grades";
  /** The scale from lowest to highest. */
  readonly grades: readonly string[];
  /** Places in the scale, 0 first; one row a radiograph, one column as in `columns`. */
  readonly readings: readonly (readonly (number | null)[])[];
  /** The grades stand for numbers (1, 2, 3), so measures for numbers apply too. */
  readonly numbers: readonly number[] | null;
}

export interface MeasuredReadings extends ReadingsShared {
  readonly kind: "measurements";
  readonly readings: readonly (readonly (number | null)[])[];
}

/** A file of readings understood. */
export type Readings = GradedReadings | MeasuredReadings;

export interface ReadingsOptions {
  /** What the cells hold; by default told from them and said. */
  readonly as?: "grades" | "measurements";
  /** The scale from lowest to highest, when words have no order of their own. */
  readonly grades?: readonly string[];
}
