export function serve(
  folder: string,
  options: {
    readonly port: number;
    readonly home?: string;
    readonly taken?: (port: number, next: number) => void;
  },
): Promise<{ readonly port: number; readonly close: () => Promise<void> }>;
