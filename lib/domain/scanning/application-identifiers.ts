/** What may stand behind a GS1 application identifier. */
export type ElementFormat = {
  lengthMin: number;
  lengthMax: number;
  digitsOnly: boolean;
  /** Its length is known from the identifier, so that no separator follows it. */
  isPredefined: boolean;
  hasCheckDigit: boolean;
};

const exact = (length: number, hasCheckDigit = false): ElementFormat => ({
  lengthMin: length,
  lengthMax: length,
  digitsOnly: true,
  isPredefined: true,
  hasCheckDigit,
});
const digits = (lengthMax: number): ElementFormat => ({
  lengthMin: 1,
  lengthMax,
  digitsOnly: true,
  isPredefined: false,
  hasCheckDigit: false,
});
const text = (lengthMax: number): ElementFormat => ({ ...digits(lengthMax), digitsOnly: false });

const DATE = exact(6);

// From memory of the GS1 General Specifications: the identifiers that labels of electronics carry. An identifier that
// is not here makes a text no GS1 string, so that it is taken as a bare code and nothing in it is guessed.
const FORMATS = new Map<string, ElementFormat>([
  ['00', exact(18, true)],
  ['01', exact(14, true)],
  ['02', exact(14, true)],
  ['10', text(20)],
  ...['11', '12', '13', '15', '16', '17'].map((ai) => [ai, DATE] as const),
  ['20', exact(2)],
  ['21', text(20)],
  ['22', text(20)],
  ['235', text(28)],
  ['240', text(30)],
  ['241', text(30)],
  ['242', digits(6)],
  ['243', text(20)],
  ['250', text(30)],
  ['251', text(30)],
  ['30', digits(8)],
  ['37', digits(8)],
  ['400', text(30)],
  ['401', text(30)],
  ['403', text(30)],
  ...['410', '411', '412', '413', '414', '415', '416', '417'].map((ai) => [ai, exact(13, true)] as const),
  ['420', text(20)],
  ['422', { ...digits(3), lengthMin: 3 }],
  ['90', text(30)],
  ...['91', '92', '93', '94', '95', '96', '97', '98', '99'].map((ai) => [ai, text(90)] as const),
]);
const MEASURE = /^3[1-6][0-9]{2}/;

/** The application identifier at the beginning of a text with its format, the longest first, or null. */
export function identifierAt(element: string): { ai: string; format: ElementFormat } | null {
  if (MEASURE.test(element)) return { ai: element.slice(0, 4), format: exact(6) };
  for (const length of [3, 2]) {
    const ai = element.slice(0, length);
    const format = FORMATS.get(ai);
    if (format !== undefined) return { ai, format };
  }
  return null;
}
