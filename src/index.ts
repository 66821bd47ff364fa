export type { Count, Interval, NotEstimable } from "./stats/types.js";
