export function browserAtHand(): string | undefined;
export function browserForTests(say: (message: string) => void): Promise<string>;
