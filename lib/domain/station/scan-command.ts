/** What a printed command code asks for; the same is done by a button and, where it says so, by a key. */
export const SCAN_COMMANDS = {
  'CMD:PASS': 'pass',
  'CMD:FAIL': 'fail',
  'CMD:CANCEL': 'leave',
  'CMD:OK': 'acknowledge',
  'CMD:REPAIR': 'repair',
} as const;

/** A command that can be scanned. */
export type ScanCommand = (typeof SCAN_COMMANDS)[keyof typeof SCAN_COMMANDS];

const BY_CODE = new Map<string, ScanCommand>(Object.entries(SCAN_COMMANDS));

/** The command that a scanned code is, or null for every other code; capitals do not matter. */
export function scanCommand(code: string): ScanCommand | null {
  return BY_CODE.get(code.toUpperCase()) ?? null;
}

/** Keys that press the same buttons while the scan box has the focus. */
export const COMMAND_KEYS: Readonly<Record<string, ScanCommand>> = {
  F8: 'pass',
  F9: 'fail',
  Escape: 'leave',
};
