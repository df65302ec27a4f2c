/**
 * Whether the last digit of a GS1 key is its check digit: from the right, the digits before it weigh 3 and 1 in turns,
 * and the sum of all is a multiple of ten (GS1 General Specifications).
 */
export function hasValidCheckDigit(key: string): boolean {
  if (!/^[0-9]{2,}$/.test(key)) return false;
  const sum = [...key]
    .reverse()
    .reduce((total, digit, index) => total + Number(digit) * (index % 2 === 0 ? 1 : 3), 0);
  return sum % 10 === 0;
}
