import { SheetError, type SheetIssue } from "../sheet-error.js";
import { roles as knownRoles, type Role } from "../types.js";

/**
 * Guessed roles with those that a person chose, by column name.
 * @throws SheetError naming every absent column and unknown role
 */
export function assignRoles(
  guessed: readonly Role[],
  names: readonly string[],
  chosen: Readonly<Record<string, Role>> | undefined,
  file: string,
): Role[] {
  const roles = [...guessed];
  const issues: SheetIssue[] = [];
  for (const [name, role] of Object.entries(chosen ?? {})) {
    const k = names.indexOf(name);
    const columns = names.map((each) => `"${each}"`).join(", ");
    if (k < 0)
      issues.push({ column: name, rule: `is given a role but is not in the sheet; its columns are ${columns}` });
    else if (!knownRoles.includes(role))
      issues.push({ column: name, value: role, rule: `must have one of the roles ${knownRoles.join(", ")}` });
    else roles[k] = role;
  }
  if (issues.length > 0) throw new SheetError(file, issues);
  return roles;
}
