export const notebooksRoot: string;
export function notebookFolders(): string[];
