/** What a plan can be for. */
export const sizeKinds = ["rate", "free", "kappa", "icc"] as const;
export type SizeKind = (typeof sizeKinds)[number];
