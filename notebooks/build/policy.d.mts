export function policy(scripts: string, styles: string): string;
export const securityHeaders: Record<string, string>;
