/**
 * Which of the kit's JSON files a text is: a plan has a title and what success is, answers are anything else.
 * @throws Error naming the file when it is not JSON
 */
export function jsonKind(text: string, file: string): "plan" | "answers" {
  let held: unknown;
  try {
    held = JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch {
    throw new Error(`${file}: is not JSON; expected a plan or answers`);
  }
  const plan =
    typeof held === "object" && held !== null && (Object.hasOwn(held, "title") || Object.hasOwn(held, "success"));
  return plan ? "plan" : "answers";
}
