/** Where a device keeps how its scanner types. */
export const SCANNER_KEY = 'reelkin.scanner';
