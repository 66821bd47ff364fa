/**
 * Row numbers side by side, and how many follow.
 * @param first the first of them
 * @param count of all
 */
export function rowWords(first: readonly number[], count: number): string {
  const more = count > first.length ? ` and ${count - first.length} more` : "";
  return `${first.join(", ")}${more}`;
}
